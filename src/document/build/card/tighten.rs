//! The card for tightening.

use crate::calc::{Pass, PassKind, ids};
use crate::document::card::{
    Card, Caution, Column, ColumnKind, Entry, Footer, Second, Step, Steps, Target, Ticks, Value,
};
use crate::job::{Pattern, Washers};
use crate::methods::hydraulic;
use crate::units::Quantity;
use crate::wording::Values;

use super::super::context::{Context, Made, percent};
use super::parts::{danger, facts, head, identity, in_words, running};
use super::picture::{order_strip, picture};
use super::{Subject, jackbolt, record, seal};

/// Most ticks on side one.
const MOST_TICKS: usize = 9;

/// The card for tightening a joint. `cautions` stand before the step they belong to, at most three.
pub fn tightening_card(
    context: &Context<'_>,
    subject: &Subject<'_>,
    cautions: Vec<Caution>,
) -> Made<Card> {
    let card = Card {
        running: running(context, subject),
        identity: identity(context, subject, "word.tighten", false),
        draft: None,
        danger: danger(context, subject),
        cautions,
        ticks: Ticks {
            head: head(context, "card.ticks.title", "card.ticks.note"),
            items: ticks(context, subject),
            ..Ticks::default()
        },
        target: target(context, subject),
        picture: picture(context, subject, false),
        steps: steps(context, subject),
        order: order_strip(context, subject),
        jackbolts: None,
        record: record::tightening(context, subject),
        footer: Footer::default(),
    };
    if jackbolt::is_jackbolted(subject) {
        return seal(context, jackbolt::tightening(context, subject, card));
    }
    seal(context, card)
}

fn is_hydraulic(subject: &Subject<'_>) -> bool {
    subject.joint.mechanics.method.value() == Some(hydraulic::WORD)
}

/// What must be true before the first nut. The tool's own checks come from the job; with more than
/// nine lines the ones that the record side asks for anyway give way.
fn ticks(context: &Context<'_>, subject: &Subject<'_>) -> Vec<String> {
    let mechanics = &subject.joint.mechanics;
    let chosen = &subject.computed.chosen;
    let say =
        |id: &str, key: &'static str, value: &str| context.say1(&format!("tick.{id}"), key, value);
    let label = |id: &str| context.label(&format!("tick.{id}"));
    let mut needed = vec![label("seats")];
    needed.push(match &mechanics.gasket {
        Some(gasket) => say("gasket", "gasket", &gasket.name),
        None => label("no_gasket"),
    });
    needed.push(label("nuts_run"));
    let lubricant = mechanics.lubricant.name.get();
    needed.push(say(
        "lubricant",
        "lubricant",
        lubricant.map_or("", String::as_str),
    ));
    needed.push(match mechanics.studs.washers.value() {
        Some(Washers::None) => label("no_washers"),
        _ => label("washers"),
    });
    let mut spare = Vec::new();
    if is_hydraulic(subject) {
        needed.push(label("calibration_hydraulic"));
        if let Some(reaction) = subject.joint.work.reaction.get() {
            needed.push(say("reaction_on", "reaction", reaction));
        }
        needed.push(label("clear_hydraulic"));
        spare.extend(
            chosen
                .turning
                .iter()
                .flat_map(|tool| tool.checks.iter().cloned()),
        );
        spare.sort();
        spare.dedup();
    } else {
        let tool = chosen.turning.first().map_or("", |tool| tool.name.as_str());
        needed.push(if tool.is_empty() {
            label("calibration_any")
        } else {
            say("calibration_hand", "tool", tool)
        });
        needed.push(label("clear_hand"));
    }
    if let Some(back_up) = &chosen.back_up {
        spare.push(say("backup", "backup", &back_up.name));
    }
    if let Some(first) = subject.joint.work.first.get() {
        spare.push(say("numbers", "first", first));
    }
    spare.extend(protrusion(context, subject));
    let room = MOST_TICKS.saturating_sub(needed.len());
    needed.extend(spare.into_iter().take(room));
    needed
}

fn protrusion(context: &Context<'_>, subject: &Subject<'_>) -> Option<String> {
    let checks = &subject.joint.mechanics.checks;
    let (least, most) = (
        checks.least_protrusion.value()?,
        checks.greatest_protrusion.value()?,
    );
    let values = Values::new()
        .with("least", context.text(least))
        .with("most", context.text(most));
    Some(context.say("tick.thread_out", &values))
}

fn target(context: &Context<'_>, subject: &Subject<'_>) -> Target {
    let turning = &subject.computed.chosen.turning;
    let reading = subject.computed.readings(subject.joint).full();
    let printed = reading.as_ref().map(|reading| context.reading(reading));
    let printed = printed.map_err(|lack| lack.who);
    let first = printed.as_ref().ok();
    let second = reading.as_ref().ok().and_then(|reading| {
        // Where the dial does not show what the nut gets, the card says both.
        let (other, words) = match (reading.at_nut(), reading.pressure()) {
            (Some(at_nut), Some(_)) => {
                let words =
                    context.say1("target.at_pressure", "pressure", context.reading(reading));
                (at_nut, words)
            }
            (Some(at_nut), None) => (at_nut, context.label("target.at_nut")),
            (None, _) => (
                context.in_other_unit(reading)?,
                context.label("target.other_unit"),
            ),
        };
        Some(Second {
            number: other.value,
            unit: other.unit,
            words,
        })
    });
    let label = match (is_hydraulic(subject), turning.len()) {
        (true, 2..) => context.say1("target.pressure_many", "count", turning.len()),
        (true, _) => context.label("target.pressure"),
        (false, 2..) => context.label("target.torque_many"),
        (false, _) => context.label("target.torque"),
    };
    Target {
        label,
        words: first.map(|it| in_words(context, it)).unwrap_or_default(),
        value: Value {
            unit: first.map(|it| it.unit.clone()).unwrap_or_default(),
            number: match printed {
                Ok(printed) => Entry::Given(printed.value),
                Err(who) => Entry::Missing(context.to_be_given(who)),
            },
        },
        second,
        facts: facts(context, subject, false),
    }
}

