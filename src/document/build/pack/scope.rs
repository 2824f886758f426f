//! What the pack covers and what not, and the documents and standards it rests on.

use std::collections::BTreeSet;

use crate::calc::Basis;
use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Paragraphs, Table};
use crate::document::pack::{Block, Section};
use crate::joint::{Origin, Who};
use crate::standards::{jackbolts, practice};
use crate::wording::Values;
use crate::yaml::At;

use super::super::context::Context;
use super::super::words::method_of;

/// The section.
pub(super) fn section(context: &Context<'_>) -> Section {
    let mut blocks = vec![Block::Text(scope(context)), Block::Text(excluded(context))];
    blocks.extend(regime(context));
    blocks.push(Block::Table(references(context)));
    blocks.push(Block::Text(standards(context)));
    Section {
        label: "scope".to_owned(),
        title: context.label("pack.scope.title"),
        line: String::new(),
        new_page: true,
        blocks,
    }
}

fn text(title: String, texts: Vec<String>) -> Paragraphs {
    Paragraphs {
        head: Head {
            title,
            note: String::new(),
        },
        texts,
    }
}

/// What is done.
pub(in crate::document) fn scope(context: &Context<'_>) -> Paragraphs {
    let title = context.label("pack.scope.head");
    let own = context
        .pack()
        .and_then(|pack| pack.scope.as_ref())
        .and_then(At::get);
    if let Some(own) = own {
        let paragraphs = own
            .as_str()
            .split('\n')
            .map(str::trim)
            .filter(|text| !text.is_empty());
        return text(title, paragraphs.map(str::to_owned).collect());
    }
    let gasketed = context
        .joints
        .iter()
        .any(|joint| joint.mechanics.gasket.is_some());
    let id = if gasketed {
        "pack.scope.default"
    } else {
        "pack.scope.default_no_gasket"
    };
    let mut equipment: Vec<String> = Vec::new();
    let mut methods: Vec<String> = Vec::new();
    for joint in context.joints {
        let tag = joint.identity.equipment.get().unwrap_or(&joint.tag);
        if !equipment.contains(tag) {
            equipment.push(tag.clone());
        }
        let method = method_of(joint).map(|key| context.label(&format!("method.{key}")));
        let unknown = || context.say1("pack.scope.not_given", "who", context.who(Who::Planner));
        let method = method.unwrap_or_else(unknown);
        if !methods.contains(&method) {
            methods.push(method);
        }
    }
    let values = Values::new()
        .with("count", context.joints.len())
        .with("equipment", shortened(context, equipment))
        .with("methods", context.wording.join(&methods));
    text(
        title,
        vec![
            context.say(id, &values),
            context.label("pack.scope.default_note"),
        ],
    )
}

/// A few names, then how many more: a sentence is no list.
fn shortened(context: &Context<'_>, names: Vec<String>) -> String {
    const NAMED: usize = 5;
    if names.len() <= NAMED {
        return context.wording.join(&names);
    }
    let first: Vec<String> = names.iter().take(NAMED).cloned().collect();
    let values = Values::new()
        .with("first", first.join(", "))
        .with("count", names.len() - NAMED);
    context.say("pack.and_more", &values)
}

/// What is not done.
pub(in crate::document) fn excluded(context: &Context<'_>) -> Paragraphs {
    let own = context
        .pack()
        .and_then(|pack| pack.excluded.as_ref())
        .and_then(At::get);
    let title = context.label("pack.scope.excluded");
    match own {
        Some(own) => {
            let items: Vec<String> = own
                .iter()
                .filter_map(At::get)
                .map(ToString::to_string)
                .collect();
            text(title, vec![items.join("; ")])
        }
        None => {
            let items = context.list("pack.scope.excluded_default", &Values::new());
            text(
                title,
                vec![items.join("; "), context.label("pack.scope.excluded_note")],
            )
        }
    }
}

fn regime(context: &Context<'_>) -> Option<Block> {
    let regime = context.pack()?.regime.as_ref().and_then(At::get)?;
    Some(Block::Text(text(
        context.label("pack.scope.regime"),
        vec![regime.to_string()],
    )))
}

/// Drawings, data sheets and specifications of the job.
pub(in crate::document) fn references(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.scope.{key}"));
    let head = Head {
        title: label("references"),
        note: String::new(),
    };
    let mut table = Table::new(
        head,
        vec![
            Column::new(label("reference"), 54.0).strong(),
            Column::new(label("revision"), 22.0),
            Column::new(label("reference_title"), 100.0),
        ],
    );
    table.none = context.say1("pack.scope.not_given", "who", context.who(Who::Planner));
    let own = context
        .pack()
        .and_then(|pack| pack.references.as_ref())
        .and_then(At::get);
    table.rows = own
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .map(|reference| {
            let text = |leaf: Option<String>| Cell::text(leaf.unwrap_or_default());
            vec![
                text(reference.document.get().map(ToString::to_string)),
                match reference.revision.as_ref().and_then(At::get) {
                    Some(revision) => Cell::text(revision.as_str()),
                    None => Cell::Box(String::new()),
                },
                text(
                    reference
                        .title
                        .as_ref()
                        .and_then(At::get)
                        .map(ToString::to_string),
                ),
            ]
        })
        .collect();
    table
}

/// Sources of the formulas and tables that were used, each once: names, as they stand.
pub(in crate::document) fn standards(context: &Context<'_>) -> Paragraphs {
    let mut sources: BTreeSet<String> = BTreeSet::new();
    for group in &context.plan.groups {
        for entry in group.computed.ledger.entries() {
            match entry.basis {
                Basis::Formula(formula, _)
                    if formula.source != practice::SOURCE
                        && formula.source != jackbolts::SOURCE =>
                {
                    sources.insert(formula.source.to_owned());
                }
                Basis::Input(Origin::Table { row, .. }) => {
                    sources.insert(row.to_string());
                }
                _ => {}
            }
        }
    }
    let title = context.label("pack.scope.codes");
    let sources: Vec<String> = sources.into_iter().collect();
    Paragraphs {
        head: Head {
            title,
            note: context.label("pack.scope.codes_note"),
        },
        texts: vec![sources.join("; ")],
    }
}
