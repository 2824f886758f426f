//! Bolt load and stress.

use crate::calc::ids;
use crate::job::{HoleMaterial, Seat};
use crate::joint::Fact;
use crate::report::{Finding, Severity};
use crate::standards::{TorqueFormula, nut_factor, symbols};
use crate::units::{Length, Quantity, Ratio, Temperature, digits};

use crate::methods::rule::{Check, JointSubject, Rule, percent, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "L01",
        severity: Severity::Error,
        check: Check::Joint(combined_stress),
    },
    Rule {
        id: "L02",
        severity: Severity::Error,
        check: Check::Joint(tension_alone),
    },
    Rule {
        id: "L08",
        severity: Severity::Error,
        check: Check::Joint(engagement),
    },
    Rule {
        id: "L10",
        severity: Severity::Accept,
        check: Check::Joint(low_target),
    },
    Rule {
        id: "L12",
        severity: Severity::Error,
        check: Check::Joint(too_hot),
    },
    Rule {
        id: "L14",
        severity: Severity::Accept,
        check: Check::Joint(short_grip),
    },
    Rule {
        id: "L16",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "L17",
        severity: Severity::Error,
        check: Check::Joint(expected_torque),
    },
    Rule {
        id: "L18",
        severity: Severity::Accept,
        check: Check::Joint(two_frictions),
    },
    Rule {
        id: "L19",
        severity: Severity::Accept,
        check: Check::Joint(default_scatter),
    },
    Rule {
        id: "L20",
        severity: Severity::Accept,
        check: Check::Joint(stretch_without_length),
    },
];

/// Tension and torsion together at the greatest load, against a share of the yield strength.
fn combined_stress(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let limit = subject.limit("L01");
    // A nut factor does not tell the torsion; tension alone past the limit is past it all the more.
    let combined = ledger
        .get(ids::COMBINED_SHARE)
        .zip(ledger.get(ids::COMBINED_STRESS));
    let seen = combined.or_else(|| {
        ledger
            .get(ids::GREATEST_SHARE)
            .zip(ledger.get(ids::GREATEST_STRESS))
    });
    let Some((share, stress)) = seen else {
        return Vec::new();
    };
    if share.si() <= limit {
        return Vec::new();
    }
    vec![
        subject
            .finding(
                "L01",
                Severity::Error,
                subject.mechanics().target.given.place(),
            )
            .with("share", percent(share))
            .with("limit", percent_si(limit))
            .with("stress", subject.print(stress)),
    ]
}

/// The stress that stays in the stud, tension alone, at the setting.
fn tension_alone(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let limit = subject.limit("L02");
    let Some(share) = ledger.get(ids::SHARE_OF_YIELD) else {
        return Vec::new();
    };
    if share.si() <= limit {
        return Vec::new();
    }
    let stress = ledger.get(ids::STRESS).map(|stress| subject.print(stress));
    vec![
        subject
            .finding(
                "L02",
                Severity::Error,
                subject.mechanics().target.given.place(),
            )
            .with("stress", stress.unwrap_or_default())
            .with("share", percent(share))
            .with("limit", percent_si(limit)),
    ]
}

/// Engagement that a thread needs, in diameters: 0.8 in a standard nut (common practice), in tapped
/// holes by the German trade-association rule TH-6: 1 in steel, 1.25 in cast iron, 2 in aluminium.
/// A stud in a tapped hole is held at both ends.
fn engagement(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(diameter) = subject.computed.ledger.get(ids::DIAMETER) else {
        return Vec::new();
    };
    let studs = &subject.mechanics().studs;
    let in_hole = match studs.hole_material.value() {
        Some(HoleMaterial::CastIron) => 1.25,
        Some(HoleMaterial::Aluminium) => 2.0,
        Some(HoleMaterial::Steel) | None => 1.0,
    };
    let tapped = studs.seat.value() == Some(Seat::TappedHole);
    let hole = tapped.then_some((&studs.engagement, in_hole));
    let ends = [(&studs.nut_height, subject.limit("L08"))]
        .into_iter()
        .chain(hole);
    ends.filter_map(|(fact, needed)| {
        let length = fact.value()?;
        let least = Length::from_si(needed * diameter.si());
        (length.si() < least.si() * (1.0 - 1e-9)).then(|| {
            subject
                .finding("L08", Severity::Error, fact.place())
                .with("engagement", subject.print(length))
                .with("needed", subject.print(least))
        })
    })
    .collect()
}

