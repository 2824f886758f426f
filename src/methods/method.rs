//! What each method says of itself, and what it worked out for a joint.

use std::fmt::Debug;

use crate::calc::Common;
use crate::calc::labour::Labour;
use crate::job::ToolKind;
use crate::joint::{Joint, Studs};

use crate::work::{Task, Work};

use super::computed::{Case, Computed};
use super::jackbolt::{DriverPays, JackboltPlan};
use super::rule::Rule;

/// A method of loading a joint: one row of [`super::METHODS`].
pub struct Method {
    /// As the job writes it.
    pub word: &'static str,
    /// Its name in the wording.
    pub id: &'static str,
    /// The kinds of tools that tighten with it.
    pub tools: &'static [ToolKind],
    /// Whether a joint that does not say its method has this one, by the kind of its first tool and by whether its
    /// studs carry a tensioner.
    pub is_told_by: fn(Option<ToolKind>, bool) -> bool,
    /// People that it needs (common practice, no source).
    pub crew: usize,
    /// The row of the guideline's table of scatter that holds where nobody gives the scatter.
    pub scatter: &'static str,
    /// Least and greatest break-out torque as shares of the last torque, where the job gives none.
    pub break_out: [f64; 2],
    /// Replaces defaults of the studs that do not hold with it.
    pub fit: fn(&mut Studs),
    /// Works a joint out.
    pub compute: fn(&Joint, &Common) -> Computed,
    /// What is done to a joint in a task; none for a task that it does not have.
    pub work: fn(&Case<'_>, Task) -> Option<Work>,
    /// Rules that speak of this method alone.
    pub rules: &'static [Rule],
}

/// What a method worked out for a joint, beyond what methods share. Each question here goes away once documents and
/// rules ask for the work to be done instead.
pub trait Plan: Debug + Send + Sync {
    /// The rounds of jackbolts, where everything for them is known.
    fn jackbolts(&self) -> Option<&JackboltPlan> {
        None
    }

    /// The hours of tightening jackbolts by hand alone, where a driver is planned.
    fn by_hand_labour(&self) -> Option<&Labour> {
        None
    }

    /// With the driver against by hand, stud by stud, where a driver is planned.
    fn driver_pays(&self) -> Option<&DriverPays> {
        None
    }
}
