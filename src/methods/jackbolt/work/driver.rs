//! The bulk of the load by a multi-spindle driver: its levels and positions, sockets freed, lift-off, the try.

use std::sync::Arc;

use crate::calc::whole;
use crate::joint::{Dial, Driver, Tool, Who};
use crate::units::{Angle, Dimension, Quantity, Torque};
use crate::work::{
    Bound, HazardKind, Limit, Phase, Priority, Role, Section, Sequence, Set, Step, Value, Work,
};

use super::super::ids;
use super::super::names::{Named, named};
use super::check::TRIED;
use super::facts::{Facts, lack, numbers};
use super::rounds::expected;

/// Names of the positions of a driver.
const POSITIONS: [&str; 4] = ["X", "Y", "Z", "W"];
/// A jackbolt that moves so far in the try was let back by the reversal (common practice, no source).
const MOVED: Angle = Angle::degrees(5.0);
/// What the driver meets while it runs.
const RUNNING: &[HazardKind] = &[
    HazardKind::Driver,
    HazardKind::StudInLine,
    HazardKind::Noise,
    HazardKind::Vibration,
];

/// All levels on all studs, sockets freed before each lift, then the try with the wrench.
pub(super) fn drive(work: &mut Work, facts: &Facts<'_>, (tool, driver): (&Arc<Tool>, &Driver)) {
    work.phase(Phase::Load);
    work.act("sockets")
        .meets(RUNNING)
        .priority(Priority::PackOnly);
    let Some(plan) = facts.plan else { return };
    let mut levels = 0;
    for level in named(plan)
        .into_iter()
        .filter(|it| !it.positions.is_empty())
    {
        let last = level.last;
        let set = facts.on_driver(Some(Torque::from_si(last.torque)), Dial::set);
        step_of_level(work, level, set)
            .share(last.share)
            .expect(expected(last))
            .meets(RUNNING)
            .by(Role::ToolOperator);
        levels += 1;
    }
    reverse(work, facts, driver, format!("D{}", levels + 1));
    off(work, driver);
    let name = format!("D{}", levels + 2);
    let tried = tried(plan.count);
    let set = Set::by(facts.readings().low(ids::DRIVER_CHECK));
    work.set("try", name, set.clone(), Sequence::AsWorded)
        .with("order", numbers(&tried))
        .with("count", Value::Count(tried.len()))
        .with("moved", Value::of(MOVED))
        .accept
        .push(moved());
    work.read("tried", Section::Rounds)
        .with("set", set.value())
        .dimension(Dimension::Angle)
        .accept
        .push(moved());
    work.tick("driver_off")
        .with("tool", Value::Text(tool.name.clone()))
        .by(Role::ToolOperator)
        .priority(crate::work::OPTIONAL);
}

fn moved() -> Limit {
    Limit::new("moved", Bound::Below(Value::of(MOVED)))
}

/// All spindles at once, or the positions one after the other, as often as the plan says.
fn step_of_level<'w>(work: &'w mut Work, level: Named<'_>, set: Set) -> &'w mut Step {
    if level.positions.iter().all(|position| *position == 0) {
        return work.set("drive", level.name, set, Sequence::AsWorded);
    }
    let path = level
        .positions
        .into_iter()
        .filter_map(|position| POSITIONS.get(position));
    let path = path
        .map(|position| Value::Text((*position).to_owned()))
        .collect();
    work.set("drive_sets", level.name, set, Sequence::AsWorded)
        .with("positions", Value::List(path))
}

/// The brief reversal that frees the sockets: never above a third of the bulk, and by hand where the driver's torque in
/// reverse is not known or too high.
fn reverse(work: &mut Work, facts: &Facts<'_>, driver: &Driver, name: String) {
    let asked = facts.case.joint.mechanics.plan.reversal.as_ref();
    let asked = asked
        .and_then(|it| it.value())
        .or(driver.reverse_torque.value());
    let limit = facts.get(ids::REVERSAL_LIMIT);
    let within = asked
        .zip(limit)
        .is_some_and(|(asked, limit)| asked.si() <= limit.si() * (1.0 + 1e-9));
    let step = if within {
        let most = Value::reading(facts.readings().reversal());
        work.set(
            "reverse",
            name,
            facts.on_driver(asked, Dial::never),
            Sequence::AsWorded,
        )
        .accept("reversal", Bound::AtMost(most))
    } else {
        work.set(
            "free_sockets",
            name,
            Set::Word("by_hand"),
            Sequence::AsWorded,
        )
    };
    step.meets(&[HazardKind::Driver]).by(Role::ToolOperator);
}

/// Lifted off, the turned jackbolts are counted.
fn off(work: &mut Work, driver: &Driver) {
    let count = match driver.spindles.value() {
        Some(count) => Value::Count(whole(count.si())),
        None => Value::Missing(lack("tools.*.driver.spindles", Who::ToolStore)),
    };
    work.read("spindles", Section::Rounds)
        .with("count", count.clone())
        .accept("spindles", Bound::Is(count))
        .meets(&[HazardKind::HungLoad]);
}

/// Jackbolts spread round the circle, from 1.
fn tried(count: usize) -> Vec<usize> {
    let tried = TRIED.min(count);
    (0..tried).map(|index| index * count / tried + 1).collect()
}
