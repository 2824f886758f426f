//! The ids of all results. They are the interface by which others check the program, so an id is
//! never renamed and never used again for another thing; DEVELOPERS.md lists them with their units.

use super::ledger::Id;
use crate::units::{
    Angle, Area, Compliance, Count, Duration, Energy, Force, ForcePerPressure, Length, Mass,
    Pressure, Ratio, SectionModulus, Stress, Torque,
};

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident: $quantity:ident = $path:literal;)*) => {
        $($(#[$doc])* pub const $name: Id<$quantity> = Id::new($path);)*

        /// Every id with its quantity, for the list in DEVELOPERS.md and its test.
        pub const ALL: &[(&str, &str)] = &[$(($path, stringify!($quantity)),)*];
    };
}

ids! {
    /// Number of studs.
    COUNT: Count = "stud.count";
    /// Nominal diameter.
    DIAMETER: Length = "thread.diameter";
    /// Pitch.
    PITCH: Length = "thread.pitch";
    /// Pitch diameter.
    PITCH_DIAMETER: Length = "thread.pitch_diameter";
    /// Root diameter.
    ROOT_DIAMETER: Length = "thread.root_diameter";
    /// Tensile stress area.
    TENSILE_AREA: Area = "stud.tensile_area";
    /// Root area.
    ROOT_AREA: Area = "stud.root_area";
    /// Nominal area.
    NOMINAL_AREA: Area = "stud.nominal_area";
    /// Least yield strength.
    YIELD_STRENGTH: Stress = "stud.yield_strength";
    /// Modulus of elasticity.
    MODULUS: Stress = "stud.modulus";
    /// Clamped length.
    GRIP: Length = "stud.grip";
    /// Whole length.
    LENGTH: Length = "stud.length";
    /// Height of the nut.
    NUT_HEIGHT: Length = "nut.height";
    /// Across flats of the nut.
    ACROSS_FLATS: Length = "nut.across_flats";
    /// Outer diameter of the bearing face.
    BEARING_OUTER: Length = "bearing.outer";
    /// Inner diameter of the bearing face.
    BEARING_INNER: Length = "bearing.inner";
    /// Mean diameter of the bearing face.
    BEARING_DIAMETER: Length = "bearing.diameter";
    /// Friction in the thread.
    THREAD_FRICTION: Ratio = "friction.thread";
    /// Friction under the nut.
    BEARING_FRICTION: Ratio = "friction.bearing";
    /// Nut factor as given.
    NUT_FACTOR: Ratio = "friction.nut_factor";
    /// Target stress as given.
    TARGET_STRESS: Stress = "target.stress";
    /// Target share of yield as given.
    TARGET_SHARE: Ratio = "target.share_of_yield";
    /// Torque given by others.
    TARGET_TORQUE: Torque = "target.torque";
    /// Target load of one stud.
    TARGET_LOAD: Force = "target.load";
    /// Torque for the target load, before rounding.
    TORQUE: Torque = "tighten.torque";
    /// Pressure for that torque on the first wrench, before rounding.
    PRESSURE: Pressure = "tighten.pressure";
    /// Torque that is set.
    SET_TORQUE: Torque = "tighten.set.torque";
    /// Torque that is set on a wrench with an adapter in line.
    SET_ADAPTED: Torque = "tighten.set.torque_with_adapter";
    /// Pressure that is set.
    SET_PRESSURE: Pressure = "tighten.set.pressure";
    /// Load at the setting.
    LOAD: Force = "tighten.load";
    /// Stress at the setting on the area of the target.
    STRESS: Stress = "tighten.stress";
    /// The same as a share of yield.
    SHARE_OF_YIELD: Ratio = "tighten.share_of_yield";
    /// ± limit of the load.
    SCATTER: Ratio = "tighten.scatter";
    /// Least load.
    LEAST_LOAD: Force = "tighten.load.least";
    /// Greatest load.
    GREATEST_LOAD: Force = "tighten.load.greatest";
    /// Tensile stress at the greatest load.
    GREATEST_STRESS: Stress = "tighten.stress.greatest";
    /// The same as a share of yield.
    GREATEST_SHARE: Ratio = "tighten.share_of_yield.greatest";
    /// Torque in the thread at the greatest load.
    THREAD_TORQUE: Torque = "tighten.thread_torque";
    /// Diameter that carries tension and torsion together.
    STRESS_DIAMETER: Length = "thread.stress_diameter";
    /// Area of that diameter.
    COMBINED_AREA: Area = "stud.combined_area";
    /// Section modulus against torsion.
    TORSION_MODULUS: SectionModulus = "stud.torsion_modulus";
    /// Shear stress from that torque.
    SHEAR_STRESS: Stress = "tighten.shear_stress";
    /// Combined stress at the greatest load.
    COMBINED_STRESS: Stress = "tighten.combined_stress";
    /// The same as a share of yield.
    COMBINED_SHARE: Ratio = "tighten.combined_share_of_yield";
    /// Nut factor that the torque amounts to.
    EQUIVALENT_NUT_FACTOR: Ratio = "tighten.nut_factor";
    /// Snug torque by hand.
    SNUG: Torque = "tighten.pass.0.torque";
    /// Share of a pass.
    PASS_SHARE: Ratio = "tighten.pass.#.share";
    /// Torque of a pass before rounding.
    PASS_TORQUE_EXACT: Torque = "tighten.pass.#.torque_exact";
    /// Torque that is set in a pass.
    PASS_TORQUE: Torque = "tighten.pass.#.torque";
    /// Pressure of a pass before rounding.
    PASS_PRESSURE_EXACT: Pressure = "tighten.pass.#.pressure_exact";
    /// Pressure that is set in a pass.
    PASS_PRESSURE: Pressure = "tighten.pass.#.pressure";
    /// Load after a pass on the stud that was last turned.
    PASS_LOAD: Force = "tighten.pass.#.load";
    /// Torque of wrench number # at the set pressure.
    TOOL_TORQUE: Torque = "tighten.tool.#.torque";
    /// Length of the wrench from square to grip.
    WRENCH_LENGTH: Length = "tighten.adapter.wrench_length";
    /// Length of the adapter.
    ADAPTER_LENGTH: Length = "tighten.adapter.extension";
    /// Lower calibration point: pressure.
    LOW_PRESSURE: Pressure = "tighten.calibration.#.low.pressure";
    /// Lower calibration point: torque.
    LOW_TORQUE: Torque = "tighten.calibration.#.low.torque";
    /// Upper calibration point: pressure.
    HIGH_PRESSURE: Pressure = "tighten.calibration.#.high.pressure";
    /// Upper calibration point: torque.
    HIGH_TORQUE: Torque = "tighten.calibration.#.high.torque";
    /// Thread engagement.
    ENGAGEMENT: Length = "stud.engagement";
    /// Engagement over diameter.
    ENGAGEMENT_RATIO: Ratio = "stud.engagement_ratio";
    /// Thread past the nut at each end, stud centred.
    PROTRUSION: Length = "stud.protrusion";
    /// Thread past the turned nut where the far end is fixed.
    NEAR_PROTRUSION: Length = "stud.protrusion.near";
    /// Thread past the far nut.
    FAR_PROTRUSION: Length = "stud.protrusion.far";
    /// Length over which the stud stretches.
    EFFECTIVE_LENGTH: Length = "stretch.effective_length";
    /// Stretch at the setting.
    STRETCH: Length = "stretch.length";
    /// Least stretch.
    LEAST_STRETCH: Length = "stretch.length.least";
    /// Greatest stretch.
    GREATEST_STRETCH: Length = "stretch.length.greatest";
    /// Least stretch that is accepted, as a depth gauge reads it.
    ACCEPT_STRETCH_LEAST: Length = "stretch.accept.least";
    /// Greatest stretch that is accepted.
    ACCEPT_STRETCH_MOST: Length = "stretch.accept.greatest";
    /// Share of the diameter that gives way at the far end.
    FAR_END: Ratio = "turn.far_end_share";
    /// Width of the plates that one stud can use.
    PART_DIAMETER: Length = "turn.part_diameter";
    /// Outer diameter of the clamped cone.
    CLAMP_DIAMETER: Length = "turn.clamp_diameter";
    /// Growth of the clamped cone.
    CONE: Ratio = "turn.cone";
    /// Area of the clamped parts that works with one stud.
    CLAMP_AREA: Area = "turn.clamp_area";
    /// Compliance of the stud.
    STUD_COMPLIANCE: Compliance = "turn.stud_compliance";
    /// Compliance of the clamped plates.
    PLATE_COMPLIANCE: Compliance = "turn.plate_compliance";
    /// Turn of the nut from snug to the setting, stud and plates only.
    TURN: Angle = "turn.expected";
    /// Energy stored in one stud.
    STORED_ENERGY: Energy = "stud.stored_energy";
    /// Least torque at which a nut is expected to break loose.
    BREAK_OUT_LEAST: Torque = "loosen.break_out.least";
    /// Greatest torque at which a nut is expected to break loose.
    BREAK_OUT_GREATEST: Torque = "loosen.break_out.greatest";
    /// Least break-out torque as a share of the last torque.
    BREAK_OUT_SHARE_LEAST: Ratio = "loosen.break_out.least_share";
    /// Greatest break-out torque as a share of the last torque.
    BREAK_OUT_SHARE_GREATEST: Ratio = "loosen.break_out.greatest_share";
    /// Share of yield that a stud may see with torsion.
    STRESS_LIMIT: Ratio = "loosen.stud_limit.share_of_yield";
    /// Tensile stress of the installed stud.
    INSTALLED_STRESS: Stress = "loosen.stud_limit.installed_stress";
    /// Highest torque of the tool.
    TOOL_HIGHEST: Torque = "loosen.bound.tool";
    /// Highest torque of its square.
    SQUARE_RATING: Torque = "loosen.bound.square";
    /// Highest torque of the socket.
    SOCKET_RATING: Torque = "loosen.bound.socket";
    /// Highest torque that the job allows.
    NEVER_EXCEED_GIVEN: Torque = "loosen.bound.given";
    /// Torque that brings the stud to its limit with torsion.
    STUD_LIMIT_TORQUE: Torque = "loosen.stud_limit.torque";
    /// Torque that is never exceeded.
    NEVER_EXCEED: Torque = "loosen.never_exceed.torque";
    /// Pressure that is never exceeded.
    NEVER_EXCEED_PRESSURE: Pressure = "loosen.never_exceed.pressure";
    /// Angle of the first release round.
    RELEASE_ANGLE: Angle = "loosen.round.1.angle";
    /// Angle that is printed for the first release round.
    RELEASE_SET: Angle = "loosen.round.1.set_angle";
    /// Least number of release rounds.
    RELEASE_ROUNDS: Count = "loosen.rounds.least";
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
    /// Hours for tightening with all that belongs to it, low.
    TIGHTEN_HOURS_LOW: Duration = "labour.tighten.low";
    /// The same, typical.
    TIGHTEN_HOURS: Duration = "labour.tighten.typical";
    /// The same, high.
    TIGHTEN_HOURS_HIGH: Duration = "labour.tighten.high";
    /// Hours for loosening, low.
    LOOSEN_HOURS_LOW: Duration = "labour.loosen.low";
    /// The same, typical.
    LOOSEN_HOURS: Duration = "labour.loosen.typical";
    /// The same, high.
    LOOSEN_HOURS_HIGH: Duration = "labour.loosen.high";
    /// People that the method needs.
    CREW: Count = "labour.crew";
    /// Diameter of the largest opening behind an isolation boundary.
    OPENING_DIAMETER: Length = "opening.diameter";
    /// Its area.
    OPENING_AREA: Area = "opening.area";
    /// What one unit of pressure pushes on it.
    FORCE_PER_PRESSURE: ForcePerPressure = "opening.force_per_pressure";
    /// A little pressure, as a gauge may leave unseen.
    LITTLE_PRESSURE: Pressure = "opening.little_pressure";
    /// What that little pressure pushes.
    FORCE_AT_A_LITTLE: Force = "opening.force_at_a_little";
    /// The mass that weighs as much.
    MASS_AT_A_LITTLE: Mass = "opening.mass_at_a_little";
}
