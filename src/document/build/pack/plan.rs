//! The plan: joints in the order of the work with crew, day, hours and tools.

use crate::calc::labour::Span;
use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, Section};
use crate::joint::Joint;
use crate::methods::{Computed, heaviest};
use crate::wording::Values;

use super::super::context::Context;
use super::super::register::{hours_of, hours_text};
use super::super::words::{NONE, names};

/// Time by the clock of a joint in all of its tasks.
pub(super) fn elapsed(joint: &Joint, computed: &Computed) -> Span {
    hours_of(joint, computed, |labour| labour.elapsed)
}

/// The section.
pub(super) fn section(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("pack.plan.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("order"), 8.0),
            Column::new(label("joint"), 38.0).strong(),
            Column::new(label("window"), 23.0),
            Column::new(label("crew"), 21.0),
            Column::new(label("elapsed"), 21.0).right(),
            Column::new(label("labour"), 21.0).right(),
            Column::new(label("tool_hours"), 12.0).right(),
            Column::new(label("tools"), 32.0),
        ],
    );
    let mut order: Vec<usize> = (0..context.joints.len()).collect();
    // The sort keeps the order of the job among joints of one day; those without a day come last.
    order.sort_by_key(|&index| {
        let start = context.joints.get(index).and_then(|joint| joint.work.start);
        (start.is_none(), start)
    });
    table.rows = order
        .into_iter()
        .enumerate()
        .filter_map(|(place, index)| {
            let (joint, group) = (context.joints.get(index)?, context.plan.of(index)?);
            Some(row(context, place + 1, joint, &group.computed))
        })
        .collect();
    table.row_height = 8.0;
    table.notes = vec![label("note")];
    table.notes.extend(heaviest_lift(context));
    Section {
        label: "plan".to_owned(),
        title: context.label("pack.parts.plan"),
        line: String::new(),
        new_page: true,
        blocks: std::iter::once(table)
            .chain(super::driver_pays::table(context))
            .map(Block::Table)
            .collect(),
    }
}

fn row(context: &Context<'_>, place: usize, joint: &Joint, computed: &Computed) -> Vec<Cell> {
    let hours = |span: Span| {
        let span = span.to_print();
        let range = Values::new()
            .with("low", hours_text(span.low))
            .with("high", hours_text(span.high));
        Cell::Two([
            hours_text(span.typical),
            context.say("pack.plan.range", &range),
        ])
    };
    let tool = hours_of(joint, computed, |labour| labour.tool).to_print();
    let planner = || {
        context.say1(
            "missing.short",
            "who",
            context.who(crate::joint::Who::Planner),
        )
    };
    vec![
        Cell::text(place.to_string()),
        Cell::text(joint.tag.clone()),
        match joint.work.start {
            Some(start) => Cell::text(start.to_string()),
            None => Cell::Box(planner()),
        },
        match joint.work.crew.get() {
            Some(crew) => Cell::text(crew.clone()),
            None => Cell::Box(planner()),
        },
        hours(elapsed(joint, computed)),
        hours(hours_of(joint, computed, |labour| labour.labour)),
        Cell::text(hours_text(tool.typical)),
        Cell::text(match names(&computed.chosen.turning) {
            names if names.is_empty() => NONE.to_owned(),
            names => names,
        }),
    ]
}

/// The heaviest part that somebody lifts.
fn heaviest_lift(context: &Context<'_>) -> Option<String> {
    let tools = context
        .plan
        .groups
        .iter()
        .flat_map(|group| group.computed.chosen.all());
    let (tool, mass) = heaviest(tools)?;
    let values = Values::new()
        .with("tool", tool.name.as_str())
        .with("mass", context.text(mass));
    Some(context.say("pack.plan.heaviest", &values))
}
