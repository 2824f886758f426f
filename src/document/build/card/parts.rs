//! The parts that both cards share: identity, stop panel, facts beside the target.

use crate::calc::ids;
use crate::document::card::{Badge, Danger, Entry, Fact, Head, Identity, Running, Tag};
use crate::document::width;
use crate::job::TurnDirection;
use crate::joint::{Tool, Who};
use crate::methods::hydraulic;
use crate::units::{Printed, Quantity, Units};
use crate::wording::Values;

use super::super::context::Context;
use super::super::words::method_of;
use super::Subject;

/// The running line without number and revision, which are filled in when the card is sealed.
pub(super) fn running(context: &Context<'_>, subject: &Subject<'_>) -> Running {
    let method = method_of(subject.joint).map(|key| context.label(&format!("method_card.{key}")));
    let document = context.say1("document.card", "method", method.unwrap_or_default());
    Running {
        right: String::new(),
        ..context.running(&document)
    }
}

/// The identity strip; `word` is the key of the card's word, outlined for loosening.
pub(super) fn identity(
    context: &Context<'_>,
    subject: &Subject<'_>,
    word: &str,
    outlined: bool,
) -> Identity {
    let joint = subject.joint;
    let identity = &joint.identity;
    let class = match joint.mechanics.class.value() {
        Some(class) => context.say1("card.class", "class", class.word()),
        None => context.label("card.class_unknown"),
    };
    let equipment = match (&identity.equipment_name, identity.equipment.get()) {
        (Some(name), Some(tag)) => format!("{tag} · {name}"),
        (None, Some(tag)) => tag.clone(),
        (Some(name), None) => name.clone(),
        (None, None) => context.to_be_given(Who::Planner),
    };
    let drawing = match &identity.drawing {
        Some((number, Some(revision))) => context.say(
            "card.drawing",
            &Values::new()
                .with("number", number)
                .with("revision", revision),
        ),
        Some((number, None)) => number.clone(),
        None => String::new(),
    };
    Identity {
        tag: Tag::new(joint.tag.clone()),
        equipment,
        place: identity.location.get().cloned().unwrap_or_default(),
        class,
        drawing,
        badge: Badge {
            word: context.label(word),
            outlined,
        },
        record_badge: Badge {
            word: context.label("word.record"),
            outlined: false,
        },
    }
}

