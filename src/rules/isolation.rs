//! Isolation and permits.

use crate::job::{Hazard, Isolation, IsolationClass, PointKind};
use crate::report::{Finding, Place, Severity};
use crate::units::Quantity;
use crate::yaml::{At, entries, items};

use crate::methods::rule::{Check, JointSubject, Rule, Subject};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "I01",
        severity: Severity::Error,
        check: Check::Joint(no_isolation),
    },
    Rule {
        id: "I02",
        severity: Severity::Error,
        check: Check::Joint(no_proof),
    },
    Rule {
        id: "I03",
        severity: Severity::Error,
        check: Check::Joint(no_vent),
    },
    Rule {
        id: "I04",
        severity: Severity::Error,
        check: Check::Joint(class_too_low),
    },
    Rule {
        id: "I05",
        severity: Severity::Error,
        check: Check::Job(energy_without_control),
    },
];

/// Whether a joint can hold something back. A joint of which nothing is said may: it counts.
fn can_hold(subject: &JointSubject<'_>) -> bool {
    let service = &subject.mechanics().service;
    let pressure = service.pressure.value();
    !matches!(pressure, Some(pressure) if pressure.si() <= 0.0) || service.fluid.get().is_some()
}

fn points(isolation: &Isolation) -> impl Iterator<Item = &crate::job::Point> {
    items(isolation.points.as_ref())
}

fn of_joint<'a>(subject: &JointSubject<'a>) -> Option<(Place, &'a Isolation)> {
    subject.whole.isolation(subject.joint.work.isolation.get()?)
}

fn no_isolation(subject: &JointSubject<'_>) -> Vec<Finding> {
    let named = of_joint(subject);
    let has_points = named.is_some_and(|(_, isolation)| points(isolation).next().is_some());
    if has_points || !can_hold(subject) {
        return Vec::new();
    }
    let service = &subject.mechanics().service;
    let place = named.map(|(place, _)| place);
    let place = place.or(service.fluid.place()).or(service.pressure.place());
    let pressure = service
        .pressure
        .value()
        .map(|pressure| subject.print(pressure));
    vec![
        subject
            .finding("I01", Severity::Error, place)
            .with("fluid", service.fluid.get().cloned().unwrap_or_default())
            .with("pressure", pressure.unwrap_or_default()),
    ]
}

fn no_proof(subject: &JointSubject<'_>) -> Vec<Finding> {
    if !can_hold(subject) {
        return Vec::new();
    }
    match of_joint(subject) {
        Some((_, isolation)) if isolation.proof.is_some() => Vec::new(),
        Some((place, _)) => vec![subject.finding("I02", Severity::Error, Some(place))],
        None => vec![subject.finding("I02", Severity::Error, None)],
    }
}

fn no_vent(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some((place, isolation)) = of_joint(subject) else {
        return Vec::new();
    };
    let opens = points(isolation)
        .any(|point| matches!(point.kind.get(), Some(PointKind::Vent | PointKind::Drain)));
    // An isolation without points is I01's.
    if opens || points(isolation).next().is_none() || !can_hold(subject) {
        return Vec::new();
    }
    let shut = points(isolation)
        .find(|point| {
            matches!(
                point.kind.get(),
                Some(PointKind::ValveShut | PointKind::Spade | PointKind::Blind)
            )
        })
        .and_then(|point| point.tag.get())
        .map(|tag| tag.as_str().to_owned());
    vec![
        subject
            .finding("I03", Severity::Error, Some(place))
            .with("valve", shut.unwrap_or_default())
            .with(
                "isolation",
                subject
                    .joint
                    .work
                    .isolation
                    .get()
                    .cloned()
                    .unwrap_or_default(),
            ),
    ]
}

/// Toxic contents and entry want a gap or a spade (HSG253). A lower class with its reason is for a
/// named person to accept. How long the isolation stands is not in the job.
fn class_too_low(subject: &JointSubject<'_>) -> Vec<Finding> {
    let hazards = &subject.mechanics().hazards;
    let cause = [Hazard::Toxic, Hazard::ConfinedSpace]
        .into_iter()
        .find(|hazard| hazards.contains(hazard));
    let (Some(cause), Some((place, isolation))) = (cause, of_joint(subject)) else {
        return Vec::new();
    };
    let class = isolation.class.as_ref().and_then(At::both);
    if matches!(class, Some((IsolationClass::Positive, _))) {
        return Vec::new();
    }
    let severity = if isolation.reason.is_some() {
        Severity::Accept
    } else {
        Severity::Error
    };
    vec![
        subject
            .finding(
                "I04",
                severity,
                Some(class.map_or(place, |(_, place)| place)),
            )
            .with(
                "sheet",
                subject
                    .joint
                    .work
                    .isolation
                    .get()
                    .cloned()
                    .unwrap_or_default(),
            )
            .with("fluid", cause.word())
            .with("given", class.map_or("", |(class, _)| class.word()))
            .with("needed", IsolationClass::Positive.word()),
    ]
}

fn energy_without_control(subject: &Subject<'_>) -> Vec<Finding> {
    let isolations = entries(subject.job.isolations.as_ref());
    isolations
        .filter_map(|(name, isolation)| Some((name.get()?, isolation.get()?)))
        .flat_map(|(name, isolation)| {
            let energies = isolation.energies.iter().filter_map(At::get).flatten();
            energies
                .filter_map(At::get)
                .filter(|energy| energy.control.is_none())
                .map(move |energy| {
                    let what = energy
                        .what
                        .get()
                        .map(|what| what.as_str())
                        .unwrap_or_default();
                    Finding::rule("I05", Severity::Error, energy.what.place())
                        .with("isolation", name.as_str())
                        .with("energy", what)
                })
        })
        .collect()
}
