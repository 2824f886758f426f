//! ASTM A320 (low-temperature studs): strengths by grade and diameter.

use super::strength_table::{Band, Row};

const STANDARD: &str = "ASTM A320";
const SOURCE: &str = "ASTM A320/A320M, Table 2";

/// ksi rows. L43 stands in restatements, but is to be confirmed by the user.
pub(super) const ROWS: &[Row] = &[
    Row::ksi(
        STANDARD,
        "L7",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "L7A",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "L7B",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "L7C",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "L7M",
        Band::up_to_inch(2.5),
        [100.0, 80.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "L43",
        Band::up_to_inch(4.0),
        [125.0, 105.0],
        SOURCE,
    )
    .unconfirmed(),
];
