//! ASTM F436: hardened washers for inch studs. From memory, no second source: not confirmed. The thickness, which is
//! part of the grip, is not here: it comes from the job.

use crate::units::Length;

/// The document as printed.
pub const SOURCE: &str = "ASTM F436";
/// From memory alone.
pub const CONFIRMED: bool = false;

/// One washer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Inner diameter.
    pub inner: Length,
    /// Outer diameter.
    pub outer: Length,
}

/// Nominal diameter of the stud, inner and outer diameter of the washer, in thirty-seconds of an inch.
const ROWS: &[(f64, f64, f64)] = &[
    (16.0, 17.0, 34.0),
    (20.0, 22.0, 42.0),
    (24.0, 26.0, 47.0),
    (28.0, 30.0, 56.0),
    (32.0, 36.0, 64.0),
    (36.0, 40.0, 72.0),
    (40.0, 44.0, 80.0),
    (44.0, 48.0, 88.0),
    (48.0, 52.0, 96.0),
    (56.0, 60.0, 108.0),
    (64.0, 68.0, 120.0),
    (72.0, 76.0, 128.0),
    (80.0, 84.0, 144.0),
    (88.0, 92.0, 160.0),
    (96.0, 100.0, 176.0),
    (104.0, 108.0, 192.0),
    (112.0, 116.0, 208.0),
    (120.0, 124.0, 224.0),
    (128.0, 132.0, 240.0),
];

/// The washer of a nominal diameter.
pub fn washer(diameter: Length) -> Option<Washer> {
    let parts = diameter.to_inch() * 32.0;
    let row = ROWS.iter().find(|row| (row.0 - parts).abs() < 1e-6)?;
    Some(Washer {
        inner: Length::inch(row.1 / 32.0),
        outer: Length::inch(row.2 / 32.0),
    })
}
