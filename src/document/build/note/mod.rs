//! The calculation note of a group of joints with equal inputs.

mod hand_check;
mod limits;
mod steps;

use crate::calc::{Group, Key, Ledger, ids};
use crate::document::card::Head;
use crate::document::desk::{BigValue, Cell, Column, Paragraphs, Table};
use crate::document::note::{Note, Span, chart};
use crate::joint::Joint;
use crate::units::{Dimension, Quantity};
use crate::wording::Values;

use super::context::{Context, Made, percent};
use super::furniture::{bare_furniture, bare_title_block, page_words, sealed, sealed_title_block};

/// The note of a group; `label` is how other pages of the same PDF refer to it.
pub fn note(context: &Context<'_>, group: &Group, label: String) -> Option<Made<Note>> {
    let first = context.joints.get(*group.members.first()?)?;
    let ledger = &group.computed.ledger;
    let document = context.label("document.note");
    let title = group.name.clone();
    let governing = limits::rows(context, first, group);
    let own_pages = Some(page_words(context));
    let mut note = Note {
        label,
        furniture: crate::document::desk::Furniture {
            own_pages,
            ..bare_furniture(context, &document)
        },
        subtitle: subtitle(context, first, group),
        summary: summary(context, ledger, &governing),
        valid: valid(context, first, group),
        chart: load_chart(context, first, group),
        inputs: steps::inputs(context, ledger),
        hand_check: hand_check::lines(context, first, group),
        title_block: bare_title_block(context, &document, &title, ""),
        steps: steps::steps(context, ledger),
        limits: limits::table(context, governing),
        tables: tables(context, first, group),
        not_checked: not_checked(context, first),
        title,
    };
    let code = context.code(&note);
    let number = number(context, group);
    note.furniture = sealed(context, note.furniture, &code);
    note.title_block = sealed_title_block(context, note.title_block, &number);
    Some(Made {
        content: note,
        code,
    })
}

/// `HL-31-WP-007-CN-channel flange/a`.
pub(super) fn number(context: &Context<'_>, group: &Group) -> String {
    let values = Values::new()
        .with("number", context.number())
        .with("group", group.name.as_str());
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
    let method = joint
        .mechanics
        .method
        .value()
        .map_or("", crate::job::Method::word);
    let values = Values::new()
        .with("count", group.members.len())
        .with("joints", tags)
        .with(
            "studs",
            studs
                .count
                .value()
                .map(|it| context.text(it))
                .unwrap_or_default(),
        )
        .with(
            "thread",
            studs.thread.get().map_or("", |it| it.designation.as_str()),
        )
        .with("method", method);
    context.say("note.subtitle", &values)
}

