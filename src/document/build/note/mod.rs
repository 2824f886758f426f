//! The calculation note of a group of joints with equal inputs.

mod hand_check;
mod hours;
mod inputs;
mod jackbolts;
mod limit_table;
mod limits;
mod notation;
mod passes;
mod steps;
mod summary;
mod tables;

use crate::calc::{Key, Ledger};
use crate::document::blocks::Head;
use crate::document::desk::{Furniture, PageWords, Paragraphs};
use crate::document::note::Note;
use crate::joint::Joint;
use crate::methods::jackbolt::ids;
use crate::methods::{Computed, Group};
use crate::wording::Values;

use super::context::{Context, Made};
use super::furniture::{bare_furniture, bare_title_block, page_words, sealed, sealed_title_block};
use super::has_notes_apart;

/// The note of a group; `label` is how other pages of the same PDF refer to it.
pub fn note(context: &Context<'_>, group: &Group, label: String) -> Option<Made<Note>> {
    let first = context.joints.get(*group.members.first()?)?;
    let computed = &group.computed;
    let (ledger, chosen) = (&computed.ledger, &computed.chosen);
    let document = context.label("document.note");
    let title = title(context, first, group);
    let governing = limits::rows(context, first, group);
    let maker = steps::Maker {
        context,
        ledger,
        chosen,
    };
    let mut note = Note {
        label,
        furniture: furniture(context, &document),
        subtitle: subtitle(context, first, group),
        summary: summary::values(context, group, &governing),
        valid: valid(context, first, group),
        chart: summary::load_chart(context, first, group),
        plan: jackbolts::chart(context, computed),
        lookup: jackbolts::lookup(context, computed),
        inputs: inputs::inputs(context, computed),
        hand_check: hand_check::lines(context, first, group),
        title_block: bare_title_block(context, &document, &title, ""),
        steps: maker.steps(),
        holds: maker.holds(),
        limits: limit_table::table(context, governing),
        tables: tables::tables(context, first, group),
        not_checked: not_checked(context, first, computed),
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

/// A note counts its own pages, and in small print those of the file that it stands in: the pack, or
/// in a large job a file of notes.
fn furniture(context: &Context<'_>, document: &str) -> Furniture {
    let file = if has_notes_apart(context.joints.len(), context.plan) {
        "note.file_page"
    } else {
        "isolation.pack_page"
    };
    let file_page = format!("{} ", context.label(file));
    Furniture {
        own_pages: Some(page_words(context)),
        pages: PageWords {
            before: file_page,
            ..page_words(context)
        },
        ..bare_furniture(context, document)
    }
}

/// The group, and what the equipment is.
fn title(context: &Context<'_>, joint: &Joint, group: &Group) -> String {
    let equipment = joint.identity.equipment_name.clone().unwrap_or_default();
    let values = Values::new()
        .with("group", group.name.as_str())
        .with("equipment", equipment);
    context.say("note_more.title", &values)
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
    let method = joint.mechanics.method.value().unwrap_or_default();
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
    let turning = summary::turning_tools(context, group);
    let tools = Values::new()
        .with("method", mechanics.method.value().unwrap_or("?"))
        .with(
            "tools",
            if turning.is_empty() {
                "?".to_owned()
            } else {
                turning
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

fn not_checked(context: &Context<'_>, joint: &Joint, computed: &Computed) -> Paragraphs {
    let given = if joint.mechanics.gasket.is_some() {
        ""
    } else {
        "no gasket"
    };
    let values = Values::new()
        .with("given", given)
        .with("jackbolts", computed.plan.jackbolts().is_some())
        .with(
            "threads",
            computed.ledger.lack(ids::BODY_SHEAR_SHARE).is_some(),
        );
    let rows = context.list("note.not_checked.rows", &values).join("; ");
    let texts = vec![format!(
        "{rows}. {}",
        context.label("note.not_checked.decides")
    )];
    Paragraphs {
        head: Head {
            title: context.label("note.not_checked.title"),
            note: String::new(),
        },
        texts,
    }
}
