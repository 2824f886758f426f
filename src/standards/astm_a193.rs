//! ASTM A193/A193M (high-temperature studs): strengths by grade and diameter.
//!
//! Inch sizes take the ksi rows, M sizes the MPa rows where the metric specification is known.

use super::strength_table::{Band, Row};

const STANDARD: &str = "ASTM A193";
const METRIC: &str = "ASTM A193M";
const SOURCE: &str = "ASTM A193/A193M, Table 2";
const METRIC_SOURCE: &str = "ASTM A193/A193M, Table 3";

/// ksi rows for inch sizes, MPa rows for M sizes.
pub(super) const ROWS: &[Row] = &[
    Row::ksi(STANDARD, "B5", Band::up_to_inch(4.0), [100.0, 80.0], SOURCE),
    Row::ksi(STANDARD, "B6", Band::up_to_inch(4.0), [110.0, 85.0], SOURCE),
    Row::ksi(STANDARD, "B6X", Band::up_to_inch(4.0), [90.0, 70.0], SOURCE),
    Row::ksi(
        STANDARD,
        "B7",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(STANDARD, "B7", Band::inch(2.5, 4.0), [115.0, 95.0], SOURCE),
    Row::ksi(STANDARD, "B7", Band::inch(4.0, 7.0), [100.0, 75.0], SOURCE),
    Row::mpa(
        METRIC,
        "B7",
        Band::up_to_mm(64.0),
        [860.0, 720.0],
        METRIC_SOURCE,
    ),
    Row::mpa(
        METRIC,
        "B7",
        Band::mm(64.0, 100.0),
        [795.0, 655.0],
        METRIC_SOURCE,
    ),
    Row::mpa(
        METRIC,
        "B7",
        Band::mm(100.0, 180.0),
        [690.0, 515.0],
        METRIC_SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B7M",
        Band::up_to_inch(4.0),
        [100.0, 80.0],
        SOURCE,
    ),
    Row::ksi(STANDARD, "B7M", Band::inch(4.0, 7.0), [100.0, 75.0], SOURCE),
    Row::ksi(
        STANDARD,
        "B16",
        Band::up_to_inch(2.5),
        [125.0, 105.0],
        SOURCE,
    ),
    Row::ksi(STANDARD, "B16", Band::inch(2.5, 4.0), [110.0, 95.0], SOURCE),
    Row::ksi(STANDARD, "B16", Band::inch(4.0, 8.0), [100.0, 85.0], SOURCE),
    Row::ksi(STANDARD, "B8 Class 1", Band::all(), [75.0, 30.0], SOURCE),
    Row::ksi(
        STANDARD,
        "B8 Class 2",
        Band::up_to_inch(0.75),
        [125.0, 100.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8 Class 2",
        Band::inch(0.75, 1.0),
        [115.0, 80.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8 Class 2",
        Band::inch(1.0, 1.25),
        [105.0, 65.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8 Class 2",
        Band::inch(1.25, 1.5),
        [100.0, 50.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8M Class 2",
        Band::up_to_inch(0.75),
        [110.0, 95.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8M Class 2",
        Band::inch(0.75, 1.0),
        [100.0, 80.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8M Class 2",
        Band::inch(1.0, 1.25),
        [95.0, 65.0],
        SOURCE,
    ),
    Row::ksi(
        STANDARD,
        "B8M Class 2",
        Band::inch(1.25, 1.5),
        [90.0, 50.0],
        SOURCE,
    ),
];
