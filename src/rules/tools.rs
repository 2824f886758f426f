//! Tools.

use crate::calc::{PassKind, ids, same_size};
use crate::job::{Method, ReactionMember, Seat, ToolKind};
use crate::joint::Tool;
use crate::report::{Finding, Severity};
use crate::units::{Pressure, Quantity, Torque};

use super::subject::{JointSubject, percent_si};
use super::{Check, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule { id: "T01", severity: Severity::Error, check: Check::Joint(below_range) },
    Rule { id: "T02", severity: Severity::Error, check: Check::Joint(above_range) },
    Rule { id: "T03", severity: Severity::Accept, check: Check::Joint(near_top) },
    Rule { id: "T04", severity: Severity::Error, check: Check::Joint(out_of_calibration) },
    Rule { id: "T06", severity: Severity::Error, check: Check::Joint(no_certificate) },
    Rule { id: "T07", severity: Severity::Error, check: Check::Joint(above_rating) },
    Rule { id: "T08", severity: Severity::Accept, check: Check::Joint(near_rating) },
    Rule { id: "T10", severity: Severity::Error, check: Check::Joint(no_pressure_table) },
    Rule { id: "T11", severity: Severity::Error, check: Check::Joint(no_room) },
    Rule { id: "T12", severity: Severity::Error, check: Check::Joint(wrong_socket) },
    Rule { id: "T13", severity: Severity::Error, check: Check::Joint(square_too_weak) },
    Rule { id: "T22", severity: Severity::Accept, check: Check::Joint(idle_tools) },
    Rule { id: "T23", severity: Severity::Error, check: Check::Joint(unequal_wrenches) },
    Rule { id: "T25", severity: Severity::Accept, check: Check::Joint(no_reaction) },
    Rule { id: "T26", severity: Severity::Error, check: Check::Joint(weak_reaction) },
    Rule { id: "T27", severity: Severity::Accept, check: Check::Joint(no_back_up) },
];

fn is_hydraulic(subject: &JointSubject<'_>) -> bool {
    subject.mechanics().method.value() == Some(Method::HydraulicTorqueWrench)
}

fn bounds(tool: &Tool) -> Option<(Torque, Torque)> {
    if tool.kind == ToolKind::HydraulicTorqueWrench {
        let (low, high) = (tool.points.first()?, tool.points.last()?);
        return Some((low.1, high.1));
    }
    Some((tool.lowest.value()?, tool.highest.value()?))
}

/// A setting below the calibrated range: an error for the final value, to be accepted for earlier
/// passes, which are then done by hand or with another tool.
fn below_range(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let Some(tool) = subject.computed.chosen.turning.first() else { return Vec::new() };
    let Some((low, high)) = bounds(tool) else { return Vec::new() };
    let mut findings = Vec::new();
    let mut found = |torque: Torque, severity, pass: String| {
        findings.push(
            subject
                .finding("T01", severity, Some(tool.place))
                .with("torque", subject.print(torque))
                .with("lowest", subject.print(low))
                .with("highest", subject.print(high))
                .with("tool", tool.name.clone())
                .with("pass", pass),
        );
    };
    match ledger.get(ids::TORQUE) {
        Some(torque) if torque < low => found(torque, Severity::Error, String::new()),
        _ => {
            let stepped =
                subject.computed.passes.iter().filter(|pass| pass.kind == PassKind::Stepped);
            for pass in stepped {
                match ledger.get(ids::PASS_TORQUE_EXACT.at(pass.number)) {
                    Some(torque) if torque < low => {
                        found(torque, Severity::Accept, format!("P{}", pass.number));
                    }
                    _ => {}
                }
            }
        }
    }
    findings
}

fn above_range(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(torque) = subject.computed.ledger.get(ids::TORQUE) else { return Vec::new() };
    let over = subject.computed.chosen.turning.iter().filter_map(|tool| {
        let (_, high) = bounds(tool)?;
        (torque > high).then_some((tool, high))
    });
    over.map(|(tool, high)| {
        subject
            .finding("T02", Severity::Error, Some(tool.place))
            .with("torque", subject.print(torque))
            .with("highest", subject.print(high))
            .with("tool", tool.name.clone())
    })
    .collect()
}

