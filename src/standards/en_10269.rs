//! EN 10269:2013: steels for fasteners at high and low temperature. From memory; the user confirms.

use super::strength_table::{Band, Row};

const STANDARD: &str = "EN 10269";
const SOURCE: &str = "EN 10269:2013";

/// MPa rows.
pub(super) const ROWS: &[Row] = &[
    Row::mpa(
        STANDARD,
        "25CrMo4",
        Band::up_to_mm(100.0),
        [600.0, 440.0],
        SOURCE,
    )
    .unconfirmed(),
    Row::mpa(
        STANDARD,
        "42CrMo4",
        Band::up_to_mm(60.0),
        [860.0, 730.0],
        SOURCE,
    )
    .unconfirmed(),
    Row::mpa(
        STANDARD,
        "21CrMoV5-7",
        Band::up_to_mm(160.0),
        [700.0, 550.0],
        SOURCE,
    )
    .unconfirmed(),
    Row::mpa(
        STANDARD,
        "40CrMoV4-6",
        Band::up_to_mm(100.0),
        [850.0, 700.0],
        SOURCE,
    )
    .unconfirmed(),
    Row::mpa(
        STANDARD,
        "X22CrMoV12-1 QT1",
        Band::up_to_mm(160.0),
        [800.0, 600.0],
        SOURCE,
    )
    .unconfirmed(),
];
