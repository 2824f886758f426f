//! Side two of the card for tightening: what the rounds showed, stud end and stretch, checks.

use crate::document::card::{
    CellRow, Cells, ColumnKind, Grid, GridRow, Head, JackboltRecord, Record, RecordList, RecordRow,
};
use crate::methods::jackbolt::ids;
use crate::units::{Angle, Length};
use crate::wording::Values;

use super::super::numbers::Numbers;
use super::super::record::{common, due, serial, stub, tools};
use super::super::signatures::{people, points};
use super::case::Case;

/// Rounds that get a column of their own.
const MOST_ROUNDS: usize = 8;
/// Studs that get a line of their own.
const MOST_LINES: usize = 4;
/// Studs that small boxes hold.
const MOST_CELLS: usize = 32;
/// Greatest difference of the gap round a seated body (common practice, no source).
const GAP_SPREAD: Length = Length::mm(0.5);
/// A jackbolt may move so far in the check after the driver (common practice, no source), in degrees.
const MOVED: f64 = 5.0;

pub(super) fn tightening(case: &Case<'_>, numbers: &mut Numbers) -> Record {
    let few = case.studs() <= MOST_LINES;
    let mut tools = tools(case.context, case.subject, numbers, false);
    if let Some((tool, _)) = case.driver() {
        tools.rows.push(RecordRow {
            number: numbers.next(),
            // A serial number that holds the name says both.
            name: match tool.serial.get() {
                Some(number) if number.contains(&tool.name) => number.clone(),
                _ => serial(case.context, tool),
            },
            limit: due(case.context, tool),
        });
    }
    tools.rows.truncate(if few { 4 } else { 2 });
    let mut record = Record {
        tools,
        materials: materials(case, numbers, few),
        as_found: seat(case, numbers),
        jackbolts: Some(rounds(case, numbers)),
        ..common(case.context, numbers)
    };
    let mut signatures = points(case.context, case.subject, numbers);
    let roles = [
        "assembled",
        "assembled",
        "supervisor",
        "inspector",
        "client",
    ];
    signatures.extend(people(case.context, numbers, &roles));
    record.signatures = signatures;
    record.stub = Some(stub(case.context, numbers));
    record
}

/// Batch or serial of what was fitted.
fn materials(case: &Case<'_>, numbers: &mut Numbers, few: bool) -> RecordList {
    let keys: &[&str] = if few {
        &["bodies", "washers", "lubricant"]
    } else {
        &["bodies", "lubricant"]
    };
    RecordList {
        head: super::super::parts::head(
            case.context,
            "card.record.materials",
            "card.record.materials_note",
        ),
        rows: keys
            .iter()
            .map(|key| named(case, numbers, key, String::new()))
            .collect(),
    }
}

pub(super) fn named(case: &Case<'_>, numbers: &mut Numbers, key: &str, limit: String) -> RecordRow {
    RecordRow {
        number: numbers.next(),
        name: case.label(&format!("jackbolt_card.record.{key}")),
        limit,
    }
}

/// The body as it sits after the round that seats it.
fn seat(case: &Case<'_>, numbers: &mut Numbers) -> RecordList {
    let spread = case.context.print(GAP_SPREAD);
    let limit = case.say1("jackbolt_card.record.limit", "limit", &spread.value);
    RecordList {
        head: Head {
            title: case.label("jackbolt_card.record.seat"),
            note: spread.unit,
        },
        rows: vec![
            named(case, numbers, "gap_spread", limit),
            named(case, numbers, "gap_after", gap_limit(case)),
        ],
    }
}

/// The greatest gap under load, from the tensioner's papers.
fn gap_limit(case: &Case<'_>) -> String {
    let most = case.tensioner().and_then(|it| it.greatest_gap.value());
    match most {
        Some(most) => {
            let printed = case.context.print(most);
            case.say1("jackbolt_card.record.limit", "limit", &printed.value)
        }
        None => String::new(),
    }
}

fn rounds(case: &Case<'_>, numbers: &mut Numbers) -> JackboltRecord {
    let last = case.full_rounds().map_or(MOST_ROUNDS, |(_, last)| last);
    let grid = grid(case, numbers, last);
    let tally = (last > MOST_ROUNDS).then(|| {
        let values = Values::new()
            .with("least", case.full_rounds_text())
            .with("most", last.to_string());
        RecordRow {
            number: numbers.next(),
            name: case.label("jackbolt_card.record.tally"),
            limit: case.say("jackbolt_card.record.tally_limit", &values),
        }
    });
    JackboltRecord {
        rounds: Some(grid),
        tally,
        studs: cells(case, numbers),
        measured: measured(case, numbers),
        checks: checks(case, numbers),
        before_driver: None,
        ticks: None,
    }
}

