//! The spans of all values that must lie in one: one table for each part of a job.

use crate::job::{self, JointKeys};
use crate::yaml::At;

use super::ranges::Leaf;
use super::ranges::Span::{self, Open, Positive, Within};
use super::ranges::leaf;

/// Friction, nut factors: nothing slides without friction, and no thread turns above one.
const FRICTION: Span = Open(0.0, 1.0);
/// Of a load to both sides; at all of it the least load is nothing.
const SCATTER: Span = Within(0.0, 0.99);
/// From absolute zero to where every bolting steel is soft.
const TEMPERATURE: Span = Within(0.0, 1773.15);
/// Gauge pressure of contents, from vacuum.
const CONTENTS: Span = Within(-101_325.0, 1e9);
/// A turn that is let go at once.
const TURN: Span = Within(0.0, std::f64::consts::TAU);
/// A turn that was measured; none would mean a jackbolt without give.
const ONE_TURN: Span = Open(0.0, std::f64::consts::TAU);
/// A wanted mean load of a stud: from half of it, below which no plan makes sense, to all but the last half per cent.
const WANTED_MEAN: Span = Within(0.5, 0.995);
/// The peak of a release: above the installed load, and no more than twice it.
const PEAK: Span = Within(1.02, 2.0);
/// A shift has at most the hours of a day.
pub(super) const SHIFT: Span = Within(60.0, 86_400.0);
/// A point is announced at most a month before.
pub(super) const NOTICE: Span = Within(0.0, 30.0 * 86_400.0);

pub(super) fn of_lubricant(lubricant: &job::Lubricant) -> [Option<Leaf>; 5] {
    [
        leaf(
            "thread_friction",
            lubricant.thread_friction.as_ref(),
            FRICTION,
        ),
        leaf(
            "bearing_friction",
            lubricant.bearing_friction.as_ref(),
            FRICTION,
        ),
        leaf("nut_factor", lubricant.nut_factor.as_ref(), FRICTION),
        leaf("scatter", lubricant.scatter.as_ref(), SCATTER),
        leaf(
            "highest_temperature",
            lubricant.highest_temperature.as_ref(),
            TEMPERATURE,
        ),
    ]
}

pub(super) fn of_gasket(gasket: &job::Gasket) -> [Option<Leaf>; 6] {
    [
        leaf("inner", gasket.inner.as_ref(), Positive),
        leaf("outer", gasket.outer.as_ref(), Positive),
        leaf("thickness", gasket.thickness.as_ref(), Positive),
        leaf("highest_stress", gasket.highest_stress.as_ref(), Positive),
        leaf(
            "highest_pressure",
            gasket.highest_pressure.as_ref(),
            Positive,
        ),
        leaf(
            "highest_temperature",
            gasket.highest_temperature.as_ref(),
            TEMPERATURE,
        ),
    ]
}

pub(super) fn of_material(material: &job::Material) -> [Option<Leaf>; 5] {
    [
        leaf("yield_strength", material.yield_strength.as_ref(), Positive),
        leaf(
            "tensile_strength",
            material.tensile_strength.as_ref(),
            Positive,
        ),
        leaf("modulus", material.modulus.as_ref(), Positive),
        leaf(
            "highest_temperature",
            material.highest_temperature.as_ref(),
            TEMPERATURE,
        ),
        leaf(
            "lowest_temperature",
            material.lowest_temperature.as_ref(),
            TEMPERATURE,
        ),
    ]
}

pub(super) fn of_tool(tool: &job::Tool) -> Vec<Option<Leaf>> {
    let mut leaves = vec![
        leaf("lowest_marked", tool.lowest_marked.as_ref(), Positive),
        leaf("square", tool.square.as_ref(), Positive),
        leaf("square_rating", tool.square_rating.as_ref(), Positive),
        leaf("mass", tool.mass.as_ref(), Positive),
        leaf("length", tool.length.as_ref(), Positive),
        leaf("rating", tool.rating.as_ref(), Positive),
        leaf("gauge_top", tool.gauge_top.as_ref(), Positive),
        leaf("gauge_class", tool.gauge_class.as_ref(), Open(0.0, 1.0)),
        leaf("across_flats", tool.across_flats.as_ref(), Positive),
        leaf("outer_diameter", tool.outer_diameter.as_ref(), Positive),
        leaf("torque_rating", tool.torque_rating.as_ref(), Positive),
        leaf("radius", tool.radius.as_ref(), Positive),
    ];
    if let Some(adapter) = tool.adapter.as_ref().and_then(At::get) {
        leaves.push(leaf(
            "wrench_length",
            Some(&adapter.wrench_length),
            Positive,
        ));
        leaves.push(leaf("extension", Some(&adapter.extension), Positive));
    }
    if let Some(driver) = tool.driver.as_ref().and_then(At::get) {
        leaves.extend(of_driver(driver));
    }
    let calibration = tool.calibration.as_ref().and_then(At::get);
    let points = calibration
        .and_then(|calibration| calibration.points.as_ref())
        .and_then(At::get);
    for (pressure, torque) in points.into_iter().flatten().filter_map(At::get) {
        leaves.push(leaf("points", Some(pressure), Positive));
        leaves.push(leaf("points", Some(torque), Positive));
    }
    leaves
}

