//! ISO 724:1993 (basic dimensions) and ISO 68-1:1998 (basic profile): metric threads in closed form.

use super::{symbols::*, validity};

formulas! {
    /// Pitch diameter: d2 = d − 0.649519 P (three quarters of the height of the sharp triangle).
    PITCH_DIAMETER_OF = "iso_724.pitch_diameter", PITCH_DIAMETER,
        DIAMETER - 0.649519 * PITCH,
        "ISO 724:1993", validity::METRIC;
    /// Root diameter of the external thread with its rounded root: d3 = d − 1.226869 P.
    ROOT_DIAMETER_OF = "iso_724.root_diameter", ROOT_DIAMETER,
        DIAMETER - 1.226869 * PITCH,
        "ISO 68-1:1998, ISO 724:1993", validity::METRIC;
}