fn summary(context: &Context<'_>, ledger: &Ledger, limits: &[limits::Row]) -> Vec<BigValue> {
    let big = |key: &str, id: Key, line: String| {
        let printed = context.of_key(ledger, id);
        BigValue {
            label: context.label(&format!("note.summary.{key}")),
            value: printed
                .as_ref()
                .map_or_else(|| "?".to_owned(), |it| it.value.clone()),
            unit: printed.map(|it| it.unit).unwrap_or_default(),
            line,
        }
    };
    let share = ledger
        .get(ids::SHARE_OF_YIELD)
        .map(|share| context.say1("note.summary.share", "share", percent(share.si())));
    let mut values = vec![big("load", ids::LOAD.key(), share.unwrap_or_default())];
    let band = Values::new()
        .with("least", text(context, ledger, ids::LEAST_LOAD.key()))
        .with("greatest", text(context, ledger, ids::GREATEST_LOAD.key()))
        .with(
            "scatter",
            ledger
                .get(ids::SCATTER)
                .map(|it| percent(it.si()))
                .unwrap_or_default(),
        );
    values.push(big(
        "torque",
        ids::SET_TORQUE.key(),
        context.say("note.summary.least_most", &band),
    ));
    if ledger.entry(ids::SET_PRESSURE.key()).is_some() {
        values.push(big("pressure", ids::SET_PRESSURE.key(), String::new()));
    }
    let worst = limits
        .iter()
        .filter_map(|row| row.ratio.map(|ratio| (ratio, row)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((ratio, row)) = worst {
        values.push(BigValue {
            label: context.label("note.summary.governs"),
            value: two_digits(ratio),
            unit: String::new(),
            line: row.quantity.clone(),
        });
    }
    values
}

/// A ratio to two decimals, as a reader compares it with 1.
fn two_digits(ratio: f64) -> String {
    format!("{:.2}", ratio * (1.0 + 1e-12))
}

/// The printed value of an entry with its unit, or a question mark.
fn text(context: &Context<'_>, ledger: &Ledger, key: Key) -> String {
    context
        .of_key(ledger, key)
        .map_or_else(|| "?".to_owned(), |printed| printed.joined())
}

fn valid(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<String> {
    let ledger = &group.computed.ledger;
    let mechanics = &joint.mechanics;
    let stud = Values::new()
        .with(
            "grade",
            mechanics.studs.grade.get().map_or("?", String::as_str),
        )
        .with("length", text(context, ledger, ids::LENGTH.key()))
        .with("grip", text(context, ledger, ids::GRIP.key()));
    let lubricant = Values::new()
        .with(
            "lubricant",
            mechanics.lubricant.name.get().map_or("?", String::as_str),
        )
        .with(
            "trial",
            mechanics.lubricant.source.get().map_or("", String::as_str),
        );
    let tools: Vec<String> = group
        .computed
        .chosen
        .turning
        .iter()
        .map(|tool| tool.name.clone())
        .collect();
    let tools = Values::new()
        .with(
            "method",
            mechanics
                .method
                .value()
                .map_or("?", crate::job::Method::word),
        )
        .with(
            "tools",
            if tools.is_empty() {
                "?".to_owned()
            } else {
                context.wording.join(&tools)
            },
        );
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

fn tables(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<Table> {
    let mut tables = vec![members(context, group), hours(context, group)];
    let fasteners = joint
        .mechanics
        .studs
        .count
        .value()
        .map_or(0.0, Quantity::si);
    if fasteners > 32.0 {
        tables.push(order(context, group));
    }
    tables
}

fn members(context: &Context<'_>, group: &Group) -> Table {
    let label = |key: &str| context.label(&format!("register.{key}"));
    let head = Head {
        title: context.label("note.tables.members"),
        note: String::new(),
    };
    let mut table = Table::new(
        head,
        vec![
            Column::new(label("tag"), 50.0).strong(),
            Column::new(label("equipment"), 40.0),
            Column::new(label("place"), 86.0),
        ],
    );
    table.rows = group
        .members
        .iter()
        .filter_map(|&index| context.joints.get(index))
        .map(|joint| {
            vec![
                Cell::text(joint.tag.clone()),
                Cell::text(joint.identity.equipment.get().cloned().unwrap_or_default()),
                Cell::text(joint.identity.location.get().cloned().unwrap_or_default()),
            ]
        })
        .collect();
    table
}

fn hours(context: &Context<'_>, group: &Group) -> Table {
    let label = |key: &str| context.label(&format!("note.tables.{key}"));
    let head = Head {
        title: label("hours"),
        note: context.label("note_more.hours_note"),
    };
    let mut table = Table::new(
        head,
        vec![
            Column::new("", 86.0).strong(),
            Column::new(label("low"), 30.0).right(),
            Column::new(label("typical"), 30.0).right(),
            Column::new(label("high"), 30.0).right(),
        ],
    );
    let computed = &group.computed;
    for (key, labour) in [
        ("hours_tighten", &computed.tighten_labour),
        ("hours_loosen", &computed.loosen_labour),
    ] {
        for (kind, span) in [("elapsed", labour.elapsed), ("labour", labour.labour)] {
            let span = span.to_print();
            let name = context.say1(
                &format!("note_more.{key}"),
                "what",
                context.label(&format!("note_more.{kind}")),
            );
            table.rows.push(vec![
                Cell::text(name),
                Cell::text(context.text(span.low)),
                Cell::text(context.text(span.typical)),
                Cell::text(context.text(span.high)),
            ]);
        }
    }
    table
}

/// The whole order, eight moves a row; above 32 fasteners the picture numbers groups only.
fn order(context: &Context<'_>, group: &Group) -> Table {
    let head = Head {
        title: context.label("note.tables.order"),
        note: String::new(),
    };
    let columns = (0..8).map(|_| Column::new("", 22.0)).collect();
    let mut table = Table::new(head, columns);
    let moves: Vec<String> = group
        .computed
        .order
        .as_ref()
        .map(|order| {
            order
                .lettered()
                .map(|(letter, studs)| {
                    let studs: Vec<String> = studs.iter().map(ToString::to_string).collect();
                    format!("{letter}  {}", studs.join("·"))
                })
                .collect()
        })
        .unwrap_or_default();
    table.rows = moves
        .chunks(8)
        .map(|row| {
            let empty = std::iter::repeat_with(String::new);
            row.iter()
                .cloned()
                .chain(empty)
                .take(8)
                .map(Cell::text)
                .collect()
        })
        .collect();
    table
}

fn not_checked(context: &Context<'_>, joint: &Joint) -> Paragraphs {
    let given = if joint.mechanics.gasket.is_some() {
        ""
    } else {
        "no gasket"
    };
    let values = Values::new().with("given", given);
    let mut texts = context.list("note.not_checked.rows", &values);
    texts.push(context.label("note.not_checked.decides"));
    Paragraphs {
        head: Head {
            title: context.label("note.not_checked.title"),
            note: String::new(),
        },
        texts,
    }
}
