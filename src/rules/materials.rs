//! Materials and consumables.

use crate::calc::{ids, longest_protrusion, shortest_protrusion};
use crate::job::{Hazard, Washers};
use crate::joint::Fact;
use crate::methods::{hand_torque, hydraulic};
use crate::report::{Finding, Severity};
use crate::units::{Length, Quantity};

use crate::methods::rule::{Check, JointSubject, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "M01",
        severity: Severity::Error,
        check: Check::Joint(no_lubricant),
    },
    Rule {
        id: "M02",
        severity: Severity::Error,
        check: Check::Joint(friction_without_source),
    },
    Rule {
        id: "M03",
        severity: Severity::Error,
        check: Check::Joint(lubricant_too_hot),
    },
    Rule {
        id: "M04",
        severity: Severity::Accept,
        check: Check::Joint(attacks_material),
    },
    Rule {
        id: "M05",
        severity: Severity::Error,
        check: Check::Joint(not_for_oxygen),
    },
    Rule {
        id: "M06",
        severity: Severity::Error,
        check: Check::Joint(used_gasket),
    },
    Rule {
        id: "M09",
        severity: Severity::Error,
        check: Check::Joint(nut_pair),
    },
    Rule {
        id: "M12",
        severity: Severity::Error,
        check: Check::Joint(too_short),
    },
    Rule {
        id: "M13",
        severity: Severity::Accept,
        check: Check::Joint(too_long),
    },
    Rule {
        id: "M14",
        severity: Severity::Accept,
        check: Check::Joint(no_hardened_washers),
    },
];

fn no_lubricant(subject: &JointSubject<'_>) -> Vec<Finding> {
    if subject.mechanics().lubricant.name.get().is_some() {
        return Vec::new();
    }
    vec![subject.finding("M01", Severity::Error, None)]
}

fn friction_without_source(subject: &JointSubject<'_>) -> Vec<Finding> {
    let lubricant = &subject.mechanics().lubricant;
    let values = [
        &lubricant.thread_friction,
        &lubricant.bearing_friction,
        &lubricant.nut_factor,
    ];
    let given = values.into_iter().find(|fact| fact.get().is_some());
    match (given, lubricant.source.get()) {
        (Some(fact @ Fact::Known { value, .. }), None) => {
            vec![
                subject
                    .finding("M02", Severity::Error, fact.place())
                    .with(
                        "lubricant",
                        lubricant.name.get().cloned().unwrap_or_default(),
                    )
                    .with("value", crate::units::digits(value.si())),
            ]
        }
        _ => Vec::new(),
    }
}

fn lubricant_too_hot(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let limit = mechanics.lubricant.highest_temperature.value();
    let (Some(limit), Some(service)) = (limit, mechanics.service.temperature.value()) else {
        return Vec::new();
    };
    if service <= limit {
        return Vec::new();
    }
    vec![
        subject
            .finding("M03", Severity::Error, mechanics.lubricant.name.place())
            .with(
                "lubricant",
                mechanics.lubricant.name.get().cloned().unwrap_or_default(),
            )
            .with("limit", subject.print(limit))
            .with("temperature", subject.print(service)),
    ]
}

/// Elements that crack or pit austenitic steel and nickel alloys when hot (ASME PCC-1-2000,
/// lubrication: a warning of stress corrosion).
const ATTACKING: [&str; 5] = ["sulphur", "chlorine", "lead", "zinc", "copper"];

/// Grades of austenitic steel and nickel alloy by the beginning of their names (common practice).
fn is_austenitic_or_nickel(grade: &str) -> bool {
    let folded: String = grade
        .chars()
        .filter(|sign| sign.is_alphanumeric())
        .flat_map(char::to_uppercase)
        .collect();
    let bare = ["ASTM", "A193", "A320", "A453", "ISO35061"]
        .into_iter()
        .fold(folded.as_str(), |rest, prefix| {
            rest.strip_prefix(prefix).unwrap_or(rest)
        });
    ["B8", "660", "A1", "A2", "A3", "A4", "A5", "ALLOY", "N0"]
        .into_iter()
        .any(|start| bare.starts_with(start))
}

