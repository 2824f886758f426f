//! Multi-jackbolt tensioners: one stud, n equal jackbolts that push its nut body off a washer.
//!
//! The stud, the body and the clamped parts are one spring, the jackbolts are springs beside each other in
//! series with it. Everything that is not torque follows from that picture and is derived here: predicted, not
//! measured. Friction, settling and the tilt of the body are left out.

use super::{symbols::*, validity};
use crate::formula::{Expression, degrees, ln, number, pi, sqrt, tan};

/// Printed where a standard's name would stand: derived here. A key of the wording.
pub const SOURCE: &str = "springs";

/// Slope and friction of the thread as in the torque of any screw; in place of the ring under a nut's face a full disc,
/// the flat tip, whose friction acts at two thirds of its radius.
const TORQUE_SOURCE: &str = "ISO 16047:2005, 7 (thread); friction of a full disc (tip)";
/// The thread alone, as in the torque of any screw.
const THREAD_SOURCE: &str = "ISO 16047:2005, 7";
/// Shear areas of a thread that strips.
const STRIPPING_SOURCE: &str = "FED-STD-H28/2B (1991), shear areas";
/// A nut factor in place of friction.
const FACTOR_SOURCE: &str = "ASME PCC-1-2013, Appendix K";

/// What the slope of the thread takes, per unit of load.
fn lead() -> Expression {
    JACKBOLT_PITCH / (2.0 * pi())
}

/// What friction in the thread takes, per unit of load.
fn thread() -> Expression {
    0.577 * JACKBOLT_PITCH_DIAMETER * JACKBOLT_FRICTION
}

/// What friction under the flat tip takes, per unit of load: a full disc, so two thirds of its radius.
fn tip() -> Expression {
    TIP_FRICTION * TIP_DIAMETER / 3.0
}

