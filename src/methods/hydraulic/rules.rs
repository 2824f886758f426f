//! Tools on a pump: tables, ratings, gauges.

use std::sync::Arc;

use crate::calc::{PassKind, ids};
use crate::job::ToolKind;
use crate::joint::Tool;
use crate::report::{Finding, Severity};
use crate::units::{Pressure, Quantity};

use crate::methods::rule::{Check, JointSubject, Rule, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "T07",
        severity: Severity::Error,
        check: Check::Joint(above_rating),
    },
    Rule {
        id: "T08",
        severity: Severity::Accept,
        check: Check::Joint(near_rating),
    },
    Rule {
        id: "T09",
        severity: Severity::Accept,
        check: Check::Joint(gauge_too_large),
    },
    Rule {
        id: "T10",
        severity: Severity::Error,
        check: Check::Joint(no_pressure_table),
    },
    Rule {
        id: "T23",
        severity: Severity::Error,
        check: Check::Joint(unequal_wrenches),
    },
];

/// Whether the joint is tightened with a hydraulic torque wrench.
pub(crate) fn is_hydraulic(subject: &JointSubject<'_>) -> bool {
    subject.mechanics().method.value() == Some(super::WORD)
}

/// The pressure that is set at the end, the highest of the card.
fn set_pressure(subject: &JointSubject<'_>) -> Option<Pressure> {
    subject
        .computed
        .ledger
        .get(ids::SET_PRESSURE)
        .filter(|_| is_hydraulic(subject))
}

/// Everything that the pressure goes through.
fn line<'a>(subject: &JointSubject<'a>) -> impl Iterator<Item = &'a Arc<Tool>> {
    let chosen = &subject.computed.chosen;
    chosen.turning.iter().chain(&chosen.hydraulics)
}

/// Every part is looked at: one that is too weak is an error, one whose rating nobody gives is to be
/// accepted.
fn above_rating(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(pressure) = set_pressure(subject) else {
        return Vec::new();
    };
    line(subject)
        .filter_map(|part| {
            let (severity, place, rating) = match part.bears().value() {
                Some(rating) if pressure.si() <= rating.si() * (1.0 + 1e-9) => return None,
                Some(rating) => (Severity::Error, part.bears().place(), subject.print(rating)),
                None => (Severity::Accept, Some(part.place), String::new()),
            };
            Some(
                subject
                    .finding("T07", severity, place)
                    .with("pressure", subject.print(pressure))
                    .with("rating", rating)
                    .with("part", part.name.clone()),
            )
        })
        .collect()
}

fn near_rating(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(pressure) = set_pressure(subject) else {
        return Vec::new();
    };
    let limit = subject.limit("T08");
    let Some((part, rating)) = subject.computed.chosen.weakest() else {
        return Vec::new();
    };
    let share = pressure.si() / rating.si();
    if share <= limit * (1.0 + 1e-9) || share > 1.0 + 1e-9 {
        return Vec::new();
    }
    vec![
        subject
            .finding("T08", Severity::Accept, part.bears().place())
            .with("share", percent_si(share))
            .with("part", part.name.clone()),
    ]
}

/// A needle near its stop cannot be read: each pass is looked at, the final one more strictly.
fn gauge_too_large(subject: &JointSubject<'_>) -> Vec<Finding> {
    let gauge = subject
        .computed
        .chosen
        .hydraulics
        .iter()
        .find_map(|tool| Some((tool, tool.gauge_top.value()?)));
    let Some((gauge, top)) = gauge.filter(|_| is_hydraulic(subject)) else {
        return Vec::new();
    };
    pressures(subject)
        .into_iter()
        .filter_map(|(pass, pressure, limit)| {
            let share = pressure.si() / top.si();
            (share < limit * (1.0 - 1e-9)).then(|| {
                subject
                    .finding("T09", Severity::Accept, gauge.gauge_top.place())
                    .with("pass", pass)
                    .with("pressure", subject.print(pressure))
                    .with("range", subject.print(top))
                    .with("percent", percent_si(share))
                    .with("limit", percent_si(limit))
            })
        })
        .collect()
}

/// The pressures of the card, each with its pass and with the least share of the gauge for it.
fn pressures(subject: &JointSubject<'_>) -> Vec<(String, Pressure, f64)> {
    let ledger = &subject.computed.ledger;
    let stepped = subject
        .computed
        .passes
        .iter()
        .filter(|pass| pass.kind == PassKind::Stepped);
    stepped
        .filter_map(|pass| {
            let pressure = ledger.get(ids::PASS_PRESSURE.at(pass.number))?;
            let share = ledger.get(ids::PASS_SHARE.at(pass.number))?;
            let rule = if share.si() < 1.0 { "T09" } else { "T09_final" };
            Some((format!("P{}", pass.number), pressure, subject.limit(rule)))
        })
        .collect()
}

fn no_pressure_table(subject: &JointSubject<'_>) -> Vec<Finding> {
    let bare = subject
        .computed
        .chosen
        .wrenches()
        .filter(|tool| tool.kind == ToolKind::HydraulicTorqueWrench && tool.points.is_empty());
    bare.map(|tool| {
        subject
            .finding("T10", Severity::Error, Some(tool.place))
            .with("tool", tool.name.clone())
            .with("serial", tool.serial.get().cloned().unwrap_or_default())
    })
    .collect()
}

/// On one pump all wrenches see one pressure; their torques must agree.
fn unequal_wrenches(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let turning = &subject.computed.chosen.turning;
    let (Some(torque), Some(first)) = (ledger.get(ids::SET_TORQUE), turning.first()) else {
        return Vec::new();
    };
    let limit = subject.limit("T23");
    let others = (2u16..).zip(turning.iter().skip(1));
    others
        .filter_map(|(number, tool)| {
            let other = ledger.get(ids::TOOL_TORQUE.at(number))?;
            let off = (other.si() - torque.si()).abs() / torque.si();
            (off > limit).then(|| {
                subject
                    .finding(
                        "T23",
                        Severity::Error,
                        Some(tool.points_place.unwrap_or(tool.place)),
                    )
                    .with("first", first.name.clone())
                    .with("second", tool.name.clone())
                    .with("first_torque", subject.print(torque))
                    .with("second_torque", subject.print(other))
                    .with("difference", percent_si(off))
            })
        })
        .collect()
}
