//! Every default that the program used and the key that replaces it; tables and formulas from memory;
//! limits of the rules, ours and replaced.

use std::collections::{BTreeMap, BTreeSet};

use crate::calc::{Basis, Computed};
use crate::document::card::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::job::{Method, ToolKind};
use crate::joint::{Fact, Joint, LIMITS, Limit, Origin, TargetValue};
use crate::units::{Dimension, Pressure, Quantity};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::super::words::seat_key;

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
            Column::new(label("meaning"), 67.0).strong(),
            Column::new(label("value"), 36.0),
            Column::new(label("key"), 48.0),
            Column::new(label("joints"), 16.0).right(),
        ],
    );
    table.none = label("none");
    table.rows = merged(context, count(context, |recorder| &recorder.defaults))
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

/// What one joint took from us.
struct Recorder<'a> {
    context: &'a Context<'a>,
    /// Key to the values that stand for it.
    defaults: BTreeMap<String, Vec<String>>,
    /// Tables and formulas that are not confirmed, each with no value.
    memory: BTreeMap<String, Vec<String>>,
    /// Keys that the ledger holds; the facts behind them are not taken a second time.
    seen: BTreeSet<&'static str>,
}

impl<'a> Recorder<'a> {
    fn of(context: &'a Context<'a>, joint: &Joint, computed: &Computed) -> Self {
        let mut recorder = Self {
            context,
            defaults: BTreeMap::new(),
            memory: BTreeMap::new(),
            seen: BTreeSet::new(),
        };
        recorder.ledger(computed);
        recorder.studs(joint);
        recorder.plan(joint);
        recorder.checks(joint);
        recorder.tools(joint, computed);
        recorder
    }

    fn take(&mut self, key: &'static str, value: String) {
        let values = self.defaults.entry(key.to_owned()).or_default();
        if !values.contains(&value) {
            values.push(value);
        }
    }

    fn note_memory(&mut self, source: &str) {
        self.memory.entry(source.to_owned()).or_default();
    }

    fn ledger(&mut self, computed: &Computed) {
        for entry in computed.ledger.entries() {
            match (&entry.basis, &entry.value) {
                (Basis::Input(Origin::Default { key }), Ok(value)) => {
                    let printed = match entry.dimension {
                        Dimension::Ratio => percent(*value),
                        dimension => self.context.units.print_si(*value, dimension).joined(),
                    };
                    self.seen.insert(key);
                    self.take(key, printed);
                }
                (
                    Basis::Input(Origin::Table {
                        row,
                        confirmed: false,
                    }),
                    Ok(_),
                ) => self.note_memory(row),
                (Basis::Formula(formula, _), Ok(_)) if !formula.confirmed => {
                    self.note_memory(formula.source);
                }
                _ => {}
            }
        }
    }

    /// A fact that is not in the ledger.
    fn fact<T>(&mut self, fact: &Fact<T>, print: impl Fn(&T) -> String) {
        let Fact::Known { value, origin } = fact else {
            return;
        };
        match origin {
            Origin::Default { key } if !self.seen.contains(key) => self.take(key, print(value)),
            Origin::Table {
                row,
                confirmed: false,
            } => self.note_memory(row),
            _ => {}
        }
    }

    fn quantity<Q: Quantity>(&mut self, fact: &Fact<Q>) {
        let context = self.context;
        self.fact(fact, |value| context.text(*value));
    }

    fn yes_or_no(&mut self, fact: &Fact<bool>) {
        let context = self.context;
        self.fact(fact, |yes| {
            context.label(if *yes { "pack.yes" } else { "pack.no" })
        });
    }

