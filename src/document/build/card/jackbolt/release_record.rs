//! Side two of the card for loosening: seized jackbolts, rounds made, run-out and inspection.

use crate::calc::ids;
use crate::document::card::{
    Grid, GridRow, Head, JackboltRecord, Record, RecordList, Signature, Ticks,
};
use crate::units::{Quantity, Torque};

use super::super::numbers::Numbers;
use super::super::record::{common, opened, stub, tools};
use super::super::signatures::people;
use super::case::Case;
use super::record::named;

/// The others are brought up to at most this share of the full torque to take load off a seized one.
const OTHERS: f64 = 1.1;

pub(super) fn loosening(case: &Case<'_>, numbers: &mut Numbers) -> Record {
    let mut record = Record {
        tools: tools(case.context, case.subject, numbers, true),
        materials: removed(case, numbers),
        as_found: opened(case.context, numbers),
        jackbolts: Some(found(case, numbers)),
        ..common(case.context, numbers)
    };
    let role = case.context.label("role.crew_lead");
    let mut signatures = vec![Signature {
        number: numbers.next(),
        label: case.context.say1("sign.h2", "role", role),
        hold: true,
    }];
    signatures.extend(people(
        case.context,
        numbers,
        &["loosened", "loosened", "supervisor", "operator", "client"],
    ));
    record.signatures = signatures;
    record.stub = Some(stub(case.context, numbers));
    record
}

fn removed(case: &Case<'_>, numbers: &mut Numbers) -> RecordList {
    RecordList {
        head: super::super::parts::head(
            case.context,
            "card.record.removed",
            "card.record.removed_note",
        ),
        rows: ["bodies", "washers", "studs"]
            .map(|key| named(case, numbers, key, String::new()))
            .to_vec(),
    }
}

/// What the other jackbolts may be brought up to: neither above 1.1 of the full torque nor above the bound of the card.
fn others(case: &Case<'_>) -> Option<Torque> {
    let set = case.get(ids::SET_TORQUE)?;
    let never = case.get(ids::NEVER_EXCEED)?;
    Some(Torque::from_si((OTHERS * set.si()).min(never.si())))
}

fn found(case: &Case<'_>, numbers: &mut Numbers) -> JackboltRecord {
    let note = others(case).and_then(|torque| {
        let printed = case.printed(case.readings().loosening().never(torque))?;
        Some(case.say1("jackbolt_card.record.others", "torque", &printed.joined()))
    });
    let seized = Grid {
        head: Head {
            title: case.label("jackbolt_card.record.seized"),
            note: note.unwrap_or_default(),
        },
        columns: ["stud", "jackbolt", "tried", "came_free"]
            .map(|key| case.label(&format!("jackbolt_card.record.{key}")))
            .to_vec(),
        rows: ["first", "second", "third"]
            .map(|key| GridRow {
                name: case.label(&format!("jackbolt_card.record.{key}")),
                number: numbers.next(),
                limit: String::new(),
            })
            .to_vec(),
    };
    JackboltRecord {
        measured: Some(seized),
        checks: rounds(case, numbers),
        ticks: Some(Ticks {
            head: Head {
                title: case.label("jackbolt_card.run_out.title"),
                note: case.label("jackbolt_card.run_out.note"),
            },
            items: ["by_hand", "tips", "washer", "threads", "body", "parts"]
                .map(|key| case.label(&format!("jackbolt_card.run_out.{key}")))
                .to_vec(),
            ..Ticks::default()
        }),
        ..JackboltRecord::default()
    }
}

fn rounds(case: &Case<'_>, numbers: &mut Numbers) -> RecordList {
    let plan = case.plan().filter(|plan| plan.release.breach.is_none());
    let planned = plan.map(|plan| {
        let count = plan.release.rounds.len().to_string();
        case.say1("jackbolt_card.record.planned", "count", &count)
    });
    let never = case
        .never()
        .map(|never| case.say1("jackbolt_card.record.never", "torque", &never.value));
    RecordList {
        head: Head {
            title: case.label("jackbolt_card.record.rounds_made"),
            note: String::new(),
        },
        rows: vec![
            named(case, numbers, "rounds_count", planned.unwrap_or_default()),
            named(case, numbers, "largest_torque", never.unwrap_or_default()),
        ],
    }
}
