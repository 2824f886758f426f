//! Side two of both cards: what was used, found, measured and signed. Boxes are numbered for the
//! radio and the deviation sheet.

use crate::calc::{ids, order};
use crate::document::card::{
    Choice, Grid, GridRow, Head, Lines, Record, RecordList, RecordRow, Signature,
};
use crate::job::{Seat, ToolKind, Washers};
use crate::joint::Tool;
use crate::units::Length;
use crate::wording::Values;

use super::super::context::Context;
use super::Subject;
use super::numbers::Numbers;
use super::parts::{count, head};
use super::signatures::{people, points};

/// Gaps are read after P0, P1 and P2: later the joint is closed.
pub(super) const LAST_GAP_PASS: u16 = 2;
/// Rows of the first three blocks.
const MOST_ROWS: usize = 4;
/// Studs whose stretch fits on the card.
const MOST_STRETCH: usize = 4;

/// The record side of the card for tightening.
pub(super) fn tightening(context: &Context<'_>, subject: &Subject<'_>) -> Record {
    let mut numbers = Numbers::new();
    let mut record = Record {
        tools: tools(context, subject, &mut numbers, false),
        materials: materials(context, subject, &mut numbers),
        as_found: as_found(context, subject, &mut numbers),
        gaps: gaps(context, subject, &mut numbers),
        stretch: stretch(context, subject, &mut numbers),
        last_round: last_round(context, subject, &mut numbers),
        protrusion: protrusion(context, subject, &mut numbers),
        ..common(context, &mut numbers)
    };
    let mut signatures = points(context, subject, &mut numbers);
    // An inspector who signs the stretch and the last round has signed with date and time.
    let inspector: &[&str] = if subject.joint.mechanics.checks.stretch.is_empty() {
        &["inspector"]
    } else {
        &[]
    };
    let roles = [
        &["assembled", "assembled", "supervisor"],
        inspector,
        &["client"],
    ]
    .concat();
    signatures.extend(people(context, &mut numbers, &roles));
    record.signatures = signatures;
    record.stub = Some(stub(context, &mut numbers));
    record
}

/// The record side of the card for loosening.
pub(super) fn loosening(context: &Context<'_>, subject: &Subject<'_>) -> Record {
    let mut numbers = Numbers::new();
    let mut record = Record {
        tools: tools(context, subject, &mut numbers, true),
        materials: removed(context, subject, &mut numbers),
        as_found: opened(context, &mut numbers),
        gaps: None,
        stretch: None,
        last_round: release(context, subject, &mut numbers),
        protrusion: None,
        ..common(context, &mut numbers)
    };
    let role = context.label("role.crew_lead");
    let mut signatures = vec![Signature {
        number: numbers.next(),
        label: context.say1("sign.h2", "role", role),
        hold: true,
    }];
    signatures.extend(people(
        context,
        &mut numbers,
        &["loosened", "loosened", "supervisor", "operator", "client"],
    ));
    record.signatures = signatures;
    record.stub = Some(stub(context, &mut numbers));
    record
}

/// Deviation and advice, with the lists of a side left empty.
pub(super) fn common(context: &Context<'_>, numbers: &mut Numbers) -> Record {
    let empty = RecordList::default;
    Record {
        tools: empty(),
        materials: empty(),
        as_found: empty(),
        gaps: None,
        stretch: None,
        last_round: empty(),
        protrusion: None,
        jackbolts: None,
        deviation: Choice {
            head: head(
                context,
                "card.record.deviation",
                "card.record.deviation_note",
            ),
            number: numbers.next(),
            options: ["none", "some"].map(|key| context.label(&format!("card.record.{key}"))),
        },
        next_time: Lines {
            head: head(context, "card.record.next_time", ""),
            number: numbers.next(),
        },
        signed: head(context, "card.record.signed", "card.record.signed_note"),
        signatures: Vec::new(),
        stub: None,
    }
}

pub(super) fn stub(context: &Context<'_>, numbers: &mut Numbers) -> RecordRow {
    RecordRow {
        number: numbers.next(),
        name: context.label("card.record.stub"),
        limit: String::new(),
    }
}

