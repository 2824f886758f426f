//! ASTM A540 B23 and B24 (special-purpose studs): strengths by class.
//!
//! The standard limits each class to a diameter by grade; those limits are not known here, except of class 5.

use super::strength_table::{Band, Row};

const STANDARD: &str = "ASTM A540";
const SOURCE: &str = "ASTM A540/A540M, Table 2";

macro_rules! grade {
    ($grade:literal, $class:literal) => {
        concat!($grade, " Class ", $class)
    };
}

macro_rules! classes {
    ($($grade:literal),*) => { &[ $(
        Row::ksi(STANDARD, grade!($grade, "1"), Band::unknown(), [165.0, 150.0], SOURCE).unconfirmed(),
        Row::ksi(STANDARD, grade!($grade, "2"), Band::unknown(), [155.0, 140.0], SOURCE).unconfirmed(),
        Row::ksi(STANDARD, grade!($grade, "3"), Band::unknown(), [145.0, 130.0], SOURCE).unconfirmed(),
        Row::ksi(STANDARD, grade!($grade, "4"), Band::unknown(), [135.0, 120.0], SOURCE).unconfirmed(),
        Row::ksi(STANDARD, grade!($grade, "5"), Band::up_to_inch(6.0), [120.0, 105.0], SOURCE).unconfirmed(),
        Row::ksi(STANDARD, grade!($grade, "5"), Band::inch(6.0, 9.5), [115.0, 100.0], SOURCE).unconfirmed(),
    )* ] };
}

/// ksi rows, from memory.
pub(super) const ROWS: &[Row] = classes!("B23", "B24");
