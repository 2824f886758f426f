//! The tables behind the limits: passes, members, hours, long orders.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::joint::Joint;
use crate::methods::Group;
use crate::units::Quantity;

use super::super::context::Context;
use super::{hours, jackbolts, passes};

/// Fasteners up to which the picture of a card numbers every one.
const NUMBERED: f64 = 32.0;
/// Height of a row that nobody writes in and that few read, in mm.
pub(super) const CLOSE_ROW: f64 = 4.4;
/// Height of a row in the small type of the long notes, in mm.
pub(super) const SMALL_ROW: f64 = 3.7;
/// Members up to which their list is no longer than the hours.
const BESIDE: usize = 7;
/// Moves in a row of a long order.
const MOVES: usize = 8;

/// All tables of a group.
pub(super) fn tables(context: &Context<'_>, joint: &Joint, group: &Group) -> Vec<Table> {
    let mut tables = jackbolts::tables(context, &group.computed);
    // The rounds of jackbolts are all there; they have no stepped passes besides.
    if tables.is_empty() {
        tables.push(passes::passes(context, &group.computed));
    }
    // Few members stand beside the hours of studs with jackbolts, whose notes are long.
    let is_beside = group.computed.plan.jackbolts().is_some() && group.members.len() <= BESIDE;
    let room = if is_beside {
        hours::BESIDE_MEMBERS
    } else {
        hours::WHOLE_WIDTH
    };
    tables.extend([
        if is_beside {
            few_members(context, group)
        } else {
            members(context, group)
        },
        hours::hours(context, &group.computed, room),
    ]);
    let fasteners = joint
        .mechanics
        .studs
        .count
        .value()
        .map_or(0.0, Quantity::si);
    if fasteners > NUMBERED {
        tables.push(order(context, group));
    }
    tables.retain(|table| !table.rows.is_empty());
    tables
}

/// Tag and place of a few joints in a narrow column.
fn few_members(context: &Context<'_>, group: &Group) -> Table {
    let head = Head {
        title: context.label("note.tables.members"),
        note: String::new(),
    };
    let label = context.label("note_more.tag_and_place");
    let mut table = Table {
        row_height: SMALL_ROW,
        ..Table::new(head, vec![Column::new(label, 34.0).strong()])
    };
    let joints = group
        .members
        .iter()
        .filter_map(|&index| context.joints.get(index));
    table.rows = joints
        .map(|joint| {
            let place = joint.identity.location.get().cloned();
            vec![Cell::Two([joint.tag.clone(), place.unwrap_or_default()])]
        })
        .collect();
    table
}

/// Tag and place of every joint of the group, two joints a row.
fn members(context: &Context<'_>, group: &Group) -> Table {
    let label = |key: &str| context.label(&format!("register.{key}"));
    let head = Head {
        title: context.label("note.tables.members"),
        note: String::new(),
    };
    let pair = || {
        [
            Column::new(label("tag"), 34.0).strong(),
            Column::new(label("place"), 54.0),
        ]
    };
    let columns = [pair(), pair()].into_iter().flatten().collect();
    let mut table = Table {
        row_height: CLOSE_ROW,
        ..Table::new(head, columns)
    };
    let joints: Vec<&Joint> = group
        .members
        .iter()
        .filter_map(|&index| context.joints.get(index))
        .collect();
    let cells = |joint: Option<&&Joint>| {
        let tag = joint.map(|joint| joint.tag.clone()).unwrap_or_default();
        let place = joint
            .and_then(|joint| joint.identity.location.get())
            .cloned();
        [Cell::text(tag), Cell::text(place.unwrap_or_default())]
    };
    table.rows = joints
        .chunks(2)
        .map(|pair| {
            [cells(pair.first()), cells(pair.get(1))]
                .into_iter()
                .flatten()
                .collect()
        })
        .collect();
    table
}

/// The whole order, eight moves a row; above 32 fasteners the picture numbers groups only.
fn order(context: &Context<'_>, group: &Group) -> Table {
    let head = Head {
        title: context.label("note.tables.order"),
        note: String::new(),
    };
    let mut table = Table::new(head, (0..MOVES).map(|_| Column::new("", 22.0)).collect());
    let Some(order) = &group.computed.order else {
        return table;
    };
    let moves: Vec<String> = order
        .lettered()
        .map(|(letter, studs)| {
            let studs: Vec<String> = studs.iter().map(ToString::to_string).collect();
            format!("{letter}  {}", studs.join("·"))
        })
        .collect();
    table.rows = moves
        .chunks(MOVES)
        .map(|row| {
            let empty = std::iter::repeat_with(String::new);
            row.iter()
                .cloned()
                .chain(empty)
                .take(MOVES)
                .map(Cell::text)
                .collect()
        })
        .collect();
    table
}
