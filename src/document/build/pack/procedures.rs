//! The procedures of the methods that the pack uses, as numbered steps.

use crate::calc::ids;
use crate::document::card::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Cautions, Section};
use crate::job::Class;
use crate::joint::Joint;
use crate::methods::Computed;
use crate::methods::jackbolt::JackboltPlan;
use crate::methods::{hand_torque, hydraulic, jackbolt};
use crate::units::Quantity;
use crate::wording::{Row, Values};

use super::super::context::Context;
use super::jackbolt_steps;
use super::passes::passes;

/// A joint with its numbers.
pub(super) type Member<'a> = (&'a Joint, &'a Computed);

/// Rows of the wording that stand for three passes; the passes of the job take their place.
const PASS_ROWS: [&str; 5] = ["first", "middle", "full", "circle", "later"];

/// The section.
pub(super) fn section(context: &Context<'_>) -> Section {
    let all: Vec<Member<'_>> = context
        .joints
        .iter()
        .enumerate()
        .filter_map(|(index, joint)| Some((joint, &*context.plan.of(index)?.computed)))
        .collect();
    let tables = groups(&all)
        .into_iter()
        .enumerate()
        .filter_map(|(place, (id, members))| table(context, place + 1, id, &members));
    let (_, panels) = super::resources::split_panels(context);
    let mut blocks = Vec::new();
    if !panels.is_empty() {
        let notes = Vec::new();
        blocks.push(Block::Cautions(Cautions { panels, notes }));
    }
    blocks.extend(tables.map(Block::Table));
    Section {
        label: "procedures".to_owned(),
        title: context.label("pack.procedures.title"),
        line: context.label("pack.procedures.line"),
        new_page: true,
        blocks,
    }
}

/// The groups of steps that apply, each with the joints it is for.
fn groups<'a>(all: &[Member<'a>]) -> Vec<(&'static str, Vec<Member<'a>>)> {
    let of = |method: &str| -> Vec<Member<'a>> {
        let has = |member: &&Member<'a>| member.0.mechanics.method.value() == Some(method);
        all.iter().filter(has).copied().collect()
    };
    let opened = |members: &[Member<'a>]| -> Vec<Member<'a>> {
        let is_opened =
            |member: &&Member<'a>| member.0.mechanics.loosening.opened.value() != Some(false);
        members.iter().filter(is_opened).copied().collect()
    };
    let (hand, hydraulic) = (of(hand_torque::WORD), of(hydraulic::WORD));
    let jackbolts = of(jackbolt::WORD);
    let is_of_nuts =
        |member: &&Member<'a>| member.0.mechanics.method.value() != Some(jackbolt::WORD);
    let nuts: Vec<Member<'a>> = all.iter().filter(is_of_nuts).copied().collect();
    let driven = jackbolt_steps::driven(&jackbolts);
    let groups = vec![
        ("before", all.to_vec()),
        ("break_joint", opened(&nuts)),
        ("hydraulic.rules", hydraulic.clone()),
        ("hydraulic.loosen", opened(&hydraulic)),
        ("hand.loosen", opened(&hand)),
        ("jackbolts.loosen", opened(&jackbolts)),
        ("assemble", nuts.clone()),
        ("hydraulic.tighten", hydraulic),
        ("hand.tighten", hand),
        ("jackbolts.prepare", jackbolts.clone()),
        ("jackbolts.driver", driven.clone()),
        ("jackbolts.finish", jackbolts.clone()),
        ("jackbolts.lost", driven),
        ("finish", all.to_vec()),
        ("stuck", opened(&nuts)),
        ("jackbolts.stuck", opened(&jackbolts)),
        ("stop", all.to_vec()),
    ];
    groups
        .into_iter()
        .filter(|(_, members)| !members.is_empty())
        .collect()
}

