//! ISO 261:1998: which pitches belong to which metric diameter.
//!
//! Coarse pitches agree with a public chart of ISO 261 up to M64 and with ISO 898-1 load tables up to M39.
//! Fine pitches are from memory. They decide only whether a designation is known: the numbers of a thread
//! follow from the diameter and the pitch that the job names.

/// One diameter in mm: its coarse pitch where it has one, and its fine pitches, largest first.
pub(super) struct Row {
    pub(super) diameter: f64,
    pub(super) coarse: Option<f64>,
    pub(super) fine: &'static [f64],
}

const fn coarse(diameter: f64, coarse: f64, fine: &'static [f64]) -> Row {
    Row {
        diameter,
        coarse: Some(coarse),
        fine,
    }
}

const fn fine(diameter: f64, fine: &'static [f64]) -> Row {
    Row {
        diameter,
        coarse: None,
        fine,
    }
}

const TO_3: &[f64] = &[4.0, 3.0, 2.0, 1.5];
const SIX: &[f64] = &[6.0, 4.0, 3.0, 2.0, 1.5];
const SIX_LARGE: &[f64] = &[6.0, 4.0, 3.0, 2.0];
const EIGHT: &[f64] = &[8.0, 6.0, 4.0, 3.0, 2.0];

/// M3 to M160. M82 carries the pitch 3 of ASME PCC-1 Table 1M beside that of ISO 261.
pub(super) const ROWS: &[Row] = &[
    coarse(3.0, 0.5, &[0.35]),
    coarse(3.5, 0.6, &[0.35]),
    coarse(4.0, 0.7, &[0.5]),
    coarse(4.5, 0.75, &[0.5]),
    coarse(5.0, 0.8, &[0.5]),
    coarse(6.0, 1.0, &[0.75]),
    coarse(7.0, 1.0, &[0.75]),
    coarse(8.0, 1.25, &[1.0, 0.75]),
    coarse(9.0, 1.25, &[1.0, 0.75]),
    coarse(10.0, 1.5, &[1.25, 1.0, 0.75]),
    coarse(11.0, 1.5, &[1.0, 0.75]),
    coarse(12.0, 1.75, &[1.5, 1.25, 1.0]),
    coarse(14.0, 2.0, &[1.5, 1.25, 1.0]),
    fine(15.0, &[1.5, 1.0]),
    coarse(16.0, 2.0, &[1.5, 1.0]),
    fine(17.0, &[1.5, 1.0]),
    coarse(18.0, 2.5, &[2.0, 1.5, 1.0]),
    coarse(20.0, 2.5, &[2.0, 1.5, 1.0]),
    coarse(22.0, 2.5, &[2.0, 1.5, 1.0]),
    coarse(24.0, 3.0, &[2.0, 1.5, 1.0]),
    fine(25.0, &[2.0, 1.5, 1.0]),
    fine(26.0, &[1.5]),
    coarse(27.0, 3.0, &[2.0, 1.5, 1.0]),
    fine(28.0, &[2.0, 1.5, 1.0]),
    coarse(30.0, 3.5, &[3.0, 2.0, 1.5, 1.0]),
    fine(32.0, &[2.0, 1.5]),
    coarse(33.0, 3.5, &[3.0, 2.0, 1.5]),
    fine(35.0, &[1.5]),
    coarse(36.0, 4.0, &[3.0, 2.0, 1.5]),
    fine(38.0, &[1.5]),
    coarse(39.0, 4.0, &[3.0, 2.0, 1.5]),
    fine(40.0, &[3.0, 2.0, 1.5]),
    coarse(42.0, 4.5, TO_3),
    coarse(45.0, 4.5, TO_3),
    coarse(48.0, 5.0, TO_3),
    fine(50.0, &[3.0, 2.0, 1.5]),
    coarse(52.0, 5.0, TO_3),
    fine(55.0, TO_3),
    coarse(56.0, 5.5, TO_3),
    fine(58.0, TO_3),
    coarse(60.0, 5.5, TO_3),
    fine(62.0, TO_3),
    coarse(64.0, 6.0, TO_3),
    fine(65.0, TO_3),
    coarse(68.0, 6.0, TO_3),
    fine(70.0, SIX),
    fine(72.0, SIX),
    fine(75.0, TO_3),
    fine(76.0, SIX),
    fine(78.0, &[2.0]),
    fine(80.0, SIX),
    fine(82.0, &[3.0, 2.0]),
    fine(85.0, SIX_LARGE),
    fine(90.0, SIX_LARGE),
    fine(95.0, SIX_LARGE),
    fine(100.0, SIX_LARGE),
    fine(105.0, SIX_LARGE),
    fine(110.0, SIX_LARGE),
    fine(115.0, SIX_LARGE),
    fine(120.0, SIX_LARGE),
    fine(125.0, EIGHT),
    fine(130.0, EIGHT),
    fine(135.0, SIX_LARGE),
    fine(140.0, EIGHT),
    fine(145.0, SIX_LARGE),
    fine(150.0, EIGHT),
    fine(155.0, &[6.0, 4.0, 3.0]),
    fine(160.0, &[8.0, 6.0, 4.0, 3.0]),
];
