//! The values of each group of joints: what is inside, what is loaded, to what the tool is set, in which passes.

use crate::calc::ids;
use crate::document::blocks::Head;
use crate::document::build::Context;
use crate::document::build::pack::itp::members;
use crate::document::build::words::NONE;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::document::voice::Voice;
use crate::joint::Joint;
use crate::methods::{self, Case, Group};
use crate::work::{Set, Setting, Task, Value, Work};

use super::asked;
use crate::joint::Who;

/// The section.
pub(super) fn section(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("statement.values.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("joints"), 31.0).strong(),
            Column::new(label("inside"), 31.0),
            Column::new(label("studs"), 24.0),
            Column::new(label("load"), 23.0),
            Column::new(label("set"), 32.0),
            Column::new(label("passes"), 35.0),
        ],
    );
    table.rows = context
        .plan
        .groups
        .iter()
        .filter_map(|group| row(context, group))
        .collect();
    table.none = label("none");
    table.notes = vec![label("note")];
    Section {
        label: "values".to_owned(),
        title: label("title"),
        line: label("line"),
        new_page: true,
        blocks: vec![Block::Table(table)],
    }
}

fn row(context: &Context<'_>, group: &Group) -> Option<Vec<Cell>> {
    let joint = context.joints.get(*group.members.first()?)?;
    let computed = &group.computed;
    let work = methods::work(&Case { joint, computed }, Task::Tighten);
    let joints = group.members.iter();
    let tags: Vec<&str> = joints
        .filter_map(|index| Some(context.joints.get(*index)?.tag.as_str()))
        .collect();
    let tags = members(context, &tags);
    let mut row = vec![
        match tags == group.name {
            true => Cell::Text(tags),
            false => Cell::Two([tags, group.name.clone()]),
        },
        inside(context, joint),
        fact(context, work.as_ref(), "studs", joint),
        load(context, group),
    ];
    match &work {
        Some(work) => row.extend([set(context, work), passes(context, work)]),
        None => row.extend((0..2).map(|_| Cell::Box(asked(context, Who::Planner)))),
    }
    Some(row)
}

/// What is behind the joint, with pressure and temperature.
fn inside(context: &Context<'_>, joint: &Joint) -> Cell {
    let service = &joint.mechanics.service;
    let voice = Voice::new(context);
    let pressure = Value::fact(&service.pressure);
    let temperature = Value::fact(&service.temperature);
    let known: Vec<Value> = [pressure, temperature]
        .into_iter()
        .filter(|it| !matches!(it, Value::Missing(_)))
        .collect();
    let below = voice.value(&Value::List(known));
    match service.fluid.get() {
        Some(fluid) => Cell::Two([fluid.clone(), below]),
        None if below.is_empty() => Cell::text(NONE),
        None => Cell::Text(below),
    }
}

/// A fact that stands beside the picture of the card, with the grade of the studs below.
fn fact(context: &Context<'_>, work: Option<&Work>, name: &str, joint: &Joint) -> Cell {
    let facts = work.map(|work| work.facts.as_slice()).unwrap_or_default();
    let found = facts.iter().find(|(known, _)| *known == name);
    let Some((_, value)) = found else {
        return Cell::Box(asked(context, Who::Planner));
    };
    let grade = joint
        .mechanics
        .studs
        .grade
        .get()
        .cloned()
        .unwrap_or_default();
    Cell::Two([Voice::new(context).boxed(value), grade])
}

/// The load in each stud, with its stress and share of yield.
fn load(context: &Context<'_>, group: &Group) -> Cell {
    let ledger = &group.computed.ledger;
    let of = |printed: Option<crate::units::Printed>| printed.map(|it| it.joined());
    let Some(load) = of(context.of(ledger, ids::LOAD)) else {
        return Cell::Box(asked(context, Who::Engineer));
    };
    let share = ledger.get(ids::SHARE_OF_YIELD);
    let share = share.map(|share| {
        let share = Value::Percent(crate::units::Quantity::si(share));
        let share = Voice::new(context).value(&share);
        context.say1("statement.values.of_yield", "share", share)
    });
    let below = [of(context.of(ledger, ids::STRESS)), share];
    let below: Vec<String> = below.into_iter().flatten().collect();
    Cell::Two([load, below.join(", ")])
}

/// The one number of the card with its method, the torque at the nut where the dial shows another, and the lubricant.
fn set(context: &Context<'_>, work: &Work) -> Cell {
    let voice = Voice::new(context);
    let method = context.label(&format!("method.{}", work.method));
    let lubricant = work.facts.iter().find(|(name, _)| *name == "lubricant");
    let lubricant = lubricant.map(|(_, value)| voice.boxed(value));
    let Some(key) = work.keys.first() else {
        return Cell::Text(method);
    };
    let at_nut = match &key.set {
        Set::Tools(readings) => readings.first().and_then(|reading| {
            let torque = context.text(reading.gives());
            let is_same = torque == voice.value(&Value::Reading(reading.clone()));
            (!is_same).then(|| context.say1("statement.values.at_nut", "torque", torque))
        }),
        _ => None,
    };
    let below: Vec<String> = [at_nut, lubricant, Some(method)]
        .into_iter()
        .flatten()
        .collect();
    Cell::Two([shown(&voice, &key.set), below.join(", ")])
}

/// What every tool of a setting shows.
fn shown(voice: &Voice<'_>, set: &Set) -> String {
    match set {
        Set::Tools(readings) => {
            let readings = readings.iter().cloned().map(Value::Reading);
            voice.value(&Value::List(readings.collect()))
        }
        set => voice.boxed(&set.value()),
    }
}

/// Each setting with what is set in it; those that only tell of further rounds not.
fn passes(context: &Context<'_>, work: &Work) -> Cell {
    let voice = Voice::new(context);
    let settings = work.settings().filter(|(_, setting)| !setting.further);
    let said = settings.map(|(_, Setting { name, set, .. })| {
        let values = [
            ("name", Value::Text(name.clone())),
            ("set", Value::Text(shown(&voice, set))),
        ];
        voice.say(&["statement", "values", "pass"], &values)
    });
    let said: Vec<String> = said.collect();
    Cell::Text(said.join("; "))
}
