//! Tools: what the job says of a serial number, and which of them a joint names.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::job::{self, Calibration, Job, Loosen, Tighten, ToolKind};
use crate::joint::{Fact, Level, LimitOverride, Tool, Tools, limit_of};
use crate::report::{Finding, Place};
use crate::units::{Dimension, Pressure, Quantity, Torque, Unit, parse_si, unit_named};
use crate::yaml::At;

use super::catalog::{Catalog, entries};
use super::layers::Layers;
use super::tensioner::driver;

/// The tools of the job by name. `limits` are the defaults of rules that the job replaces.
pub(super) fn of_job<'a>(
    job: &'a Job,
    limits: &[LimitOverride],
    findings: &mut Vec<Finding>,
) -> BTreeMap<&'a str, Arc<Tool>> {
    let own = limits.iter().find(|limit| limit.rule == "T01");
    let bottom = own.map(|limit| limit.value);
    entries(job.tools.as_ref())
        .map(|(name, place, entry)| (name, Arc::new(tool(name, place, entry, bottom, findings))))
        .collect()
}

/// The tools of a joint.
pub(super) fn tools(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Tools {
    let one = |name: String| catalog.tools.get(name.as_str()).cloned();
    let all = |names: Option<Vec<String>>| -> Vec<Arc<Tool>> {
        names.into_iter().flatten().filter_map(one).collect()
    };
    let [wrenches, sockets, back_ups] = catalog.candidates();
    Tools {
        tightening: all(layers.value(&Tighten::with)),
        loosening: all(layers.value(&Loosen::with)),
        hydraulics: all(layers.value(&Tighten::hydraulics)),
        socket: layers.value(&Tighten::socket).and_then(one),
        back_up: layers.value(&Tighten::back_up).and_then(one),
        driver: layers.value(&Tighten::driver).and_then(one),
        wrenches,
        sockets,
        back_ups,
    }
}

/// One tool as its entry describes it. `bottom` is the share of the top below which a wrench without
/// a lowest mark is not used, where the job replaces ours.
fn tool(
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
    let calibration = entry.calibration.as_ref().and_then(At::get);
    let own = Some(entry);
    Tool {
        name: name.to_owned(),
        place,
        kind,
        serial: job::Tool::serial.shared(own),
        lowest,
        highest: highest.or(|| highest_point(&points)),
        scale: scale(entry),
        torque_step,
        pressure_step,
        square: job::Tool::square.shared(own),
        square_rating: job::Tool::square_rating.shared(own),
        mass: job::Tool::mass.shared(own),
        length: job::Tool::length.shared(own),
        rating: job::Tool::rating.shared(own),
        gauge_top: job::Tool::gauge_top.shared(own),
        across_flats: job::Tool::across_flats.shared(own),
        outer_diameter: job::Tool::outer_diameter.shared(own),
        torque_rating: job::Tool::torque_rating.shared(own),
        radius: job::Tool::radius.shared(own),
        certificate: Calibration::certificate.shared(calibration),
        due: Calibration::due.shared(calibration),
        points_place: points.1,
        points: points.0,
        adapter: entry
            .adapter
            .as_ref()
            .and_then(At::get)
            .and_then(|adapter| Some((*adapter.wrench_length.get()?, *adapter.extension.get()?))),
        checks: job::Tool::checks.value(own).unwrap_or_default(),
        spare: job::Tool::spare.value(own),
        driver: entry.driver.as_ref().and_then(At::get).map(driver),
    }
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
    let missing = || job::Tool::range.missing();
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
                job::Tool::lowest_marked.defaulted(Torque::from_si(fifth))
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
        _ => job::Tool::range.missing(),
    }
}