    fn studs(&mut self, joint: &Joint) {
        let studs = &joint.mechanics.studs;
        self.quantity(&studs.yield_strength);
        self.quantity(&studs.tensile_strength);
        self.quantity(&studs.modulus);
        self.quantity(&studs.highest_temperature);
        self.fact(&studs.nut_pairs, |pairs| pairs.join(", "));
        for length in [
            &studs.nut_height,
            &studs.across_flats,
            &studs.bearing_outer,
            &studs.bearing_inner,
            &studs.flange_thickness,
        ] {
            self.quantity(length);
        }
        let context = self.context;
        self.fact(&studs.seat, |seat| {
            context.label(&format!("seat.{}", seat_key(*seat)))
        });
    }

    fn plan(&mut self, joint: &Joint) {
        let mechanics = &joint.mechanics;
        let plan = &mechanics.plan;
        let context = self.context;
        self.fact(&mechanics.class, |class| class.word().to_owned());
        self.fact(&mechanics.lubricant.scatter, |scatter| {
            format!("± {}", percent(scatter.si()))
        });
        let given = mechanics.target.given.value();
        if matches!(
            given,
            Some(TargetValue::Stress(_) | TargetValue::ShareOfYield(_))
        ) {
            self.fact(&mechanics.target.area, |area| area.word().to_owned());
        }
        if matches!(given, Some(TargetValue::ShareOfYield(_))) {
            self.fact(&mechanics.target.measure, |measure| {
                measure.word().to_owned()
            });
        }
        self.fact(&plan.passes, |passes| {
            let shares: Vec<String> = passes.iter().map(|share| percent(share.si())).collect();
            shares.join(", ")
        });
        self.fact(&plan.pattern, |pattern| pattern.word().to_owned());
        self.yes_or_no(&plan.circular_round);
        self.quantity(&plan.snug);
        self.fact(&plan.formula, |formula| formula.name().to_owned());
        let loosening = &mechanics.loosening;
        self.yes_or_no(&loosening.opened);
        if loosening.opened.value() != Some(false) {
            self.yes_or_no(&loosening.staged);
            self.quantity(&loosening.rounds);
            for share in [&loosening.break_out_least, &loosening.break_out_greatest] {
                self.fact(share, |share| percent(share.si()));
            }
        }
        self.fact(&joint.work.direction, |direction| {
            context.label(match direction {
                crate::job::TurnDirection::Clockwise => "card.turns_clockwise",
                crate::job::TurnDirection::Anticlockwise => "card.turns_anticlockwise",
            })
        });
    }

    fn checks(&mut self, joint: &Joint) {
        let checks = &joint.mechanics.checks;
        self.yes_or_no(&checks.gaps);
        if checks.gaps.value() == Some(true) {
            self.quantity(&checks.gap_spread);
        }
        if !checks.stretch.is_empty() {
            self.yes_or_no(&checks.zero_reading);
        }
        for length in [
            &checks.centreline,
            &checks.parallelism,
            &checks.holes,
            &checks.gap,
            &checks.least_protrusion,
            &checks.greatest_protrusion,
        ] {
            self.quantity(length);
        }
    }

    fn tools(&mut self, joint: &Joint, computed: &Computed) {
        let hydraulic = joint.mechanics.method.value() == Some(Method::HydraulicTorqueWrench);
        for tool in &computed.chosen.turning {
            self.fact(&tool.lowest, |lowest| {
                tool.scale.print_si(lowest.si()).joined()
            });
            if hydraulic && tool.pressure_step.is_none() {
                self.take("tools.*.step", self.context.text(Pressure::bar(5.0)));
            } else if tool.kind == ToolKind::HandTorqueWrench && tool.torque_step.is_none() {
                let id = if tool.scale.name == "ft·lb" {
                    "step_ft_lb"
                } else {
                    "step_n_m"
                };
                self.take(
                    "tools.*.step",
                    self.context.label(&format!("pack.assumptions.{id}")),
                );
            }
        }
    }
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
            let text = context.say1("pack.assumptions.memory", "table", source);
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
                    Cell::text(limit.source),
                    Cell::text(ours.to_string()),
                ]
            })
        })
        .collect();
    table.notes = vec![context.say("pack.assumptions.limits_key", &Values::new())];
    table
}
