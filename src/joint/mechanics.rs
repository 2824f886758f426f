//! What the calculation of a joint reads.

use std::sync::Arc;

use super::{Fact, OwnKeys, Tensioner, Tool};
use crate::job::{
    Class, GasketKind, Hazard, HoleMaterial, Pattern, Seat, StressArea, StudCondition, Washers,
    YieldMeasure,
};
use crate::report::Place;
use crate::standards::{Thread, TorqueFormula};
use crate::units::{
    Angle, Area, Count, Duration, Force, Length, Pressure, Quantity, Ratio, Stress, Temperature,
    Torque,
};

/// What the calculation of a joint reads.
#[derive(Clone, Debug, PartialEq)]
pub struct Mechanics {
    /// The word of the method that loads it.
    pub method: Fact<&'static str>,
    /// Studs and nuts.
    pub studs: Studs,
    /// The multi-jackbolt tensioner on each stud.
    pub tensioner: Option<Box<Tensioner>>,
    /// Lubricant.
    pub lubricant: Lubricant,
    /// The wanted load.
    pub target: Target,
    /// Passes, pattern, torque formula.
    pub plan: Plan,
    /// Tools.
    pub tools: Tools,
    /// Loosening.
    pub loosening: Loosening,
    /// Gasket.
    pub gasket: Option<Box<Gasket>>,
    /// What the joint holds back.
    pub service: Service,
    /// Criticality.
    pub class: Fact<Class>,
    /// Hazards.
    pub hazards: Vec<Hazard>,
    /// What is measured.
    pub checks: Checks,
    /// Free space.
    pub clearance: Clearance,
    /// What holds its anchors, where it has any.
    pub anchor: Option<Anchor>,
    /// The later look at it, where it has one.
    pub recheck: Option<Recheck>,
    /// Keys that only its method asks for.
    pub own: OwnKeys,
}

/// What holds an anchor.
#[derive(Clone, Debug, PartialEq)]
pub struct Anchor {
    /// Strength of the grout, with its record.
    pub grout: Fact<String>,
    /// Greatest movement of the sole plate on its dials.
    pub movement: Fact<Length>,
}

/// A later look at a loaded joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Recheck {
    /// How long after the load.
    pub after: Fact<Duration>,
    /// The state of the plant, where the job words it.
    pub state: Option<String>,
    /// Turn beyond which an engineer decides.
    pub limit: Fact<Angle>,
}

/// Studs, nuts and the faces they bear on.
#[derive(Clone, Debug, PartialEq)]
pub struct Studs {
    /// How many.
    pub count: Fact<Count>,
    /// Thread.
    pub thread: Fact<Thread>,
    /// Grade.
    pub grade: Fact<String>,
    /// Grade of the nuts.
    pub nut_grade: Fact<String>,
    /// Least yield strength at room temperature.
    pub yield_strength: Fact<Stress>,
    /// Least tensile strength.
    pub tensile_strength: Fact<Stress>,
    /// Modulus of elasticity.
    pub modulus: Fact<Stress>,
    /// Highest temperature of the material.
    pub highest_temperature: Fact<Temperature>,
    /// Nut grades that may go with it.
    pub nut_pairs: Fact<Vec<String>>,
    /// Whole length.
    pub length: Fact<Length>,
    /// Clamped length.
    pub grip: Fact<Length>,
    /// Height of the nut.
    pub nut_height: Fact<Length>,
    /// Across flats of the nut.
    pub across_flats: Fact<Length>,
    /// Outer diameter of the bearing face.
    pub bearing_outer: Fact<Length>,
    /// Inner diameter of the bearing face.
    pub bearing_inner: Fact<Length>,
    /// Mean diameter of the bearing face, where the job gives it as such.
    pub bearing_diameter: Option<Fact<Length>>,
    /// Washers.
    pub washers: Fact<Washers>,
    /// New or used.
    pub condition: Fact<StudCondition>,
    /// What they sit in.
    pub seat: Fact<Seat>,
    /// What the hole is tapped in.
    pub hole_material: Fact<HoleMaterial>,
    /// Engagement in a tapped hole.
    pub engagement: Fact<Length>,
    /// Thread past the far nut, where the stud is not centred.
    pub far_protrusion: Option<Fact<Length>>,
    /// Bolt circle.
    pub bolt_circle: Fact<Length>,
    /// Outer diameter of the flange.
    pub flange_diameter: Fact<Length>,
    /// Width of the clamped parts that one stud can use.
    pub part_diameter: Fact<Length>,
    /// Thickness of one flange.
    pub flange_thickness: Fact<Length>,
    /// The tensioner on each stud, by name.
    pub tensioner: Option<String>,
}

