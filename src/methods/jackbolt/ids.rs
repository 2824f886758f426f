//! The ids of multi-jackbolt tensioners and of what is predicted of them, with those that all methods share.

use crate::calc::Id;
use crate::calc::ids::ids;
use crate::units::{
    Angle, Area, Compliance, Count, Duration, Force, Length, Ratio, SectionModulus, Stress, Torque,
    Volume,
};

pub use crate::calc::ids::*;

ids! {
    /// Number of jackbolts on one stud.
    JACKBOLT_COUNT: Count = "jackbolt.count";
    /// Nominal diameter of a jackbolt.
    JACKBOLT_DIAMETER: Length = "jackbolt.diameter";
    /// Pitch of a jackbolt.
    JACKBOLT_PITCH: Length = "jackbolt.pitch";
    /// Pitch diameter of a jackbolt.
    JACKBOLT_PITCH_DIAMETER: Length = "jackbolt.pitch_diameter";
    /// Stress area of a jackbolt.
    JACKBOLT_STRESS_AREA: Area = "jackbolt.stress_area";
    /// Root area of a jackbolt.
    JACKBOLT_ROOT_AREA: Area = "jackbolt.root_area";
    /// Nominal area of a jackbolt.
    JACKBOLT_NOMINAL_AREA: Area = "jackbolt.nominal_area";
    /// Diameter of a jackbolt that carries compression and torsion together.
    JACKBOLT_STRESS_DIAMETER: Length = "jackbolt.stress_diameter";
    /// Least yield strength of a jackbolt.
    JACKBOLT_YIELD: Stress = "jackbolt.yield_strength";
    /// Modulus of elasticity of a jackbolt.
    JACKBOLT_MODULUS: Stress = "jackbolt.modulus";
    /// Length of a jackbolt between body and washer.
    JACKBOLT_FREE_LENGTH: Length = "jackbolt.free_length";
    /// Diameter of the tip.
    TIP_DIAMETER: Length = "jackbolt.tip_diameter";
    /// Give of the body, in diameters of the stud.
    BODY_SHARE: Ratio = "jackbolt.body_share";
    /// Friction in the thread of a jackbolt.
    JACKBOLT_FRICTION: Ratio = "jackbolt.friction.thread";
    /// Friction under the tip.
    TIP_FRICTION: Ratio = "jackbolt.friction.tip";
    /// Nut factor of a jackbolt, where its lubricant has no friction.
    JACKBOLT_NUT_FACTOR: Ratio = "jackbolt.friction.nut_factor";
    /// Target load of one jackbolt.
    JACKBOLT_TARGET: Force = "jackbolt.target_load";
    /// Load of one jackbolt at the torque given by others.
    JACKBOLT_GIVEN: Force = "jackbolt.given_load";
    /// Load of one jackbolt at the setting.
    JACKBOLT_LOAD: Force = "jackbolt.load";
    /// Greatest load of one jackbolt.
    JACKBOLT_GREATEST: Force = "jackbolt.load.greatest";
    /// Highest load of one jackbolt, from the tensioner's papers.
    JACKBOLT_RATING: Force = "jackbolt.load.rating";
    /// Pressure of the tip at the greatest load.
    TIP_PRESSURE: Stress = "jackbolt.tip_pressure";
    /// Highest pressure of the tip.
    TIP_PRESSURE_LIMIT: Stress = "jackbolt.tip_pressure.limit";
    /// Compressive stress of a jackbolt at the greatest load.
    JACKBOLT_STRESS: Stress = "jackbolt.stress";
    /// Section modulus of a jackbolt against torsion.
    JACKBOLT_TORSION: SectionModulus = "jackbolt.torsion_modulus";
    /// Torque in the thread of a jackbolt at the greatest load.
    JACKBOLT_THREAD_TORQUE: Torque = "jackbolt.thread_torque";
    /// Shear stress of a jackbolt from that torque.
    JACKBOLT_SHEAR: Stress = "jackbolt.shear_stress";
    /// Combined stress of a jackbolt at the greatest load.
    JACKBOLT_COMBINED: Stress = "jackbolt.combined_stress";
    /// The same as a share of yield.
    JACKBOLT_SHARE: Ratio = "jackbolt.combined_share_of_yield";
    /// Thread of a jackbolt that is engaged in the body, least.
    JACKBOLT_ENGAGEMENT: Length = "jackbolt.engagement";
    /// Least yield strength of the body.
    BODY_YIELD: Stress = "jackbolt.body_yield_strength";
    /// Area on which the thread of the body shears.
    BODY_SHEAR_AREA: Area = "jackbolt.body_shear_area";
    /// Share of its yield in shear that the thread of the body reaches at the greatest load.
    BODY_SHEAR_SHARE: Ratio = "jackbolt.body_shear_share";
    /// Area on which the thread of a jackbolt shears.
    THREAD_SHEAR_AREA: Area = "jackbolt.thread_shear_area";
    /// Share of its yield in shear that the thread of a jackbolt reaches at the greatest load.
    THREAD_SHEAR_SHARE: Ratio = "jackbolt.thread_shear_share";
    /// Compliance of the tensioner's body.
    BODY_COMPLIANCE: Compliance = "jackbolt.body_compliance";
    /// Compliance of stud, body and clamped parts.
    JOINT_COMPLIANCE: Compliance = "jackbolt.joint_compliance";
    /// Measured turn of one jackbolt, the others tight.
    MEASURED_TURN: Angle = "jackbolt.measured_turn";
    /// Compliance that one jackbolt feels, the others still.
    OWN_COMPLIANCE: Compliance = "jackbolt.own_compliance";
    /// Compliance of one jackbolt.
    JACKBOLT_COMPLIANCE: Compliance = "jackbolt.compliance";
    /// Stiffness of one jackbolt over that of the joint.
    STIFFNESS_RATIO: Ratio = "jackbolt.stiffness_ratio";
    /// Stiffness of all other jackbolts over that of the joint, likely.
    RING_RATIO: Ratio = "jackbolt.ring_ratio";
    /// The same at its low end.
    RING_RATIO_LOW: Ratio = "jackbolt.ring_ratio.low";
    /// The same at its high end.
    RING_RATIO_HIGH: Ratio = "jackbolt.ring_ratio.high";
    /// Turn of one jackbolt from snug, the others tight, likely.
    TURN_ONE: Angle = "jackbolt.turn_one";
    /// The same at the low end of the ratio.
    TURN_ONE_LOW: Angle = "jackbolt.turn_one.low";
    /// The same at the high end of the ratio.
    TURN_ONE_HIGH: Angle = "jackbolt.turn_one.high";
    /// Turn of every jackbolt from snug to its load, likely.
    TURN_ALL: Angle = "jackbolt.turn_all";
    /// The same at the low end of the ratio.
    TURN_ALL_LOW: Angle = "jackbolt.turn_all.low";
    /// The same at the high end of the ratio.
    TURN_ALL_HIGH: Angle = "jackbolt.turn_all.high";
    /// The greatest of what the job leaves open: soft jackbolts in a soft body.
    TURN_ALL_GREATEST: Angle = "jackbolt.turn_all.greatest";
    /// What a round in circle leaves of a deficit, likely.
    CONTRACTION: Ratio = "jackbolt.contraction";
    /// The same at the high end of the ratio.
    CONTRACTION_HIGH: Ratio = "jackbolt.contraction.high";
    /// Mean deficit that may be left.
    WANTED_DEFICIT: Ratio = "jackbolt.plan.deficit";
    /// Largest turn of a round that guarantees it, likely.
    STOP_TURN: Angle = "jackbolt.stop_turn";
    /// The same at the high end of the ratio.
    STOP_TURN_HIGH: Angle = "jackbolt.stop_turn.high";
    /// Least number of rounds at full value, high end.
    FULL_ROUNDS: Count = "jackbolt.plan.full_rounds";
    /// Rounds at full value that are likely enough.
    FULL_ROUNDS_LIKELY: Count = "jackbolt.plan.full_rounds.likely";
    /// Rounds at full value at the low end.
    FULL_ROUNDS_LOW: Count = "jackbolt.plan.full_rounds.low";
    /// Turn of the flat rule.
    FLAT_TURN: Angle = "jackbolt.flat_rule.turn";
    /// Mean deficit that a round of such a turn never passes, high end.
    FLAT_BOUND: Ratio = "jackbolt.flat_rule.bound";
    /// Mean deficit to be expected after such a round, likely.
    FLAT_EXPECTED: Ratio = "jackbolt.flat_rule.expected";
    /// Load of the stud when the flat rule is just met, low end of the ratio.
    FLAT_MEAN_LOW: Ratio = "jackbolt.flat_rule.mean.low";
    /// The same, likely.
    FLAT_MEAN: Ratio = "jackbolt.flat_rule.mean";
    /// The same at the high end of the ratio.
    FLAT_MEAN_HIGH: Ratio = "jackbolt.flat_rule.mean.high";
    /// Share that is set in a round.
    ROUND_SHARE: Ratio = "jackbolt.round.#.share";
    /// Torque that is set in a round.
    ROUND_TORQUE: Torque = "jackbolt.round.#.torque";
    /// Load of the stud after a round as a share of the target, low end of the ratio.
    ROUND_MEAN_LOW: Ratio = "jackbolt.round.#.mean.low";
    /// The same, likely.
    ROUND_MEAN: Ratio = "jackbolt.round.#.mean";
    /// The same at the high end of the ratio.
    ROUND_MEAN_HIGH: Ratio = "jackbolt.round.#.mean.high";
    /// Load of the least loaded jackbolt after a round, likely.
    ROUND_LEAST: Ratio = "jackbolt.round.#.least";
    /// Largest turn in a round, low end of the ratio.
    ROUND_TURN_LOW: Angle = "jackbolt.round.#.largest_turn.low";
    /// The same, likely.
    ROUND_TURN: Angle = "jackbolt.round.#.largest_turn";
    /// The same at the high end of the ratio.
    ROUND_TURN_HIGH: Angle = "jackbolt.round.#.largest_turn.high";
    /// Mean turn in a round, likely.
    ROUND_MEAN_TURN: Angle = "jackbolt.round.#.mean_turn";
    /// ± limit from spindle to spindle.
    SPINDLE_SCATTER: Ratio = "jackbolt.driver.scatter";
    /// Share of the full value that the driver is set to, as given.
    DRIVER_LEVEL: Ratio = "jackbolt.driver.level";
    /// Highest level at which no spindle passes the full value.
    DRIVER_LEVEL_LIMIT: Ratio = "jackbolt.driver.level_limit";
    /// Torque that the driver is set to.
    DRIVER_TORQUE: Torque = "jackbolt.driver.torque";
    /// Highest torque of the reversal that frees the sockets.
    REVERSAL_LIMIT: Torque = "jackbolt.driver.reversal_limit";
    /// Torque of the check after lift-off.
    DRIVER_CHECK: Torque = "jackbolt.driver.check_torque";
    /// Load of the stud after the driver, low end of the ratio.
    DRIVER_REACHED_LOW: Ratio = "jackbolt.driver.reached.low";
    /// The same, likely.
    DRIVER_REACHED: Ratio = "jackbolt.driver.reached";
    /// The same at the high end of the ratio.
    DRIVER_REACHED_HIGH: Ratio = "jackbolt.driver.reached.high";
    /// Height of the tensioner's body.
    BODY_HEIGHT: Length = "jackbolt.body_height";
    /// Rounds of equal turns that bring the even load of the driver to the full value.
    FINISH_ROUNDS: Count = "jackbolt.finish.rounds";
    /// Turn of each of them, likely.
    FINISH_TURN: Angle = "jackbolt.finish.turn";
    /// How far the stud stands above the body before the first turn.
    ABOVE_BODY: Length = "stud.above_body";
    /// How far it may.
    ABOVE_BODY_LIMIT: Length = "stud.above_body.limit";
    /// Gap between body and washer before the first turn.
    START_GAP: Length = "jackbolt.travel.start_gap";
    /// What the joint closes beyond its elastic give.
    CLOSING: Length = "jackbolt.travel.closing";
    /// Travel kept in reserve.
    RESERVE: Length = "jackbolt.travel.reserve";
    /// Travel that a jackbolt needs.
    TRAVEL: Length = "jackbolt.travel.needed";
    /// The same with the greatest turn of what the job leaves open.
    TRAVEL_GREATEST: Length = "jackbolt.travel.needed.greatest";
    /// Travel of a jackbolt, from the tensioner's papers.
    TRAVEL_GIVEN: Length = "jackbolt.travel.given";
    /// Thread torque of a jackbolt at the greatest break-out.
    BREAK_OUT_THREAD: Torque = "jackbolt.break_out.thread_torque";
    /// Compressive stress of an installed jackbolt.
    BREAK_OUT_STRESS: Stress = "jackbolt.break_out.stress";
    /// Shear stress of a jackbolt at the greatest break-out.
    BREAK_OUT_SHEAR: Stress = "jackbolt.break_out.shear_stress";
    /// Combined stress of a jackbolt at the greatest break-out.
    BREAK_OUT_COMBINED: Stress = "jackbolt.break_out.combined_stress";
    /// Hours for tightening by hand alone where a driver is planned, low.
    BY_HAND_HOURS_LOW: Duration = "labour.tighten.by_hand.low";
    /// The same, typical.
    BY_HAND_HOURS: Duration = "labour.tighten.by_hand.typical";
    /// The same, high.
    BY_HAND_HOURS_HIGH: Duration = "labour.tighten.by_hand.high";
    /// Time to set the driver up, once for a joint, typical.
    DRIVER_SET_UP: Duration = "labour.driver.set_up";
    /// Time for one stud with the driver, its hand finish included, low.
    STUD_WITH_DRIVER_LOW: Duration = "labour.stud.with_driver.low";
    /// The same, typical.
    STUD_WITH_DRIVER: Duration = "labour.stud.with_driver.typical";
    /// The same, high.
    STUD_WITH_DRIVER_HIGH: Duration = "labour.stud.with_driver.high";
    /// Time for one stud by hand alone, low.
    STUD_BY_HAND_LOW: Duration = "labour.stud.by_hand.low";
    /// The same, typical.
    STUD_BY_HAND: Duration = "labour.stud.by_hand.typical";
    /// The same, high.
    STUD_BY_HAND_HIGH: Duration = "labour.stud.by_hand.high";
    /// Studs of a joint from which the driver takes no longer than hands alone, typical; left out where it never does.
    DRIVER_PAYS_FROM: Count = "labour.driver.pays_from";
    /// Charged batteries for all studs of a joint, with one spare.
    BATTERIES: Count = "labour.driver.batteries";
    /// Air for all studs of a joint, if the driver ran all the time that it stands on them.
    AIR: Volume = "labour.driver.air";
    /// Torque that turns an installed jackbolt back at the friction of its tightening.
    BREAK_OUT_LIKELY: Torque = "loosen.break_out.likely";
    /// Torque that the wrench may need while loosening: the highest load at the greatest break-out.
    WRENCH_NEEDED: Torque = "loosen.wrench_needed";
    /// Highest load of a jackbolt while loosening, as a share, as given.
    PEAK_GIVEN: Ratio = "loosen.peak.given";
    /// The same by the yield of the jackbolt with the break-out torque.
    PEAK_OF_YIELD: Ratio = "loosen.peak.yield";
    /// The same by the wrench.
    PEAK_OF_TOOL: Ratio = "loosen.peak.tool";
    /// The same by the socket.
    PEAK_OF_SOCKET: Ratio = "loosen.peak.socket";
    /// The least of these.
    PEAK: Ratio = "loosen.peak";
    /// Angle of a release round, as printed.
    RELEASE_ROUND_ANGLE: Angle = "loosen.release.#.angle";
    /// Length of the wrench that loosens, from the square to the hand.
    LOOSENING_LENGTH: Length = "loosen.wrench_length";
    /// How far the hand on that wrench travels in a release round.
    RELEASE_ROUND_TRAVEL: Length = "loosen.release.#.travel";
    /// Highest load of a jackbolt in a release round, as a share of the installed load.
    RELEASE_ROUND_PEAK: Ratio = "loosen.release.#.peak";
    /// Load of the stud after a release round, likely, as a share of the installed load.
    RELEASE_ROUND_LEFT: Ratio = "loosen.release.#.left";
    /// Load of the last jackbolt when all others are run loose, high end, as a share.
    ALL_BUT_ONE: Ratio = "loosen.release.all_but_one";
    /// Torque that brings an installed jackbolt to its limit with torsion.
    JACKBOLT_LIMIT_TORQUE: Torque = "loosen.jackbolt_limit.torque";
    /// Torque of the highest load of a jackbolt while loosening.
    PEAK_TORQUE: Torque = "loosen.bound.peak";
}