/// What the lubricant is not said to be free of, and what it would attack.
fn attacks_material(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let (Some(name), Some(grade)) = (mechanics.lubricant.name.get(), mechanics.studs.grade.get())
    else {
        return Vec::new();
    };
    if !is_austenitic_or_nickel(grade) {
        return Vec::new();
    }
    let free = &mechanics.lubricant.free_of;
    let held: Vec<&str> = ATTACKING
        .into_iter()
        .filter(|element| !free.iter().any(|free| free.eq_ignore_ascii_case(element)))
        .collect();
    if held.is_empty() {
        return Vec::new();
    }
    vec![
        subject
            .finding("M04", Severity::Accept, mechanics.lubricant.name.place())
            .with("lubricant", name.clone())
            .with("element", held.join(", "))
            .with("material", grade.clone()),
    ]
}

fn not_for_oxygen(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    match mechanics.lubricant.name.get() {
        Some(name)
            if mechanics.hazards.contains(&Hazard::Oxygen) && !mechanics.lubricant.oxygen_safe =>
        {
            vec![
                subject
                    .finding("M05", Severity::Error, mechanics.lubricant.name.place())
                    .with("lubricant", name.clone()),
            ]
        }
        _ => Vec::new(),
    }
}

fn used_gasket(subject: &JointSubject<'_>) -> Vec<Finding> {
    match &subject.mechanics().gasket {
        Some(gasket) if gasket.used && gasket.approval.is_none() => vec![
            subject
                .finding("M06", Severity::Error, Some(gasket.place))
                .with("gasket", gasket.name.clone()),
        ],
        _ => Vec::new(),
    }
}

/// No open source lists nut and stud pairs, so they are the job's: a nut outside the list is an
/// error, a stud grade without a list is to be accepted.
fn nut_pair(subject: &JointSubject<'_>) -> Vec<Finding> {
    let studs = &subject.mechanics().studs;
    let Some(grade) = studs.grade.get() else {
        return Vec::new();
    };
    let nut = studs.nut_grade.get();
    let finding = |severity| {
        subject
            .finding(
                "M09",
                severity,
                studs.nut_grade.place().or(studs.grade.place()),
            )
            .with("stud", grade.clone())
            .with("nut", nut.cloned().unwrap_or_default())
            .with(
                "pairs",
                studs
                    .nut_pairs
                    .get()
                    .map(|pairs| pairs.join(", "))
                    .unwrap_or_default(),
            )
    };
    match (nut, studs.nut_pairs.get()) {
        (Some(nut), Some(pairs)) if pairs.contains(nut) => Vec::new(),
        (Some(_), Some(_)) => vec![finding(Severity::Error)],
        _ => vec![finding(Severity::Accept)],
    }
}

/// What the stud lacks to reach through its nuts; a stud that is centred lacks it at both ends.
fn too_short(subject: &JointSubject<'_>) -> Vec<Finding> {
    let centred = subject.computed.ledger.get(ids::PROTRUSION).is_some();
    let ends = if centred { 2.0 } else { 1.0 };
    match shortest_protrusion(&subject.computed.ledger) {
        Some(end) if end.si() < -1e-9 => vec![
            subject
                .finding(
                    "M12",
                    Severity::Error,
                    subject.mechanics().studs.length.place(),
                )
                .with(
                    "length",
                    subject
                        .computed
                        .ledger
                        .get(ids::LENGTH)
                        .map(|length| subject.print(length))
                        .unwrap_or_default(),
                )
                .with("short", subject.print(Length::from_si(-end.si() * ends))),
        ],
        _ => Vec::new(),
    }
}

fn too_long(subject: &JointSubject<'_>) -> Vec<Finding> {
    let most = subject.mechanics().checks.greatest_protrusion.value();
    match (longest_protrusion(&subject.computed.ledger), most) {
        (Some(end), Some(most)) if end.si() > most.si() + 1e-9 => vec![
            subject
                .finding(
                    "M13",
                    Severity::Accept,
                    subject.mechanics().studs.length.place(),
                )
                .with("protrusion", subject.print(end))
                .with("limit", subject.print(most)),
        ],
        _ => Vec::new(),
    }
}

fn no_hardened_washers(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let by_torque = matches!(
        mechanics.method.value(),
        Some(hand_torque::WORD | hydraulic::WORD)
    );
    if !by_torque || mechanics.studs.washers.value() == Some(Washers::Hardened) {
        return Vec::new();
    }
    vec![subject.finding("M14", Severity::Accept, mechanics.studs.washers.place())]
}
