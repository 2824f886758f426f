//! ISO 3506-1:2009: stainless studs by steel group and property class.

use super::strength_table::{Band, Row};

const STANDARD: &str = "ISO 3506-1";
const SOURCE: &str = "ISO 3506-1:2009, Table 2";

/// MPa rows. Classes 70 and 80 reach M24 by agreement; older editions stop at M20.
pub(super) const ROWS: &[Row] = &[
    Row::mpa(
        STANDARD,
        "A2-50",
        Band::up_to_mm(39.0),
        [500.0, 210.0],
        SOURCE,
    ),
    Row::mpa(
        STANDARD,
        "A4-50",
        Band::up_to_mm(39.0),
        [500.0, 210.0],
        SOURCE,
    ),
    Row::mpa(
        STANDARD,
        "A2-70",
        Band::up_to_mm(24.0),
        [700.0, 450.0],
        SOURCE,
    ),
    Row::mpa(
        STANDARD,
        "A4-70",
        Band::up_to_mm(24.0),
        [700.0, 450.0],
        SOURCE,
    ),
    Row::mpa(
        STANDARD,
        "A2-80",
        Band::up_to_mm(24.0),
        [800.0, 600.0],
        SOURCE,
    ),
    Row::mpa(
        STANDARD,
        "A4-80",
        Band::up_to_mm(24.0),
        [800.0, 600.0],
        SOURCE,
    ),
];