fn low_target(subject: &JointSubject<'_>) -> Vec<Finding> {
    let limit = subject.limit("L10");
    let share = subject.computed.ledger.get(ids::SHARE_OF_YIELD);
    match share {
        Some(share) if share.si() < limit && subject.joint.work.target_reason.is_none() => vec![
            subject
                .finding(
                    "L10",
                    Severity::Accept,
                    subject.mechanics().target.given.place(),
                )
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
    let (Some(service), Some(limit)) = (service, limit) else {
        return Vec::new();
    };
    if service <= limit {
        return Vec::new();
    }
    vec![
        subject
            .finding(
                "L12",
                Severity::Error,
                mechanics.service.temperature.place(),
            )
            .with("temperature", subject.print::<Temperature>(service))
            .with("limit", subject.print(limit))
            .with(
                "material",
                mechanics.studs.grade.get().cloned().unwrap_or_default(),
            ),
    ]
}

/// Short studs lose much load by little settling.
fn short_grip(subject: &JointSubject<'_>) -> Vec<Finding> {
    let ledger = &subject.computed.ledger;
    let (Some(grip), Some(diameter)) = (ledger.get(ids::GRIP), ledger.get(ids::DIAMETER)) else {
        return Vec::new();
    };
    let ratio = grip.si() / diameter.si();
    let limit = subject.limit("L14");
    if ratio >= limit * (1.0 - 1e-9) {
        return Vec::new();
    }
    vec![
        subject
            .finding(
                "L14",
                Severity::Accept,
                subject.mechanics().studs.grip.place(),
            )
            .with("ratio", digits((ratio * 10.0).floor() / 10.0))
            .with("limit", digits(limit)),
    ]
}

fn expected_torque(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let Some(
        fact @ Fact::Known {
            value: expected, ..
        },
    ) = &mechanics.target.expected_torque
    else {
        return Vec::new();
    };
    let Some(computed) = subject.computed.ledger.get(ids::TORQUE) else {
        return Vec::new();
    };
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
    let (Some(factor), Some(friction)) = (
        lubricant.nut_factor.value(),
        lubricant.thread_friction.value(),
    ) else {
        return Vec::new();
    };
    let Some(meant) = meant_factor(subject) else {
        return Vec::new();
    };
    let off = (factor.si() - meant.si()).abs() / meant.si();
    if off <= subject.limit("L18") {
        return Vec::new();
    }
    // Three digits, as nut factors are given.
    let bare = |ratio: Ratio| digits((ratio.si() * 1000.0).round() / 1000.0);
    vec![
        subject
            .finding("L18", Severity::Accept, lubricant.nut_factor.place())
            .with("nut_factor", bare(factor))
            .with("friction", bare(friction))
            .with("meant", bare(meant)),
    ]
}

/// The nut factor that the two coefficients amount to on this joint. The torque may have been worked
/// out from the nut factor itself, so it is worked out anew, by the default form.
fn meant_factor(subject: &JointSubject<'_>) -> Option<Ratio> {
    let ledger = &subject.computed.ledger;
    let lubricant = &subject.mechanics().lubricant;
    let diameter = ledger.get(ids::DIAMETER)?.si();
    let torque = TorqueFormula::Iso16047.torque().value_with(&[
        (symbols::LOAD, 1.0),
        (symbols::PITCH, ledger.get(ids::PITCH)?.si()),
        (
            symbols::PITCH_DIAMETER,
            ledger.get(ids::PITCH_DIAMETER)?.si(),
        ),
        (
            symbols::THREAD_FRICTION,
            lubricant.thread_friction.value()?.si(),
        ),
        (
            symbols::BEARING_DIAMETER,
            ledger.get(ids::BEARING_DIAMETER)?.si(),
        ),
        (
            symbols::BEARING_FRICTION,
            lubricant.bearing_friction.value()?.si(),
        ),
    ]);
    let inputs = [
        (symbols::TORQUE, torque),
        (symbols::DIAMETER, diameter),
        (symbols::LOAD, 1.0),
    ];
    Some(Ratio::from_si(
        nut_factor::NUT_FACTOR_OF.value_with(&inputs),
    ))
}

fn default_scatter(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let scatter = &mechanics.lubricant.scatter;
    // Without a lubricant there is nothing whose scatter could be given; that is M01's.
    let named = mechanics.lubricant.name.get().is_some();
    match scatter.value() {
        Some(value) if named && scatter.is_default() => vec![
            subject
                .finding("L19", Severity::Accept, mechanics.lubricant.name.place())
                .with("scatter", percent(value))
                .with("method", mechanics.method.value().unwrap_or_default()),
        ],
        _ => Vec::new(),
    }
}

fn stretch_without_length(subject: &JointSubject<'_>) -> Vec<Finding> {
    let checks = &subject.mechanics().checks;
    match (
        checks.stretch_place,
        subject.computed.ledger.lack(ids::STRETCH),
    ) {
        (Some(place), Some(lack)) => {
            vec![
                subject
                    .finding("L20", Severity::Accept, Some(place))
                    .with("key", lack.key),
            ]
        }
        _ => Vec::new(),
    }
}
