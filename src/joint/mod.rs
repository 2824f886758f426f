//! A joint as the calculation reads it: typed, in SI, every value with its origin.
//!
//! What was neither given nor can be known from a table or a default is [`Fact::Missing`]; it flows
//! through `calc` like a value, prints as an empty box and is found by its rule.

mod limits;

pub use limits::{LIMITS, Limit, limit_of, needed_engagement};

use std::sync::Arc;

use crate::job::{
    Class, GasketKind, Hazard, HoleMaterial, Method, Pattern, PointRole, ReactionMember, Seat,
    StressArea, StudCondition, ToolKind, TurnDirection, Washers, YieldMeasure,
};
use crate::report::Place;
use crate::standards::{Thread, TorqueFormula};
use crate::units::{
    Angle, Area, Count, Duration, Force, Length, Mass, Pressure, Ratio, Stress, Temperature,
    Torque, Unit,
};

/// Which part of the job said it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// The pack or a shared list (lubricants, tools...).
    Shared,
    /// The family.
    Family,
    /// The joint itself.
    Joint,
}

/// Where a value comes from.
#[derive(Clone, Debug)]
pub enum Origin {
    /// The job says so.
    Job {
        /// Where.
        place: Place,
        /// At which level.
        level: Level,
    },
    /// A row of a published table.
    Table {
        /// Document and row.
        row: String,
        /// Whether a published source was read; otherwise "not confirmed" is printed.
        confirmed: bool,
    },
    /// Our default; printed as one.
    Default {
        /// The key that replaces it.
        key: &'static str,
    },
    /// Worked out from other values of the joint.
    Computed,
}

/// Two origins are alike when a reader would be told the same kind of thing; the line of the job
/// does not count, so that joints which say the same in different lines share a calculation.
impl PartialEq for Origin {
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Job { level: a, .. }, Self::Job { level: b, .. }) => a == b,
            (
                Self::Table { row: a, confirmed: x },
                Self::Table { row: b, confirmed: y },
            ) => a == b && x == y,
            (Self::Default { key: a }, Self::Default { key: b }) => a == b,
            (Self::Computed, Self::Computed) => true,
            _ => false,
        }
    }
}

/// Who must give a fact that is missing; printed beside its empty box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Who {
    /// The planner of the work.
    Planner,
    /// The engineer who answers for the numbers.
    Engineer,
    /// The tool store.
    ToolStore,
    /// The operator of the plant.
    Operator,
    /// The crew lead.
    CrewLead,
}

impl Who {
    /// The key of the word that is printed.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Planner => "planner",
            Self::Engineer => "engineer",
            Self::ToolStore => "tool_store",
            Self::Operator => "operator",
            Self::CrewLead => "crew_lead",
        }
    }
}

/// A value with its origin, or the knowledge that it is missing.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact<T> {
    /// Known.
    Known {
        /// The value.
        value: T,
        /// Where it comes from.
        origin: Origin,
    },
    /// Missing.
    Missing {
        /// The key of the job that would give it.
        key: &'static str,
        /// Who must give it.
        who: Who,
    },
}

impl<T> Fact<T> {
    /// A value from the job.
    pub fn job(value: T, place: Place, level: Level) -> Self {
        Self::Known { value, origin: Origin::Job { place, level } }
    }

    /// Our default.
    pub fn default(value: T, key: &'static str) -> Self {
        Self::Known { value, origin: Origin::Default { key } }
    }

    /// Worked out from others.
    pub fn computed(value: T) -> Self {
        Self::Known { value, origin: Origin::Computed }
    }

    /// Missing.
    pub const fn missing(key: &'static str, who: Who) -> Self {
        Self::Missing { key, who }
    }

    /// The value, if it is known.
    pub fn get(&self) -> Option<&T> {
        match self {
            Self::Known { value, .. } => Some(value),
            Self::Missing { .. } => None,
        }
    }

    /// Its origin, if it is known.
    pub fn origin(&self) -> Option<&Origin> {
        match self {
            Self::Known { origin, .. } => Some(origin),
            Self::Missing { .. } => None,
        }
    }

    /// The place in the job, if the job says it.
    pub fn place(&self) -> Option<Place> {
        match self.origin() {
            Some(Origin::Job { place, .. }) => Some(*place),
            _ => None,
        }
    }

    /// Whether it is our default.
    pub fn is_default(&self) -> bool {
        matches!(self.origin(), Some(Origin::Default { .. }))
    }

    /// This fact, or `other` where this one is missing.
    #[must_use]
    pub fn or(self, other: impl FnOnce() -> Self) -> Self {
        match self {
            Self::Known { .. } => self,
            Self::Missing { .. } => other(),
        }
    }

    /// The same with the value turned into another; the origin stays.
    pub fn map<U>(self, turn: impl FnOnce(T) -> U) -> Fact<U> {
        match self {
            Self::Known { value, origin } => Fact::Known { value: turn(value), origin },
            Self::Missing { key, who } => Fact::Missing { key, who },
        }
    }
}

impl<T: Copy> Fact<T> {
    /// The value, if it is known.
    pub fn value(&self) -> Option<T> {
        self.get().copied()
    }
}

/// A joint.
#[derive(Clone, Debug)]
pub struct Joint {
    /// Its tag.
    pub tag: String,
    /// Where the tag stands.
    pub place: Place,
    /// The family, if it has one.
    pub family: Option<String>,
    /// What names it on paper.
    pub identity: Identity,
    /// What surrounds the work on it.
    pub work: Work,
    /// What the calculation reads; joints with equal mechanics share one calculation.
    pub mechanics: Mechanics,
}

