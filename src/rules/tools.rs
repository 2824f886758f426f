//! Tools: their fit, and what they bear on.

use crate::calc::same_size;
use crate::job::{ReactionMember, Seat};
use crate::report::{Finding, Severity};

use crate::methods::hydraulic::rules::is_hydraulic;
use crate::methods::jackbolt::rules as jackbolts;
use crate::methods::rule::{Check, JointSubject, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "T11",
        severity: Severity::Error,
        check: Check::Joint(no_room),
    },
    Rule {
        id: "T12",
        severity: Severity::Error,
        check: Check::Joint(wrong_socket),
    },
    Rule {
        id: "T22",
        severity: Severity::Accept,
        check: Check::Joint(idle_tools),
    },
    Rule {
        id: "T25",
        severity: Severity::Accept,
        check: Check::Joint(no_reaction),
    },
    Rule {
        id: "T26",
        severity: Severity::Error,
        check: Check::Joint(weak_reaction),
    },
    Rule {
        id: "T27",
        severity: Severity::Accept,
        check: Check::Joint(no_back_up),
    },
];

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
    if let (Some(outer), Some(free)) = (
        socket.and_then(|socket| socket.outer_diameter.value()),
        clearance.socket.value(),
    ) && outer > free
    {
        found(
            subject.print(outer),
            subject.print(free),
            clearance.socket.place(),
        );
    }
    for tool in subject.computed.chosen.wrenches() {
        if let (Some(radius), Some(free)) = (tool.radius.value(), clearance.radius.value())
            && radius > free
        {
            found(
                subject.print(radius),
                subject.print(free),
                clearance.radius.place(),
            );
        }
    }
    findings
}

fn wrong_socket(subject: &JointSubject<'_>) -> Vec<Finding> {
    let nut = subject.mechanics().studs.across_flats.value();
    let chosen = &subject.computed.chosen;
    // With jackbolts the socket goes on them, and the nut of the stud is held, not turned.
    let turned = match jackbolts::tensioner(subject) {
        Some(tensioner) => (tensioner.across_flats.value(), "jackbolt"),
        None => (nut, "nut"),
    };
    let sockets = chosen.socket.iter().map(|tool| (tool, turned));
    let back_ups = chosen.back_up.iter().map(|tool| (tool, (nut, "nut")));
    let wrong = sockets.chain(back_ups).filter_map(|(tool, (flats, part))| {
        let (own, flats) = tool.across_flats.value().zip(flats)?;
        (!same_size(own, flats)).then(|| {
            subject
                .finding("T12", Severity::Error, tool.across_flats.place())
                .with("tool", tool.name.clone())
                .with("socket", subject.print(own))
                .with("nut", subject.print(flats))
                .with("part", part)
        })
    });
    wrong
        .chain(jackbolts::wrong_driver_socket(subject))
        .collect()
}

fn idle_tools(subject: &JointSubject<'_>) -> Vec<Finding> {
    let tools = subject.computed.tools_at_once;
    if tools.idle == 0 {
        return Vec::new();
    }
    let count = subject
        .mechanics()
        .studs
        .count
        .value()
        .map(|count| subject.print(count));
    vec![
        subject
            .finding(
                "T22",
                Severity::Accept,
                subject.mechanics().studs.count.place(),
            )
            .with("count", count.unwrap_or_default())
            .with("tools", subject.computed.chosen.turning.len().to_string())
            .with("at_once", tools.at_once.to_string()),
    ]
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
            subject
                .finding("T26", Severity::Error, member.place())
                .with("part", weak.word()),
        ],
        _ => Vec::new(),
    }
}

/// The nut of a stud with jackbolts is not turned, so nothing needs to be held.
fn no_back_up(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    if jackbolts::is_jackbolted(mechanics) {
        return Vec::new();
    }
    let through = matches!(
        mechanics.studs.seat.value(),
        Some(Seat::ThroughBolts | Seat::BlindFlange)
    );
    if through && mechanics.method.get().is_some() && subject.computed.chosen.back_up.is_none() {
        return vec![subject.finding("T27", Severity::Accept, None)];
    }
    Vec::new()
}
