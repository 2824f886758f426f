//! Many tensioners of one size: with the driver and by hand, side by side.

use crate::calc::labour::{Span, to_print};
use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::job::DriverInput;
use crate::joint::Joint;
use crate::methods::jackbolt::DriverPays;
use crate::methods::jackbolt::ids;
use crate::methods::{Computed, Group};
use crate::units::{Duration, Quantity, digits};
use crate::wording::Values;

use super::super::context::Context;
use super::totals::shift_length;

/// One row for each group that plans a driver; none where no group does.
pub(super) fn table(context: &Context<'_>) -> Option<Table> {
    let label = |key: &str| context.label(&format!("pack.driver_pays.{key}"));
    let head = Head {
        title: label("title"),
        note: label("note"),
    };
    let columns = vec![
        Column::new(label("group"), 34.0).strong(),
        Column::new(label("set_up"), 20.0).right(),
        Column::new(label("with_driver"), 30.0).right(),
        Column::new(label("by_hand"), 30.0).right(),
        Column::new(label("shift"), 26.0).right(),
        Column::new(label("supply"), 36.0),
    ];
    let mut table = Table::new(head, columns);
    for group in &context.plan.groups {
        let computed = &*group.computed;
        let joint = group
            .members
            .first()
            .and_then(|first| context.joints.get(*first));
        let (Some(pays), Some(joint)) = (computed.plan.driver_pays(), joint) else {
            continue;
        };
        table.rows.push(row(context, group, joint, pays));
        table.notes.extend(verdict(context, group, pays));
    }
    table.row_height = 8.0;
    (!table.rows.is_empty()).then_some(table)
}

fn row(context: &Context<'_>, group: &Group, joint: &Joint, pays: &DriverPays) -> Vec<Cell> {
    let shift = shift_length(context).map(|shift| pays.studs_a_shift(shift));
    vec![
        Cell::text(group.name.clone()),
        Cell::text(minutes(pays.set_up.typical)),
        stud(context, pays.with_driver),
        stud(context, pays.by_hand),
        match shift {
            Some([with_driver, by_hand]) => Cell::text(format!("{with_driver} / {by_hand}")),
            None => Cell::Box(String::new()),
        },
        Cell::text(supply(context, joint, &group.computed)),
    ]
}

/// Typical minutes, and below them the range.
fn stud(context: &Context<'_>, span: Span) -> Cell {
    let range = Values::new()
        .with("low", minutes(span.low))
        .with("high", minutes(span.high));
    Cell::Two([
        minutes(span.typical),
        context.say("pack.plan.range", &range),
    ])
}

fn minutes(time: Duration) -> String {
    digits((time.si() / 60.0).round())
}

/// Batteries or air; what is not known is named.
fn supply(context: &Context<'_>, joint: &Joint, computed: &Computed) -> String {
    let label = |key: &str| context.label(&format!("pack.driver_pays.{key}"));
    let tool = joint.mechanics.tools.driver.as_ref();
    let Some(driver) = tool.and_then(|tool| tool.driver.as_ref()) else {
        return label("supply_unknown");
    };
    match driver.input.value() {
        Some(DriverInput::Battery) => match computed.ledger.get(ids::BATTERIES) {
            Some(count) => context.say1(
                "pack.driver_pays.batteries",
                "count",
                crate::calc::whole(count.si()),
            ),
            None => label("batteries_unknown"),
        },
        Some(DriverInput::Pneumatic) => {
            let volume = context.of(&computed.ledger, ids::AIR);
            match (driver.flow.value(), volume) {
                (Some(flow), Some(volume)) => {
                    let values = Values::new()
                        .with("flow", context.text(flow))
                        .with("volume", volume.joined());
                    context.say("pack.driver_pays.air", &values)
                }
                _ => label("air_unknown"),
            }
        }
        Some(DriverInput::Hydraulic) => label("oil"),
        Some(DriverInput::Hand) => label("hand"),
        None => label("supply_unknown"),
    }
}

/// From how many studs on the driver pays, and the hours of a joint both ways.
fn verdict(context: &Context<'_>, group: &Group, pays: &DriverPays) -> Option<String> {
    let computed = &*group.computed;
    let by_hand = computed.plan.by_hand_labour()?;
    let hours = |time: Duration| context.text(to_print(time));
    let values = Values::new()
        .with("group", group.name.as_str())
        .with(
            "pays_from",
            pays.from.map(|from| from.to_string()).unwrap_or_default(),
        )
        .with(
            "studs",
            context
                .of(&computed.ledger, ids::COUNT)
                .map_or_else(|| "?".to_owned(), |count| count.joined()),
        )
        .with(
            "with_driver",
            hours(computed.tighten_labour.elapsed.typical),
        )
        .with("by_hand", hours(by_hand.elapsed.typical));
    Some(context.say("pack.driver_pays.verdict", &values))
}
