//! The tools of a pack with serial, range and calibration date.

use std::collections::BTreeMap;

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::Section;
use crate::job::{Tool, ToolKind};
use crate::units::{Dimension, Length, Quantity, Units};
use crate::wording::Values;
use crate::yaml::{At, entries};

use super::super::context::Context;
use super::super::words::NONE;
use super::resources::section;

/// The tools with serial and calibration date, those in use first.
pub(in crate::document) fn tools(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("pack.tools.{key}"));
    let head = Head::default();
    let mut table = Table::new(
        head,
        vec![
            Column::new(label("tool"), 24.0).strong(),
            Column::new(label("kind"), 40.0),
            Column::new(label("serial"), 22.0),
            Column::new(label("range"), 31.0),
            Column::new(label("certificate"), 20.0),
            Column::new(label("due"), 23.0),
            Column::new(label("mass"), 16.0).right(),
        ],
    );
    table.none = label("none");
    let used = used(context);
    let listed = entries(context.job.tools.as_ref());
    table.rows = listed
        .filter_map(|(name, tool)| Some((name.get()?, tool.get()?)))
        .map(|(name, tool)| {
            let joints = used.get(name.as_str()).copied().unwrap_or_default();
            tool_row(context, name, tool, joints)
        })
        .collect();
    table.notes = vec![label("note")];
    section("tools", label("title"), false, vec![table])
}

/// Joints in which each tool is used.
fn used<'a>(context: &Context<'a>) -> BTreeMap<&'a str, usize> {
    let mut used = BTreeMap::new();
    for group in &context.plan.groups {
        for tool in group.computed.chosen.all() {
            *used.entry(tool.name.as_str()).or_default() += group.members.len();
        }
    }
    used
}

fn tool_row(context: &Context<'_>, name: &str, tool: &Tool, joints: usize) -> Vec<Cell> {
    let calibration = tool.calibration.as_ref().and_then(At::get);
    let certificate = calibration
        .and_then(|it| it.certificate.as_ref())
        .and_then(At::get);
    let due = calibration.and_then(|it| it.due.as_ref()).and_then(At::get);
    let kind = tool.kind.get().copied();
    let needs = kind.is_some_and(must_be_calibrated);
    let missing = || {
        if needs {
            Cell::Box(String::new())
        } else {
            Cell::text(NONE)
        }
    };
    let in_use = match joints {
        0 => context.label("pack.tools.spare"),
        count => context.say1("pack.tools.used_at", "count", count),
    };
    vec![
        Cell::text(name),
        Cell::Two([
            kind.map_or(String::new(), |kind| kind.word().to_owned()),
            in_use,
        ]),
        match tool.serial.as_ref().and_then(At::get) {
            Some(serial) => Cell::text(serial.as_str()),
            None => missing(),
        },
        Cell::text(range(context, tool).unwrap_or_else(|| NONE.to_owned())),
        certificate.map_or_else(missing, |certificate| Cell::text(certificate.as_str())),
        due.map_or_else(missing, |due| Cell::Strong(due.to_string())),
        Cell::text(
            tool.mass
                .as_ref()
                .and_then(At::get)
                .map_or(NONE.to_owned(), |mass| context.text(*mass)),
        ),
    ]
}

/// What sets or measures a load has a calibration date (ISO 6789, from memory); a driver sets one too.
fn must_be_calibrated(kind: ToolKind) -> bool {
    kind.shows_load() || kind == ToolKind::MultiSpindleDriver
}

/// `905 to 6340 N·m`: between the calibration points, else the scale; of others the rating or size.
fn range(context: &Context<'_>, tool: &Tool) -> Option<String> {
    let torque = context.units.of(Dimension::Torque)?;
    let scale = tool
        .scale
        .as_ref()
        .and_then(At::get)
        .map_or(torque, |scale| scale.unit());
    let points = tool
        .calibration
        .as_ref()
        .and_then(At::get)
        .and_then(|it| it.points.as_ref());
    let points: Vec<f64> = points
        .and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter_map(|(_, torque)| torque.get())
        .map(|torque| torque.si())
        .collect();
    let marks: Vec<f64> = tool
        .range
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
        .map(|torque| torque.si())
        .collect();
    let ends = if points.is_empty() { &marks } else { &points };
    if let (Some(low), Some(high)) = (ends.first(), ends.last()) {
        let high = scale.print_si(*high);
        let values = Values::new()
            .with("low", scale.print_si(*low).value)
            .with("high", high.joined());
        return Some(context.say("pack.plan.range", &values));
    }
    let pressure = tool
        .rating
        .as_ref()
        .or(tool.gauge_top.as_ref())
        .and_then(At::get);
    let size = tool.across_flats.as_ref().and_then(At::get);
    let square = tool.square.as_ref().and_then(At::get);
    pressure
        .map(|pressure| context.text(*pressure))
        .or_else(|| size.or(square).map(|size| size_on_tool(context, *size)))
}

/// A size as it is stamped on a tool: whole millimetres, else inches as a fraction.
fn size_on_tool(context: &Context<'_>, size: Length) -> String {
    let whole = Units::metric().print(size);
    if whole.value.contains('.') {
        let inches = Units::inch().print_size(size);
        if !inches.value.contains('.') {
            return inches.joined();
        }
        return context.text(size);
    }
    whole.joined()
}
