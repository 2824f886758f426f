//! Side one of the card for loosening: never-exceed torque, release rounds by equal small angles.

use crate::calc::labour::Task;
use crate::document::build::context::Context;
use crate::document::card::{
    Card, DialKey, Entry, Expected, Head, Jackbolts, Order, Round, Rounds, SideValue, Target,
    Ticks, Value,
};
use crate::joint::Who;
use crate::methods::jackbolt::ids;
use crate::methods::jackbolt::{ReleaseBreach, ReleasePlan, ReleaseRound};
use crate::units::{Angle, Length, Quantity, digits};
use crate::wording::Values;

use super::super::Subject;
use super::super::numbers::Numbers;
use super::super::parts::in_words;
use super::case::{Case, whole_percent};
use super::{bare, circle, release_record, room, rounds, ticks};

/// Sides of a jackbolt's hexagon.
const FLATS: f64 = 6.0;
/// Studs with a tick each; more leave no room for what is expected.
const MOST_TICKS: usize = 2;

/// The card with what belongs to jackbolts in place of what belongs to nuts.
pub(in crate::document::build::card) fn loosening(
    context: &Context<'_>,
    subject: &Subject<'_>,
    card: Card,
) -> Card {
    let case = Case { context, subject };
    let rounds = release(&case);
    let is_long = rounds.rows.len() > Rounds::ONE_COLUMN;
    let first = rounds.rows.iter().find_map(|row| row.dial);
    let work = Jackbolts {
        values: values(&case),
        circle: circle::circle(&case, true),
        studs: circle::studs(&case).filter(|_| !is_long),
        key: first.filter(|_| !is_long).map(|angle| DialKey {
            angle,
            words: ["black", "from_line", "anticlockwise"]
                .map(|key| case.label(&format!("jackbolt_card.key.{key}")))
                .to_vec(),
        }),
        rounds,
        stop: None,
        measured: Vec::new(),
    };
    let note = if case.driver_loosens() {
        case.label("jackbolt_card.ticks.note_driver")
    } else {
        card.ticks.head.note.clone()
    };
    let card = Card {
        ticks: Ticks {
            head: Head {
                note,
                ..card.ticks.head.clone()
            },
            ..Ticks::default()
        },
        target: target(&case, is_long),
        order: if is_long {
            Order::default()
        } else {
            card.order.clone()
        },
        jackbolts: Some(Box::new(work)),
        record: release_record::loosening(&case, &mut Numbers::new()),
        ..bare(card)
    };
    room::with_ticks(&case, card, ticks::loosening(&case), Task::Loosen)
}

fn target(case: &Case<'_>, is_long: bool) -> Target {
    let never = case.never();
    let words = never.as_ref().map(|never| {
        case.say1(
            "jackbolt_card.target.never_words",
            "words",
            &in_words(case.context, never),
        )
    });
    Target {
        label: case.label("jackbolt_card.target.never"),
        value: case.value(never, Who::Engineer),
        words: words.unwrap_or_default(),
        second: None,
        facts: case.release_facts(is_long),
    }
}

/// The range in which a jackbolt is expected to move.
fn values(case: &Case<'_>) -> Vec<SideValue> {
    let range = case.readings().break_out().ok().map(|range| {
        let [least, most] = range.map(|reading| case.context.reading(&reading));
        Value {
            number: Entry::Given(
                case.say(
                    "jackbolt_card.values.range",
                    &Values::new()
                        .with("least", least.value)
                        .with("most", most.value),
                ),
            ),
            unit: most.unit,
        }
    });
    let unknown = || case.value(None, Who::Engineer);
    vec![SideValue {
        label: case.label("jackbolt_card.values.break_out"),
        value: range.unwrap_or_else(unknown),
        words: match case.never() {
            Some(never) => case.say1("jackbolt_card.values.by_hand_never", "torque", &never.value),
            None => case.label("jackbolt_card.values.by_hand"),
        },
    }]
}

