//! What closes the statement: environment and waste, quality and records, words that it uses, papers that belong to it.

use crate::document::blocks::Head;
use crate::document::build::Context;
use crate::document::build::pack::scope;
use crate::document::build::pack::works::Works;
use crate::document::desk::{Cell, Column, Paragraphs, Table};
use crate::document::pack::{Block, Section};
use crate::document::voice::Voice;
use crate::job::Waste;
use crate::joint::Who;
use crate::wording::Values;
use crate::yaml::items;

use super::{own, text, text_or_box};

/// The sections.
pub(super) fn sections(context: &Context<'_>, works: &Works) -> Vec<Section> {
    vec![environment(context, works), papers(context)]
}

fn environment(context: &Context<'_>, works: &Works) -> Section {
    let label = |key: &str| context.label(&format!("statement.environment.{key}"));
    let mut table = Table::new(
        Head {
            title: label("wastes"),
            note: label("wastes_note"),
        },
        vec![
            Column::new(label("what"), 80.0).strong(),
            Column::new(label("code"), 36.0),
            Column::new(label("to"), 60.0),
        ],
    );
    table.row_height = 8.0;
    let given = items(own(context).and_then(|own| own.wastes.as_ref()));
    table.rows = given.map(|waste| given_row(context, waste)).collect();
    table.rows.extend(expected(context, works));
    let spill = text(own(context).and_then(|own| own.spill.as_ref()));
    let mut spills = Table::new(
        Head {
            title: label("spill"),
            note: String::new(),
        },
        vec![Column::new("", 46.0).strong(), Column::new("", 130.0)],
    );
    spills.row_height = 8.0;
    spills.rows = vec![vec![
        Cell::Text(label("spill_done")),
        text_or_box(context, spill, Who::Operator),
    ]];
    Section {
        label: "environment".to_owned(),
        title: label("title"),
        line: String::new(),
        new_page: true,
        blocks: vec![
            Block::Table(table),
            Block::Table(spills),
            texts(context, "quality"),
        ],
    }
}

fn given_row(context: &Context<'_>, waste: &Waste) -> Vec<Cell> {
    vec![
        Cell::Text(text(Some(&waste.what)).unwrap_or_default()),
        text_or_box(context, text(waste.code.as_ref()), Who::Operator),
        text_or_box(context, text(waste.to.as_ref()), Who::Operator),
    ]
}

/// What the hazards of these joints leave behind and the job does not speak of: boxes for code and place.
fn expected(context: &Context<'_>, works: &Works) -> Vec<Vec<Cell>> {
    let voice = Voice::new(context);
    let is_silent = own(context).and_then(|own| own.wastes.as_ref()).is_none();
    let hazards = works.hazards();
    let found = hazards
        .iter()
        .filter(|_| is_silent)
        .filter_map(|hazard| voice.find(&["statement", "waste", hazard.kind.key()]));
    found
        .map(|what| {
            let asked = || text_or_box(context, None, Who::Operator);
            vec![Cell::text(what), asked(), asked()]
        })
        .collect()
}

/// The words of the statement, the papers that it rests on, and those that go with it.
fn papers(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("statement.papers.{key}"));
    Section {
        label: "papers".to_owned(),
        title: label("title"),
        line: String::new(),
        new_page: false,
        blocks: vec![
            texts(context, "definitions"),
            Block::Table(scope::references(context)),
            Block::Text(scope::standards(context)),
            texts(context, "attached"),
        ],
    }
}

/// A head with the sentences of a list.
fn texts(context: &Context<'_>, key: &str) -> Block {
    let values = Values::new()
        .with("number", context.number())
        .with("revision", context.revision_name());
    Block::Text(Paragraphs {
        head: Head {
            title: context.label(&format!("statement.{key}.title")),
            note: String::new(),
        },
        texts: context.list(&format!("statement.{key}.texts"), &values),
    })
}
