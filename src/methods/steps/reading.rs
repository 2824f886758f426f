//! What is read and written, and what stands beside the settings: tools, gaps, stretch, thread past the nut, facts.

use std::sync::Arc;

use crate::calc::{ids, order};
use crate::job::{Seat, ToolKind, Washers};
use crate::joint::{Tool, Who};
use crate::methods::Case;
use crate::units::{Dimension, Quantity, Units};
use crate::work::{Bound, Role, Section, Task, Value, Work};

use super::HELD_IN_A;

/// How many studs a joint has; 0 where nobody says.
pub(crate) fn of_joint(case: &Case<'_>) -> usize {
    let count = case.computed.ledger.get(ids::COUNT);
    count.map_or(0, |count| crate::calc::whole(count.si()))
}

fn words(ids: &[&'static str]) -> Vec<Value> {
    ids.iter().copied().map(Value::Word).collect()
}

/// Serial and due date of everything that turns or shows the load. A tool that nobody names has one box.
pub(crate) fn tools_used<'a>(work: &mut Work, tools: impl IntoIterator<Item = &'a Arc<Tool>>) {
    let mut is_named = false;
    for tool in tools {
        is_named = true;
        let name = Value::Text(tool.name.clone());
        let step = match tool.serial.get() {
            Some(serial) => work
                .read("tool_used", Section::Tools)
                .with("serial", Value::Text(serial.clone())),
            None => work.read("tool_without_number", Section::Tools),
        };
        step.with("tool", name);
        match tool.due.value() {
            Some(due) => step.accept("due_on", Bound::Is(Value::Text(due.to_string()))),
            None if tool.kind == ToolKind::LooseningBar => step,
            None => step.accept("due_on", Bound::Is(Value::Word("due_not_given"))),
        };
    }
    if !is_named {
        work.read("tool_unnamed", Section::Tools)
            .accept("due_on", Bound::Is(Value::Word("due_not_given")));
    }
}

/// What stands in a row with the wrenches: pump and gauge.
pub(crate) fn shows_pressure(tool: &&Arc<Tool>) -> bool {
    matches!(tool.kind, ToolKind::Pump | ToolKind::Gauge)
}

/// The gap after some settings, in places spread round the joint. The step is `id`, its limit `spread`.
pub(crate) fn gaps(
    work: &mut Work,
    case: &Case<'_>,
    id: &'static str,
    after: Vec<String>,
    spread: Value,
) {
    if after.is_empty() || !are_read(case) {
        return;
    }
    let places = order::gap_positions(of_joint(case));
    let columns = places.into_iter().map(Value::Count).collect();
    let rows = after.iter().cloned().map(Value::Text).collect();
    work.read(id, Section::Gaps)
        .dimension(Dimension::Length)
        .grid(rows, columns)
        .after(after)
        .accept("gap_spread", Bound::AtMost(spread));
}

/// Gaps tell how evenly a gasket is pressed; without one they are read where the job asks for it.
fn are_read(case: &Case<'_>) -> bool {
    let mechanics = &case.joint.mechanics;
    let asked = &mechanics.checks.gaps;
    asked.value() == Some(true) && (mechanics.gasket.is_some() || !asked.is_default())
}

/// Stretch of the studs that the job names, in these columns, and the hold over it.
pub(crate) fn stretch(work: &mut Work, case: &Case<'_>, columns: &[&'static str]) {
    let studs = &case.joint.mechanics.checks.stretch;
    if studs.is_empty() {
        return;
    }
    let studs = studs.iter().filter_map(|stud| usize::try_from(*stud).ok());
    let rows = studs.map(Value::Count).collect();
    let step = work
        .read("stretch", Section::Load)
        .dimension(Dimension::Length)
        .grid(rows, words(columns));
    let ledger = &case.computed.ledger;
    if let (Some(least), Some(most)) = (
        ledger.get(ids::ACCEPT_STRETCH_LEAST),
        ledger.get(ids::ACCEPT_STRETCH_MOST),
    ) {
        step.accept("stretch", Bound::Between(Value::of(least), Value::of(most)));
    }
    work.point("load_shown", "H4", HELD_IN_A, Role::Inspector)
        .covers(&["stretch", "growth"]);
}

