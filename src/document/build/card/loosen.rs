//! The card for loosening: never-exceed value, expected break-out, release rounds.

use crate::calc::ids;
use crate::document::card::{
    Card, Caution, Column, ColumnKind, Entry, Footer, Second, Step, Steps, Target, Ticks, Value,
};
use crate::joint::Who;
use crate::methods::hydraulic;
use crate::units::Quantity;
use crate::wording::Values;

use super::super::context::{Context, Made};
use super::parts::{danger, entry, facts, head, identity, in_words, running};
use super::picture::{order_strip, picture};
use super::{Subject, jackbolt, record, seal};

/// Release rounds that get a row of their own; the box counts the rest.
const MOST_ROUNDS: usize = 4;

/// The card for loosening a joint.
pub fn loosening_card(
    context: &Context<'_>,
    subject: &Subject<'_>,
    cautions: Vec<Caution>,
) -> Made<Card> {
    let card = Card {
        running: running(context, subject),
        identity: identity(context, subject, "word.loosen", true),
        draft: None,
        danger: danger(context, subject),
        cautions,
        ticks: Ticks {
            head: head(context, "card.ticks.title_turn", "card.ticks.note"),
            items: ticks(context, subject),
            ..Ticks::default()
        },
        target: target(context, subject),
        picture: picture(context, subject, true),
        steps: steps(context, subject),
        order: order_strip(context, subject),
        jackbolts: None,
        record: record::loosening(context, subject),
        footer: Footer::default(),
    };
    if jackbolt::is_jackbolted(subject) {
        return seal(context, jackbolt::loosening(context, subject, card));
    }
    seal(context, card)
}

fn is_hydraulic(subject: &Subject<'_>) -> bool {
    subject.joint.mechanics.method.value() == Some(hydraulic::WORD)
}

fn ticks(context: &Context<'_>, subject: &Subject<'_>) -> Vec<String> {
    let label = |id: &str| context.label(&format!("tick.{id}"));
    let chosen = &subject.computed.chosen;
    let mut ticks = vec![label("right_joint")];
    if let Some(sheet) = subject.joint.work.isolation.get() {
        ticks.push(context.say1("tick.isolation", "sheet", sheet.as_str()));
    }
    ticks.push(label("zero"));
    let limit = crate::units::Temperature::celsius(60.0);
    ticks.push(context.say1("tick.cool", "limit", context.text(limit)));
    ticks.push(label("marked"));
    ticks.push(label("supported"));
    ticks.push(label("way_out"));
    if let Some(back_up) = &chosen.back_up {
        ticks.push(context.say1("tick.backup", "backup", back_up.name.as_str()));
    }
    if is_hydraulic(subject) {
        ticks.push(label("clear_hydraulic"));
    } else if let Some(wrench) = chosen.turning.first() {
        let same = chosen.loosening.iter().any(|tool| tool.name == wrench.name);
        ticks.push(if same {
            label("breaker_any")
        } else {
            context.say1("tick.breaker", "tool", wrench.name.as_str())
        });
    }
    ticks
}

/// Never-exceed value large; beside it the range in which nuts are expected to move.
fn target(context: &Context<'_>, subject: &Subject<'_>) -> Target {
    let readings = subject.computed.readings(subject.joint);
    let never = readings.never().ok().map(|never| context.reading(&never));
    let words = never
        .as_ref()
        .map(|never| context.say1("target.never_words", "words", in_words(context, never)));
    let break_out = readings.break_out().ok();
    let second = break_out.map(|range| {
        let [least, most] = range.map(|reading| context.reading(&reading));
        Second {
            number: context.say(
                "target.range",
                &Values::new()
                    .with("least", least.value)
                    .with("most", most.value),
            ),
            unit: most.unit,
            words: context.label("target.break_out"),
        }
    });
    Target {
        label: context.label("target.never"),
        words: words.unwrap_or_default(),
        value: Value {
            unit: never.as_ref().map(|it| it.unit.clone()).unwrap_or_default(),
            number: entry(context, never.map(|it| it.value), Who::Engineer),
        },
        second,
        facts: facts(context, subject, true),
    }
}

fn steps(context: &Context<'_>, subject: &Subject<'_>) -> Steps {
    let never = subject.computed.readings(subject.joint).never();
    let mut end = vec![context.label("round.end_open")];
    if let Ok(never) = never {
        let never = context.reading(&never).joined();
        end.push(context.say1("round.end", "never", never));
    }
    Steps {
        head: head(context, "card.rounds.title", ""),
        columns: vec![
            Column {
                head: context.label("card.rounds.done"),
                kind: ColumnKind::Tick,
            },
            Column {
                head: context.label("card.rounds.gap"),
                kind: ColumnKind::Number,
            },
        ],
        rows: rounds(context, subject),
        end,
    }
}

/// R1 by the printed angle, the same again, then slack from the far side, then off. How many rounds
/// it takes is counted on side two; the minimum stands beside the box.
fn rounds(context: &Context<'_>, subject: &Subject<'_>) -> Vec<Step> {
    let ledger = &subject.computed.ledger;
    let angle = ledger.get(ids::RELEASE_SET);
    let staged = subject.joint.mechanics.loosening.staged.value() == Some(true);
    let least = ledger
        .get(ids::RELEASE_ROUNDS)
        .map_or(2, |rounds| crate::calc::whole(rounds.si()));
    let turning = if staged {
        least.clamp(1, MOST_ROUNDS)
    } else {
        1
    };
    let letters: Vec<String> = subject
        .computed
        .order
        .as_ref()
        .map(|order| order.lettered().map(|(letter, _)| letter).collect())
        .unwrap_or_default();
    let first = Values::new()
        .with("first", letters.first().map_or("", String::as_str))
        .with("last", letters.last().map_or("", String::as_str));
    let value = || match angle {
        Some(angle) => {
            let printed = context.print(angle);
            Value {
                number: Entry::Given(printed.value),
                unit: printed.unit,
            }
        }
        None => Value {
            number: Entry::Missing(context.to_be_given(Who::Engineer)),
            unit: String::new(),
        },
    };
    let mut rows: Vec<Step> = (1..=turning)
        .map(|round| Step {
            name: format!("R{round}"),
            dial: angle.map(|angle| -angle.to_degrees()),
            value: value(),
            line: if round == 1 {
                context.say("card.rounds.go", &first)
            } else {
                context.label("card.rounds.again")
            },
            boxes: vec![true, true],
        })
        .collect();
    for (number, word, line) in [
        (turning + 1, "slack", "far_side"),
        (turning + 2, "out", "gap_open"),
    ] {
        rows.push(Step {
            name: format!("R{number}"),
            dial: None,
            value: Value {
                number: Entry::Given(context.label(&format!("card.rounds.{word}"))),
                unit: String::new(),
            },
            line: context.label(&format!("card.rounds.{line}")),
            boxes: vec![true, word == "slack"],
        });
    }
    rows
}