fn near_top(subject: &JointSubject<'_>) -> Vec<Finding> {
    let limit = subject.limit("T03");
    let Some(torque) = subject.computed.ledger.get(ids::SET_TORQUE) else { return Vec::new() };
    let near = subject.computed.chosen.turning.iter().filter_map(|tool| {
        let (_, high) = bounds(tool)?;
        let share = torque.si() / high.si();
        (share > limit && share <= 1.0).then_some((tool, share))
    });
    near.map(|(tool, share)| {
        subject
            .finding("T03", Severity::Accept, Some(tool.place))
            .with("share", percent_si(share))
            .with("tool", tool.name.clone())
    })
    .collect()
}

/// Tools that measure or show a load need a certificate that lasts.
fn measures(tool: &Tool) -> bool {
    matches!(
        tool.kind,
        ToolKind::HandTorqueWrench
            | ToolKind::HydraulicTorqueWrench
            | ToolKind::Gauge
            | ToolKind::DepthGauge
    )
}

fn out_of_calibration(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(last) = subject.joint.work.last_day else { return Vec::new() };
    let late = subject.computed.chosen.all().filter_map(|tool| {
        let due = tool.due.value()?;
        (due < last).then_some((tool, due))
    });
    late.map(|(tool, due)| {
        subject
            .finding("T04", Severity::Error, tool.due.place())
            .with("tool", tool.name.clone())
            .with("due", due.to_string())
            .with("last_day", last.to_string())
    })
    .collect()
}

fn no_certificate(subject: &JointSubject<'_>) -> Vec<Finding> {
    let bare = subject.computed.chosen.all().filter(|tool| measures(tool)).filter(|tool| {
        tool.serial.get().is_none() || tool.certificate.get().is_none() || tool.due.get().is_none()
    });
    bare.map(|tool| {
        let missing = [
            (tool.serial.get().is_none(), "serial"),
            (tool.certificate.get().is_none(), "certificate"),
            (tool.due.get().is_none(), "due"),
        ];
        let keys: Vec<&str> =
            missing.into_iter().filter(|(lacks, _)| *lacks).map(|(_, key)| key).collect();
        subject
            .finding("T06", Severity::Error, Some(tool.place))
            .with("tool", tool.name.clone())
            .with("missing", keys.join(", "))
    })
    .collect()
}

/// The highest pressure that the card asks for.
fn highest_pressure(subject: &JointSubject<'_>) -> Option<Pressure> {
    subject.computed.ledger.get(ids::SET_PRESSURE)
}

fn above_rating(subject: &JointSubject<'_>) -> Vec<Finding> {
    if !is_hydraulic(subject) {
        return Vec::new();
    }
    let chosen = &subject.computed.chosen;
    let asked = highest_pressure(subject);
    let Some((part, rating)) = chosen.weakest() else { return Vec::new() };
    match asked {
        Some(pressure) if pressure > rating => vec![
            subject
                .finding("T07", Severity::Error, part.rating.place())
                .with("pressure", subject.print(pressure))
                .with("rating", subject.print(rating))
                .with("part", part.name.clone()),
        ],
        _ => Vec::new(),
    }
}

fn near_rating(subject: &JointSubject<'_>) -> Vec<Finding> {
    if !is_hydraulic(subject) {
        return Vec::new();
    }
    let limit = subject.limit("T08");
    let Some((part, rating)) = subject.computed.chosen.weakest() else { return Vec::new() };
    let Some(pressure) = highest_pressure(subject) else { return Vec::new() };
    let share = pressure.si() / rating.si();
    if share <= limit || share > 1.0 {
        return Vec::new();
    }
    vec![
        subject
            .finding("T08", Severity::Accept, part.rating.place())
            .with("share", percent_si(share))
            .with("part", part.name.clone()),
    ]
}

fn no_pressure_table(subject: &JointSubject<'_>) -> Vec<Finding> {
    let bare = subject
        .computed
        .chosen
        .turning
        .iter()
        .filter(|tool| tool.kind == ToolKind::HydraulicTorqueWrench && tool.points.is_empty());
    bare.map(|tool| {
        subject
            .finding("T10", Severity::Error, Some(tool.place))
            .with("tool", tool.name.clone())
            .with("serial", tool.serial.get().cloned().unwrap_or_default())
    })
    .collect()
}