formulas! {
    /// Compliance of the tensioner's body: a ring twisted between the jackbolt circle and the stud's thread.
    BODY_COMPLIANCE_OF = "jackbolts.body_compliance", BODY_COMPLIANCE,
        BODY_SHARE * DIAMETER / (MODULUS * NOMINAL_AREA),
        SOURCE, validity::PREDICTED;
    /// Stud, body and clamped parts behind each other: 1/K.
    JOINT_COMPLIANCE_OF = "jackbolts.joint_compliance", JOINT_COMPLIANCE,
        STUD_COMPLIANCE + BODY_COMPLIANCE + CLAMP_COMPLIANCE,
        SOURCE, validity::PREDICTED;
    /// One jackbolt: free length and half a diameter of thread on the root area, the give of the thread in the
    /// body (0.33 d), and the tip as a rigid disc on a half-space of steel.
    JACKBOLT_COMPLIANCE_OF = "jackbolts.jackbolt_compliance", JACKBOLT_COMPLIANCE,
        ((FREE_LENGTH + 0.5 * JACKBOLT_DIAMETER) / JACKBOLT_ROOT_AREA
            + 0.33 * JACKBOLT_DIAMETER / JACKBOLT_NOMINAL_AREA
            + (1.0 - number(0.3).square()) / TIP_DIAMETER) / JACKBOLT_MODULUS,
        SOURCE, validity::PREDICTED;
    /// What one jackbolt feels while the others stay, from a measured turn.
    OWN_COMPLIANCE_OF_TURN = "jackbolts.own_compliance_of_turn", OWN_COMPLIANCE,
        TURN_ONE * JACKBOLT_PITCH / (degrees(360.0) * JACKBOLT_LOAD),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// The jackbolt's own compliance behind that turn.
    JACKBOLT_COMPLIANCE_OF_TURN = "jackbolts.compliance_of_turn", JACKBOLT_COMPLIANCE,
        (OWN_COMPLIANCE - JACKBOLTS * JOINT_COMPLIANCE
            + sqrt((JACKBOLTS * JOINT_COMPLIANCE - OWN_COMPLIANCE).square()
                + 4.0 * (JACKBOLTS - 1.0) * JOINT_COMPLIANCE * OWN_COMPLIANCE)) / 2.0,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Stiffness of one jackbolt over that of stud and joint.
    STIFFNESS_RATIO_OF = "jackbolts.stiffness_ratio", STIFFNESS_RATIO,
        JOINT_COMPLIANCE / JACKBOLT_COMPLIANCE,
        SOURCE, validity::PREDICTED;
    /// The one number that governs rounds, stop angle and release.
    RING_RATIO_OF = "jackbolts.ring_ratio", RING_RATIO,
        (JACKBOLTS - 1.0) * STIFFNESS_RATIO,
        SOURCE, validity::PREDICTED;
    /// What every other jackbolt loses for each unit that one gains.
    LOAD_LOSS_OF = "jackbolts.load_loss", LOAD_LOSS,
        STIFFNESS_RATIO / (1.0 + RING_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// What one jackbolt feels while the others stay.
    OWN_COMPLIANCE_OF = "jackbolts.own_compliance", OWN_COMPLIANCE,
        JACKBOLT_COMPLIANCE * (1.0 + JACKBOLTS * STIFFNESS_RATIO) / (1.0 + RING_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Load of one jackbolt.
    JACKBOLT_LOAD_OF = "jackbolts.jackbolt_load", JACKBOLT_LOAD,
        LOAD / JACKBOLTS,
        SOURCE, validity::PREDICTED;
    /// Load of the stud from that of its jackbolts.
    LOAD_OF_JACKBOLTS = "jackbolts.stud_load", LOAD,
        JACKBOLTS * JACKBOLT_LOAD,
        SOURCE, validity::PREDICTED;
    /// Turn of one jackbolt alone from snug to its load.
    TURN_ONE_OF = "jackbolts.turn_one", TURN_ONE,
        degrees(360.0) * JACKBOLT_LOAD * OWN_COMPLIANCE / JACKBOLT_PITCH,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Turn of every jackbolt from snug until all stand at their load.
    TURN_ALL_OF = "jackbolts.turn_all", TURN_ALL,
        degrees(360.0) * JACKBOLT_LOAD * (JACKBOLT_COMPLIANCE + JACKBOLTS * JOINT_COMPLIANCE) / JACKBOLT_PITCH,
        SOURCE, validity::PREDICTED;
    /// How much of the deficit one round in circle leaves: exact for two jackbolts, else low by at most 0.036.
    CONTRACTION_ABOUT = "jackbolts.contraction", CONTRACTION,
        (RING_RATIO / (1.0 + RING_RATIO)).square(),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Deficit of the worst jackbolt after a round at full value, never passed.
    WORST_BOUND_OF = "jackbolts.worst_bound", WORST_BOUND,
        RING_RATIO * LARGEST_TURN / TURN_ALL,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Mean deficit after a round at full value, never passed.
    MEAN_BOUND_OF = "jackbolts.mean_bound", MEAN_BOUND,
        RING_RATIO * LARGEST_TURN / (2.0 * TURN_ALL),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Mean deficit to expect from the mean turn of the last round, from the second round in circle on.
    DEFICIT_OF_TURN = "jackbolts.deficit_of_turn", DEFICIT,
        MEAN_TURN / TURN_ALL * RING_RATIO.square() / (1.0 + 2.0 * RING_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Largest turn of a round that guarantees a mean deficit.
    STOP_TURN_OF = "jackbolts.stop_turn", STOP_TURN,
        2.0 * DEFICIT * TURN_ALL / RING_RATIO,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Rounds at full value from an even level to a mean deficit, before rounding up.
    FULL_ROUNDS_OF = "jackbolts.full_rounds", FULL_ROUNDS,
        ln((1.0 - LEVEL) / DEFICIT) / (2.0 * ln(1.0 + 1.0 / RING_RATIO)),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Angle of the first round of loosening that brings the last jackbolt to its limit.
    RELEASE_TURN_OF = "jackbolts.release_turn", RELEASE_TURN,
        (PEAK_LIMIT - 1.0) * TURN_ALL / RING_RATIO,
        SOURCE, validity::PREDICTED;
    /// The same for a later round, from the even load that the rounds before left.
    ROUND_TURN_OF = "jackbolts.round_turn", ROUND_TURN,
        (PEAK_LIMIT - LEVEL) * TURN_ALL / RING_RATIO,
        SOURCE, validity::PREDICTED;
    /// Load of the last jackbolt of a round of loosening.
    PEAK_SHARE_OF = "jackbolts.peak_share", PEAK_SHARE,
        LEVEL + RING_RATIO * ROUND_TURN / TURN_ALL,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Even load that a round of loosening leaves.
    LEVEL_AFTER = "jackbolts.level_after", LEVEL_LEFT,
        LEVEL - ROUND_TURN / TURN_ALL,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Rounds of loosening at most, before rounding up.
    RELEASE_ROUNDS_OF = "jackbolts.release_rounds", RELEASE_ROUNDS,
        ln(PEAK_LIMIT / (PEAK_LIMIT - 1.0)) / ln(1.0 + 1.0 / RING_RATIO),
        SOURCE, validity::PREDICTED;
    /// Even load below which each jackbolt may be run loose in turn.
    RUN_LOOSE_LEVEL_OF = "jackbolts.run_loose_level", RUN_LOOSE_LEVEL,
        PEAK_LIMIT * (1.0 + STIFFNESS_RATIO) / (1.0 + JACKBOLTS * STIFFNESS_RATIO),
        SOURCE, validity::PREDICTED;
    /// What the last jackbolt carries when all others have been released fully.
    LAST_SHARE_OF = "jackbolts.last_share", LAST_SHARE,
        (1.0 + JACKBOLTS * STIFFNESS_RATIO) / (1.0 + STIFFNESS_RATIO),
        SOURCE, validity::PREDICTED;
    /// What the others carry when one jackbolt has been released fully.
    OTHERS_SHARE_OF = "jackbolts.others_share", OTHERS_SHARE,
        (1.0 + JACKBOLTS * STIFFNESS_RATIO) / (1.0 + RING_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// What a seized jackbolt loses when all others are brought up to a share of their load.
    SEIZED_LOSS_OF = "jackbolts.seized_loss", SEIZED_LOSS,
        (PEAK_LIMIT - 1.0) * RING_RATIO / (1.0 + STIFFNESS_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// What one position of the driver keeps while the other position is driven to a level.
    BLOCK_LEFT_OF = "jackbolts.block_left", BLOCK_LEFT,
        LEVEL / (1.0 + BLOCK * STIFFNESS_RATIO),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Highest level at which no spindle passes the full value.
    LEVEL_LIMIT_OF = "jackbolts.level_limit", LEVEL_LIMIT,
        1.0 / (1.0 + SPINDLE_SCATTER),
        SOURCE, validity::SCATTER_LIMIT;
    /// Turn of each round when an even load is brought to the full value by angle.
    FINISH_TURN_OF = "jackbolts.finish_turn", FINISH_TURN,
        (1.0 - LEVEL) * TURN_ALL / FINISH_ROUNDS,
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Rounds of an angle finish within a peak, before rounding up.
    FINISH_ROUNDS_OF = "jackbolts.finish_rounds", FINISH_ROUNDS,
        RING_RATIO * (1.0 - LEVEL) / (PEAK_LIMIT - 1.0),
        SOURCE, validity::PREDICTED_IN_CONTACT;
    /// Travel that a jackbolt needs: its start gap, stretch and give, closing of the joint, a reserve.
    TRAVEL_OF = "jackbolts.travel", TRAVEL,
        START_GAP + TURN_ALL * JACKBOLT_PITCH / degrees(360.0) + CLOSING + RESERVE,
        SOURCE, validity::PREDICTED;
    /// How far a stud with a nut at its far end stands above the body before the first turn.
    ABOVE_BODY_OF = "jackbolts.above_body", ABOVE_BODY,
        STUD_LENGTH - GRIP - NUT_HEIGHT - PROTRUSION_FAR - BODY_HEIGHT - START_GAP,
        "ISO 80000-3:2019", validity::GEOMETRY;
    /// The same of a stud in a tapped hole.
    ABOVE_BODY_TAPPED_OF = "jackbolts.above_body_tapped", ABOVE_BODY,
        STUD_LENGTH - GRIP - ENGAGEMENT - BODY_HEIGHT - START_GAP,
        "ISO 80000-3:2019", validity::GEOMETRY;
    /// Torque of a jackbolt from its load.
    TORQUE_OF = "jackbolts.torque", JACKBOLT_TORQUE,
        JACKBOLT_LOAD * (lead() + thread() + tip()),
        TORQUE_SOURCE, validity::FLAT_TIP;
    /// Load of a jackbolt from its torque.
    LOAD_OF = "jackbolts.load", JACKBOLT_LOAD,
        JACKBOLT_TORQUE / (lead() + thread() + tip()),
        TORQUE_SOURCE, validity::FLAT_TIP;
    /// The part of the torque that twists the jackbolt.
    THREAD_TORQUE_OF = "jackbolts.thread_torque", JACKBOLT_THREAD_TORQUE,
        JACKBOLT_LOAD * (lead() + thread()),
        THREAD_SOURCE, validity::JACKBOLT_FRICTION;
    /// Torque that turns a jackbolt back under the same load.
    LOOSENING_TORQUE_OF = "jackbolts.loosening_torque", JACKBOLT_LOOSENING,
        JACKBOLT_LOAD * (thread() + tip() - lead()),
        TORQUE_SOURCE, validity::SAME_FRICTION;
    /// Torque of a jackbolt from its load, by a nut factor on its own diameter.
    TORQUE_OF_FACTOR = "jackbolts.torque_by_nut_factor", JACKBOLT_TORQUE,
        JACKBOLT_NUT_FACTOR * JACKBOLT_DIAMETER * JACKBOLT_LOAD,
        FACTOR_SOURCE, validity::JACKBOLT_NUT_FACTOR;
    /// Load of a jackbolt from its torque, by a nut factor.
    LOAD_OF_FACTOR = "jackbolts.load_by_nut_factor", JACKBOLT_LOAD,
        JACKBOLT_TORQUE / (JACKBOLT_NUT_FACTOR * JACKBOLT_DIAMETER),
        FACTOR_SOURCE, validity::JACKBOLT_NUT_FACTOR;
    /// What twists the jackbolt where only a nut factor is known: it does not tell thread from tip, so the whole torque.
    THREAD_TORQUE_OF_FACTOR = "jackbolts.thread_torque_by_nut_factor", JACKBOLT_THREAD_TORQUE,
        JACKBOLT_NUT_FACTOR * JACKBOLT_DIAMETER * JACKBOLT_LOAD,
        FACTOR_SOURCE, validity::TORSION_NOT_TOLD;
    /// Torque that turns a jackbolt back, by a nut factor: the slope, counted once for tightening, now helps.
    LOOSENING_OF_FACTOR = "jackbolts.loosening_torque_by_nut_factor", JACKBOLT_LOOSENING,
        JACKBOLT_LOAD * (JACKBOLT_NUT_FACTOR * JACKBOLT_DIAMETER - JACKBOLT_PITCH / pi()),
        FACTOR_SOURCE, validity::SAME_FRICTION, from_memory;
    /// Pressure of the tip on the washer.
    TIP_PRESSURE_OF = "jackbolts.tip_pressure", TIP_PRESSURE,
        JACKBOLT_LOAD / ((pi() / 4.0) * TIP_DIAMETER.square()),
        "ISO 80000-4:2019", validity::FLAT_TIP;
    /// Compressive stress of a jackbolt.
    STRESS_OF = "jackbolts.stress", JACKBOLT_STRESS,
        JACKBOLT_LOAD / JACKBOLT_STRESS_AREA,
        "ISO 80000-4:2019", validity::JACKBOLT_AXIAL;
    /// Section modulus of a jackbolt against torsion when the whole section yields.
    TORSION_MODULUS_OF = "jackbolts.torsion_modulus", JACKBOLT_MODULUS_TORSION,
        (pi() / 12.0) * (JACKBOLT_STRESS_DIAMETER.square() * JACKBOLT_STRESS_DIAMETER),
        "VDI 2230-1:2015, R7", validity::JACKBOLT_AXIAL;
    /// Shear stress of a jackbolt by its thread torque.
    SHEAR_OF = "jackbolts.shear_stress", JACKBOLT_SHEAR,
        JACKBOLT_THREAD_TORQUE / JACKBOLT_MODULUS_TORSION,
        "VDI 2230-1:2015, R7", validity::JACKBOLT_AXIAL;
    /// Combined (von Mises) stress of a jackbolt while it is turned.
    COMBINED_STRESS_OF = "jackbolts.combined_stress", JACKBOLT_COMBINED,
        sqrt(JACKBOLT_STRESS.square() + 3.0 * JACKBOLT_SHEAR.square()),
        "VDI 2230-1:2015, R7", validity::JACKBOLT_AXIAL;
    /// Share of yield that the combined stress of a jackbolt reaches.
    YIELD_SHARE_OF = "jackbolts.yield_share", YIELD_SHARE,
        JACKBOLT_COMBINED / JACKBOLT_YIELD,
        "ISO 80000-4:2019", validity::JACKBOLT_AXIAL;
    /// Area on which the thread of the body shears: the cylinder of the jackbolt's crests, basic sizes.
    BODY_SHEAR_AREA_OF = "jackbolts.body_shear_area", BODY_SHEAR_AREA,
        pi() * JACKBOLT_DIAMETER * JACKBOLT_ENGAGEMENT
            * (0.5 + (JACKBOLT_DIAMETER - JACKBOLT_PITCH_DIAMETER) * tan(degrees(30.0)) / JACKBOLT_PITCH),
        STRIPPING_SOURCE, validity::BASIC_THREAD, from_memory;
    /// Area on which the thread of the jackbolt shears: the cylinder of the body's crests, d - 1.082532 P.
    THREAD_SHEAR_AREA_OF = "jackbolts.thread_shear_area", THREAD_SHEAR_AREA,
        pi() * (JACKBOLT_DIAMETER - 1.082532 * JACKBOLT_PITCH) * JACKBOLT_ENGAGEMENT
            * (0.5 + (JACKBOLT_PITCH_DIAMETER - (JACKBOLT_DIAMETER - 1.082532 * JACKBOLT_PITCH))
                * tan(degrees(30.0)) / JACKBOLT_PITCH),
        STRIPPING_SOURCE, validity::BASIC_THREAD, from_memory;
    /// Share of its yield in shear that the thread of the body reaches.
    BODY_SHEAR_SHARE_OF = "jackbolts.body_shear_share", YIELD_SHARE,
        sqrt(number(3.0)) * JACKBOLT_LOAD / (BODY_SHEAR_AREA * BODY_YIELD),
        "VDI 2230-1:2015, R7", validity::BASIC_THREAD;
    /// Share of its yield in shear that the thread of the jackbolt reaches.
    THREAD_SHEAR_SHARE_OF = "jackbolts.thread_shear_share", YIELD_SHARE,
        sqrt(number(3.0)) * JACKBOLT_LOAD / (THREAD_SHEAR_AREA * JACKBOLT_YIELD),
        "VDI 2230-1:2015, R7", validity::BASIC_THREAD;
    /// How far the load of a jackbolt may rise while it is turned, as a multiple of the load of the combined
    /// stress, until that stress reaches a share of yield: both parts of it grow with the load.
    PEAK_OF_YIELD = "jackbolts.peak_of_yield", PEAK_LIMIT,
        YIELD_SHARE * JACKBOLT_YIELD / JACKBOLT_COMBINED,
        "VDI 2230-1:2015, R7", validity::JACKBOLT_AXIAL;
    /// How far the load may rise before the break-out torque passes what a wrench or a socket bears.
    PEAK_OF_TORQUE = "jackbolts.peak_of_torque", PEAK_LIMIT,
        JACKBOLT_LIMIT_TORQUE / JACKBOLT_LOOSENING,
        SOURCE, validity::JACKBOLT_AXIAL;
    /// Torque at which a loaded jackbolt reaches a share of yield when all of the torque twists it.
    LIMIT_TORQUE_OF = "jackbolts.limit_torque", JACKBOLT_LIMIT_TORQUE,
        JACKBOLT_MODULUS_TORSION * sqrt(((YIELD_SHARE * JACKBOLT_YIELD).square() - JACKBOLT_STRESS.square()) / 3.0),
        "VDI 2230-1:2015, R7", validity::SEIZED;
}

/// The highest level of a driver that is ever set: the hand wrench must find something left to turn (common practice).
const HIGHEST_LEVEL: f64 = 0.90;
/// The level of a driver where nobody asks for another (common practice).
pub const USUAL_LEVEL: f64 = 0.80;

/// The highest level of a driver at which no spindle passes the full value, down to whole per cent, and never above 90 %.
/// `scatter` is the ± limit from spindle to spindle.
pub fn greatest_level(scatter: f64) -> f64 {
    let limit = LEVEL_LIMIT_OF.value_with(&[(SPINDLE_SCATTER, scatter)]);
    (limit.min(HIGHEST_LEVEL) * 100.0 + 1e-9).floor() / 100.0
}

/// Free length in diameters of the jackbolt where nobody gives it: least, likely, greatest of what is built (ours).
pub const FREE_LENGTHS: [f64; 3] = [0.5, 0.8, 4.0];
/// Diameter of the tip in diameters of the jackbolt: least, likely, greatest (ours).
pub const TIP_DIAMETERS: [f64; 3] = [0.4, 0.7, 1.0];
/// Give of the body in diameters of the stud: least, likely, greatest (ours).
pub const BODY_SHARES: [f64; 3] = [0.0, 0.3, 1.0];
/// Outer diameter of the washer in diameters of the stud (ours).
pub const WASHER_DIAMETERS: f64 = 2.0;
/// Hole under it in diameters of the stud, where no table has it (ours).
pub const HOLE_DIAMETERS: f64 = 1.06;