/// Tools that measure or show the load, with serial and due date.
pub(super) fn tools(
    context: &Context<'_>,
    subject: &Subject<'_>,
    numbers: &mut Numbers,
    loosening: bool,
) -> RecordList {
    let chosen = &subject.computed.chosen;
    let turning = if loosening {
        &chosen.loosening
    } else {
        &chosen.turning
    };
    let shown =
        |tool: &&std::sync::Arc<Tool>| matches!(tool.kind, ToolKind::Pump | ToolKind::Gauge);
    let rows = turning
        .iter()
        .chain(chosen.hydraulics.iter().filter(shown))
        .take(MOST_ROWS)
        .map(|tool| RecordRow {
            number: numbers.next(),
            name: serial(context, tool),
            limit: due(context, tool),
        })
        .collect::<Vec<_>>();
    let rows = if rows.is_empty() {
        vec![RecordRow {
            number: numbers.next(),
            name: context.label("card.record.tool_unnamed"),
            limit: context.label("record.due_unknown"),
        }]
    } else {
        rows
    };
    RecordList {
        head: head(context, "card.record.tools", "card.record.tools_note"),
        rows,
    }
}

pub(super) fn serial(context: &Context<'_>, tool: &Tool) -> String {
    match tool.serial.get() {
        Some(serial) => {
            let values = Values::new()
                .with("tool", &tool.name)
                .with("serial", serial);
            context.say("record.serial", &values)
        }
        None => tool.name.clone(),
    }
}

pub(super) fn due(context: &Context<'_>, tool: &Tool) -> String {
    match tool.due.value() {
        Some(due) => context.say1("record.due", "date", due.to_string()),
        None if tool.kind == ToolKind::LooseningBar => String::new(),
        None => context.label("record.due_unknown"),
    }
}

fn named(context: &Context<'_>, numbers: &mut Numbers, key: &str, limit: String) -> RecordRow {
    RecordRow {
        number: numbers.next(),
        name: context.label(&format!("card.record.{key}")),
        limit,
    }
}

