//! Every default that the program used and the key that replaces it; tables and formulas from memory;
//! limits of the rules, ours and replaced.

use std::collections::BTreeMap;

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::job::Notice;
use crate::joint::{LIMITS, Limit};
use crate::units::Dimension;
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::itp;
use super::recorder::Recorder;

/// Different values of one key that get a row each; beyond, one row refers to the notes.
const MOST_VALUES: usize = 5;

/// The section; it follows the scope on its page.
pub(super) fn section(context: &Context<'_>) -> Section {
    let mut blocks = vec![Block::Table(defaults(context))];
    blocks.push(Block::Table(memory(context)));
    blocks.push(Block::Table(replaced(context)));
    blocks.push(Block::Table(limits(context)));
    Section {
        label: "assumptions".to_owned(),
        title: context.label("pack.assumptions.title"),
        line: context.label("pack.assumptions.note"),
        new_page: false,
        blocks,
    }
}

fn head(context: &Context<'_>, key: &str) -> Head {
    Head {
        title: context.label(&format!("pack.assumptions.{key}")),
        note: context.label(&format!("pack.assumptions.{key}_note")),
    }
}

/// Key and value to the number of joints.
type Counted = BTreeMap<(String, String), usize>;

fn defaults(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.assumptions.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("number"), 9.0),
            Column::new(label("meaning"), 65.0).strong(),
            Column::new(label("value"), 32.0),
            Column::new(label("key"), 54.0),
            Column::new(label("joints"), 16.0).right(),
        ],
    );
    table.none = label("none");
    let mut used = merged(context, count(context, |recorder| &recorder.defaults));
    if itp::is_default_notice(context) {
        let (given, confirmed) = itp::notice(context);
        let value = format!("{given} h / {confirmed} h");
        used.insert((Notice::KEY.to_owned(), value), context.joints.len());
    }
    table.rows = used
        .into_iter()
        .enumerate()
        .map(|(place, ((key, value), joints))| {
            vec![
                Cell::text((place + 1).to_string()),
                Cell::text(meaning(context, &key)),
                Cell::text(value),
                Cell::text(key),
                Cell::text(joints.to_string()),
            ]
        })
        .collect();
    table
}

/// What a key stands for.
fn meaning(context: &Context<'_>, key: &str) -> String {
    match key.strip_prefix("limits.") {
        Some(rule) => context.label(&format!("{rule}.name")),
        None => context.label(&format!("assumption.{}", key.replace("*.", ""))),
    }
}

/// What each group used, times its joints.
fn count(
    context: &Context<'_>,
    list: for<'r> fn(&'r Recorder<'_>) -> &'r BTreeMap<String, Vec<String>>,
) -> Counted {
    let mut counted = Counted::new();
    for group in &context.plan.groups {
        let Some(joint) = group
            .members
            .first()
            .and_then(|&first| context.joints.get(first))
        else {
            continue;
        };
        let recorder = Recorder::of(context, joint, &group.computed);
        for (key, values) in list(&recorder) {
            *counted
                .entry((key.clone(), values.join(" / ")))
                .or_default() += group.members.len();
        }
    }
    counted
}

/// A key with many values gets one row.
fn merged(context: &Context<'_>, counted: Counted) -> Counted {
    let mut values: BTreeMap<String, usize> = BTreeMap::new();
    for (key, _) in counted.keys() {
        *values.entry(key.clone()).or_default() += 1;
    }
    let mut merged = Counted::new();
    for ((key, value), joints) in counted {
        let many = values.get(&key).is_some_and(|values| *values > MOST_VALUES);
        let value = if many {
            context.label("pack.assumptions.various")
        } else {
            value
        };
        *merged.entry((key, value)).or_default() += joints;
    }
    merged
}

fn memory(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.assumptions.{key}"));
    let mut table = Table::new(
        head(context, "memory_head"),
        vec![
            Column::new("", 160.0),
            Column::new(label("joints"), 16.0).right(),
        ],
    );
    table.none = label("memory_none");
    table.rows = count(context, |recorder| &recorder.memory)
        .into_iter()
        .map(|((source, _), joints)| {
            let text = context.say1("pack.assumptions.memory_source", "document", source);
            vec![Cell::text(text), Cell::text(joints.to_string())]
        })
        .collect();
    table
}

/// Limits that the job replaces, with the reason.
fn replaced(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.assumptions.{key}"));
    let mut table = Table::new(
        head(context, "replaced"),
        vec![
            Column::new(label("rule"), 16.0).strong(),
            Column::new(label("meaning"), 50.0),
            Column::new(label("ours"), 18.0),
            Column::new(label("value"), 18.0),
            Column::new(label("reason"), 58.0),
            Column::new(label("joints"), 16.0).right(),
        ],
    );
    table.none = label("replaced_none");
    let mut counted: BTreeMap<(&str, &str, &str), usize> = BTreeMap::new();
    for limit in context.joints.iter().flat_map(|joint| &joint.work.limits) {
        let key = (
            limit.rule.as_str(),
            limit.printed.as_str(),
            limit.reason.as_str(),
        );
        *counted.entry(key).or_default() += 1;
    }
    table.rows = counted
        .into_iter()
        .map(|((rule, value, reason), joints)| {
            let ours = LIMITS.iter().find(|limit| limit.rule == rule);
            vec![
                Cell::text(rule),
                Cell::text(rule_name(context, rule)),
                Cell::text(
                    ours.map(|limit| printed(context, limit))
                        .unwrap_or_default(),
                ),
                Cell::Strong(value.to_owned()),
                Cell::text(reason),
                Cell::text(joints.to_string()),
            ]
        })
        .collect();
    table
}

/// `P01_soft` is a second threshold of `P01`.
fn rule_name(context: &Context<'_>, rule: &str) -> String {
    let (id, part) = rule.split_once('_').unwrap_or((rule, ""));
    let name = context.label(&format!("{id}.name"));
    if part.is_empty() {
        name
    } else {
        format!(
            "{name}, {}",
            context.label(&format!("pack.assumptions.{part}"))
        )
    }
}

fn printed(context: &Context<'_>, limit: &Limit) -> String {
    match limit.dimension {
        Dimension::Ratio => percent(limit.value),
        dimension => context.units.print_si(limit.value, dimension).joined(),
    }
}

/// Limits of the program that hold for at least one joint.
fn limits(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("pack.assumptions.{key}"));
    let mut table = Table::new(
        head(context, "limits"),
        vec![
            Column::new(label("rule"), 18.0).strong(),
            Column::new(label("meaning"), 62.0),
            Column::new(label("value"), 20.0),
            Column::new(label("source"), 60.0),
            Column::new(label("joints"), 16.0).right(),
        ],
    );
    table.rows = LIMITS
        .iter()
        .filter_map(|limit| {
            let joints = context.joints.iter();
            let ours = joints
                .filter(|joint| joint.work.limits.iter().all(|own| own.rule != limit.rule))
                .count();
            (ours > 0).then(|| {
                vec![
                    Cell::text(limit.rule),
                    Cell::text(rule_name(context, limit.rule)),
                    Cell::text(printed(context, limit)),
                    Cell::text(context.wording.source(limit.source, limit.confirmed)),
                    Cell::text(ours.to_string()),
                ]
            })
        })
        .collect();
    table.notes = vec![context.say("pack.assumptions.limits_key", &Values::new())];
    table
}
