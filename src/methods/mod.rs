//! The methods: each says of itself what the job may write, which tools serve it, how a joint is worked out and which
//! rules are its own. One line here for each.

mod common;
mod computed;
pub mod hand_torque;
pub mod hydraulic;
pub mod jackbolt;
mod method;
mod nuts;
mod readings;
pub mod rule;
pub mod steps;
mod turn_of_nut;

pub use computed::{Calculation, Case, Computed, Group};
pub use method::{Method, Plan};
/// Of a joint whose method nobody gives.
pub(crate) use nuts::BREAK_OUT as USUAL_BREAK_OUT;
pub use readings::Readings;
pub(crate) use steps::hazards::heaviest;

use crate::calc::Common;
use crate::job::ToolKind;
use crate::joint::Joint;
use crate::work::{Task, Work};
use rule::Rule;

/// All methods, in the order in which they are asked whether a tool tells them.
pub const METHODS: &[Method] = &[
    hand_torque::METHOD,
    hydraulic::METHOD,
    jackbolt::METHOD,
    turn_of_nut::METHOD,
];

/// The method of a word.
pub fn named(word: &str) -> Option<&'static Method> {
    METHODS.iter().find(|method| method.word == word)
}

/// The method of a joint that does not say it, by the kind of its first tool and by whether its studs carry a
/// tensioner.
pub(crate) fn told_by(tool: Option<ToolKind>, has_tensioner: bool) -> Option<&'static Method> {
    METHODS
        .iter()
        .find(|method| (method.is_told_by)(tool, has_tensioner))
}

/// Works out one joint, and shares what it has in `common` with others.
pub fn compute(joint: &Joint, common: &Common) -> Computed {
    match joint.mechanics.method.value().and_then(named) {
        Some(method) => (method.compute)(joint, common),
        None => hand_torque::compute_unnamed(joint, common),
    }
}

/// What is done to a joint in a task; none where its method has no such task. A joint whose method nobody gives is
/// shown as one for a hand wrench, with what is missing.
pub fn work(case: &Case<'_>, task: Task) -> Option<Work> {
    let method = case.joint.mechanics.method.value().and_then(named);
    let method = method.unwrap_or(&hand_torque::METHOD);
    (method.work)(case, task).map(Work::closed)
}

/// The tasks on a joint that this job has cards for, in the order in which the joint sees them.
pub fn tasks(joint: &Joint) -> impl Iterator<Item = Task> {
    let mechanics = &joint.mechanics;
    let is_opened = mechanics.loosening.opened.value() != Some(false);
    let is_looked_at_again = mechanics.recheck.is_some();
    Task::ALL.into_iter().filter(move |task| match task {
        Task::Loosen => is_opened,
        Task::Tighten => true,
        Task::Recheck => is_looked_at_again,
    })
}

/// What is done to a joint in each of its tasks.
pub fn works<'a>(case: &'a Case<'_>) -> impl Iterator<Item = Work> + 'a {
    tasks(case.joint).filter_map(|task| work(case, task))
}

/// Works out all joints; equal ones once.
pub fn calculate(joints: &[Joint]) -> Calculation {
    Calculation::new(joints, compute)
}

/// The methods' own rules.
pub fn rules() -> impl Iterator<Item = &'static Rule> {
    METHODS.iter().flat_map(|method| method.rules)
}
