//! Tools: what the job says of a serial number, and which of them a joint names.

use std::sync::Arc;

use crate::job::{self, Name, ToolKind};
use crate::joint::{Fact, Level, Tool, Tools, Who, limit_of};
use crate::report::{Finding, Place};
use crate::units::{Dimension, Pressure, Quantity, Torque, Unit, parse_si, unit_named};
use crate::yaml::{At, Text};

use super::Catalog;
use super::layers::{Layers, nested};
use super::plan::fact_of;

/// The tools of a joint.
pub(super) fn tools(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Tools {
    let all = |names: Vec<&Name>| -> Vec<Arc<Tool>> {
        names
            .into_iter()
            .filter_map(|name| catalog.tools.get(name.as_str()))
            .cloned()
            .collect()
    };
    let one = |name: Option<&Name>| {
        name.and_then(|name| catalog.tools.get(name.as_str()))
            .cloned()
    };
    let tightening = layers.leaf(nested!(tighten.with)).map(|leaf| leaf.value);
    let loosening = layers.leaf(nested!(loosen.with)).map(|leaf| leaf.value);
    let hydraulics = layers
        .leaf(nested!(tighten.hydraulics))
        .map(|leaf| leaf.value);
    let [wrenches, sockets, back_ups] = catalog.candidates();
    Tools {
        tightening: all(tightening
            .map(|names| names.values().collect())
            .unwrap_or_default()),
        loosening: all(loosening
            .map(|names| names.values().collect())
            .unwrap_or_default()),
        hydraulics: all(hydraulics
            .into_iter()
            .flatten()
            .filter_map(At::get)
            .collect()),
        socket: one(layers.leaf(nested!(tighten.socket)).map(|leaf| leaf.value)),
        back_up: one(layers.leaf(nested!(tighten.back_up)).map(|leaf| leaf.value)),
        driver: one(layers.leaf(nested!(tighten.driver)).map(|leaf| leaf.value)),
        wrenches,
        sockets,
        back_ups,
    }
}

/// One tool as its entry describes it. `bottom` is the share of the top below which a wrench without
/// a lowest mark is not used, where the job replaces ours.
pub(super) fn tool(
    name: &str,
    place: Place,
    entry: &job::Tool,
    bottom: Option<f64>,
    findings: &mut Vec<Finding>,
) -> Tool {
    let kind = entry.kind.get().copied().unwrap_or(ToolKind::LiftingGear);
    let (lowest, highest) = range(entry, bottom, findings);
    let (torque_step, pressure_step) = steps(entry, kind, findings);
    let points = points(entry, findings);
    let (certificate, due) = calibration(entry);
    Tool {
        name: name.to_owned(),
        place,
        kind,
        serial: text_of(entry.serial.as_ref(), "tools.*.serial"),
        lowest,
        highest: highest.or(|| highest_point(&points)),
        scale: scale(entry),
        torque_step,
        pressure_step,
        square: fact_of(entry.square.as_ref(), "tools.*.square", Who::ToolStore),
        square_rating: fact_of(
            entry.square_rating.as_ref(),
            "tools.*.square_rating",
            Who::ToolStore,
        ),
        mass: fact_of(entry.mass.as_ref(), "tools.*.mass", Who::ToolStore),
        length: fact_of(entry.length.as_ref(), "tools.*.length", Who::ToolStore),
        rating: fact_of(entry.rating.as_ref(), "tools.*.rating", Who::ToolStore),
        gauge_top: fact_of(
            entry.gauge_top.as_ref(),
            "tools.*.gauge_top",
            Who::ToolStore,
        ),
        across_flats: fact_of(
            entry.across_flats.as_ref(),
            "tools.*.across_flats",
            Who::ToolStore,
        ),
        outer_diameter: fact_of(
            entry.outer_diameter.as_ref(),
            "tools.*.outer_diameter",
            Who::ToolStore,
        ),
        torque_rating: fact_of(
            entry.torque_rating.as_ref(),
            "tools.*.torque_rating",
            Who::ToolStore,
        ),
        radius: fact_of(entry.radius.as_ref(), "tools.*.radius", Who::ToolStore),
        certificate,
        due,
        points_place: points.1,
        points: points.0,
        adapter: entry
            .adapter
            .as_ref()
            .and_then(At::get)
            .and_then(|adapter| Some((*adapter.wrench_length.get()?, *adapter.extension.get()?))),
        checks: texts(entry.checks.as_ref()),
        spare: entry
            .spare
            .as_ref()
            .and_then(At::get)
            .map(|text| text.as_str().to_owned()),
        driver: entry
            .driver
            .as_ref()
            .and_then(At::get)
            .map(super::tensioner::driver),
    }
}

pub(super) fn text_of<const MAX: usize>(
    text: Option<&At<Text<MAX>>>,
    key: &'static str,
) -> Fact<String> {
    match text.and_then(At::both) {
        Some((text, place)) => Fact::job(text.as_str().to_owned(), place, Level::Shared),
        None => Fact::missing(key, Who::ToolStore),
    }
}

fn texts<const MAX: usize>(list: Option<&At<Vec<At<Text<MAX>>>>>) -> Vec<String> {
    list.and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .map(|text| text.as_str().to_owned())
        .collect()
}

fn scale(entry: &job::Tool) -> &'static Unit {
    let chosen = entry.scale.as_ref().and_then(At::get).copied();
    chosen.map_or_else(newton_metre, |scale| scale.unit())
}

