//! ISO 273:1979: clearance holes, medium series.
//!
//! M8 to M36 agree with the holes behind published torque tables; larger ones are from memory.

use crate::units::Length;

/// The document as printed.
pub const SOURCE: &str = "ISO 273:1979";
/// Largest diameter whose hole is confirmed, mm.
const CONFIRMED_TO: f64 = 36.0;

/// Nominal diameter and hole, mm.
const ROWS: &[(f64, f64)] = &[
    (3.0, 3.4),
    (4.0, 4.5),
    (5.0, 5.5),
    (6.0, 6.6),
    (7.0, 7.6),
    (8.0, 9.0),
    (10.0, 11.0),
    (12.0, 13.5),
    (14.0, 15.5),
    (16.0, 17.5),
    (18.0, 20.0),
    (20.0, 22.0),
    (22.0, 24.0),
    (24.0, 26.0),
    (27.0, 30.0),
    (30.0, 33.0),
    (33.0, 36.0),
    (36.0, 39.0),
    (39.0, 42.0),
    (42.0, 45.0),
    (45.0, 48.0),
    (48.0, 52.0),
    (52.0, 56.0),
    (56.0, 62.0),
    (60.0, 66.0),
    (64.0, 70.0),
    (68.0, 74.0),
    (72.0, 78.0),
    (76.0, 82.0),
    (80.0, 86.0),
    (85.0, 91.0),
    (90.0, 96.0),
    (95.0, 101.0),
    (100.0, 107.0),
    (105.0, 112.0),
    (110.0, 117.0),
    (115.0, 122.0),
    (120.0, 127.0),
    (125.0, 132.0),
    (130.0, 137.0),
    (140.0, 147.0),
    (150.0, 158.0),
];

/// Hole of the medium series for a nominal diameter, and whether it is confirmed.
pub fn medium_hole(diameter: Length) -> Option<(Length, bool)> {
    let mm = diameter.to_mm();
    let row = ROWS.iter().find(|row| (row.0 - mm).abs() < 1e-6)?;
    Some((Length::mm(row.1), (8.0..=CONFIRMED_TO).contains(&mm)))
}