/// The lubricant of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Lubricant {
    /// Its name.
    pub name: Fact<String>,
    /// Friction in the thread.
    pub thread_friction: Fact<Ratio>,
    /// Friction under the nut.
    pub bearing_friction: Fact<Ratio>,
    /// Nut factor.
    pub nut_factor: Fact<Ratio>,
    /// ± limit of the load.
    pub scatter: Fact<Ratio>,
    /// Highest temperature.
    pub highest_temperature: Fact<Temperature>,
    /// Where the friction comes from.
    pub source: Fact<String>,
    /// Substances that it is said not to hold.
    pub free_of: Vec<String>,
    /// Whether it is said to be safe with oxygen.
    pub oxygen_safe: bool,
}

/// The wanted load, as it was given.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// What was given.
    pub given: Fact<TargetValue>,
    /// The area that stress is counted on.
    pub area: Fact<StressArea>,
    /// What a share of yield counts.
    pub measure: Fact<YieldMeasure>,
    /// The torque that others expect.
    pub expected_torque: Option<Fact<Torque>>,
}

/// The value of a target: exactly one of these.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TargetValue {
    /// Stress.
    Stress(Stress),
    /// Share of the yield strength.
    ShareOfYield(Ratio),
    /// Share of the tensile strength.
    ShareOfStrength(Ratio),
    /// Load of one stud.
    Load(Force),
    /// Torque given by others.
    Torque(Torque),
}

/// Passes, pattern, torque formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Shares of the final value.
    pub passes: Fact<Vec<Ratio>>,
    /// Pattern before the circular round.
    pub pattern: Fact<Pattern>,
    /// Whether a circular round at full value follows.
    pub circular_round: Fact<bool>,
    /// After how long a full-value round is repeated.
    pub repeat_after: Option<Fact<Duration>>,
    /// Torque of the snug pass.
    pub snug: Fact<Torque>,
    /// Formula of the torque.
    pub formula: Fact<TorqueFormula>,
    /// Share of the full value that a multi-spindle driver sets.
    pub driver_level: Fact<Ratio>,
    /// Torque of the brief reversal that frees the driver's sockets.
    pub reversal: Option<Fact<Torque>>,
    /// Wanted mean load of a stud with jackbolts at the end, as a share of the target.
    pub wanted_mean: Fact<Ratio>,
}

/// The tools of a joint. Those that the job names stand in their lists; where it names none, the
/// calculation chooses from the candidates, which are all tools of that kind in the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Tools {
    /// Those that turn when tightening, as named.
    pub tightening: Vec<Arc<Tool>>,
    /// Those that turn when loosening, as named.
    pub loosening: Vec<Arc<Tool>>,
    /// Pump, hoses, couplers, gauge, as named.
    pub hydraulics: Vec<Arc<Tool>>,
    /// Socket, as named.
    pub socket: Option<Arc<Tool>>,
    /// What holds the far nut, as named.
    pub back_up: Option<Arc<Tool>>,
    /// The multi-spindle driver, as named.
    pub driver: Option<Arc<Tool>>,
    /// All hand torque wrenches of the job.
    pub wrenches: Arc<[Arc<Tool>]>,
    /// All sockets of the job.
    pub sockets: Arc<[Arc<Tool>]>,
    /// All back-up spanners of the job.
    pub back_ups: Arc<[Arc<Tool>]>,
}

