//! Common practice: what the trade does without a document behind it. Printed as such.

use super::{symbols::*, validity};

/// Printed where a standard's name would stand. A key of the wording.
pub const SOURCE: &str = "common_practice";

formulas! {
    /// First round of loosening: half of the computed turn. The peak on the last studs is not predicted by it.
    RELEASE_TURN_OF = "practice.release_turn", RELEASE_TURN,
        TURN / 2.0,
        SOURCE, validity::PRACTICE_NO_PEAK;
}
