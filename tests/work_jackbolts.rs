//! What is done to studs with multi-jackbolt tensioners, on the example of tie rods and anchors: by hand, with a driver,
//! in release, at a re-check.
//!
//! Torques are worked by hand: the full value of the tie rods is 470 N·m. A stud M125 × 6 has a stress area of
//! π/4 · (119.371 mm)² = 11 191 mm²; 250 MPa on it are 2 798 kN, 174.9 kN on each of 16 jackbolts. One M24 needs
//! 174.9 kN · (3 mm/2π + 0.577 · 22.051 mm · 0.12 + 0.12 · 16.8 mm/3) = 468 N·m, on a wrench with steps of 5 N·m 470.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

#[path = "work_jackbolts/driver.rs"]
mod driver;
#[path = "work_jackbolts/exhibits.rs"]
mod exhibits;
#[path = "work_jackbolts/hand.rs"]
mod hand;
#[path = "work_jackbolts/release.rs"]
mod release;
#[path = "work/tensioned.rs"]
mod tensioned;

use studbook::job;
use studbook::methods::jackbolt::JackboltPlan;
use studbook::methods::{self, Case, calculate};
use studbook::report::Sources;
use studbook::resolve;
use studbook::units::Units;
use studbook::work::{Limit, Set, Setting, Step, Task, Value, Work};

const RODS: &str = "PR-120-TR-01";
const ANCHORS: &str = "PR-120-AN-01";

/// Hands the case of a joint to a test.
fn with_case<T>(text: &str, tag: &str, then: impl FnOnce(&Case<'_>) -> T) -> T {
    let mut sources = Sources::default();
    let (job, findings) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("{findings:?}"));
    let (joints, findings) = resolve::resolve(&job);
    assert!(findings.is_empty(), "{findings:?}");
    let calculation = calculate(&joints);
    let index = joints.iter().position(|joint| joint.tag == tag);
    let index = index.unwrap_or_else(|| panic!("no joint {tag}"));
    let group = calculation.of(index).expect("every joint is in a group");
    then(&Case {
        joint: &joints[index],
        computed: &group.computed,
    })
}

fn work(text: &str, tag: &str, task: Task) -> Work {
    with_case(text, tag, |case| {
        methods::work(case, task).expect("the method has the task")
    })
}

/// The plan of rounds behind a work.
fn plan(text: &str, tag: &str) -> JackboltPlan {
    with_case(text, tag, |case| {
        let plan = case.computed.plan.jackbolts();
        plan.expect("everything is known").clone()
    })
}

fn names(work: &Work) -> Vec<&str> {
    work.settings().map(|(_, it)| it.name.as_str()).collect()
}

fn setting<'a>(work: &'a Work, name: &str) -> (&'a Step, &'a Setting) {
    let mut settings = work.settings();
    let found = settings.find(|(_, setting)| setting.name == name);
    found.unwrap_or_else(|| panic!("no {name}"))
}

fn step<'a>(work: &'a Work, id: &str) -> &'a Step {
    work.step(id).unwrap_or_else(|| panic!("no {id}"))
}

fn value<'a>(step: &'a Step, name: &str) -> &'a Value {
    let mut values = step.values.iter();
    let found = values.find(|(known, _)| *known == name);
    &found
        .unwrap_or_else(|| panic!("{} has no {name}", step.id))
        .1
}

/// A reading as it stands on paper.
fn printed(value: &Value) -> String {
    match value {
        Value::Reading(reading) => reading.printed(&Units::metric()).joined(),
        other => panic!("{other:?} is no reading"),
    }
}

fn shown(set: &Set) -> String {
    printed(&set.value())
}

fn key<'a>(work: &'a Work, id: &str) -> &'a Set {
    let found = work.keys.iter().find(|key| key.id == id);
    &found.unwrap_or_else(|| panic!("no {id}")).set
}

/// What a point of this name accepts.
fn accepted<'a>(work: &'a Work, name: &str) -> Vec<&'a Limit> {
    let mut points = work.points();
    let found = points.find(|(_, point)| point.name.as_deref() == Some(name));
    let (_, point) = found.unwrap_or_else(|| panic!("no {name}"));
    work.accepted(point)
}

fn ids(limits: &[&Limit]) -> Vec<&'static str> {
    limits.iter().map(|limit| limit.id).collect()
}

fn readings(work: &Work) -> Vec<&'static str> {
    work.readings().map(|(step, _)| step.id).collect()
}
