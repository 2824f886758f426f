//! What the eye finds first: the big values and the chart of loads.

use crate::calc::{Key, Ledger};
use crate::document::blocks::Head;
use crate::document::desk::BigValue;
use crate::document::note::{Chart, Span, chart};
use crate::joint::Joint;
use crate::methods::Group;
use crate::methods::jackbolt::ids;
use crate::units::{Dimension, Quantity};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::{limit_table, limits, text};

/// Target load, setting, and what governs.
pub(super) fn values(
    context: &Context<'_>,
    group: &Group,
    limits: &[limits::Row],
) -> Vec<BigValue> {
    let ledger = &group.computed.ledger;
    let set = context.say1(
        "note_more.summary.band",
        "load",
        text(context, ledger, ids::LOAD.key()),
    );
    // A nut factor says nothing of jackbolts; what each of them carries does.
    let behind = if ledger.entry(ids::JACKBOLT_COUNT.key()).is_some() {
        let each = text(context, ledger, ids::JACKBOLT_LOAD.key());
        context.say1("note_jackbolt.each", "load", each)
    } else {
        let factor = text(context, ledger, ids::EQUIVALENT_NUT_FACTOR.key());
        context.say1("note_more.summary.factor", "factor", factor)
    };
    let mut values = vec![big(context, "load", ledger, ids::TARGET_LOAD.key(), set)];
    let tools = turning_tools(context, group);
    let settings = [
        ("torque", ids::SET_TORQUE.key(), behind),
        ("pressure", ids::SET_PRESSURE.key(), tools),
        ("turn", ids::SET_TURN.key(), accepted_turn(context, ledger)),
    ];
    // What a method does not set it does not enter.
    let is_set = |(_, id, _): &(&str, Key, String)| ledger.entry(*id).is_some();
    let settings = settings.into_iter().filter(is_set);
    values.extend(settings.map(|(key, id, line)| big(context, key, ledger, id, line)));
    let worst = limits
        .iter()
        .filter_map(|row| row.ratio.map(|ratio| (ratio, row)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((ratio, row)) = worst {
        values.push(BigValue {
            label: context.label("note.summary.governs"),
            value: limit_table::ratio_text(ratio),
            unit: String::new(),
            line: row.quantity.clone(),
        });
    }
    values
}

fn accepted_turn(context: &Context<'_>, ledger: &Ledger) -> String {
    let values = Values::new()
        .with("least", text(context, ledger, ids::LEAST_TURN.key()))
        .with("most", text(context, ledger, ids::GREATEST_TURN.key()));
    context.say("note_more.summary.accepted", &values)
}

/// A value that the eye finds first; a dash where it is missing, with who must give it below.
fn big(context: &Context<'_>, key: &str, ledger: &Ledger, id: Key, line: String) -> BigValue {
    let label = context.label(&format!("note.summary.{key}"));
    let lack = ledger.entry(id).and_then(|entry| entry.value.err());
    match (context.of_key(ledger, id), lack) {
        (Some(printed), _) => BigValue {
            label,
            value: printed.value,
            unit: printed.unit,
            line,
        },
        (None, lack) => BigValue {
            label,
            value: "\u{2013}".to_owned(),
            unit: String::new(),
            line: lack.map_or(line, |lack| {
                context.say("note.steps.waits", &waits(context, &lack))
            }),
        },
    }
}

fn waits(context: &Context<'_>, lack: &crate::joint::Lack) -> Values {
    Values::new()
        .with("key", lack.key)
        .with("who", context.who(lack.who))
}

/// Least, target and greatest load against what the stud may carry.
pub(super) fn load_chart(context: &Context<'_>, joint: &Joint, group: &Group) -> Option<Chart> {
    let ledger = &group.computed.ledger;
    let unit = context.units.of(Dimension::Force)?;
    let in_unit = |id| {
        ledger
            .get(id)
            .map(|load: crate::units::Force| unit.from_si(load.si()))
    };
    let (least, target, greatest) = (
        in_unit(ids::LEAST_LOAD)?,
        in_unit(ids::LOAD)?,
        in_unit(ids::GREATEST_LOAD)?,
    );
    let mut limits = Vec::new();
    if let (Some(share), Some(combined)) = (ledger.get(ids::COMBINED_SHARE), Some(greatest)) {
        // The load at which the combined stress would reach its limit: both grow with the load.
        let at_limit = combined * joint.work.limit("L01") / share.si();
        limits.push((context.label("note.chart.stud"), at_limit));
    }
    let scatter = ledger
        .get(ids::SCATTER)
        .map(|it| percent(it.si()))
        .unwrap_or_default();
    let head = Head {
        title: context.say1("note.chart.title", "unit", unit.name),
        note: context.say1("note.chart.note", "scatter", scatter),
    };
    let alt = Values::new()
        .with("least", text(context, ledger, ids::LEAST_LOAD.key()))
        .with("target", text(context, ledger, ids::LOAD.key()))
        .with("greatest", text(context, ledger, ids::GREATEST_LOAD.key()));
    let band = Span {
        label: context.label("note.chart.tightening"),
        least,
        target,
        greatest,
    };
    chart(head, context.say("note.chart.alt", &alt), &[band], &limits)
}

/// The tools that turn when tightening, by name; empty where none is known.
pub(super) fn turning_tools(context: &Context<'_>, group: &Group) -> String {
    let tools = group.computed.chosen.turning.iter();
    let names: Vec<String> = tools.map(|tool| tool.name.clone()).collect();
    context.wording.join(&names)
}
