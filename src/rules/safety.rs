//! Safety and handling.

use crate::job::ToolKind;
use crate::joint::Tool;
use crate::methods;
use crate::report::{Finding, Severity};
use crate::units::{Mass, Quantity};
use crate::yaml::entries;

use crate::methods::rule::{Check, JointSubject, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "S01",
        severity: Severity::Error,
        check: Check::Joint(one_person_lift),
    },
    Rule {
        id: "S02",
        severity: Severity::Error,
        check: Check::Joint(two_person_lift),
    },
];

fn heavier<'a>(
    subject: &'a JointSubject<'_>,
    limit: f64,
) -> impl Iterator<Item = (&'a Tool, Mass)> {
    // A driver that hangs on a lift of its own is no load for hands.
    let hangs = |tool: &Tool| {
        let driver = tool.driver.as_ref();
        driver.is_some_and(|driver| driver.lift.get().is_some())
    };
    subject.computed.chosen.all().filter_map(move |tool| {
        let mass = tool.mass.value()?;
        (mass.si() > limit && !hangs(tool)).then_some((tool.as_ref(), mass))
    })
}

/// How many may lift: the crew, or as many as the method needs where no crew is named.
fn hands(subject: &JointSubject<'_>) -> usize {
    let work = &subject.joint.work;
    let method = subject.mechanics().method.value().and_then(methods::named);
    match (work.crew.get(), method) {
        (None, Some(method)) => method.crew,
        _ => work.people.len(),
    }
}

/// Gear on the tool list takes what people cannot.
fn has_lifting_gear(subject: &JointSubject<'_>) -> bool {
    let tools = entries(subject.whole.job.tools.as_ref());
    tools
        .filter_map(|(_, tool)| tool.get()?.kind.get())
        .any(|kind| *kind == ToolKind::LiftingGear)
}

/// One person alone lifts a tool that is too heavy for one.
fn one_person_lift(subject: &JointSubject<'_>) -> Vec<Finding> {
    if hands(subject) >= 2 || has_lifting_gear(subject) {
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

/// Too heavy for two, who lift two thirds of what both may lift alone (HSE L23, from memory), or for
/// any number of people without gear.
fn two_person_lift(subject: &JointSubject<'_>) -> Vec<Finding> {
    if has_lifting_gear(subject) {
        return Vec::new();
    }
    let most = subject.limit("S02");
    let shared = 2.0 * subject.limit("S01") * 2.0 / 3.0;
    let limit = if hands(subject) == 2 {
        most.min(shared)
    } else {
        most
    };
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
