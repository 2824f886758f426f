//! Pages two and three: the steps with what is accepted and where it is written.

use crate::document::blocks::Head;
use crate::document::isolation::{Labelled, ProofStep, STEPS_ROOM, Steps};
use crate::job::{Isolation, PointKind};
use crate::joint::Who;
use crate::units::{Dimension, Duration, Quantity, unit_named};
use crate::wording::{Row, Values};
use crate::yaml::At;

use super::super::context::Context;
use super::points::tags;

/// Further rows for what is read again and again: at most so many, and those that the page has room for.
const AGAIN: usize = 4;

/// Release and proof of zero.
pub(super) fn proof(context: &Context<'_>, isolation: &Isolation) -> Steps {
    let values = places(context, isolation).and(&limits(context, isolation));
    let mut proof = Steps {
        head: head(context, "proof"),
        steps: steps(context, "isolation.proof.rows", &values),
    };
    while proof.height() > STEPS_ROOM
        && let Some(step) = proof.steps.iter_mut().find(|step| step.again > 0)
    {
        step.again -= 1;
    }
    proof
}

/// Return to service.
pub(super) fn back(context: &Context<'_>, isolation: &Isolation, joints: usize) -> Vec<ProofStep> {
    let (spades, spade_list) = tags(context, isolation, &[PointKind::Spade, PointKind::Blind]);
    let values = Values::new()
        .with("count", joints)
        .with("spades", spades)
        .with("spade_list", spade_list);
    steps(context, "isolation.back.rows", &values)
}

fn head(context: &Context<'_>, group: &str) -> Head {
    let label = |key: &str| context.label(&format!("isolation.{group}.{key}"));
    Head {
        title: label("title"),
        note: label("note"),
    }
}

/// Points, tools and people that the steps name; empty where the job is silent.
fn places(context: &Context<'_>, isolation: &Isolation) -> Values {
    let text = |text: Option<&str>| text.unwrap_or_default().to_owned();
    let proof = isolation.proof.as_ref().and_then(At::get);
    let accepted_by = isolation.accepted_by.as_ref().and_then(At::get);
    Values::new()
        .with("operator", context.who(Who::Operator))
        .with(
            "procedure",
            text(
                isolation
                    .procedure
                    .as_ref()
                    .and_then(At::get)
                    .map(|it| it.as_str()),
            ),
        )
        .with("vent", tags(context, isolation, &[PointKind::Vent]).1)
        .with("drain", tags(context, isolation, &[PointKind::Drain]).1)
        .with("drives", tags(context, isolation, &[PointKind::Motor]).1)
        .with(
            "gauge",
            text(
                proof
                    .and_then(|it| it.gauge.as_ref()?.get())
                    .map(|it| it.as_str()),
            ),
        )
        .with(
            "at",
            text(proof.and_then(|it| it.at.get()).map(|it| it.as_str())),
        )
        .with("person", text(accepted_by.map(|it| it.as_str())))
}

/// What the job accepts; empty where it is silent.
fn limits(context: &Context<'_>, isolation: &Isolation) -> Values {
    let purge = isolation.purge.as_ref().and_then(At::get);
    let hold = isolation.hold_test.as_ref().and_then(At::get);
    let rise = hold.and_then(|hold| hold.rise.as_ref()?.get()).map(|rise| {
        if rise.si() > 0.0 {
            context.say1("isolation.rise.most", "rise", context.text(*rise))
        } else {
            context.label("isolation.rise.none")
        }
    });
    let text = |text: Option<&str>| text.unwrap_or_default().to_owned();
    let cool = isolation
        .cool_below
        .as_ref()
        .and_then(At::get)
        .map(|it| context.text(*it));
    let again = isolation
        .prove_again_every
        .as_ref()
        .and_then(At::get)
        .map(|it| time(context, *it));
    let hold_time = hold
        .and_then(|it| it.duration.get())
        .map(|it| time(context, *it));
    Values::new()
        .with(
            "medium",
            text(purge.and_then(|it| it.medium.get()).map(|it| it.as_str())),
        )
        .with(
            "cycles",
            purge
                .and_then(|it| it.cycles.as_ref()?.get())
                .copied()
                .unwrap_or(0),
        )
        .with(
            "end_value",
            text(
                purge
                    .and_then(|it| it.until.as_ref()?.get())
                    .map(|it| it.as_str()),
            ),
        )
        .with("limit", cool.unwrap_or_default())
        .with("hold_time", hold_time.unwrap_or_default())
        .with("rise", rise.unwrap_or_default())
        .with("interval", again.unwrap_or_default())
}

/// Minutes below an hour, else as the pack prints it.
fn time(context: &Context<'_>, time: Duration) -> String {
    match unit_named(Dimension::Duration, "min") {
        Some(minutes) if time < Duration::minutes(60.0) => minutes.print_si(time.si()).joined(),
        _ => context.text(time),
    }
}

fn steps(context: &Context<'_>, group: &str, values: &Values) -> Vec<ProofStep> {
    let rows = context.wording.rows(group, values).unwrap_or_else(|error| {
        context.fault(error);
        Vec::new()
    });
    (1usize..)
        .zip(&rows)
        .map(|(number, row)| step(context, number, row))
        .collect()
}

fn step(context: &Context<'_>, number: usize, row: &Row) -> ProofStep {
    let keys: Vec<&str> = row.field("boxes").split_whitespace().collect();
    // A time and initials are known to everybody who signs: without a word they stand closer.
    let bare = keys == ["time", "initials"];
    ProofStep {
        number: number.to_string(),
        text: row.field("do").to_owned(),
        accept: row.field("accept").to_owned(),
        boxes: keys
            .iter()
            .map(|key| written_in(context, key, bare))
            .collect(),
        hold: row.field("hold") == "true",
        again: if row.field("again") == "true" {
            AGAIN
        } else {
            0
        },
    }
}

fn written_in(context: &Context<'_>, key: &str, bare: bool) -> Labelled {
    let unit = |dimension| context.units.of(dimension).map_or("", |unit| unit.name);
    let values = Values::new()
        .with("pressure_unit", unit(Dimension::Pressure))
        .with("temperature_unit", unit(Dimension::Temperature));
    let label = context.say(&format!("isolation.box.{key}"), &values);
    Labelled {
        number: String::new(),
        label: if bare { String::new() } else { label },
        width: width(key),
        unit: String::new(),
    }
}

/// In mm; a hold takes a name and a signature.
fn width(key: &str) -> f64 {
    match key {
        "name" | "seen" | "procedure" => 38.0,
        "signature" => 36.0,
        "value" | "result" | "temperature" | "date" => 28.0,
        "reading" | "before" | "after" | "opened" | "gauge" | "vent" | "drain" | "medium" => 25.0,
        _ => 20.0,
    }
}
