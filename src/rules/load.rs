//! Bolt load and stress.

use crate::calc::ids;
use crate::job::{HoleMaterial, Method, Seat};
use crate::joint::Fact;
use crate::report::{Finding, Severity};
use crate::units::{Length, Quantity, Ratio, Temperature};

use super::subject::{JointSubject, percent, percent_si};
use super::{Check, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule { id: "L01", severity: Severity::Error, check: Check::Joint(combined_stress) },
    Rule { id: "L02", severity: Severity::Error, check: Check::Joint(tension_alone) },
    Rule { id: "L08", severity: Severity::Error, check: Check::Joint(engagement) },
    Rule { id: "L10", severity: Severity::Accept, check: Check::Joint(low_target) },
    Rule { id: "L12", severity: Severity::Error, check: Check::Joint(too_hot) },
    Rule { id: "L14", severity: Severity::Accept, check: Check::Joint(short_grip) },
    Rule { id: "L16", severity: Severity::Error, check: Check::Earlier },
    Rule { id: "L17", severity: Severity::Error, check: Check::Joint(expected_torque) },
    Rule { id: "L18", severity: Severity::Accept, check: Check::Joint(two_frictions) },
    Rule { id: "L19", severity: Severity::Accept, check: Check::Joint(default_scatter) },
    Rule { id: "L20", severity: Severity::Accept, check: Check::Joint(stretch_without_length) },
];

/// Tension and torsion together at the greatest load, against a share of the yield strength.
fn combined_stress(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let limit = subject.limit("L01");
    let Some(share) = ledger.get(ids::COMBINED_SHARE) else { return Vec::new() };
    if share.si() <= limit {
        return Vec::new();
    }
    let stress = ledger.get(ids::COMBINED_STRESS).map(|stress| subject.print(stress));
    vec![
        subject
            .finding("L01", Severity::Error, subject.mechanics().target.given.place())
            .with("share", percent(share))
            .with("limit", percent_si(limit))
            .with("stress", stress.unwrap_or_default()),
    ]
}

/// The stress that stays in the stud, tension alone, at the setting.
fn tension_alone(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let limit = subject.limit("L02");
    let Some(share) = ledger.get(ids::SHARE_OF_YIELD) else { return Vec::new() };
    if share.si() <= limit {
        return Vec::new();
    }
    let stress = ledger.get(ids::STRESS).map(|stress| subject.print(stress));
    vec![
        subject
            .finding("L02", Severity::Error, subject.mechanics().target.given.place())
            .with("stress", stress.unwrap_or_default())
            .with("share", percent(share))
            .with("limit", percent_si(limit)),
    ]
}

/// Engagement that a thread needs, in diameters: 0.8 in a standard nut (common practice), in tapped
/// holes by the German trade-association rule TH-6: 1 in steel, 1.25 in cast iron, 2 in aluminium.
fn engagement(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let studs = &subject.mechanics().studs;
    let tapped = studs.seat.value() == Some(Seat::TappedHole);
    let needed = match (tapped, studs.hole_material.value()) {
        (false, _) => subject.limit("L08"),
        (true, Some(HoleMaterial::CastIron)) => 1.25,
        (true, Some(HoleMaterial::Aluminium)) => 2.0,
        (true, _) => 1.0,
    };
    let (Some(ratio), Some(length), Some(diameter)) = (
        ledger.get(ids::ENGAGEMENT_RATIO),
        ledger.get(ids::ENGAGEMENT),
        ledger.get(ids::DIAMETER),
    ) else {
        return Vec::new();
    };
    if ratio.si() >= needed - 1e-9 {
        return Vec::new();
    }
    let place = if tapped { studs.engagement.place() } else { studs.nut_height.place() };
    vec![
        subject
            .finding("L08", Severity::Error, place)
            .with("engagement", subject.print(length))
            .with("needed", subject.print(Length::from_si(needed * diameter.si()))),
    ]
}

