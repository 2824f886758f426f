//! People.

use std::collections::BTreeSet;

use crate::job::Class;
use crate::methods;
use crate::report::{Finding, Place, Severity};
use crate::units::Date;
use crate::yaml::{At, entries};

use crate::methods::rule::{Check, JointSubject, Rule, Subject, soon_after};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "Q01",
        severity: Severity::Error,
        check: Check::Joint(not_qualified),
    },
    Rule {
        id: "Q02",
        severity: Severity::Error,
        check: Check::Job(certificate_ends),
    },
    Rule {
        id: "Q03",
        severity: Severity::Accept,
        check: Check::Job(certificate_ends_soon),
    },
    Rule {
        id: "Q05",
        severity: Severity::Error,
        check: Check::Joint(crew_too_small),
    },
    Rule {
        id: "Q06",
        severity: Severity::Accept,
        check: Check::Job(nobody_in_charge),
    },
];

/// Whoever tightens a class A joint has a certificate that names the method.
fn not_qualified(subject: &JointSubject<'_>) -> Vec<Finding> {
    let mechanics = subject.mechanics();
    let (Some(Class::A), Some(method)) = (mechanics.class.value(), mechanics.method.value()) else {
        return Vec::new();
    };
    let bare = subject
        .joint
        .work
        .people
        .iter()
        .filter(|name| !qualified(subject, name, method));
    bare.map(|name| {
        let place = subject.whole.person(name).map(|(place, _)| place);
        subject
            .finding("Q01", Severity::Error, place)
            .with("name", name.clone())
            .with("method", method)
    })
    .collect()
}

fn qualified(subject: &JointSubject<'_>, name: &str, method: &str) -> bool {
    let certificates = subject
        .whole
        .person(name)
        .and_then(|(_, person)| person.certificates.as_ref())
        .and_then(At::get);
    certificates
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .any(|certificate| {
            let methods = certificate.methods.as_ref().and_then(At::get);
            methods
                .into_iter()
                .flatten()
                .filter_map(At::get)
                .any(|covered| covered.as_str() == method)
        })
}

/// A certificate with an end.
struct Ending<'a> {
    name: &'a str,
    certificate: &'a str,
    until: Date,
    place: Place,
}

/// The certificates of everybody in the job that have an end.
fn endings<'a>(subject: &Subject<'a>) -> Vec<Ending<'a>> {
    let mut endings = Vec::new();
    let people = entries(subject.job.people.as_ref());
    for (name, person) in people {
        let (Some(name), Some(person)) = (name.get(), person.get()) else {
            continue;
        };
        let certificates = person
            .certificates
            .as_ref()
            .and_then(At::get)
            .into_iter()
            .flatten();
        for certificate in certificates.filter_map(At::get) {
            if let Some((until, place)) = certificate.until.as_ref().and_then(At::both) {
                let title = certificate
                    .name
                    .get()
                    .map(|name| name.as_str())
                    .unwrap_or_default();
                endings.push(Ending {
                    name,
                    certificate: title,
                    until: *until,
                    place,
                });
            }
        }
    }
    endings
}

fn certificate_ends(subject: &Subject<'_>) -> Vec<Finding> {
    let (_, Some(last)) = subject.days() else {
        return Vec::new();
    };
    let ended = endings(subject)
        .into_iter()
        .filter(|ending| ending.until < last);
    ended
        .map(|ending| {
            Finding::rule("Q02", Severity::Error, ending.place)
                .with("name", ending.name)
                .with("certificate", ending.certificate)
                .with("until", ending.until.to_string())
                .with("last_day", last.to_string())
        })
        .collect()
}

fn certificate_ends_soon(subject: &Subject<'_>) -> Vec<Finding> {
    let (_, Some(last)) = subject.days() else {
        return Vec::new();
    };
    let limit = subject.limit("Q03");
    let soon = endings(subject)
        .into_iter()
        .filter(|ending| soon_after(last, ending.until, limit));
    soon.map(|ending| {
        Finding::rule("Q03", Severity::Accept, ending.place)
            .with("name", ending.name)
            .with("certificate", ending.certificate)
            .with("expires", ending.until.to_string())
    })
    .collect()
}

fn crew_too_small(subject: &JointSubject<'_>) -> Vec<Finding> {
    let work = &subject.joint.work;
    let method = subject.mechanics().method.value().and_then(methods::named);
    let (Some(method), Some(crew)) = (method, work.crew.get()) else {
        return Vec::new();
    };
    let needed = method.crew;
    // Nobody counts twice, even if he leads the crew and is one of its members.
    let has = work.people.iter().collect::<BTreeSet<_>>().len();
    if has >= needed {
        return Vec::new();
    }
    vec![
        subject
            .finding("Q05", Severity::Error, work.crew.place())
            .with("method", method.word)
            .with("needed", needed.to_string())
            .with("crew", crew.clone())
            .with("has", has.to_string()),
    ]
}

fn nobody_in_charge(subject: &Subject<'_>) -> Vec<Finding> {
    let pack = subject.pack();
    let roles = pack.and_then(|pack| pack.roles.as_ref());
    if roles
        .and_then(At::get)
        .is_some_and(|roles| roles.in_charge.is_some())
    {
        return Vec::new();
    }
    let place = roles.map_or(subject.job.pack.place(), At::place);
    let title = pack
        .and_then(|pack| pack.title.get())
        .map(|title| title.as_str());
    vec![Finding::rule("Q06", Severity::Accept, place).with("title", title.unwrap_or_default())]
}
