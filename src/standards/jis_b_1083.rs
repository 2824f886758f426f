//! JIS B 1083:2008: torque by a nut factor that is built from the two frictions, with the true mean of a ring.
//!
//! The flank angle is taken as 30°; the standard turns it into the section square to the thread, which changes the
//! thread's friction by less than 0.05 %.

use super::{symbols::*, validity};
use crate::formula::{Expression, cos, degrees, pi};

/// The bracket of the standard: diameters and friction, twice the arm of the load.
fn bracket() -> Expression {
    lead() + thread() + bearing()
}

fn lead() -> Expression {
    PITCH / pi()
}

fn thread() -> Expression {
    THREAD_FRICTION * PITCH_DIAMETER / cos(degrees(30.0))
}

fn bearing() -> Expression {
    BEARING_FRICTION * BEARING_DIAMETER
}

/// Outer and inner diameter to the third power, as a product.
fn cubed(of: crate::formula::Symbol) -> Expression {
    of.square() * of
}

formulas! {
    /// Torque from the load.
    TORQUE_OF = "jis_b_1083.torque", TORQUE,
        LOAD / 2.0 * bracket(),
        "JIS B 1083:2008", validity::FRICTION_KNOWN;
    /// Load from the torque.
    LOAD_OF = "jis_b_1083.load", LOAD,
        2.0 * TORQUE / bracket(),
        "JIS B 1083:2008", validity::FRICTION_KNOWN;
    /// The part of the torque that twists the stud.
    THREAD_TORQUE_OF = "jis_b_1083.thread_torque", THREAD_TORQUE,
        LOAD / 2.0 * (lead() + thread()),
        "JIS B 1083:2008", validity::FRICTION_KNOWN;
    /// Torque that turns the nut back under the same load.
    LOOSENING_TORQUE_OF = "jis_b_1083.loosening_torque", LOOSENING_TORQUE,
        LOAD / 2.0 * (thread() + bearing() - lead()),
        "JIS B 1083:2008", validity::SAME_FRICTION;
    /// The nut factor that the two frictions make.
    NUT_FACTOR_OF = "jis_b_1083.nut_factor", NUT_FACTOR,
        bracket() / (2.0 * DIAMETER),
        "JIS B 1083:2008", validity::FRICTION_KNOWN;
    /// Mean friction diameter of a ring under even pressure.
    BEARING_DIAMETER_OF = "jis_b_1083.bearing_diameter", BEARING_DIAMETER,
        2.0 * (cubed(BEARING_OUTER) - cubed(HOLE)) / (3.0 * (BEARING_OUTER.square() - HOLE.square())),
        "JIS B 1083:2008", validity::FLAT_FACE;
}