fn table(context: &Context<'_>, number: usize, id: &str, members: &[Member<'_>]) -> Option<Table> {
    let label = |key: &str| context.label(&format!("pack.procedures.{key}"));
    let values = values(context, members);
    let rows = match context
        .wording
        .rows(&format!("procedure.{id}.rows"), &values)
    {
        Ok(rows) => rows,
        Err(error) => {
            context.fault(error);
            return None;
        }
    };
    let title = format!(
        "{number}  {}",
        context.label(&format!("procedure.{id}.title"))
    );
    let mut table = Table::new(
        Head {
            title,
            note: String::new(),
        },
        vec![
            Column::new("", 11.0),
            Column::new(label("step"), 82.0),
            Column::new(label("accept"), 46.0),
            Column::new(label("record"), 27.0),
            Column::new(label("point"), 10.0).strong(),
        ],
    );
    let mut steps = with_passes(context, rows, members);
    match id {
        "jackbolts.finish" => steps.extend(jackbolt_steps::angle_finishes(context, members)),
        "jackbolts.lost" => steps.extend(jackbolt_steps::restarts(context, members)),
        _ => {}
    }
    table.rows = steps
        .into_iter()
        .enumerate()
        .map(|(place, [step, accept, record, point])| {
            let mut cells = vec![Cell::text(format!("{number}.{}", place + 1))];
            cells.extend([step, accept, record, point].map(Cell::Text));
            cells
        })
        .collect();
    Some(table)
}

/// What is done, the criterion, the record, the point.
pub(super) type StepTexts = [String; 4];

/// The passes of the job in place of the rows that stand for them.
fn with_passes(context: &Context<'_>, rows: Vec<Row>, members: &[Member<'_>]) -> Vec<StepTexts> {
    let is_tightening = rows.iter().any(|row| row.key == "full");
    let mut steps = Vec::new();
    for row in rows {
        if is_tightening && PASS_ROWS.contains(&row.key.as_str()) {
            if row.key == "first" {
                steps.extend(passes(context, members));
            }
            continue;
        }
        steps.push(["do", "accept", "record", "point"].map(|field| row.field(field).to_owned()));
    }
    steps
}

/// The value that all members share, else the words that send the reader to the card.
pub(super) fn common(
    context: &Context<'_>,
    members: &[Member<'_>],
    otherwise: &str,
    of: impl Fn(&Joint, &Computed) -> Option<String>,
) -> String {
    let mut values = members.iter().map(|(joint, computed)| of(joint, computed));
    let first = values.next().flatten();
    match first {
        Some(first) if values.all(|other| other.as_ref() == Some(&first)) => first,
        _ => context.label(&format!("pack.on_card.{otherwise}")),
    }
}

pub(super) fn gap_limit(context: &Context<'_>, members: &[Member<'_>]) -> String {
    common(context, members, "value", |joint, _| {
        joint
            .mechanics
            .checks
            .gap_spread
            .value()
            .map(|limit| context.text(limit))
    })
}

