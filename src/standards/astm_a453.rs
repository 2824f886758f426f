//! ASTM A453 grade 660 (high-expansion studs): strengths by class, all diameters.

use super::strength_table::{Band, Row};

const STANDARD: &str = "ASTM A453";
const SOURCE: &str = "ASTM A453/A453M, grade 660";

/// ksi rows.
pub(super) const ROWS: &[Row] = &[
    Row::ksi(STANDARD, "660 Class A", Band::all(), [130.0, 85.0], SOURCE),
    Row::ksi(STANDARD, "660 Class B", Band::all(), [130.0, 85.0], SOURCE),
    Row::ksi(STANDARD, "660 Class C", Band::all(), [130.0, 85.0], SOURCE),
    Row::ksi(STANDARD, "660 Class D", Band::all(), [130.0, 105.0], SOURCE),
];