fn of_driver(driver: &job::Driver) -> [Option<Leaf>; 7] {
    [
        leaf("spindle_circle", driver.spindle_circle.as_ref(), Positive),
        leaf("socket", driver.socket.as_ref(), Positive),
        leaf("socket_depth", driver.socket_depth.as_ref(), Positive),
        leaf("scatter", driver.scatter.as_ref(), SCATTER),
        leaf("reverse_torque", driver.reverse_torque.as_ref(), Positive),
        leaf("supply", driver.supply.as_ref(), Positive),
        leaf("flow", driver.flow.as_ref(), Positive),
    ]
}

pub(super) fn of_tensioner(tensioner: &job::Tensioner) -> [Option<Leaf>; 15] {
    [
        leaf(
            "thread_engagement",
            tensioner.thread_engagement.as_ref(),
            Positive,
        ),
        leaf("body_yield", tensioner.body_yield.as_ref(), Positive),
        leaf("circle", tensioner.circle.as_ref(), Positive),
        leaf("body_diameter", tensioner.body_diameter.as_ref(), Positive),
        leaf("body_height", tensioner.body_height.as_ref(), Positive),
        leaf("across_flats", tensioner.across_flats.as_ref(), Positive),
        leaf("free_length", tensioner.free_length.as_ref(), Positive),
        leaf("tip_diameter", tensioner.tip_diameter.as_ref(), Positive),
        leaf("start_gap", tensioner.start_gap.as_ref(), Within(0.0, 1.0)),
        leaf("greatest_gap", tensioner.greatest_gap.as_ref(), Positive),
        leaf("travel", tensioner.travel.as_ref(), Positive),
        leaf("jackbolt_load", tensioner.jackbolt_load.as_ref(), Positive),
        leaf("measured_turn", tensioner.measured_turn.as_ref(), ONE_TURN),
        leaf("tip_pressure", tensioner.tip_pressure.as_ref(), Positive),
        leaf(
            "stud_above_body",
            tensioner.stud_above_body.as_ref(),
            Within(0.0, 1.0),
        ),
    ]
}

pub(super) fn of_isolation(isolation: &job::Isolation) -> Vec<Option<Leaf>> {
    let mut leaves = vec![
        leaf("cool_below", isolation.cool_below.as_ref(), TEMPERATURE),
        leaf(
            "prove_again_every",
            isolation.prove_again_every.as_ref(),
            Positive,
        ),
    ];
    for contents in isolation
        .contents
        .iter()
        .filter_map(At::get)
        .flatten()
        .filter_map(At::get)
    {
        leaves.push(leaf("pressure", contents.pressure.as_ref(), CONTENTS));
        leaves.push(leaf(
            "temperature",
            contents.temperature.as_ref(),
            TEMPERATURE,
        ));
        leaves.push(leaf("volume", contents.volume.as_ref(), Positive));
    }
    if let Some(opening) = isolation.opening.as_ref().and_then(At::get) {
        leaves.push(leaf("diameter", opening.diameter.as_ref(), Positive));
        leaves.push(leaf("area", opening.area.as_ref(), Positive));
    }
    if let Some(test) = isolation.hold_test.as_ref().and_then(At::get) {
        leaves.push(leaf("duration", Some(&test.duration), Positive));
        leaves.push(leaf("rise", test.rise.as_ref(), Within(0.0, 1e9)));
    }
    leaves
}

