//! People.

use crate::calc::crew_of;
use crate::job::{Class, Method};
use crate::report::{Finding, Severity};
use crate::yaml::At;

use super::subject::{JointSubject, Subject};
use super::{Check, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule { id: "Q01", severity: Severity::Error, check: Check::Joint(not_qualified) },
    Rule { id: "Q02", severity: Severity::Error, check: Check::Job(certificate_ends) },
    Rule { id: "Q05", severity: Severity::Error, check: Check::Joint(crew_too_small) },
    Rule { id: "Q06", severity: Severity::Accept, check: Check::Job(nobody_in_charge) },
];

/// Whoever tightens a class A joint has a certificate that names the method.
fn not_qualified(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let (Some(Class::A), Some(method)) = (mechanics.class.value(), mechanics.method.value()) else {
        return Vec::new();
    };
    let bare = subject.joint.work.people.iter().filter(|name| !qualified(subject, name, method));
    bare.map(|name| {
        let place = subject.whole.person(name).map(|(place, _)| place);
        subject
            .finding("Q01", Severity::Error, place)
            .with("name", name.clone())
            .with("method", method.word())
    })
    .collect()
}

fn qualified(subject: &JointSubject<'_>, name: &str, method: Method) -> bool {
    let certificates = subject
        .whole
        .person(name)
        .and_then(|(_, person)| person.certificates.as_ref())
        .and_then(At::get);
    certificates.into_iter().flatten().filter_map(At::get).any(|certificate| {
        let methods = certificate.methods.as_ref().and_then(At::get);
        methods.into_iter().flatten().filter_map(At::get).any(|covered| *covered == method)
    })
}

fn certificate_ends(subject: &Subject<'_>) -> Vec<Finding> {
    let (_, Some(last)) = subject.days() else { return Vec::new() };
    let mut findings = Vec::new();
    let people = subject.job.people.iter().filter_map(At::get).flat_map(|people| people.iter());
    for (name, person) in people {
        let (Some(name), Some(person)) = (name.get(), person.get()) else { continue };
        let certificates = person.certificates.as_ref().and_then(At::get).into_iter().flatten();
        for certificate in certificates.filter_map(At::get) {
            let until = certificate.until.as_ref().and_then(At::both);
            if let Some((until, place)) = until
                && *until < last
            {
                let title = certificate.name.get().map(|name| name.as_str()).unwrap_or_default();
                findings.push(
                    Finding::rule("Q02", Severity::Error, place)
                        .with("name", name.as_str())
                        .with("certificate", title)
                        .with("until", until.to_string())
                        .with("last_day", last.to_string()),
                );
            }
        }
    }
    findings
}

fn crew_too_small(subject: &JointSubject<'_>) -> Vec<Finding> {
    let work = &subject.joint.work;
    let (Some(method), Some(crew)) = (subject.mechanics().method.value(), work.crew.get()) else {
        return Vec::new();
    };
    let needed = crew_of(method);
    if work.people.len() >= needed {
        return Vec::new();
    }
    vec![
        subject
            .finding("Q05", Severity::Error, work.crew.place())
            .with("method", method.word())
            .with("needed", needed.to_string())
            .with("crew", crew.clone())
            .with("has", work.people.len().to_string()),
    ]
}

fn nobody_in_charge(subject: &Subject<'_>) -> Vec<Finding> {
    let pack = subject.pack();
    let named = pack
        .and_then(|pack| pack.roles.as_ref())
        .and_then(At::get)
        .and_then(|roles| roles.in_charge.as_ref());
    if named.is_some() {
        return Vec::new();
    }
    let title = pack.and_then(|pack| pack.title.get()).map(|title| title.as_str());
    vec![
        Finding::rule("Q06", Severity::Accept, subject.job.pack.place())
            .with("title", title.unwrap_or_default()),
    ]
}
