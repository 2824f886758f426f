//! ISO 4759-1:2000: tolerances of nuts; here only the edge of the bearing face.

use super::{symbols::*, validity};

formulas! {
    /// Outer diameter of the bearing face of a chamfered nut.
    BEARING_OUTER_OF = "iso_4759_1.bearing_outer", BEARING_OUTER,
        0.95 * ACROSS_FLATS,
        "ISO 4759-1:2000", validity::FLAT_FACE, from_memory;
}
