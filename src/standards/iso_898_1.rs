//! ISO 898-1:2013: stress area, property classes, proof and ultimate loads of metric bolts and studs.

use super::strength_table::{Band, Row};
use super::{symbols::*, validity};
use crate::formula::pi;

formulas! {
    /// Tensile stress area: π/4 (d − 0.938194 P)², which is π/4 ((d2 + d3)/2)². Inch threads use 0.9743.
    STRESS_AREA_OF = "iso_898_1.stress_area", STRESS_AREA,
        (pi() / 4.0) * (DIAMETER - 0.938194 * PITCH).square(),
        "ISO 898-1:2013, 9.1.6", validity::METRIC;
    /// Proof load.
    PROOF_LOAD_OF = "iso_898_1.proof_load", PROOF_LOAD,
        STRESS_AREA * PROOF,
        "ISO 898-1:2013, Tables 5 and 7", validity::CLASSES_TO_M39;
    /// Least ultimate tensile load.
    ULTIMATE_LOAD_OF = "iso_898_1.ultimate_load", ULTIMATE_LOAD,
        STRESS_AREA * TENSILE,
        "ISO 898-1:2013, Tables 4 and 6", validity::CLASSES_TO_M39;
}

const STANDARD: &str = "ISO 898-1";
const SOURCE: &str = "ISO 898-1:2013, Table 3";

/// Property classes in MPa: class, tensile, yield, proof. The edge of 8.8 at 16 mm belongs to the lower band.
/// All rows agree with published restatements (`tests/cases/bolt_classes_published.csv`).
pub(super) const ROWS: &[Row] = &[
    Row::mpa(
        STANDARD,
        "4.6",
        Band::up_to_mm(39.0),
        [400.0, 240.0],
        SOURCE,
    )
    .with_proof(225.0),
    Row::mpa(
        STANDARD,
        "4.8",
        Band::up_to_mm(39.0),
        [420.0, 340.0],
        SOURCE,
    )
    .with_proof(310.0),
    Row::mpa(
        STANDARD,
        "5.6",
        Band::up_to_mm(39.0),
        [500.0, 300.0],
        SOURCE,
    )
    .with_proof(280.0),
    Row::mpa(
        STANDARD,
        "5.8",
        Band::up_to_mm(39.0),
        [520.0, 420.0],
        SOURCE,
    )
    .with_proof(380.0),
    Row::mpa(
        STANDARD,
        "6.8",
        Band::up_to_mm(39.0),
        [600.0, 480.0],
        SOURCE,
    )
    .with_proof(440.0),
    Row::mpa(
        STANDARD,
        "8.8",
        Band::up_to_mm(16.0),
        [800.0, 640.0],
        SOURCE,
    )
    .with_proof(580.0),
    Row::mpa(
        STANDARD,
        "8.8",
        Band::mm(16.0, 39.0),
        [830.0, 660.0],
        SOURCE,
    )
    .with_proof(600.0),
    Row::mpa(
        STANDARD,
        "9.8",
        Band::up_to_mm(16.0),
        [900.0, 720.0],
        SOURCE,
    )
    .with_proof(650.0),
    Row::mpa(
        STANDARD,
        "10.9",
        Band::up_to_mm(39.0),
        [1040.0, 940.0],
        SOURCE,
    )
    .with_proof(830.0),
    Row::mpa(
        STANDARD,
        "12.9",
        Band::up_to_mm(39.0),
        [1220.0, 1100.0],
        SOURCE,
    )
    .with_proof(970.0),
];