/// What is behind the joint, and what must not happen before.
pub(super) fn danger(context: &Context<'_>, subject: &Subject<'_>) -> Danger {
    let service = &subject.joint.mechanics.service;
    let contents: Vec<String> = [
        service.fluid.get().map(|fluid| capital(fluid)),
        service
            .pressure
            .value()
            .map(|pressure| context.text(pressure)),
        service
            .temperature
            .value()
            .map(|temperature| context.text(temperature)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let hazard = match &subject.joint.identity.danger {
        Some(words) => words.clone(),
        None if contents.is_empty() => context.label("danger.unknown"),
        None => context.say1("danger.pressure", "contents", contents.join(", ")),
    };
    Danger {
        word: context.label("signal.danger"),
        hazard,
        stop: context.label("danger.stop_pressure"),
        boxes: ["certificate", "seen", "time", "initials"]
            .map(|name| context.label(&format!("card.danger.{name}"))),
    }
}

/// A sentence begins with a capital whatever the job writes.
pub(super) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    match signs.next() {
        Some(first) => first.to_uppercase().chain(signs).collect(),
        None => String::new(),
    }
}

/// Title and remark of a block by their keys; an empty key gives no remark.
pub(super) fn head(context: &Context<'_>, title: &str, note: &str) -> Head {
    Head {
        title: context.label(title),
        note: if note.is_empty() {
            String::new()
        } else {
            context.label(note)
        },
    }
}

/// A printed value, or the words of its empty box.
pub(super) fn entry(context: &Context<'_>, printed: Option<String>, who: Who) -> Entry {
    match printed {
        Some(text) => Entry::Given(text),
        None => Entry::Missing(context.to_be_given(who)),
    }
}

/// The facts beside the target: studs first, then tools, pump, lubricant, socket.
pub(super) fn facts(context: &Context<'_>, subject: &Subject<'_>, loosening: bool) -> Vec<Fact> {
    let mechanics = &subject.joint.mechanics;
    let chosen = &subject.computed.chosen;
    let hydraulic = mechanics.method.value() == Some(hydraulic::WORD);
    let turning = if loosening {
        &chosen.loosening
    } else {
        &chosen.turning
    };
    let fact = |key: &str, value: Option<String>, who| Fact {
        label: context.label(&format!("card.fact.{key}")),
        value: entry(context, value, who),
    };
    let names = turning
        .iter()
        .map(|tool| name_and_serial(tool))
        .collect::<Vec<_>>();
    let many = if names.len() > 1 {
        "wrenches"
    } else {
        "wrench"
    };
    let mut facts = vec![
        fact("studs", studs(context, subject), Who::Planner),
        fact(many, joined(names), Who::ToolStore),
    ];
    if hydraulic {
        let pump = chosen
            .hydraulics
            .iter()
            .filter(|tool| tool.kind == crate::job::ToolKind::Pump)
            .map(|tool| name_and_serial(tool))
            .collect();
        facts.push(fact("pump", joined(pump), Who::ToolStore));
    }
    if !loosening {
        let lubricant = mechanics.lubricant.name.get();
        let words = lubricant.map(|name| context.say1("card.fact_only", "what", name.as_str()));
        facts.push(fact("lubricant", words, Who::Engineer));
    }
    // A socket is named in the system of the thread, whatever unit leads on the page.
    let inch = mechanics
        .studs
        .thread
        .get()
        .is_some_and(|thread| !thread.series.is_metric());
    let units = if inch { Units::inch() } else { Units::metric() };
    let across = subject
        .computed
        .ledger
        .get(ids::ACROSS_FLATS)
        .map(|it| units.print_size(it));
    facts.push(fact(
        "socket",
        socket(context, subject, across),
        Who::ToolStore,
    ));
    if loosening {
        let ledger = &subject.computed.ledger;
        let load = context.of(ledger, ids::LOAD).map(|load| load.joined());
        facts.push(fact("load", load, Who::Engineer));
    } else {
        let back_up = chosen.back_up.as_ref().map(|tool| tool.name.clone());
        facts.push(fact("backup", back_up, Who::ToolStore));
    }
    facts
}

/// `75 mm on 1 1/2 in square (SK-75)`.
fn socket(context: &Context<'_>, subject: &Subject<'_>, across: Option<Printed>) -> Option<String> {
    let across = across?.joined();
    let name = subject
        .computed
        .chosen
        .socket
        .as_ref()
        .map(|socket| socket.name.clone());
    Some(match name {
        Some(name) => format!("{across} · {name}"),
        None => context.say1("card.fact_across", "across", across),
    })
}

fn joined(names: Vec<String>) -> Option<String> {
    if names.is_empty() {
        None
    } else {
        Some(names.join(" · "))
    }
}

/// `24 × M48×5`.
pub(super) fn studs(context: &Context<'_>, subject: &Subject<'_>) -> Option<String> {
    let studs = &subject.joint.mechanics.studs;
    let count = studs.count.value()?;
    let thread = studs.thread.get()?;
    Some(format!("{} × {}", context.text(count), thread.designation))
}

/// `HW-07 (7731)`.
pub(super) fn name_and_serial(tool: &Tool) -> String {
    match tool.serial.get() {
        Some(serial) => format!("{} ({serial})", tool.name),
        None => tool.name.clone(),
    }
}

/// The digits of a value in words, as they are read out over the radio.
pub(super) fn in_words(context: &Context<'_>, value: &Printed) -> String {
    context.wording.digits(&value.value)
}

/// The words for the direction of the numbers, in two short lines.
pub(super) fn direction(context: &Context<'_>, direction: TurnDirection) -> Vec<String> {
    let words = context.label(match direction {
        TurnDirection::Clockwise => "card.turns_clockwise",
        TurnDirection::Anticlockwise => "card.turns_anticlockwise",
    });
    width::halves(&words)
}

/// The number of studs as a count.
pub(super) fn count(subject: &Subject<'_>) -> usize {
    subject
        .computed
        .ledger
        .get(ids::COUNT)
        .map_or(0, |count| crate::calc::whole(count.si()))
}
