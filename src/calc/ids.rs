//! The ids of all results. They are the interface by which others check the program, so an id is
//! never renamed and never used again for another thing; `tests/result_ids.csv` lists them with their quantities.

use super::ledger::Id;
use crate::units::{
    Angle, Area, Compliance, Count, Duration, Energy, Force, ForcePerPressure, Length, Mass,
    Pressure, Ratio, SectionModulus, Stress, Torque,
};

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident: $quantity:ident = $path:literal;)*) => {
        $($(#[$doc])* pub const $name: Id<$quantity> = Id::new($path);)*

    };
}
pub(crate) use ids;

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
    /// Target share of the tensile strength as given.
    TARGET_STRENGTH_SHARE: Ratio = "target.share_of_strength";
    /// Least tensile strength, where the target is a share of it.
    TENSILE_STRENGTH: Stress = "stud.tensile_strength";
    /// Torque given by others.
    TARGET_TORQUE: Torque = "target.torque";
    /// Target load of one stud.
    TARGET_LOAD: Force = "target.load";
    /// Torque for the target load, before rounding.
    TORQUE: Torque = "tighten.torque";
    /// Pressure for that torque on the first wrench, before rounding.
    PRESSURE: Pressure = "tighten.pressure";
    /// Torque that the nut gets at the setting.
    SET_TORQUE: Torque = "tighten.set.torque";
    /// Torque that a wrench with an adapter in line shows at the setting.
    SET_ADAPTED: Torque = "tighten.set.torque_with_adapter";
    /// Pressure that is set.
    SET_PRESSURE: Pressure = "tighten.set.pressure";
    /// Turn from snug that is set.
    SET_TURN: Angle = "tighten.set.turn";
    /// Least turn that is accepted.
    LEAST_TURN: Angle = "tighten.set.turn.least";
    /// Greatest turn that is accepted.
    GREATEST_TURN: Angle = "tighten.set.turn.greatest";
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
    /// Torque that the nut gets in a pass.
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
    /// Torque that is never exceeded, at the last step of the tool below it.
    NEVER_EXCEED: Torque = "loosen.never_exceed.torque";
    /// Pressure that is never exceeded.
    NEVER_EXCEED_PRESSURE: Pressure = "loosen.never_exceed.pressure";
    /// Angle of the first release round.
    RELEASE_ANGLE: Angle = "loosen.round.1.angle";
    /// Angle that is printed for the first release round.
    RELEASE_SET: Angle = "loosen.round.1.set_angle";
    /// Least number of release rounds.
    RELEASE_ROUNDS: Count = "loosen.rounds.least";
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
    /// Hours for the later look at a loaded joint, low.
    RECHECK_HOURS_LOW: Duration = "labour.recheck.low";
    /// The same, typical.
    RECHECK_HOURS: Duration = "labour.recheck.typical";
    /// The same, high.
    RECHECK_HOURS_HIGH: Duration = "labour.recheck.high";
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
