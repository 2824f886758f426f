//! Safety and handling.

use crate::joint::Tool;
use crate::report::{Finding, Severity};
use crate::units::{Mass, Quantity};

use super::subject::JointSubject;
use super::{Check, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule { id: "S01", severity: Severity::Error, check: Check::Joint(one_person_lift) },
    Rule { id: "S02", severity: Severity::Error, check: Check::Joint(two_person_lift) },
];

fn heavier<'a>(
    subject: &'a JointSubject<'_>,
    limit: f64,
) -> impl Iterator<Item = (&'a Tool, Mass)> {
    subject.computed.chosen.all().filter_map(move |tool| {
        let mass = tool.mass.value()?;
        (mass.si() > limit).then_some((tool.as_ref(), mass))
    })
}

/// One person alone lifts a tool that is too heavy for one.
fn one_person_lift(subject: &JointSubject<'_>) -> Vec<Finding> {
    let work = &subject.joint.work;
    if work.crew.get().is_none() || work.people.len() >= 2 {
        return Vec::new();
    }
    let limit = subject.limit("S01");
    heavier(subject, limit)
        .map(|(tool, mass)| {
            subject
                .finding("S01", Severity::Error, tool.mass.place())
                .with("item", tool.name.clone())
                .with("mass", subject.print(mass))
                .with("limit", subject.print(Mass::from_si(limit)))
        })
        .collect()
}

/// Too heavy for two.
fn two_person_lift(subject: &JointSubject<'_>) -> Vec<Finding> {
    let limit = subject.limit("S02");
    heavier(subject, limit)
        .map(|(tool, mass)| {
            subject
                .finding("S02", Severity::Error, tool.mass.place())
                .with("item", tool.name.clone())
                .with("mass", subject.print(mass))
                .with("limit", subject.print(Mass::from_si(limit)))
        })
        .collect()
}