fn low_target(subject: &JointSubject<'_>) -> Vec<Finding> {
    let limit = subject.limit("L10");
    let share = subject.computed.ledger.get(ids::SHARE_OF_YIELD);
    match share {
        Some(share) if share.si() < limit && subject.joint.work.target_reason.is_none() => vec![
            subject
                .finding("L10", Severity::Accept, subject.mechanics().target.given.place())
                .with("share", percent(share))
                .with("limit", percent_si(limit)),
        ],
        _ => Vec::new(),
    }
}

fn too_hot(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let service = mechanics.service.temperature.value();
    let limit = mechanics.studs.highest_temperature.value();
    let (Some(service), Some(limit)) = (service, limit) else { return Vec::new() };
    if service <= limit {
        return Vec::new();
    }
    vec![
        subject
            .finding("L12", Severity::Error, mechanics.service.temperature.place())
            .with("temperature", subject.print::<Temperature>(service))
            .with("limit", subject.print(limit))
            .with("material", mechanics.studs.grade.get().cloned().unwrap_or_default()),
    ]
}

/// Short studs lose much load by little settling: fewer than three diameters of grip.
fn short_grip(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let (Some(grip), Some(diameter)) = (ledger.get(ids::GRIP), ledger.get(ids::DIAMETER)) else {
        return Vec::new();
    };
    let ratio = grip.si() / diameter.si();
    if ratio >= 3.0 {
        return Vec::new();
    }
    vec![
        subject
            .finding("L14", Severity::Accept, subject.mechanics().studs.grip.place())
            .with("ratio", crate::units::digits((ratio * 10.0).round() / 10.0)),
    ]
}

fn expected_torque(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let Some(fact @ Fact::Known { value: expected, .. }) = &mechanics.target.expected_torque else {
        return Vec::new();
    };
    let Some(computed) = subject.computed.ledger.get(ids::TORQUE) else { return Vec::new() };
    let off = (computed.si() - expected.si()).abs() / computed.si();
    if off <= subject.limit("L17") || subject.joint.work.target_reason.is_some() {
        return Vec::new();
    }
    vec![
        subject
            .finding("L17", Severity::Error, fact.place())
            .with("given", subject.print(*expected))
            .with("computed", subject.print(computed))
            .with("difference", percent_si(off)),
    ]
}

/// A nut factor and two coefficients of one lubricant, compared through the joint's own geometry.
fn two_frictions(subject: &JointSubject<'_>) -> Vec<Finding> {
    let lubricant = &subject.mechanics().lubricant;
    let (Some(factor), Some(friction)) =
        (lubricant.nut_factor.value(), lubricant.thread_friction.value())
    else {
        return Vec::new();
    };
    let Some(meant) = subject.computed.ledger.get(ids::EQUIVALENT_NUT_FACTOR) else {
        return Vec::new();
    };
    let off = (factor.si() - meant.si()).abs() / meant.si();
    if off <= 0.10 {
        return Vec::new();
    }
    let bare = |ratio: Ratio| crate::units::digits(ratio.si());
    vec![
        subject
            .finding("L18", Severity::Accept, lubricant.nut_factor.place())
            .with("nut_factor", bare(factor))
            .with("friction", bare(friction))
            .with("meant", bare(meant)),
    ]
}

fn default_scatter(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let scatter = &mechanics.lubricant.scatter;
    match scatter.value() {
        Some(value) if scatter.is_default() => vec![
            subject
                .finding("L19", Severity::Accept, mechanics.lubricant.name.place())
                .with("scatter", percent(value))
                .with("method", mechanics.method.value().map_or("", Method::word)),
        ],
        _ => Vec::new(),
    }
}

fn stretch_without_length(subject: &JointSubject<'_>) -> Vec<Finding> {
    let checks = &subject.mechanics().checks;
    match (checks.stretch_place, subject.computed.ledger.lack(ids::STRETCH)) {
        (Some(place), Some(lack)) => {
            vec![subject.finding("L20", Severity::Accept, Some(place)).with("key", lack.key)]
        }
        _ => Vec::new(),
    }
}
