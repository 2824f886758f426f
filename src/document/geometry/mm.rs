//! Lengths on paper.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Sub};

use serde::{Serialize, Serializer};

/// A length on paper in hundredths of a millimetre: sums are exact, and the same on every machine.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mm(i32);

impl Mm {
    /// No length.
    pub const ZERO: Self = Self(0);

    /// The nearest length of so many millimetres.
    pub fn new(mm: f64) -> Self {
        Self::of_hundredths((mm * 100.0).round())
    }

    /// The least length that holds so many millimetres.
    pub fn at_least(mm: f64) -> Self {
        // What a sum of widths is too long by in its last digits is no hundredth more.
        Self::of_hundredths((mm * 100.0 - 1e-6).ceil())
    }

    #[allow(
        clippy::cast_possible_truncation,
        reason = "the number is whole, and `as` takes the nearest bound for one that no sheet has"
    )]
    fn of_hundredths(hundredths: f64) -> Self {
        Self(hundredths as i32)
    }

    /// In millimetres.
    pub fn mm(self) -> f64 {
        f64::from(self.0) / 100.0
    }

    /// So many of it under or beside one another.
    #[must_use]
    pub fn times(self, count: usize) -> Self {
        Self(self.0.saturating_mul(whole(count)))
    }

    /// One of so many equal parts, rounded towards zero; the whole where there are none.
    #[must_use]
    pub fn over(self, parts: usize) -> Self {
        Self(self.0 / whole(parts).max(1))
    }

    /// How many of a part it holds whole; none of a part without a length.
    pub fn holds(self, part: Self) -> usize {
        if part.0 <= 0 {
            return 0;
        }
        usize::try_from(self.0 / part.0).unwrap_or(0)
    }
}

fn whole(count: usize) -> i32 {
    i32::try_from(count).unwrap_or(i32::MAX)
}

impl Add for Mm {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Mm {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl AddAssign for Mm {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sum for Mm {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}

impl Serialize for Mm {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.mm())
    }
}