pub(super) fn of_joint(keys: &JointKeys) -> Vec<Option<Leaf>> {
    let mut leaves = Vec::new();
    if let Some(service) = keys.service.as_ref().and_then(At::get) {
        leaves.push(leaf("pressure", service.pressure.as_ref(), CONTENTS));
        leaves.push(leaf(
            "temperature",
            service.temperature.as_ref(),
            TEMPERATURE,
        ));
    }
    if let Some(studs) = keys.studs.as_ref().and_then(At::get) {
        leaves.extend(of_studs(studs));
    }
    if let Some(target) = keys.target.as_ref().and_then(At::get) {
        leaves.push(leaf("stress", target.stress.as_ref(), Positive));
        leaves.push(leaf(
            "share_of_yield",
            target.share_of_yield.as_ref(),
            Positive,
        ));
        leaves.push(leaf("load", target.load.as_ref(), Positive));
        leaves.push(leaf("torque", target.torque.as_ref(), Positive));
        leaves.push(leaf(
            "expected_torque",
            target.expected_torque.as_ref(),
            Positive,
        ));
    }
    if let Some(tighten) = keys.tighten.as_ref().and_then(At::get) {
        leaves.push(leaf(
            "repeat_after",
            tighten.repeat_after.as_ref(),
            Positive,
        ));
        leaves.push(leaf("snug", tighten.snug.as_ref(), Positive));
        leaves.push(leaf(
            "driver_level",
            tighten.driver_level.as_ref(),
            Within(0.0, 1.0),
        ));
        leaves.push(leaf("reversal", tighten.reversal.as_ref(), Positive));
        leaves.push(leaf(
            "wanted_mean",
            tighten.wanted_mean.as_ref(),
            WANTED_MEAN,
        ));
    }
    if let Some(loosen) = keys.loosen.as_ref().and_then(At::get) {
        leaves.extend(of_loosening(loosen));
    }
    if let Some(checks) = keys.checks.as_ref().and_then(At::get) {
        leaves.extend(of_checks(checks));
    }
    if let Some(clearance) = keys.clearance.as_ref().and_then(At::get) {
        leaves.push(leaf("socket", clearance.socket.as_ref(), Positive));
        leaves.push(leaf("radius", clearance.radius.as_ref(), Positive));
    }
    leaves
}

fn of_studs(studs: &job::Studs) -> [Option<Leaf>; 13] {
    [
        leaf("length", studs.length.as_ref(), Positive),
        leaf("grip", studs.grip.as_ref(), Positive),
        leaf("bolt_circle", studs.bolt_circle.as_ref(), Positive),
        leaf("flange_diameter", studs.flange_diameter.as_ref(), Positive),
        leaf("part_diameter", studs.part_diameter.as_ref(), Positive),
        leaf(
            "flange_thickness",
            studs.flange_thickness.as_ref(),
            Positive,
        ),
        leaf("bearing_outer", studs.bearing_outer.as_ref(), Positive),
        leaf("bearing_inner", studs.bearing_inner.as_ref(), Positive),
        leaf(
            "bearing_diameter",
            studs.bearing_diameter.as_ref(),
            Positive,
        ),
        leaf("across_flats", studs.across_flats.as_ref(), Positive),
        leaf("nut_height", studs.nut_height.as_ref(), Positive),
        leaf("engagement", studs.engagement.as_ref(), Positive),
        leaf(
            "far_protrusion",
            studs.far_protrusion.as_ref(),
            Within(0.0, 10.0),
        ),
    ]
}

fn of_loosening(loosen: &job::Loosen) -> Vec<Option<Leaf>> {
    let shares = loosen.break_out.as_ref().and_then(At::get);
    vec![
        leaf("first_step", loosen.first_step.as_ref(), TURN),
        leaf("never_exceed", loosen.never_exceed.as_ref(), Positive),
        leaf("break_out", shares.map(|(least, _)| least), Positive),
        leaf("break_out", shares.map(|(_, greatest)| greatest), Positive),
        leaf("peak", loosen.peak.as_ref(), PEAK),
    ]
}

fn of_checks(checks: &job::Checks) -> Vec<Option<Leaf>> {
    let mut leaves = vec![
        leaf("gap_spread", checks.gap_spread.as_ref(), Positive),
        leaf(
            "least_protrusion",
            checks.least_protrusion.as_ref(),
            Within(0.0, 10.0),
        ),
        leaf(
            "greatest_protrusion",
            checks.greatest_protrusion.as_ref(),
            Positive,
        ),
    ];
    if let Some(limits) = checks.alignment.as_ref().and_then(At::get) {
        leaves.push(leaf("centreline", limits.centreline.as_ref(), Positive));
        leaves.push(leaf("parallelism", limits.parallelism.as_ref(), Positive));
        leaves.push(leaf("holes", limits.holes.as_ref(), Positive));
        leaves.push(leaf("gap", limits.gap.as_ref(), Positive));
    }
    leaves
}