fn newton_metre() -> &'static Unit {
    unit_named(Dimension::Torque, "N·m").expect("the table of units holds N·m")
}

type Bounds = (Fact<Torque>, Fact<Torque>);

/// Lowest and highest torque. Without a lowest marked value the bottom is a fifth of the top, as
/// wrenches were tested from 20 % by ISO 6789:2003 (from memory).
fn range(entry: &job::Tool, bottom: Option<f64>, findings: &mut Vec<Finding>) -> Bounds {
    let missing = || Fact::missing("tools.*.range", Who::ToolStore);
    let Some((range, place)) = entry.range.as_ref().and_then(At::both) else {
        return (missing(), missing());
    };
    let ends: Vec<Torque> = range.iter().filter_map(At::get).copied().collect();
    let [low, high] = ends.as_slice() else {
        if ends.len() == range.len() {
            findings.push(Finding::job("job.range", place));
        }
        return (missing(), missing());
    };
    if low.si() <= 0.0 || high <= low {
        findings.push(Finding::job("job.range", place));
        return (missing(), missing());
    }
    let marked = entry.lowest_marked.as_ref().and_then(At::both);
    let lowest = match marked {
        Some((lowest, place)) => Fact::job(*lowest, place, Level::Shared),
        None => {
            let share = bottom.or_else(|| limit_of("T01").map(|limit| limit.value));
            let fifth = share.unwrap_or(0.0) * high.si();
            if low.si() < fifth {
                Fact::default(Torque::from_si(fifth), "tools.*.lowest_marked")
            } else {
                Fact::job(*low, place, Level::Shared)
            }
        }
    };
    (lowest, Fact::job(*high, place, Level::Shared))
}

/// The step is a pressure on a pump, gauge or hydraulic wrench and a torque on all else. A step of
/// the other kind would be left out without a word.
fn steps(
    entry: &job::Tool,
    kind: ToolKind,
    findings: &mut Vec<Finding>,
) -> (Option<Torque>, Option<Pressure>) {
    let Some((text, place)) = entry.step.as_ref().and_then(At::both) else {
        return (None, None);
    };
    let dimension = match kind {
        ToolKind::HydraulicTorqueWrench | ToolKind::Pump | ToolKind::Gauge => Dimension::Pressure,
        _ => Dimension::Torque,
    };
    let Some(step) = parse_si(text.as_str(), dimension)
        .ok()
        .filter(|step| *step > 0.0)
    else {
        let finding = Finding::job("job.step", place)
            .with("text", text.as_str())
            .with("wanted", dimension.word());
        findings.push(finding);
        return (None, None);
    };
    match dimension {
        Dimension::Pressure => (None, Some(Pressure::from_si(step))),
        _ => (Some(Torque::from_si(step)), None),
    }
}

type Points = (Vec<(Pressure, Torque)>, Option<Place>);

/// Calibration points must rise in both columns; a single point would be a bare factor.
fn points(entry: &job::Tool, findings: &mut Vec<Finding>) -> Points {
    let Some(calibration) = entry.calibration.as_ref().and_then(At::get) else {
        return (Vec::new(), None);
    };
    let Some((list, place)) = calibration.points.as_ref().and_then(At::both) else {
        return (Vec::new(), None);
    };
    let points: Vec<(Pressure, Torque)> = list
        .iter()
        .filter_map(At::get)
        .filter_map(|(pressure, torque)| Some((*pressure.get()?, *torque.get()?)))
        .collect();
    if points.len() < list.len() {
        return (Vec::new(), Some(place));
    }
    if points.len() < 2 {
        findings.push(Finding::job("job.one_point", place));
        return (Vec::new(), Some(place));
    }
    let falls = points.windows(2).position(|pair| match pair {
        [(p1, t1), (p2, t2)] => p2 <= p1 || t2 <= t1,
        _ => false,
    });
    if let Some(index) = falls {
        let at = list.get(index + 1).map_or(place, At::place);
        findings.push(Finding::job("job.points_order", at).with("number", (index + 2).to_string()));
        return (Vec::new(), Some(place));
    }
    (points, Some(place))
}

fn highest_point(points: &Points) -> Fact<Torque> {
    match (points.0.last(), points.1) {
        (Some((_, torque)), Some(place)) => Fact::job(*torque, place, Level::Shared),
        _ => Fact::missing("tools.*.range", Who::ToolStore),
    }
}

fn calibration(entry: &job::Tool) -> (Fact<String>, Fact<crate::units::Date>) {
    let calibration = entry.calibration.as_ref().and_then(At::get);
    let certificate = calibration.and_then(|calibration| calibration.certificate.as_ref());
    let due = calibration.and_then(|calibration| calibration.due.as_ref());
    (
        text_of(certificate, "tools.*.calibration.certificate"),
        match due.and_then(At::both) {
            Some((due, place)) => Fact::job(*due, place, Level::Shared),
            None => Fact::missing("tools.*.calibration.due", Who::ToolStore),
        },
    )
}
