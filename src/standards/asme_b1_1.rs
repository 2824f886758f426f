//! ASME B1.1-2003: unified inch threads UNC, UNF and 8UN.
//!
//! The series are from memory. UNC and UNF from 1/4 to 1 1/2 in and 8UN from 1 to 2 3/8 in agree with a
//! published table of stress areas (`tests/cases/un_stress_areas_published.csv`).

use super::{symbols::*, validity};
use crate::formula::pi;

formulas! {
    /// Pitch diameter: d2 = d − 0.649519 P, P = 1 in over the threads per inch.
    PITCH_DIAMETER_OF = "asme_b1_1.pitch_diameter", PITCH_DIAMETER,
        DIAMETER - 0.649519 * PITCH,
        "ASME B1.1-2003", validity::INCH;
    /// Root diameter behind the root area: d3 = d − 1.3 P.
    ROOT_DIAMETER_OF = "asme_b1_1.root_diameter", ROOT_DIAMETER,
        DIAMETER - 1.3 * PITCH,
        "ASME PCC-1-2013, Table 1", validity::INCH;
    /// Tensile stress area: π/4 (d − 0.9743 P)². The metric constant is another one, 1.9 % away.
    STRESS_AREA_OF = "asme_b1_1.stress_area", STRESS_AREA,
        (pi() / 4.0) * (DIAMETER - 0.9743 * PITCH).square(),
        "ASME B1.1-2003, appendix B", validity::INCH;
}

/// One size: sixteenths of an inch, threads per inch.
pub(super) type Row = (u32, f64);

/// UNC: sixteenths of an inch, threads per inch.
pub(super) const UNC: &[Row] = &[
    (4, 20.0),
    (5, 18.0),
    (6, 16.0),
    (7, 14.0),
    (8, 13.0),
    (9, 12.0),
    (10, 11.0),
    (12, 10.0),
    (14, 9.0),
    (16, 8.0),
    (18, 7.0),
    (20, 7.0),
    (22, 6.0),
    (24, 6.0),
    (28, 5.0),
    (32, 4.5),
    (36, 4.5),
    (40, 4.0),
    (44, 4.0),
    (48, 4.0),
    (52, 4.0),
    (56, 4.0),
    (60, 4.0),
    (64, 4.0),
];

/// UNF: sixteenths of an inch, threads per inch.
pub(super) const UNF: &[Row] = &[
    (4, 28.0),
    (5, 24.0),
    (6, 24.0),
    (7, 20.0),
    (8, 20.0),
    (9, 18.0),
    (10, 18.0),
    (12, 16.0),
    (14, 14.0),
    (16, 12.0),
    (18, 12.0),
    (20, 12.0),
    (22, 12.0),
    (24, 12.0),
];

/// Whether 8UN is made in this size: from 1 in by sixteenths to 2 in, then by eighths to 6 in.
pub(super) const fn has_eight_thread(sixteenths: u32) -> bool {
    match sixteenths {
        16..=32 => true,
        33..=96 => sixteenths.is_multiple_of(2),
        _ => false,
    }
}