/// What names a joint on paper.
#[derive(Clone, Debug)]
pub struct Identity {
    /// Tag of the equipment.
    pub equipment: Fact<String>,
    /// What the equipment is.
    pub equipment_name: Option<String>,
    /// Unit or area.
    pub unit: Fact<String>,
    /// Where it is, in words.
    pub location: Fact<String>,
    /// Drawing and revision.
    pub drawing: Option<(String, Option<String>)>,
    /// Picture of the joint: a path relative to the job.
    pub photo: Option<(String, Place)>,
    /// The first line of the danger panel, where the job words it.
    pub danger: Option<String>,
}

/// What surrounds the work on a joint.
#[derive(Clone, Debug)]
pub struct Work {
    /// Isolation boundary by number.
    pub isolation: Fact<String>,
    /// Crew by name.
    pub crew: Fact<String>,
    /// People in the crew.
    pub people: Vec<String>,
    /// Planned day.
    pub start: Option<crate::units::Date>,
    /// Last day on which the tools of this joint are needed.
    pub last_day: Option<crate::units::Date>,
    /// Where fastener 1 is, in words.
    pub first: Fact<String>,
    /// Which way the numbers run.
    pub direction: Fact<TurnDirection>,
    /// From where the picture is seen.
    pub seen_from: Option<String>,
    /// What stands in the way: name and fastener.
    pub obstacles: Vec<(String, u32)>,
    /// Reaction point in words.
    pub reaction: Fact<String>,
    /// Kind of the reaction member.
    pub reaction_member: Fact<ReactionMember>,
    /// Hold and witness points beyond those of the class.
    pub hold_points: Vec<HoldPoint>,
    /// Limits of the rules, replaced with a reason: rule, value as written, reason, place.
    pub limits: Vec<LimitOverride>,
    /// Reason for an unusual target.
    pub target_reason: Option<String>,
}

impl Work {
    /// The threshold of a rule in SI: the job's own, else our default.
    pub fn limit(&self, rule: &'static str) -> f64 {
        let own = self.limits.iter().find(|limit| limit.rule == rule).map(|limit| limit.value);
        own.or_else(|| limit_of(rule).map(|limit| limit.value)).unwrap_or(f64::INFINITY)
    }
}

/// A hold or witness point of the job.
#[derive(Clone, Debug, PartialEq)]
pub struct HoldPoint {
    /// Its label.
    pub point: String,
    /// What is shown.
    pub text: String,
    /// The value that makes it good.
    pub accept: Option<String>,
    /// Who signs.
    pub by: Option<PointRole>,
    /// Where it stands.
    pub place: Place,
}

/// A default of a rule, replaced.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitOverride {
    /// The rule.
    pub rule: String,
    /// Its value in SI.
    pub value: f64,
    /// As printed.
    pub printed: String,
    /// Why.
    pub reason: String,
    /// Where it stands.
    pub place: Place,
}

/// What the calculation of a joint reads.
#[derive(Clone, Debug, PartialEq)]
pub struct Mechanics {
    /// How it is loaded.
    pub method: Fact<Method>,
    /// Studs and nuts.
    pub studs: Studs,
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
    pub gasket: Option<Gasket>,
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
    /// All hand torque wrenches of the job.
    pub wrenches: Arc<[Arc<Tool>]>,
    /// All sockets of the job.
    pub sockets: Arc<[Arc<Tool>]>,
    /// All back-up spanners of the job.
    pub back_ups: Arc<[Arc<Tool>]>,
}

/// One tool, resolved.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// Name painted on it.
    pub name: String,
    /// Where it is described.
    pub place: Place,
    /// Kind.
    pub kind: ToolKind,
    /// Serial number.
    pub serial: Fact<String>,
    /// Lowest usable torque: the lowest marked value, else a fifth of the top.
    pub lowest: Fact<Torque>,
    /// Highest torque.
    pub highest: Fact<Torque>,
    /// Unit of the scale.
    pub scale: &'static Unit,
    /// Step in torque.
    pub torque_step: Option<Torque>,
    /// Step in pressure.
    pub pressure_step: Option<Pressure>,
    /// Male square.
    pub square: Fact<Length>,
    /// Highest torque through the square.
    pub square_rating: Fact<Torque>,
    /// Mass.
    pub mass: Fact<Mass>,
    /// Highest pressure.
    pub rating: Fact<Pressure>,
    /// Top of the gauge.
    pub gauge_top: Fact<Pressure>,
    /// Across flats.
    pub across_flats: Fact<Length>,
    /// Outer diameter.
    pub outer_diameter: Fact<Length>,
    /// Highest torque of a socket.
    pub torque_rating: Fact<Torque>,
    /// Radius that it needs.
    pub radius: Fact<Length>,
    /// Certificate.
    pub certificate: Fact<String>,
    /// Last day of validity.
    pub due: Fact<crate::units::Date>,
    /// Calibration points, rising.
    pub points: Vec<(Pressure, Torque)>,
    /// Where the points stand.
    pub points_place: Option<Place>,
    /// Adapter: wrench length and extension.
    pub adapter: Option<(Length, Length)>,
    /// Its own checks.
    pub checks: Vec<String>,
    /// Its spare.
    pub spare: Option<String>,
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