/// Everything that the rows may name.
fn values(context: &Context<'_>, members: &[Member<'_>]) -> Values {
    let any = |test: fn(&Member<'_>) -> bool| members.iter().any(test);
    let flags = Values::new()
        .with(
            "large",
            any(|(joint, _)| joint.mechanics.loosening.staged.value() == Some(true)),
        )
        .with(
            "gasketed",
            any(|(joint, _)| joint.mechanics.gasket.is_some()),
        )
        .with(
            "class_a",
            any(|(joint, _)| joint.mechanics.class.value() == Some(Class::A)),
        )
        .with(
            "nuts",
            any(|(joint, _)| joint.mechanics.method.value() != Some(jackbolt::WORD)),
        )
        .with(
            "driven",
            any(|(_, computed)| {
                let plan = computed.plan.jackbolts();
                plan.is_some_and(JackboltPlan::drives_loosening)
            }),
        )
        .with(
            "several_tools",
            any(|(_, computed)| computed.tools_at_once.at_once > 1),
        )
        // Nothing in a job says otherwise, so the weight is taken and level faces are minded.
        .with("lift", true)
        .with("horizontal", true);
    flags
        .and(&values_of_joint(context, members))
        .and(&values_of_tools(context, members))
        .and(&values_of_loosening(context, members))
        .and(&jackbolt_steps::values(context, members))
}

fn values_of_joint(context: &Context<'_>, members: &[Member<'_>]) -> Values {
    let length = |pick: fn(&Joint) -> Option<crate::units::Length>| {
        common(context, members, "value", |joint, _| {
            pick(joint).map(|it| context.text(it))
        })
    };
    let text = |otherwise: &str, pick: fn(&Joint) -> Option<String>| {
        common(context, members, otherwise, |joint, _| pick(joint))
    };
    // Eight readings, four on joints of up to eight studs (PCC-1, from memory).
    let gaps = common(context, members, "count", |joint, _| {
        let count = joint.mechanics.studs.count.value()?.si();
        Some(if count <= 8.0 { "4" } else { "8" }.to_owned())
    });
    Values::new()
        .with(
            "offset_limit",
            length(|joint| joint.mechanics.checks.centreline.value()),
        )
        .with(
            "parallel_limit",
            length(|joint| joint.mechanics.checks.parallelism.value()),
        )
        .with(
            "hole_limit",
            length(|joint| joint.mechanics.checks.holes.value()),
        )
        .with(
            "free_gap",
            length(|joint| joint.mechanics.checks.gap.value()),
        )
        .with(
            "least",
            length(|joint| joint.mechanics.checks.least_protrusion.value()),
        )
        .with(
            "most",
            length(|joint| joint.mechanics.checks.greatest_protrusion.value()),
        )
        .with("gap_limit", gap_limit(context, members))
        .with("gap_count", gaps)
        .with(
            "sheet",
            text("sheet", |joint| joint.work.isolation.get().cloned()),
        )
        .with(
            "lubricant",
            text("lubricant", |joint| {
                joint.mechanics.lubricant.name.get().cloned()
            }),
        )
        .with(
            "gasket",
            text("gasket", |joint| {
                joint.mechanics.gasket.as_ref().map(|it| it.name.clone())
            }),
        )
        .with(
            "reaction",
            text("reaction", |joint| joint.work.reaction.get().cloned()),
        )
        .with("barrier", context.label("pack.procedures.barrier"))
}

fn values_of_tools(context: &Context<'_>, members: &[Member<'_>]) -> Values {
    let set = common(context, members, "value", |joint, computed| {
        context.setting(joint, computed).map(|set| set.joined())
    });
    let tool = common(context, members, "tool", |_, computed| {
        match computed.chosen.turning.as_slice() {
            [only] => Some(only.name.clone()),
            _ => None,
        }
    });
    let snug = common(context, members, "value", |joint, computed| {
        let snug = computed.readings(joint).low(ids::SNUG).ok()?;
        Some(context.reading(&snug).joined())
    });
    Values::new()
        .with("tool", tool)
        .with("highest", &set)
        .with("torque", &set)
        .with("snug", snug)
        .with("percent", "")
        .with("wait", "")
}

fn values_of_loosening(context: &Context<'_>, members: &[Member<'_>]) -> Values {
    let angle = common(context, members, "angle", |_, computed| {
        context
            .of(&computed.ledger, ids::RELEASE_SET)
            .map(|angle| angle.joined())
    });
    let rounds = common(context, members, "rounds", |_, computed| {
        let rounds = computed.ledger.get(ids::RELEASE_ROUNDS)?;
        Some(context.say1(
            "pack.procedures.rounds",
            "count",
            crate::calc::whole(rounds.si()),
        ))
    });
    let never = common(context, members, "never", |joint, computed| {
        let never = computed.readings(joint).never().ok()?;
        Some(context.reading(&never).joined())
    });
    // A pump starts at the lowest pressure for which the wrench has a calibration point.
    let start = common(context, members, "start", |_, computed| {
        let (pressure, _) = computed.chosen.loosening.first()?.points.first()?;
        Some(context.text(*pressure))
    });
    Values::new()
        .with("angle", angle)
        .with("rounds", rounds)
        .with("never", never)
        .with("pressure", start)
        .with("step", context.label("pack.procedures.tenth"))
}
