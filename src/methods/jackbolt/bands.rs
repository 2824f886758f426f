//! One value for each end of what is not known, and the likely one between them.

/// Values by the ratio R: low with soft jackbolts, high with stiff ones. Where nothing is defaulted all three are equal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bands<T> {
    /// Low ratio: fewest rounds, largest steps.
    pub low: T,
    /// Likely.
    pub likely: T,
    /// High ratio: most rounds, smallest steps.
    pub high: T,
}

impl<T> Bands<T> {
    /// The same for each.
    pub fn each(mut of: impl FnMut() -> T) -> Self {
        Self {
            low: of(),
            likely: of(),
            high: of(),
        }
    }

    /// Turned into others.
    pub fn map<'a, U>(&'a self, mut turn: impl FnMut(&'a T) -> U) -> Bands<U> {
        Bands {
            low: turn(&self.low),
            likely: turn(&self.likely),
            high: turn(&self.high),
        }
    }

    /// Low, likely, high.
    pub const fn all(&self) -> [&T; 3] {
        [&self.low, &self.likely, &self.high]
    }

    /// Pairs of two.
    pub fn zip<'a, U>(&'a self, other: &'a Bands<U>) -> Bands<(&'a T, &'a U)> {
        Bands {
            low: (&self.low, &other.low),
            likely: (&self.likely, &other.likely),
            high: (&self.high, &other.high),
        }
    }
}

impl Bands<f64> {
    /// The greatest of the three.
    pub fn greatest(&self) -> f64 {
        self.low.max(self.likely).max(self.high)
    }

    /// The least of the three.
    pub fn least(&self) -> f64 {
        self.low.min(self.likely).min(self.high)
    }
}
