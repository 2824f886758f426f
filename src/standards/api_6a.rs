//! API 6A / ISO 10423:2003, Annex D: torque of flange bolting in its long form.
//!
//! With the stress area, half of yield and both frictions equal, all 22 sizes of the annex are reproduced.

use super::{symbols::*, validity};
use crate::formula::{Expression, fixed, pi};
use crate::units::Dimension;

/// The secant of 30°, as the annex rounds it.
const SECANT: f64 = 1.154701;

/// Thread part per unit of load while tightening.
fn thread() -> Expression {
    PITCH_DIAMETER * (PITCH + pi() * THREAD_FRICTION * PITCH_DIAMETER * SECANT)
        / (2.0 * (pi() * PITCH_DIAMETER - PITCH * THREAD_FRICTION * SECANT))
}

/// Thread part per unit of load while loosening: the pitch with its sign reversed.
fn thread_back() -> Expression {
    PITCH_DIAMETER * (pi() * THREAD_FRICTION * PITCH_DIAMETER * SECANT - PITCH)
        / (2.0 * (pi() * PITCH_DIAMETER + PITCH * THREAD_FRICTION * SECANT))
}

fn bearing() -> Expression {
    BEARING_FRICTION * BEARING_DIAMETER / 2.0
}

formulas! {
    /// Torque from the load.
    TORQUE_OF = "api_6a.torque", TORQUE,
        LOAD * (thread() + bearing()),
        "ISO 10423:2003, Annex D", validity::FRICTION_KNOWN;
    /// Load from the torque.
    LOAD_OF = "api_6a.load", LOAD,
        TORQUE / (thread() + bearing()),
        "ISO 10423:2003, Annex D", validity::FRICTION_KNOWN;
    /// The part of the torque that twists the stud.
    THREAD_TORQUE_OF = "api_6a.thread_torque", THREAD_TORQUE,
        LOAD * thread(),
        "ISO 10423:2003, Annex D", validity::FRICTION_KNOWN;
    /// Torque that turns the nut back under the same load.
    LOOSENING_TORQUE_OF = "api_6a.loosening_torque", LOOSENING_TORQUE,
        LOAD * (thread_back() + bearing()),
        "ISO 10423:2003, Annex D", validity::SAME_FRICTION;
    /// Mean diameter of the face of a heavy hexagon nut with a bevel of 1/8 in (3.18 mm); half of the annex's (H + D + K)/2 friction arm.
    BEARING_DIAMETER_OF = "api_6a.bearing_diameter", BEARING_DIAMETER,
        (ACROSS_FLATS + DIAMETER + fixed("1/8", "in", 0.125 * 0.0254, Dimension::Length)) / 2.0,
        "ISO 10423:2003, Annex D", validity::HEAVY_HEX;
}
