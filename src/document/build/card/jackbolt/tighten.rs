//! Side one of the card for tightening.

use crate::calc::labour::Task;
use crate::document::build::context::Context;
use crate::document::card::{
    Card, Head, Jackbolts, RecordRow, Second, SideValue, StopPart, StopRule, Target, Ticks, Value,
};
use crate::joint::{ToolReading, Who};
use crate::methods::jackbolt::RoundKind;
use crate::methods::jackbolt::ids;
use crate::units::{Quantity, Torque};
use crate::wording::Values;

use super::super::Subject;
use super::super::numbers::Numbers;
use super::super::parts::in_words;
use super::case::{Case, blank, percent};
use super::{bare, circle, record, room, rounds, ticks};

/// The card with what belongs to jackbolts in place of what belongs to nuts.
pub(in crate::document::build::card) fn tightening(
    context: &Context<'_>,
    subject: &Subject<'_>,
    card: Card,
) -> Card {
    let case = Case { context, subject };
    let mut numbers = Numbers::new();
    let work = Jackbolts {
        values: values(&case),
        circle: circle::circle(&case, false),
        studs: circle::studs(&case),
        rounds: rounds::tightening(&case),
        stop: Some(stop(&case)),
        key: None,
        measured: measured(&case, &mut numbers),
    };
    let note = match case.driver() {
        Some(_) => case.label("jackbolt_card.ticks.note_driver"),
        None => card.ticks.head.note.clone(),
    };
    let card = Card {
        ticks: Ticks {
            head: Head {
                title: case.label("jackbolt_card.ticks.title"),
                note,
            },
            ..Ticks::default()
        },
        target: target(&case),
        jackbolts: Some(Box::new(work)),
        record: record::tightening(&case, &mut numbers),
        ..bare(card)
    };
    room::with_ticks(
        &case,
        room::with_record(&case, card),
        ticks::tightening(&case),
        Task::Tighten,
    )
}

fn target(case: &Case<'_>) -> Target {
    let reading = case.readings().full();
    let who = reading
        .as_ref()
        .map_or_else(|lack| lack.who, |_| Who::Engineer);
    let set = reading.as_ref().ok();
    let set = set.map(|reading| case.context.reading(reading));
    let wrench = case.subject.computed.chosen.turning.first();
    let words = set.as_ref().map(|set| {
        case.say1(
            "jackbolt_card.target.words",
            "words",
            &in_words(case.context, set),
        )
    });
    // With an adapter the jackbolt gets another torque than the wrench shows.
    let at_jackbolt = reading.as_ref().ok().and_then(ToolReading::at_nut);
    let second = at_jackbolt.map(|printed| Second {
        number: printed.value,
        unit: printed.unit,
        words: case.label("jackbolt_card.target.at_jackbolt"),
    });
    Target {
        label: match wrench {
            Some(wrench) => case.say1("jackbolt_card.target.full", "tool", &wrench.name),
            None => case.label("jackbolt_card.target.full_any"),
        },
        value: case.value(set, who),
        words: words.unwrap_or_default(),
        second,
        facts: case.facts(),
    }
}

fn values(case: &Case<'_>) -> Vec<SideValue> {
    let seat = case.plan().and_then(|plan| {
        let is_seat = |round: &&crate::methods::jackbolt::Round| round.kind == RoundKind::Seat;
        plan.rounds.iter().find(is_seat)
    });
    let mut values = vec![SideValue {
        label: case.label("jackbolt_card.values.seat"),
        value: case.value(
            seat.and_then(|round| case.seat(round.torque)),
            Who::Engineer,
        ),
        words: seat
            .map(|round| {
                case.say1(
                    "jackbolt_card.values.of_full",
                    "percent",
                    &percent(round.share),
                )
            })
            .unwrap_or_default(),
    }];
    values.extend(case.driver().map(|(tool, _)| driver(case, &tool.name)));
    values
}

fn driver(case: &Case<'_>, name: &str) -> SideValue {
    let set = case.get(ids::DRIVER_TORQUE);
    let full = case.get(ids::SET_TORQUE);
    let limit = case.get(ids::DRIVER_LEVEL_LIMIT);
    let words = match (set, full, limit) {
        (Some(set), Some(full), Some(limit)) => {
            let most = Torque::from_si(limit.si() * full.si());
            let most = case.driver_never(most).map(|most| most.value);
            let values = Values::new()
                .with("percent", percent(set.si() / full.si()))
                .with("limit", most.unwrap_or_default());
            case.say("jackbolt_card.values.driver_limit", &values)
        }
        _ => String::new(),
    };
    SideValue {
        label: case.say1("jackbolt_card.values.driver", "tool", name),
        value: case.value(case.printed(case.readings().driver_level()), Who::ToolStore),
        words,
    }
}

/// Both parts must hold: the planned number of rounds and the flat rule.
fn stop(case: &Case<'_>) -> StopRule {
    let flat = case.flat();
    let (least, after) = match case.full_rounds() {
        Some((least, last)) => (
            Some(least.to_string()),
            case.say1("jackbolt_card.stop.after", "round", &format!("C{last}")),
        ),
        None => (None, case.label("jackbolt_card.stop.unknown")),
    };
    StopRule {
        title: case.label("jackbolt_card.stop.title"),
        parts: [
            StopPart {
                before: case.label("jackbolt_card.stop.at_least"),
                value: Value {
                    number: blank(least),
                    unit: String::new(),
                },
                words: case.label("jackbolt_card.stop.full_rounds"),
            },
            StopPart {
                before: case.label("jackbolt_card.stop.none"),
                value: Value {
                    number: blank(Some(flat.value)),
                    unit: flat.unit,
                },
                words: case.label("jackbolt_card.stop.or_more"),
            },
        ],
        and: case.label("jackbolt_card.stop.and"),
        after,
    }
}

/// Stud end, because a stud that stands too high blocks the driver; the start gap where nobody gives it.
fn measured(case: &Case<'_>, numbers: &mut Numbers) -> Vec<RecordRow> {
    let most = case.get(ids::ABOVE_BODY_LIMIT);
    let mut rows = vec![RecordRow {
        number: numbers.next(),
        name: case.label("jackbolt_card.measured.stud_end"),
        limit: match most {
            Some(most) => case.say1(
                "jackbolt_card.measured.stud_end_limit",
                "limit",
                &case.context.text(most),
            ),
            None => case.context.to_be_given(Who::ToolStore),
        },
    }];
    if case.get(ids::START_GAP).is_none() {
        rows.push(RecordRow {
            number: numbers.next(),
            name: case.label("jackbolt_card.measured.start_gap"),
            limit: case.context.to_be_given(Who::ToolStore),
        });
    }
    rows
}