/// The rounds of the release plan; none of its numbers where it is missing or overloads the last jackbolt.
fn release(case: &Case<'_>) -> Rounds {
    let columns = rounds::columns(case, MOST_TICKS);
    let boxes = columns.len();
    let plan = case.plan().map(|plan| &plan.release);
    let rows = match plan.filter(|plan| plan.breach.is_none()) {
        Some(plan) => rows(case, plan, boxes),
        None => vec![missing(case, boxes)],
    };
    let driver = case
        .driver_loosens()
        .then_some("jackbolt_card.release.driver");
    let end: Vec<&str> = match plan {
        Some(plan) if plan.breach.is_none() => ["jackbolt_card.release.all"]
            .into_iter()
            .chain(driver)
            .collect(),
        Some(plan) if plan.breach == Some(ReleaseBreach::Rounds) => {
            vec![
                "jackbolt_card.release.no_plan",
                "jackbolt_card.release.too_many",
            ]
        }
        Some(_) => vec![
            "jackbolt_card.release.no_plan",
            "jackbolt_card.release.unload",
        ],
        None => vec!["jackbolt_card.release.no_plan"],
    };
    Rounds {
        head: Head {
            title: case.label(match case.get(ids::LOOSENING_LENGTH) {
                Some(_) => "jackbolt_card.release.title_at_hand",
                None => "jackbolt_card.release.title",
            }),
            note: String::new(),
        },
        expected: vec![Expected {
            main: case.label("jackbolt_card.release.left"),
            under: case.label("jackbolt_card.release.last"),
        }],
        columns,
        rows,
        end: end.into_iter().map(|key| case.label(key)).collect(),
    }
}

/// One box with who must fill it.
fn missing(case: &Case<'_>, boxes: usize) -> Round {
    Round {
        name: "R1".into(),
        dial: None,
        value: Some(case.value(None, Who::Engineer)),
        line: case.label("jackbolt_card.release.angle_unknown"),
        expected: vec![Expected::default()],
        boxes: vec![true; boxes],
    }
}

fn rows(case: &Case<'_>, plan: &ReleasePlan, boxes: usize) -> Vec<Round> {
    plan.rounds
        .iter()
        .enumerate()
        .map(|(index, round)| Round {
            name: format!("R{}", index + 1),
            dial: round.angle.map(|angle| -angle.to_degrees()),
            value: Some(angle(case, round)),
            line: match round.angle {
                Some(angle) => how_far(case, index, angle),
                None => case.label("jackbolt_card.release.in_turn"),
            },
            expected: vec![Expected {
                main: whole_percent(round.mean_left.likely),
                under: whole_percent(round.peak),
            }],
            boxes: vec![true; boxes],
        })
        .collect()
}

fn angle(case: &Case<'_>, round: &ReleaseRound) -> Value {
    match round.angle {
        Some(angle) => {
            let printed = case.context.print(Angle::from_si(angle));
            Value {
                number: Entry::Given(printed.value),
                unit: printed.unit,
            }
        }
        None => Value {
            number: Entry::Given(case.label("jackbolt_card.release.loose")),
            unit: String::new(),
        },
    }
}

/// The turn in parts of a flat, and as travel of the hand where the length of the wrench is known.
fn how_far(case: &Case<'_>, index: usize, angle: f64) -> String {
    let number = u16::try_from(index + 1).unwrap_or(u16::MAX);
    let ledger = &case.subject.computed.ledger;
    let flats = angle.to_degrees() * FLATS / 360.0;
    match ledger.get(ids::RELEASE_ROUND_TRAVEL.at(number)) {
        None => case.say1("jackbolt_card.release.flat", "part", &part_of_flat(flats)),
        Some(travel) => {
            let values = Values::new()
                .with("part", nearest_part(flats))
                .with("travel", case.context.print(by_eye(travel)).joined());
            case.context
                .say("jackbolt_card.release.flat_and_travel", &values)
        }
    }
}

/// A hand is held to 5 mm at best.
fn by_eye(travel: Length) -> Length {
    const STEP: f64 = 0.005;
    Length::from_si((travel.si() / STEP).round() * STEP)
}

/// Parts of a flat that an eye can tell; between two of them stands the travel of the hand.
const PARTS: [(u8, u8); 17] = [
    (1, 12),
    (1, 11),
    (1, 10),
    (1, 9),
    (1, 8),
    (1, 7),
    (1, 6),
    (1, 5),
    (1, 4),
    (1, 3),
    (5, 12),
    (1, 2),
    (7, 12),
    (2, 3),
    (3, 4),
    (5, 6),
    (11, 12),
];

/// The nearest part of a flat.
fn nearest_part(flats: f64) -> String {
    let away = |(over, under): &(u8, u8)| (f64::from(*over) / f64::from(*under) - flats).abs();
    let nearest = PARTS.iter().min_by(|a, b| away(a).total_cmp(&away(b)));
    nearest.map_or_else(String::new, |(over, under)| format!("{over}/{under}"))
}

/// `1/4.3` of a flat, or `1.2` from a whole flat on: a flat is a sixth of a turn.
fn part_of_flat(flats: f64) -> String {
    if flats < 1.0 {
        format!("1/{}", digits((10.0 / flats).round() / 10.0))
    } else {
        digits((flats * 10.0).round() / 10.0)
    }
}
