//! ISO 16047:2005: torque and clamp force. The default form of this program.

use super::{symbols::*, validity};
use crate::formula::{Expression, pi};

/// What the slope of the thread takes, per unit of load.
pub(super) fn lead() -> Expression {
    PITCH / (2.0 * pi())
}

/// What friction in the thread takes, per unit of load.
fn thread() -> Expression {
    0.577 * PITCH_DIAMETER * THREAD_FRICTION
}

/// What friction under the nut takes, per unit of load.
fn bearing() -> Expression {
    0.5 * BEARING_DIAMETER * BEARING_FRICTION
}

formulas! {
    /// Torque from the load.
    TORQUE_OF = "iso_16047.torque", TORQUE,
        LOAD * (lead() + thread() + bearing()),
        "ISO 16047:2005, 7", validity::FRICTION_KNOWN;
    /// Load from the torque.
    LOAD_OF = "iso_16047.load", LOAD,
        TORQUE / (lead() + thread() + bearing()),
        "ISO 16047:2005, 7", validity::FRICTION_KNOWN;
    /// The part of the torque that twists the stud.
    THREAD_TORQUE_OF = "iso_16047.thread_torque", THREAD_TORQUE,
        LOAD * (lead() + thread()),
        "ISO 16047:2005, 7", validity::FRICTION_KNOWN;
    /// Torque that turns the nut back under the same load: the slope helps instead of resisting.
    LOOSENING_TORQUE_OF = "iso_16047.loosening_torque", LOOSENING_TORQUE,
        LOAD * (thread() + bearing() - lead()),
        "ISO 16047:2005, 7", validity::SAME_FRICTION;
    /// One friction for thread and face together, from a measured torque and load.
    TOTAL_FRICTION_OF = "iso_16047.total_friction", TOTAL_FRICTION,
        (TORQUE / LOAD - lead()) / (0.577 * PITCH_DIAMETER + 0.5 * BEARING_DIAMETER),
        "ISO 16047:2005, 7", validity::FRICTION_KNOWN;
    /// Mean diameter of the bearing face: the plain mean of its two edges.
    BEARING_DIAMETER_OF = "iso_16047.bearing_diameter", BEARING_DIAMETER,
        (BEARING_OUTER + HOLE) / 2.0,
        "ISO 16047:2005, 7", validity::FLAT_FACE;
}