/// Loosening.
#[derive(Clone, Debug, PartialEq)]
pub struct Loosening {
    /// Whether the joint is opened in this job.
    pub opened: Fact<bool>,
    /// Whether release must go in steps.
    pub staged: Fact<bool>,
    /// Angle of the first round as the job gives it.
    pub first_step: Option<Fact<Angle>>,
    /// Least number of release rounds.
    pub rounds: Fact<Count>,
    /// Highest load of one jackbolt while loosening, as a share of the installed load.
    pub peak: Fact<Ratio>,
    /// Upper bound of the never-exceed torque from the job.
    pub never_exceed: Option<Fact<Torque>>,
    /// Least break-out torque as a share of the last torque.
    pub break_out_least: Fact<Ratio>,
    /// Greatest break-out torque as a share of the last torque.
    pub break_out_greatest: Fact<Ratio>,
}

/// The gasket of a joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Gasket {
    /// Its name in the job.
    pub name: String,
    /// Kind.
    pub kind: GasketKind,
    /// Inner diameter.
    pub inner: Fact<Length>,
    /// Outer diameter.
    pub outer: Fact<Length>,
    /// Thickness.
    pub thickness: Fact<Length>,
    /// Whether it has been used, and the approval of that.
    pub used: bool,
    /// Approval of a used gasket.
    pub approval: Option<String>,
    /// Where the used gasket is stated.
    pub place: Place,
}

impl Gasket {
    /// Soft gaskets need a gentler first pass (PCC-1, from memory).
    pub const fn is_soft(&self) -> bool {
        matches!(
            self.kind,
            GasketKind::RubberSheet
                | GasketKind::PtfeSheet
                | GasketKind::GraphiteSheet
                | GasketKind::FibreSheet
        )
    }
}

/// What a joint holds back.
#[derive(Clone, Debug, PartialEq)]
pub struct Service {
    /// Substance.
    pub fluid: Fact<String>,
    /// Pressure.
    pub pressure: Fact<Pressure>,
    /// Temperature.
    pub temperature: Fact<Temperature>,
    /// Area of the opening behind it, from its isolation.
    pub opening: Fact<Area>,
}

impl Service {
    /// Whether something can be held back; a joint of which nothing is said may hold it.
    pub fn can_hold(&self) -> bool {
        let is_empty = self
            .pressure
            .value()
            .is_some_and(|pressure| pressure.si() <= 0.0);
        !is_empty || self.fluid.get().is_some()
    }
}

/// What is measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Checks {
    /// Gap readings.
    pub gaps: Fact<bool>,
    /// Greatest spread of gaps.
    pub gap_spread: Fact<Length>,
    /// Studs whose stretch is read.
    pub stretch: Vec<u32>,
    /// Where the stretch check is asked for.
    pub stretch_place: Option<Place>,
    /// Whether a zero reading is taken.
    pub zero_reading: Fact<bool>,
    /// Offset of the centrelines.
    pub centreline: Fact<Length>,
    /// Difference of the gaps.
    pub parallelism: Fact<Length>,
    /// Offset of the holes.
    pub holes: Fact<Length>,
    /// Free gap.
    pub gap: Fact<Length>,
    /// Least thread past the nut.
    pub least_protrusion: Fact<Length>,
    /// Greatest thread past the nut.
    pub greatest_protrusion: Fact<Length>,
}

/// Free space around the nuts.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearance {
    /// Diameter free for a socket.
    pub socket: Fact<Length>,
    /// Radius free for a tool.
    pub radius: Fact<Length>,
    /// Where it is narrowest.
    pub at: Option<String>,
}
