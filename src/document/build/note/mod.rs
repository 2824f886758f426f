//! The calculation note of a group of joints with equal inputs.

mod hand_check;
mod inputs;
mod limits;
mod notation;
mod steps;
mod tables;

use crate::calc::{Group, Key, Ledger, ids};
use crate::document::card::Head;
use crate::document::desk::{BigValue, Furniture, PageWords, Paragraphs};
use crate::document::note::{Note, Span, chart};
use crate::joint::Joint;
use crate::units::{Dimension, Quantity};
use crate::wording::Values;

use super::context::{Context, Made, percent};
use super::furniture::{
    bare_furniture, bare_title_block, page_words, sealed, sealed_title_block,
};

/// The note of a group; `label` is how other pages of the same PDF refer to it.
pub fn note(context: &Context<'_>, group: &Group, label: String) -> Option<Made<Note>> {
    let first = context.joints.get(*group.members.first()?)?;
    let computed = &group.computed;
    let (ledger, chosen) = (&computed.ledger, &computed.chosen);
    let document = context.label("document.note");
    let title = title(context, first, group);
    let governing = limits::rows(context, first, group);
    let maker = steps::Maker { context, ledger, chosen };
    let mut note = Note {
        label,
        furniture: furniture(context, &document),
        subtitle: subtitle(context, first, group),
        summary: summary(context, group, &governing),
        valid: valid(context, first, group),
        chart: load_chart(context, first, group),
        inputs: inputs::inputs(context, ledger),
        hand_check: hand_check::lines(context, first, group),
        title_block: bare_title_block(context, &document, &title, ""),
        steps: maker.steps(),
        holds: maker.holds(),
        limits: limits::table(context, governing),
        tables: tables::tables(context, first, group),
        not_checked: not_checked(context, first),
        title,
    };
    let code = context.code(&note);
    let number = number(context, group);
    note.furniture = sealed(context, note.furniture, &code);
    note.title_block = sealed_title_block(context, note.title_block, &number);
    Some(Made { content: note, code })
}

/// A note counts its own pages, and in small print those of the pack.
fn furniture(context: &Context<'_>, document: &str) -> Furniture {
    let pack_page = format!("{} ", context.label("isolation.pack_page"));
    Furniture {
        own_pages: Some(page_words(context)),
        pages: PageWords { before: pack_page, ..page_words(context) },
        ..bare_furniture(context, document)
    }
}

/// The group, and what the equipment is.
fn title(context: &Context<'_>, joint: &Joint, group: &Group) -> String {
    let equipment = joint.identity.equipment_name.clone().unwrap_or_default();
    let values = Values::new().with("group", group.name.as_str()).with("equipment", equipment);
    context.say("note_more.title", &values)
}

/// `HL-31-WP-007-CN-channel flange/a`.
pub(super) fn number(context: &Context<'_>, group: &Group) -> String {
    let values =
        Values::new().with("number", context.number()).with("group", group.name.as_str());
    context.say("note.number", &values)
}

fn subtitle(context: &Context<'_>, joint: &Joint, group: &Group) -> String {
    let tags: Vec<&str> = group
        .members
        .iter()
        .filter_map(|&index| context.joints.get(index))
        .map(|joint| joint.tag.as_str())
        .collect();
    let tags = match tags.as_slice() {
        [first, .., last] if tags.len() > 3 => format!("{first} … {last}"),
        tags => tags.join(", "),
    };
    let studs = &joint.mechanics.studs;
    let method = joint.mechanics.method.value().map_or("", crate::job::Method::word);
    let values = Values::new()
        .with("count", group.members.len())
        .with("joints", tags)
        .with("studs", studs.count.value().map(|it| context.text(it)).unwrap_or_default())
        .with("thread", studs.thread.get().map_or("", |it| it.designation.as_str()))
        .with("method", method);
    context.say("note.subtitle", &values)
}