/// Largest and mean turn of each round: the deficit is read off the mean turn on the calculation note.
fn grid(case: &Case<'_>, numbers: &mut Numbers, last: usize) -> Grid {
    let columns: Vec<String> = if last <= MOST_ROUNDS {
        (1..=last).map(|round| format!("C{round}")).collect()
    } else {
        (1..MOST_ROUNDS - 1)
            .map(|round| format!("C{round}"))
            .chain(
                ["last_but_one", "last"]
                    .map(|key| case.label(&format!("jackbolt_card.record.{key}"))),
            )
            .collect()
    };
    let torque = case.printed(case.readings().full());
    let torque = torque.map(|torque| torque.joined());
    let unit = case.flat().unit;
    let title = Values::new()
        .with("torque", torque.unwrap_or_default())
        .with("unit", unit);
    let note = Values::new()
        .with("count", case.full_rounds_text())
        .with("angle", case.flat().value);
    let rows = ["largest", "mean", "done_by"].map(|key| GridRow {
        name: case.label(&format!("jackbolt_card.record.{key}")),
        number: numbers.next(),
        limit: String::new(),
    });
    Grid {
        head: Head {
            title: case.say("jackbolt_card.record.rounds", &title),
            note: case.say("jackbolt_card.record.rounds_note", &note),
        },
        columns,
        rows: rows.to_vec(),
    }
}

/// The last round stud by stud, where the studs are too many for lines.
fn cells(case: &Case<'_>, numbers: &mut Numbers) -> Option<Cells> {
    let studs = case.studs();
    (studs > MOST_LINES && studs <= MOST_CELLS).then(|| Cells {
        head: Head {
            title: case.label("jackbolt_card.record.last_round"),
            note: below(case),
        },
        kind: ColumnKind::Tick,
        columns: (1..=studs).map(|stud| stud.to_string()).collect(),
        rows: vec![CellRow {
            name: case.label("jackbolt_card.record.last"),
            number: numbers.next(),
        }],
    })
}

fn below(case: &Case<'_>) -> String {
    case.say1("jackbolt_card.record.below", "angle", &case.flat().joined())
}

/// Stud end and stretch of the studs that are asked for; without a stretch check the stud end of a few.
fn measured(case: &Case<'_>, numbers: &mut Numbers) -> Option<Grid> {
    let asked = &case.subject.joint.mechanics.checks.stretch;
    let studs: Vec<String> = if asked.is_empty() {
        (1..=case.studs().min(MOST_LINES))
            .map(|stud| stud.to_string())
            .collect()
    } else {
        asked.iter().take(MOST_LINES).map(u32::to_string).collect()
    };
    let keys: &[&str] = if asked.is_empty() {
        &["before", "after"]
    } else {
        &["before", "after", "stretch"]
    };
    Some(Grid {
        head: Head {
            title: case.say1(
                "jackbolt_card.record.stud_end",
                "unit",
                &case.context.print(GAP_SPREAD).unit,
            ),
            note: if asked.is_empty() {
                stud_end_limit(case)
            } else {
                accept_stretch(case)
            },
        },
        columns: keys
            .iter()
            .map(|key| case.label(&format!("jackbolt_card.record.{key}")))
            .collect(),
        rows: studs
            .into_iter()
            .map(|name| GridRow {
                name,
                number: numbers.next(),
                limit: String::new(),
            })
            .collect(),
    })
}

/// How far the stud may stand above the body.
fn stud_end_limit(case: &Case<'_>) -> String {
    match case.get(ids::ABOVE_BODY_LIMIT) {
        Some(most) => {
            let most = case.context.text(most);
            case.say1("jackbolt_card.measured.stud_end_limit", "limit", &most)
        }
        None => case.context.to_be_given(crate::joint::Who::ToolStore),
    }
}

fn accept_stretch(case: &Case<'_>) -> String {
    let ends = case
        .get(ids::ACCEPT_STRETCH_LEAST)
        .zip(case.get(ids::ACCEPT_STRETCH_MOST));
    match ends {
        Some((least, most)) => {
            let values = Values::new()
                .with("least", case.context.print(least).value)
                .with("most", case.context.print(most).value);
            case.say("jackbolt_card.record.accept_stretch", &values)
        }
        None => case.context.to_be_given(crate::joint::Who::Engineer),
    }
}

/// Spindles, reversal, second person.
fn checks(case: &Case<'_>, numbers: &mut Numbers) -> RecordList {
    let mut rows = Vec::new();
    if let Some((_, driver)) = case.driver() {
        let spindles = driver.spindles.value();
        let count = spindles.map(|it| case.context.text(it)).unwrap_or_default();
        let torque = case.printed(case.readings().low(ids::DRIVER_CHECK));
        let values = Values::new()
            .with(
                "torque",
                torque.map(|torque| torque.value).unwrap_or_default(),
            )
            .with("angle", case.context.text(Angle::degrees(MOVED)));
        rows.push(named(
            case,
            numbers,
            "spindles",
            case.say1("jackbolt_card.record.spindles_all", "count", &count),
        ));
        rows.push(named(
            case,
            numbers,
            "reversal",
            case.say("jackbolt_card.record.reversal_limit", &values),
        ));
    }
    rows.push(named(
        case,
        numbers,
        "second_person",
        case.label("jackbolt_card.record.second_least"),
    ));
    rows.push(named(case, numbers, "second_turn", below(case)));
    RecordList {
        head: Head {
            title: case.label("jackbolt_card.record.checks"),
            note: String::new(),
        },
        rows,
    }
}
