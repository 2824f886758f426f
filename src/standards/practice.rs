//! Common practice: what the trade does without a document behind it. Printed as such.

use super::{symbols::*, validity};

/// Printed where a standard's name would stand. A key of the wording.
pub const SOURCE: &str = "common_practice";

/// Width of the clamped parts that one stud can use, in its diameters, where nobody gives it: the share of its neighbours'
/// spacing that a flange usually leaves it. A tenth of the stiffness ratio of jackbolts hangs on it.
pub const PART_DIAMETERS: f64 = 3.0;

formulas! {
    /// First round of loosening: half of the computed turn. The peak on the last studs is not predicted by it.
    RELEASE_TURN_OF = "practice.release_turn", RELEASE_TURN,
        TURN / 2.0,
        SOURCE, validity::PRACTICE_NO_PEAK;
}