fn summary(context: &Context<'_>, group: &Group, limits: &[limits::Row]) -> Vec<BigValue> {
    let ledger = &group.computed.ledger;
    let set = context.say1("note_more.summary.band", "load", text(context, ledger, ids::LOAD.key()));
    let factor = text(context, ledger, ids::EQUIVALENT_NUT_FACTOR.key());
    let mut values = vec![
        big(context, "load", ledger, ids::TARGET_LOAD.key(), set),
        big(
            context,
            "torque",
            ledger,
            ids::SET_TORQUE.key(),
            context.say1("note_more.summary.factor", "factor", factor),
        ),
    ];
    if ledger.entry(ids::SET_PRESSURE.key()).is_some() {
        let tools: Vec<String> =
            group.computed.chosen.turning.iter().map(|tool| tool.name.clone()).collect();
        values.push(big(context, "pressure", ledger, ids::SET_PRESSURE.key(), context.wording.join(&tools)));
    }
    let worst = limits
        .iter()
        .filter_map(|row| row.ratio.map(|ratio| (ratio, row)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((ratio, row)) = worst {
        values.push(BigValue {
            label: context.label("note.summary.governs"),
            value: limits::ratio_text(ratio),
            unit: String::new(),
            line: row.quantity.clone(),
        });
    }
    values
}

/// A value that the eye finds first; a dash where it is missing, with who must give it below.
fn big(context: &Context<'_>, key: &str, ledger: &Ledger, id: Key, line: String) -> BigValue {
    let label = context.label(&format!("note.summary.{key}"));
    let lack = ledger.entry(id).and_then(|entry| entry.value.as_ref().err());
    match (context.of_key(ledger, id), lack) {
        (Some(printed), _) => BigValue { label, value: printed.value, unit: printed.unit, line },
        (None, lack) => BigValue {
            label,
            value: "\u{2013}".to_owned(),
            unit: String::new(),
            line: lack.map_or(line, |lack| context.say("note.steps.waits", &waits(context, lack))),
        },
    }
}

fn waits(context: &Context<'_>, lack: &crate::calc::Lack) -> Values {
    Values::new().with("key", lack.key).with("who", context.who(lack.who))
}

/// The printed value of an entry with its unit, or a question mark.
fn text(context: &Context<'_>, ledger: &Ledger, key: Key) -> String {
    context.of_key(ledger, key).map_or_else(|| "?".to_owned(), |printed| printed.joined())
}

fn valid(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<String> {
    let ledger = &group.computed.ledger;
    let mechanics = &joint.mechanics;
    let stud = Values::new()
        .with("grade", mechanics.studs.grade.get().map_or("?", String::as_str))
        .with("length", text(context, ledger, ids::LENGTH.key()))
        .with("grip", text(context, ledger, ids::GRIP.key()));
    let lubricant = Values::new()
        .with("lubricant", mechanics.lubricant.name.get().map_or("?", String::as_str))
        .with("trial", mechanics.lubricant.source.get().map_or("", String::as_str));
    let tools: Vec<String> =
        group.computed.chosen.turning.iter().map(|tool| tool.name.clone()).collect();
    let tools = Values::new()
        .with("method", mechanics.method.value().map_or("?", crate::job::Method::word))
        .with("tools", if tools.is_empty() { "?".to_owned() } else { context.wording.join(&tools) });
    let parts = [
        context.say("note.valid_stud", &stud),
        context.say("note.valid_lubricant", &lubricant),
        context.say("note.valid_tools", &tools),
    ];
    let head = context.label("note.valid_head");
    vec![format!("{head}: {}.", parts.join("; "))]
}

/// Least, target and greatest load against what the stud may carry.
fn load_chart(
    context: &Context<'_>,
    joint: &Joint,
    group: &Group,
) -> Option<crate::document::note::Chart> {
    let ledger = &group.computed.ledger;
    let unit = context.units.of(Dimension::Force)?;
    let in_unit = |id| ledger.get(id).map(|load: crate::units::Force| unit.from_si(load.si()));
    let (least, target, greatest) =
        (in_unit(ids::LEAST_LOAD)?, in_unit(ids::LOAD)?, in_unit(ids::GREATEST_LOAD)?);
    let mut limits = Vec::new();
    if let (Some(share), Some(combined)) = (ledger.get(ids::COMBINED_SHARE), Some(greatest)) {
        // The load at which the combined stress would reach its limit: both grow with the load.
        let at_limit = combined * joint.work.limit("L01") / share.si();
        limits.push((context.label("note.chart.stud"), at_limit));
    }
    let scatter = ledger.get(ids::SCATTER).map(|it| percent(it.si())).unwrap_or_default();
    let head = Head {
        title: context.say1("note.chart.title", "unit", unit.name),
        note: context.say1("note.chart.note", "scatter", scatter),
    };
    let alt = Values::new()
        .with("least", text(context, ledger, ids::LEAST_LOAD.key()))
        .with("target", text(context, ledger, ids::LOAD.key()))
        .with("greatest", text(context, ledger, ids::GREATEST_LOAD.key()));
    let band = Span { label: context.label("note.chart.tightening"), least, target, greatest };
    chart(head, context.say("note.chart.alt", &alt), &[band], &limits)
}

fn not_checked(context: &Context<'_>, joint: &Joint) -> Paragraphs {
    let given = if joint.mechanics.gasket.is_some() { "" } else { "no gasket" };
    let values = Values::new().with("given", given);
    let rows = context.list("note.not_checked.rows", &values).join("; ");
    let texts = vec![format!("{rows}. {}", context.label("note.not_checked.decides"))];
    Paragraphs {
        head: Head { title: context.label("note.not_checked.title"), note: String::new() },
        texts,
    }
}
