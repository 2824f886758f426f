//! ASME B18.2.4.6M: metric heavy hexagon nuts. Widths across flats from memory: not confirmed.

use crate::units::Length;

/// Nominal diameter and width across flats, mm.
const ROWS: &[(f64, f64)] = &[
    (12.0, 21.0),
    (14.0, 24.0),
    (16.0, 27.0),
    (20.0, 34.0),
    (22.0, 36.0),
    (24.0, 41.0),
    (27.0, 46.0),
    (30.0, 50.0),
    (36.0, 60.0),
    (42.0, 70.0),
    (48.0, 80.0),
    (56.0, 90.0),
    (64.0, 100.0),
    (72.0, 110.0),
    (80.0, 120.0),
    (90.0, 135.0),
    (100.0, 150.0),
];

/// The document as printed.
pub const SOURCE: &str = "ASME B18.2.4.6M";
/// From memory alone.
pub const CONFIRMED: bool = false;

/// Width across the flats for a nominal diameter.
pub fn across_flats(diameter: Length) -> Option<Length> {
    let mm = diameter.to_mm();
    let row = ROWS.iter().find(|row| (row.0 - mm).abs() < 1e-6)?;
    Some(Length::mm(row.1))
}
