//! Before load comes on: tensioners made up, lines drawn, the numbers beside the picture.

use crate::joint::{Dial, Tensioner, Who};
use crate::methods::steps::{self, name_and_serial};
use crate::units::{Dimension, Length, Quantity, Torque, Units};
use crate::work::{Bound, KeyValue, OPTIONAL, Phase, Priority, Section, Set, Task, Value, Work};

use super::super::{Round, RoundKind, ids};
use super::facts::{Facts, lack};

/// A tip stands no deeper inside its body than this (common practice, no source).
const TIP_INSIDE: Length = Length::mm(1.0);

/// Seats, washers, tips, bodies and stud ends.
pub(super) fn make_up(work: &mut Work, facts: &Facts<'_>) {
    work.act("washer")
        .accept("flat", Bound::Words)
        .priority(Priority::PackOnly);
    work.tick("tips").accept(
        "tip_inside",
        Bound::Between(Value::of(Length::mm(0.0)), Value::of(TIP_INSIDE)),
    );
    body(work, facts);
    let above = match facts.get(ids::ABOVE_BODY_LIMIT) {
        Some(most) => Value::of(most),
        None => Value::Missing(lack("tensioners.*.stud_above_body", Who::ToolStore)),
    };
    work.read("stud_end", Section::AsFound)
        .dimension(Dimension::Length)
        .accept(
            "above_body",
            Bound::Between(Value::of(Length::mm(0.0)), above),
        );
    work.read("set_number", Section::Materials);
}

/// The body is run down and back to its gap; where nobody gives that, it is written.
fn body(work: &mut Work, facts: &Facts<'_>) {
    match facts.get(ids::START_GAP) {
        Some(gap) => {
            work.tick("body")
                .with("gap", Value::of(gap))
                .priority(OPTIONAL);
        }
        None => {
            let gap = Value::Missing(lack("tensioners.*.start_gap", Who::ToolStore));
            work.tick("body_down").priority(OPTIONAL);
            work.read("start_gap", Section::AsFound)
                .dimension(Dimension::Length)
                .accept("start_gap", Bound::Is(gap));
        }
    }
}

/// Lines by which turns are read, and the tools that show load.
pub(super) fn tools(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Prepare);
    if let Some(tool) = facts.case.computed.chosen.turning.first() {
        work.act("trial")
            .with("tool", Value::Text(tool.name.clone()))
            .accept("trial", Bound::Words)
            .priority(Priority::PackOnly);
    }
    work.tick("lines");
    let driver = facts.driver().filter(|_| work.task == Task::Tighten);
    let driver = driver.map(|(tool, _)| tool);
    steps::tools_used(
        work,
        facts.case.computed.chosen.turning.iter().chain(driver),
    );
}

/// The one number of the card, the seat, the driver.
pub(super) fn keys(work: &mut Work, facts: &Facts<'_>) {
    work.keys.push(KeyValue {
        id: "full",
        set: Set::by(facts.readings().full()),
        values: vec![("tool", wrench(facts))],
    });
    if work.task == Task::Recheck {
        return;
    }
    let is_seat = |round: &&Round| round.kind == RoundKind::Seat;
    if let Some(seat) = facts.plan.and_then(|plan| plan.rounds.iter().find(is_seat)) {
        let values = vec![("share", Value::Percent(seat.share))];
        work.keys.push(KeyValue {
            id: "seat",
            set: facts.by_hand(seat),
            values,
        });
    }
    work.keys.extend(driver_key(facts));
}

fn driver_key(facts: &Facts<'_>) -> Option<KeyValue> {
    let (driver, _) = facts.driver()?;
    let full = facts.get(ids::SET_TORQUE);
    let share = facts.get(ids::DRIVER_TORQUE).zip(full);
    let share = share.map(|(torque, full)| Value::Percent(torque.si() / full.si()));
    let most = facts.get(ids::DRIVER_LEVEL_LIMIT).zip(full);
    let most = most.map(|(level, full)| Torque::from_si(level.si() * full.si()));
    let unknown = Value::Missing(lack("tighten.driver_level", Who::Engineer));
    Some(KeyValue {
        id: "driver",
        set: Set::by(facts.readings().driver_level()),
        values: vec![
            ("tool", Value::Text(driver.name.clone())),
            ("share", share.unwrap_or(unknown)),
            ("limit", facts.on_driver(most, Dial::never).value()),
        ],
    })
}

/// Tensioners, studs, wrench, socket, lubricant and driver.
pub(super) fn facts(work: &mut Work, facts: &Facts<'_>) {
    let tensioner = facts.tensioner;
    let thread = tensioner.and_then(|it| it.thread.get());
    let counts = [facts.studs(), facts.jackbolts()];
    let sets = match thread.filter(|_| counts.iter().all(|count| *count > 0)) {
        Some(thread) => Value::Text(format!(
            "{} × {} × {}",
            counts[0], counts[1], thread.designation
        )),
        None => Value::Missing(lack("studs.tensioner", Who::ToolStore)),
    };
    work.facts.push(("tensioners", sets));
    let studs = facts.case.joint.mechanics.studs.thread.get();
    work.facts.push((
        "studs",
        match studs {
            Some(thread) => Value::Text(format!("{} × {}", counts[0], thread.designation)),
            None => Value::Missing(lack("studs.thread", Who::Planner)),
        },
    ));
    let chosen = &facts.case.computed.chosen;
    let (wrenches, driver) = match work.task {
        Task::Loosen => (&chosen.loosening, None),
        Task::Recheck => (&chosen.turning, None),
        Task::Tighten => (&chosen.turning, facts.driver()),
    };
    let names: Vec<Value> = wrenches.iter().map(|tool| name_and_serial(tool)).collect();
    work.facts.push(match names.len() {
        0 => (
            "wrench",
            Value::Missing(lack("tighten.with", Who::ToolStore)),
        ),
        1 => ("wrench", Value::List(names)),
        _ => ("wrenches", Value::List(names)),
    });
    work.facts.push(socket(facts, tensioner));
    if work.task == Task::Tighten {
        let unknown = Value::Missing(lack("tensioners.*.lubricant", Who::Engineer));
        work.facts.push((
            "lubricant",
            tensioner.map_or(unknown, |it| Value::text(&it.lubricant)),
        ));
    }
    work.facts
        .extend(driver.map(|(tool, _)| ("driver", name_and_serial(tool))));
}

/// The socket by the jackbolt's own system, whatever unit leads on the page.
fn socket(facts: &Facts<'_>, tensioner: Option<&Tensioner>) -> (&'static str, Value) {
    let flats = tensioner.and_then(|it| it.across_flats.value());
    let Some(flats) = flats else {
        let key = "tensioners.*.across_flats";
        return ("socket", Value::Missing(lack(key, Who::ToolStore)));
    };
    let thread = tensioner.and_then(|it| it.thread.get());
    let is_metric = thread.is_none_or(|thread| thread.series.is_metric());
    let units = if is_metric {
        Units::metric()
    } else {
        Units::inch()
    };
    let across = units.print_size(flats).joined();
    match &facts.case.computed.chosen.socket {
        Some(socket) => ("socket", Value::Text(format!("{across} · {}", socket.name))),
        None => ("across_flats", Value::Text(across)),
    }
}

/// The name of the wrench that tightens, or who must name it.
fn wrench(facts: &Facts<'_>) -> Value {
    let unknown = Value::Missing(lack("tighten.with", Who::ToolStore));
    let tool = facts.case.computed.chosen.turning.first();
    tool.map_or(unknown, |tool| Value::Text(tool.name.clone()))
}