/// Thread past the nuts, least and most, on each side that has a nut.
pub(crate) fn protrusion(work: &mut Work, case: &Case<'_>) {
    let mechanics = &case.joint.mechanics;
    let is_tapped = mechanics.studs.seat.value() == Some(Seat::TappedHole);
    let sides: &[&str] = match is_tapped {
        true => &["near_side"],
        false => &["near_side", "far_side"],
    };
    let step = work
        .read("protrusion", Section::Protrusion)
        .dimension(Dimension::Length)
        .grid(words(sides), words(&["least", "most"]));
    let checks = &mechanics.checks;
    if let (Some(least), Some(most)) = (
        checks.least_protrusion.value(),
        checks.greatest_protrusion.value(),
    ) {
        step.accept(
            "protrusion",
            Bound::Between(Value::of(least), Value::of(most)),
        );
    }
}

/// What came off, and its condition.
pub(crate) fn removed(work: &mut Work, case: &Case<'_>) {
    let mechanics = &case.joint.mechanics;
    let has_washers = mechanics.studs.washers.value() != Some(Washers::None);
    let ids = [
        Some("removed_studs"),
        Some("removed_nuts"),
        has_washers.then_some("removed_washers"),
        mechanics.gasket.is_some().then_some("removed_gasket"),
    ];
    for id in ids.into_iter().flatten() {
        work.read(id, Section::Removed);
    }
}

/// The facts beside the value of the card: studs, what turns, what it turns on.
pub(crate) fn facts<'a>(
    work: &mut Work,
    case: &Case<'_>,
    tools: impl IntoIterator<Item = &'a Arc<Tool>>,
) {
    let mechanics = &case.joint.mechanics;
    let studs = &mechanics.studs;
    let thread = match (studs.count.value(), studs.thread.get()) {
        (Some(_), Some(thread)) => {
            Value::Text(format!("{} × {}", of_joint(case), thread.designation))
        }
        _ => super::given(None, "studs.thread", Who::Planner),
    };
    work.facts.push(("studs", thread));
    let names: Vec<Value> = tools
        .into_iter()
        .map(|tool| name_and_serial(tool))
        .collect();
    work.facts.push(match names.len() {
        0 => ("wrench", super::given(None, "tighten.with", Who::ToolStore)),
        1 => ("wrench", Value::List(names)),
        _ => ("wrenches", Value::List(names)),
    });
    let pumps = case.computed.chosen.hydraulics.iter();
    let pumps = pumps.filter(|tool| tool.kind == ToolKind::Pump);
    let pumps: Vec<Value> = pumps.map(|tool| name_and_serial(tool)).collect();
    if !pumps.is_empty() {
        work.facts.push(("pump", Value::List(pumps)));
    }
    if work.task != Task::Loosen {
        let lubricant = Value::text(&mechanics.lubricant.name);
        work.facts.push(("lubricant", lubricant));
    }
    work.facts.push(socket(case));
    if work.task == Task::Loosen {
        let load = case.computed.ledger.get(ids::LOAD);
        let load = load.map_or_else(|| super::given(None, "target", Who::Engineer), Value::of);
        work.facts.push(("load", load));
    } else if has_far_nut(case) {
        let back_up = case.computed.chosen.back_up.as_ref();
        let back_up = super::given(
            back_up.map(|tool| &tool.name),
            "tighten.back_up",
            Who::ToolStore,
        );
        work.facts.push(("back_up", back_up));
    }
}

/// Nothing is held behind a tapped hole or an anchor.
fn has_far_nut(case: &Case<'_>) -> bool {
    let seat = case.joint.mechanics.studs.seat.value();
    !matches!(seat, Some(Seat::TappedHole | Seat::Anchor))
}

/// `HW-07 (7731)`.
pub(crate) fn name_and_serial(tool: &Tool) -> Value {
    Value::Text(match tool.serial.get() {
        Some(serial) => format!("{} ({serial})", tool.name),
        None => tool.name.clone(),
    })
}

/// A socket is named in the system of the thread, whatever unit leads on the page.
fn socket(case: &Case<'_>) -> (&'static str, Value) {
    let Some(across) = case.computed.ledger.get(ids::ACROSS_FLATS) else {
        let lack = super::given(None, "studs.across_flats", Who::ToolStore);
        return ("socket", lack);
    };
    let thread = case.joint.mechanics.studs.thread.get();
    let is_inch = thread.is_some_and(|thread| !thread.series.is_metric());
    let units = if is_inch {
        Units::inch()
    } else {
        Units::metric()
    };
    let across = units.print_size(across).joined();
    match &case.computed.chosen.socket {
        Some(socket) => ("socket", Value::Text(format!("{across} · {}", socket.name))),
        None => ("across_flats", Value::Text(across)),
    }
}