fn no_room(subject: &JointSubject<'_>) -> Vec<Finding> {
    let clearance = &subject.mechanics().clearance;
    let at = clearance.at.clone().unwrap_or_default();
    let mut findings = Vec::new();
    let socket = subject.computed.chosen.socket.as_ref();
    let mut found = |needs: String, free: String, place| {
        findings.push(
            subject
                .finding("T11", Severity::Error, place)
                .with("needed", needs)
                .with("free", free)
                .with("at", at.clone()),
        );
    };
    if let (Some(outer), Some(free)) =
        (socket.and_then(|socket| socket.outer_diameter.value()), clearance.socket.value())
        && outer > free
    {
        found(subject.print(outer), subject.print(free), clearance.socket.place());
    }
    for tool in &subject.computed.chosen.turning {
        if let (Some(radius), Some(free)) = (tool.radius.value(), clearance.radius.value())
            && radius > free
        {
            found(subject.print(radius), subject.print(free), clearance.radius.place());
        }
    }
    findings
}

fn wrong_socket(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(nut) = subject.mechanics().studs.across_flats.value() else { return Vec::new() };
    let chosen = &subject.computed.chosen;
    let wrong = chosen.socket.iter().chain(&chosen.back_up).filter_map(|tool| {
        let own = tool.across_flats.value()?;
        (!same_size(own, nut)).then_some((tool, own))
    });
    wrong
        .map(|(tool, own)| {
            subject
                .finding("T12", Severity::Error, tool.across_flats.place())
                .with("tool", tool.name.clone())
                .with("socket", subject.print(own))
                .with("nut", subject.print(nut))
        })
        .collect()
}

fn square_too_weak(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(torque) = subject.computed.ledger.get(ids::SET_TORQUE) else { return Vec::new() };
    let weak = subject.computed.chosen.turning.iter().filter_map(|tool| {
        let rating = tool.square_rating.value()?;
        (torque > rating).then_some((tool, rating))
    });
    weak.map(|(tool, rating)| {
        subject
            .finding("T13", Severity::Error, tool.square_rating.place())
            .with("tool", tool.name.clone())
            .with("torque", subject.print(torque))
            .with("rating", subject.print(rating))
    })
    .collect()
}

fn idle_tools(subject: &JointSubject<'_>) -> Vec<Finding> {
    let tools = subject.computed.tools_at_once;
    if tools.idle == 0 {
        return Vec::new();
    }
    let count = subject.mechanics().studs.count.value().map(|count| subject.print(count));
    vec![
        subject
            .finding("T22", Severity::Accept, subject.mechanics().studs.count.place())
            .with("count", count.unwrap_or_default())
            .with("tools", subject.computed.chosen.turning.len().to_string())
            .with("at_once", tools.at_once.to_string()),
    ]
}

/// On one pump all wrenches see one pressure; their torques must agree.
fn unequal_wrenches(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let Some(first) = ledger.get(ids::SET_TORQUE) else { return Vec::new() };
    let limit = subject.limit("T23");
    let others = (2u16..).zip(subject.computed.chosen.turning.iter().skip(1));
    others
        .filter_map(|(number, tool)| {
            let torque = ledger.get(ids::TOOL_TORQUE.at(number))?;
            let off = (torque.si() - first.si()).abs() / first.si();
            (off > limit).then(|| {
                subject
                    .finding("T23", Severity::Error, Some(tool.place))
                    .with("first", subject.computed.chosen.turning[0].name.clone())
                    .with("second", tool.name.clone())
                    .with("first_torque", subject.print(first))
                    .with("second_torque", subject.print(torque))
                    .with("difference", percent_si(off))
            })
        })
        .collect()
}

fn no_reaction(subject: &JointSubject<'_>) -> Vec<Finding> {
    if is_hydraulic(subject) && subject.joint.work.reaction.get().is_none() {
        return vec![subject.finding("T25", Severity::Accept, None)];
    }
    Vec::new()
}

fn weak_reaction(subject: &JointSubject<'_>) -> Vec<Finding> {
    let member = &subject.joint.work.reaction_member;
    match member.value() {
        Some(
            weak @ (ReactionMember::Tube
            | ReactionMember::Gauge
            | ReactionMember::InstrumentLine
            | ReactionMember::CastLug),
        ) => vec![
            subject.finding("T26", Severity::Error, member.place()).with("part", weak.word()),
        ],
        _ => Vec::new(),
    }
}

fn no_back_up(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let through = matches!(
        mechanics.studs.seat.value(),
        Some(Seat::ThroughBolts | Seat::BlindFlange)
    );
    if through && mechanics.method.get().is_some() && subject.computed.chosen.back_up.is_none() {
        return vec![subject.finding("T27", Severity::Accept, None)];
    }
    Vec::new()
}
