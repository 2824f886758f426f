//! Shigley's Mechanical Engineering Design, 9th ed.: the exact form of a power screw with a collar, for
//! threads with flanks of 60°.

use super::{symbols::*, validity};
use crate::formula::{Expression, arctan, cos, degrees, pi};

/// Slope over circumference with friction along the flank, while tightening.
fn thread() -> Expression {
    (PITCH_DIAMETER / 2.0)
        * ((PITCH + pi() * THREAD_FRICTION * PITCH_DIAMETER / cos(degrees(30.0)))
            / (pi() * PITCH_DIAMETER - THREAD_FRICTION * PITCH / cos(degrees(30.0))))
}

/// The same while loosening: the lead with its sign reversed.
fn thread_back() -> Expression {
    (PITCH_DIAMETER / 2.0)
        * ((pi() * THREAD_FRICTION * PITCH_DIAMETER / cos(degrees(30.0)) - PITCH)
            / (pi() * PITCH_DIAMETER + THREAD_FRICTION * PITCH / cos(degrees(30.0))))
}

fn bearing() -> Expression {
    BEARING_FRICTION * BEARING_DIAMETER / 2.0
}

formulas! {
    /// Torque from the load.
    TORQUE_OF = "collar.torque", TORQUE,
        LOAD * (thread() + bearing()),
        "Shigley, 9th ed., Eq. 8-5 and 8-26", validity::FRICTION_KNOWN;
    /// Load from the torque.
    LOAD_OF = "collar.load", LOAD,
        TORQUE / (thread() + bearing()),
        "Shigley, 9th ed., Eq. 8-5 and 8-26", validity::FRICTION_KNOWN;
    /// The part of the torque that twists the stud.
    THREAD_TORQUE_OF = "collar.thread_torque", THREAD_TORQUE,
        LOAD * thread(),
        "Shigley, 9th ed., Eq. 8-5", validity::FRICTION_KNOWN;
    /// Torque that turns the nut back under the same load.
    LOOSENING_TORQUE_OF = "collar.loosening_torque", LOOSENING_TORQUE,
        LOAD * (thread_back() + bearing()),
        "Shigley, 9th ed., Eq. 8-2 and 8-26", validity::SAME_FRICTION;
    /// Lead angle of the thread.
    LEAD_ANGLE_OF = "collar.lead_angle", LEAD_ANGLE,
        arctan(PITCH / (pi() * PITCH_DIAMETER)),
        "Shigley, 9th ed., 8-1", validity::GEOMETRY;
}