fn steps(context: &Context<'_>, subject: &Subject<'_>) -> Steps {
    let rows = subject
        .computed
        .passes
        .iter()
        .map(|pass| step(context, subject, *pass))
        .collect();
    let circular = subject
        .computed
        .passes
        .iter()
        .find(|pass| pass.kind == PassKind::Circular);
    let end = circular.map(|pass| context.say1("pass.end", "pass", format!("P{}", pass.number)));
    Steps {
        head: head(context, "card.passes.title", ""),
        columns: vec![
            Column {
                head: context.label("card.passes.done"),
                kind: ColumnKind::Tick,
            },
            Column {
                head: context.label("card.passes.time"),
                kind: ColumnKind::Time,
            },
        ],
        rows,
        end: end.into_iter().collect(),
    }
}

fn step(context: &Context<'_>, subject: &Subject<'_>, pass: Pass) -> Step {
    let (value, line) = match pass.kind {
        PassKind::Snug => snug(context, subject),
        PassKind::Stepped => stepped(context, subject, pass),
        PassKind::Circular => (setting(context, subject, None), circular(context, subject)),
        PassKind::Repeat => (
            setting(context, subject, None),
            repeat(context, subject, pass),
        ),
    };
    Step {
        name: format!("P{}", pass.number),
        dial: None,
        value,
        line,
        boxes: vec![true, true],
    }
}

fn gaps(subject: &Subject<'_>, pass: u16) -> bool {
    subject.joint.mechanics.checks.gaps.value() == Some(true) && pass <= record::LAST_GAP_PASS
}

fn snug(context: &Context<'_>, subject: &Subject<'_>) -> (Value, String) {
    let snug = subject.computed.readings(subject.joint).low(ids::SNUG);
    let torque = snug.map(|snug| context.reading(&snug).joined());
    let values = Values::new()
        .with("torque", torque.unwrap_or_default())
        .with("gaps", gaps(subject, 0));
    let line = context.say("card.snug", &values);
    let word = context.label("card.passes.snug");
    (
        Value {
            number: Entry::Given(word),
            unit: String::new(),
        },
        line,
    )
}

/// What is set in a pass, or at the end.
fn setting(context: &Context<'_>, subject: &Subject<'_>, pass: Option<u16>) -> Value {
    let readings = subject.computed.readings(subject.joint);
    let reading = pass.map_or_else(|| readings.full(), |pass| readings.pass(pass));
    let printed = reading.ok().map(|reading| context.reading(&reading));
    match printed {
        Some(printed) => Value {
            number: Entry::Given(printed.value),
            unit: printed.unit,
        },
        None => Value {
            number: Entry::Missing(context.label("pass.by_hand")),
            unit: String::new(),
        },
    }
}

fn stepped(context: &Context<'_>, subject: &Subject<'_>, pass: Pass) -> (Value, String) {
    let share = subject.computed.ledger.get(ids::PASS_SHARE.at(pass.number));
    let order = subject.computed.order.as_ref();
    let letters: Vec<String> = order
        .map(|order| order.lettered().map(|(letter, _)| letter).collect())
        .unwrap_or_default();
    let values = Values::new()
        .with(
            "percent",
            share.map(|share| percent(share.si())).unwrap_or_default(),
        )
        .with("first", letters.first().map_or("", String::as_str))
        .with("last", letters.last().map_or("", String::as_str))
        .with("gaps", gaps(subject, pass.number));
    let circular = subject.joint.mechanics.plan.pattern.value() == Some(Pattern::Circular);
    let id = if circular || letters.len() < 2 {
        "pass.cross_one"
    } else {
        "pass.cross"
    };
    (
        setting(context, subject, Some(pass.number)),
        context.say(id, &values),
    )
}

fn circular(context: &Context<'_>, subject: &Subject<'_>) -> String {
    let many = subject.computed.chosen.turning.len() > 1;
    context.label(if many {
        "card.circle_one"
    } else {
        "card.circle"
    })
}

fn repeat(context: &Context<'_>, subject: &Subject<'_>, pass: Pass) -> String {
    let wait = subject
        .joint
        .mechanics
        .plan
        .repeat_after
        .as_ref()
        .and_then(|wait| wait.value());
    let values = Values::new()
        .with("pass", format!("P{}", pass.number.saturating_sub(1)))
        .with(
            "wait",
            wait.map(|wait| context.text(wait)).unwrap_or_default(),
        );
    context.say("pass.again", &values)
}
