//! A joint as the calculation reads it: typed, in SI, every value with its origin.
//!
//! What was neither given nor can be known from a table or a default is [`Fact::Missing`]; it flows
//! through `calc` like a value, prints as an empty box and is found by its rule.

mod boundary;
mod fact;
mod limits;
mod mechanics;
mod own;
mod points;
mod reading;
mod steps;
mod tensioner;
mod tool;

pub use boundary::{Boundary, Energy};
pub use fact::{Fact, Lack, Level, Origin};
pub use limits::{DAY, LIMITS, Limit, limit_of, needed_engagement};
pub use mechanics::{
    Anchor, Checks, Clearance, Gasket, Loosening, Lubricant, Mechanics, Plan, Recheck, Service,
    Studs, Target, TargetValue, Tools,
};
pub use own::{Given, OwnKeys};
pub use points::CalibrationPoint;
pub(crate) use points::{NO_POINTS, points_about, torque_at};
pub use reading::{Dial, ToolReading};
pub use steps::usual_steps;
pub use tensioner::{Driver, Tensioner};
pub use tool::Tool;

pub use crate::job::Who;

use std::sync::Arc;

use crate::job::{PointRole, ReactionMember, TurnDirection};
use crate::report::Place;

/// A joint. Its mechanics stand apart, for the reason of [`crate::job::JointEntry`].
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
    pub mechanics: Box<Mechanics>,
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
    /// What that boundary holds back; none where the joint names none that the job describes.
    pub boundary: Option<Arc<Boundary>>,
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
    /// First and last jackbolt, clockwise from 1, beside which the driver leans on the reaction point.
    pub reaction_jackbolts: Option<(u32, u32)>,
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
        let own = self
            .limits
            .iter()
            .find(|limit| limit.rule == rule)
            .map(|limit| limit.value);
        own.or_else(|| limit_of(rule).map(|limit| limit.value))
            .unwrap_or(f64::INFINITY)
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

impl HoldPoint {
    /// Whether its label says that the work stops until it is signed; a witness is only called.
    pub fn is_hold(&self) -> bool {
        !self.point.starts_with(['W', 'w'])
    }
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