fn materials(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> RecordList {
    let mechanics = &subject.joint.mechanics;
    let mut keys = Vec::new();
    if mechanics.gasket.is_some() {
        keys.push("gasket");
    }
    keys.extend(["studs", "nuts"]);
    if mechanics.gasket.is_none() && mechanics.studs.washers.value() != Some(Washers::None) {
        keys.push("washers");
    }
    keys.push("lubricant");
    let rows = keys
        .into_iter()
        .map(|key| named(context, numbers, key, String::new()))
        .collect();
    RecordList {
        head: head(
            context,
            "card.record.materials",
            "card.record.materials_note",
        ),
        rows,
    }
}

fn removed(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> RecordList {
    let mut keys = vec!["studs", "nuts", "washers"];
    if subject.joint.mechanics.gasket.is_some() {
        keys.push("gasket");
    }
    let rows = keys
        .into_iter()
        .map(|key| named(context, numbers, key, String::new()))
        .collect();
    RecordList {
        head: head(context, "card.record.removed", "card.record.removed_note"),
        rows,
    }
}

fn as_found(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> RecordList {
    let checks = &subject.joint.mechanics.checks;
    let limit = |length: Option<Length>| match length {
        Some(length) => context.say1("record.limit", "limit", context.print(length).value),
        None => context.label("record.reference"),
    };
    let rows = [
        ("centreline", checks.centreline.value()),
        ("parallel", checks.parallelism.value()),
        ("hole_offset", checks.holes.value()),
        ("free_gap", checks.gap.value()),
    ]
    .into_iter()
    .map(|(key, value)| named(context, numbers, key, limit(value)))
    .collect();
    let unit = context.print(Length::mm(1.0)).unit;
    RecordList {
        head: Head {
            title: context.label("card.record.as_found"),
            note: unit,
        },
        rows,
    }
}

pub(super) fn opened(context: &Context<'_>, numbers: &mut Numbers) -> RecordList {
    let rows = vec![
        named(
            context,
            numbers,
            "first_crack",
            context.label("card.record.crack_words"),
        ),
        named(
            context,
            numbers,
            "temperature",
            context.label("card.record.temperature_limit"),
        ),
        named(context, numbers, "torque_most", String::new()),
    ];
    RecordList {
        head: head(context, "card.record.as_found", ""),
        rows,
    }
}

/// Positions across, the first three passes down.
fn gaps(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> Option<Grid> {
    let checks = &subject.joint.mechanics.checks;
    if checks.gaps.value() != Some(true) {
        return None;
    }
    let positions = order::gap_positions(count(subject));
    let spread = checks.gap_spread.value().map(|spread| context.text(spread));
    let unit = context.print(Length::mm(1.0)).unit;
    let values = Values::new()
        .with("count", positions.len())
        .with("unit", unit);
    let last = subject
        .computed
        .passes
        .iter()
        .map(|pass| pass.number)
        .max()
        .unwrap_or(0);
    Some(Grid {
        head: Head {
            title: context.say("gap.title", &values),
            note: context.say1("gap.limit", "limit", spread.unwrap_or_default()),
        },
        columns: positions.iter().map(ToString::to_string).collect(),
        rows: (0..=LAST_GAP_PASS.min(last))
            .map(|pass| GridRow {
                name: format!("P{pass}"),
                number: numbers.next(),
                limit: String::new(),
            })
            .collect(),
    })
}

fn stretch(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> Option<Grid> {
    let studs = &subject.joint.mechanics.checks.stretch;
    if studs.is_empty() {
        return None;
    }
    let ledger = &subject.computed.ledger;
    let (least, most) = (
        ledger.get(ids::ACCEPT_STRETCH_LEAST),
        ledger.get(ids::ACCEPT_STRETCH_MOST),
    );
    let note = match (least, most) {
        (Some(least), Some(most)) => accept_range(context, least, most),
        _ => context.label("record.reference"),
    };
    let unit = context.print(Length::mm(1.0)).unit;
    Some(Grid {
        head: Head {
            title: context.say1("record.stretch_head", "unit", unit),
            note,
        },
        columns: ["before", "after", "difference"]
            .iter()
            .map(|key| context.label(&format!("card.record.{key}")))
            .collect(),
        rows: studs
            .iter()
            .take(MOST_STRETCH)
            .map(|stud| GridRow {
                name: stud.to_string(),
                number: numbers.next(),
                limit: String::new(),
            })
            .collect(),
    })
}

fn accept_range(context: &Context<'_>, least: Length, most: Length) -> String {
    let values = Values::new()
        .with("least", context.print(least).value)
        .with("most", context.print(most).value);
    context.say("record.accept_range", &values)
}

fn last_round(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> RecordList {
    let studs = count(subject).to_string();
    let rows = vec![
        named(
            context,
            numbers,
            "nuts_turned",
            context.say1("record.of", "count", studs),
        ),
        named(context, numbers, "rounds_made", String::new()),
    ];
    RecordList {
        head: Head {
            title: context.label("card.record.last_round"),
            note: context.label("record.accept_none"),
        },
        rows,
    }
}

/// The rounds that were made, the minimum beside the box, and what happened in them.
fn release(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> RecordList {
    let minimum = context.of(&subject.computed.ledger, ids::RELEASE_ROUNDS);
    let minimum = minimum.map(|minimum| context.say1("record.at_least", "minimum", minimum.value));
    let rows = vec![
        named(context, numbers, "rounds_made", minimum.unwrap_or_default()),
        named(context, numbers, "stuck", String::new()),
    ];
    RecordList {
        head: head(context, "card.rounds.title", ""),
        rows,
    }
}

fn protrusion(context: &Context<'_>, subject: &Subject<'_>, numbers: &mut Numbers) -> Option<Grid> {
    let checks = &subject.joint.mechanics.checks;
    let limit = match (
        checks.least_protrusion.value(),
        checks.greatest_protrusion.value(),
    ) {
        (Some(least), Some(most)) => {
            let values = Values::new()
                .with("least", context.print(least).value)
                .with("most", context.print(most).value);
            context.say("record.from_to", &values)
        }
        _ => context.label("record.reference"),
    };
    let tapped = subject.joint.mechanics.studs.seat.value() == Some(Seat::TappedHole);
    let sides: &[&str] = if tapped {
        &["near_side"]
    } else {
        &["near_side", "far_side"]
    };
    let unit = context.print(Length::mm(1.0)).unit;
    Some(Grid {
        head: Head {
            title: context.say1("card.record.protrusion_in", "unit", unit),
            note: String::new(),
        },
        columns: ["least", "most"]
            .iter()
            .map(|key| context.label(&format!("card.record.{key}")))
            .collect(),
        rows: sides
            .iter()
            .map(|side| GridRow {
                name: context.label(&format!("card.record.{side}")),
                number: numbers.next(),
                limit: limit.clone(),
            })
            .collect(),
    })
}
