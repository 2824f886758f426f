//! Identity, counts, documents.

use crate::job::{IssueStatus, Revision};
use crate::report::{Finding, Severity};
use crate::yaml::At;

use super::subject::{JointSubject, Subject};
use super::{Check, Rule};

pub(super) const RULES: &[Rule] = &[
    Rule { id: "D01", severity: Severity::Error, check: Check::Earlier },
    Rule { id: "D02", severity: Severity::Error, check: Check::Joint(nameless) },
    Rule { id: "D03", severity: Severity::Accept, check: Check::Joint(tag_pattern) },
    Rule { id: "D05", severity: Severity::Error, check: Check::Job(revision) },
    Rule { id: "D06", severity: Severity::Error, check: Check::Job(same_person) },
    Rule { id: "D07", severity: Severity::Accept, check: Check::Job(reference_revision) },
    Rule { id: "D08", severity: Severity::Error, check: Check::Earlier },
    Rule { id: "D12", severity: Severity::Error, check: Check::Earlier },
    Rule { id: "D14", severity: Severity::Error, check: Check::Earlier },
    Rule { id: "D15", severity: Severity::Accept, check: Check::Joint(issued_too_late) },
];

fn nameless(subject: &JointSubject<'_>) -> Vec<Finding> {
    let identity = &subject.joint.identity;
    let fields = [
        (identity.equipment.get().is_none(), "equipment"),
        (identity.unit.get().is_none(), "unit"),
    ];
    fields
        .into_iter()
        .filter(|(missing, _)| *missing)
        .map(|(_, field)| subject.finding("D02", Severity::Error, None).with("field", field))
        .collect()
}

fn tag_pattern(subject: &JointSubject<'_>) -> Vec<Finding> {
    let pattern = subject.whole.pack().and_then(|pack| pack.tag_pattern.as_ref());
    let Some(pattern) = pattern.and_then(At::get) else { return Vec::new() };
    if follows(&subject.joint.tag, pattern.as_str()) {
        return Vec::new();
    }
    vec![subject.finding("D03", Severity::Accept, None).with("pattern", pattern.as_str())]
}

/// `#` is a digit, `@` a letter, `*` any run of signs; everything else stands for itself.
fn follows(tag: &str, pattern: &str) -> bool {
    let mut signs = pattern.chars();
    let Some(first) = signs.next() else { return tag.is_empty() };
    let rest = signs.as_str();
    if first == '*' {
        let ends = tag.char_indices().map(|(at, _)| at).chain([tag.len()]);
        return ends.into_iter().any(|at| follows(&tag[at..], rest));
    }
    let mut tail = tag.chars();
    let Some(sign) = tail.next() else { return false };
    let fits = match first {
        '#' => sign.is_ascii_digit(),
        '@' => sign.is_alphabetic(),
        other => sign == other,
    };
    fits && follows(tail.as_str(), rest)
}

/// The revision that is issued: the last one of the list.
fn current<'a>(subject: &Subject<'a>) -> Option<&'a Revision> {
    let revisions = subject.pack()?.revisions.as_ref()?.get()?;
    revisions.last()?.get()
}

fn revision(subject: &Subject<'_>) -> Vec<Finding> {
    let Some(pack) = subject.pack() else { return Vec::new() };
    let place = subject.job.pack.place();
    if pack.number.is_none() {
        return vec![missing(place, "pack.number")];
    }
    let Some(current) = current(subject) else {
        return vec![missing(place, "pack.revisions")];
    };
    let Some(name) = current.revision.get() else { return Vec::new() };
    let issued = subject.issued.iter().find(|issued| !issued.draft && issued.revision == name.as_str());
    let Some(issued) = issued else { return later_than_issued(subject, current) };
    vec![
        Finding::rule("D05", Severity::Error, current.revision.place())
            .with("key", "")
            .with("revision", name.as_str())
            .with("date", issued.date.clone()),
    ]
}

fn missing(place: crate::report::Place, key: &str) -> Finding {
    Finding::rule("D05", Severity::Error, place)
        .with("key", key)
        .with("revision", "")
        .with("date", "")
}

/// A revision that stands before one that was already issued cannot be issued after it.
fn later_than_issued(subject: &Subject<'_>, current: &Revision) -> Vec<Finding> {
    let listed: Vec<&str> = subject
        .pack()
        .and_then(|pack| pack.revisions.as_ref())
        .and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter_map(|revision| revision.revision.get())
        .map(|name| name.as_str())
        .collect();
    let unlisted = subject
        .issued
        .iter()
        .find(|issued| !issued.draft && !listed.contains(&issued.revision.as_str()));
    unlisted
        .map(|issued| {
            Finding::rule("D05", Severity::Error, current.revision.place())
                .with("key", "")
                .with("revision", issued.revision.clone())
                .with("date", issued.date.clone())
        })
        .into_iter()
        .collect()
}

fn same_person(subject: &Subject<'_>) -> Vec<Finding> {
    let Some(current) = current(subject) else { return Vec::new() };
    let name = |person: &Option<At<crate::job::Name>>| {
        person.as_ref().and_then(At::get).map(|name| name.as_str().to_owned())
    };
    let (prepared, approved) = (name(&current.prepared), name(&current.approved));
    match (prepared, approved) {
        (Some(prepared), Some(approved)) if prepared == approved => vec![
            Finding::rule("D06", Severity::Error, current.approved.as_ref().map(At::place))
                .with("name", approved),
        ],
        _ => Vec::new(),
    }
}

fn reference_revision(subject: &Subject<'_>) -> Vec<Finding> {
    let references = subject.pack().and_then(|pack| pack.references.as_ref()).and_then(At::get);
    references
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter(|reference| reference.revision.is_none())
        .filter_map(|reference| {
            let document = reference.document.get()?;
            Some(
                Finding::rule("D07", Severity::Accept, reference.document.place())
                    .with("document", document.as_str()),
            )
        })
        .collect()
}

/// "For construction" with open errors: the status stays DRAFT. It looks at what the other rules
/// have said, so it is asked last.
pub(super) fn open_errors(subject: &Subject<'_>, findings: &[Finding]) -> Option<Finding> {
    let status = subject.pack()?.status.as_ref()?;
    if status.get() != Some(&IssueStatus::ForConstruction) {
        return None;
    }
    let errors = findings.iter().filter(|finding| finding.severity == Severity::Error).count();
    (errors > 0).then(|| {
        Finding::rule("D08", Severity::Error, status.place()).with("count", errors.to_string())
    })
}

fn issued_too_late(subject: &JointSubject<'_>) -> Vec<Finding> {
    let issued = current(subject.whole).and_then(|revision| revision.date.get());
    match (issued, subject.joint.work.start) {
        (Some(issued), Some(start)) if *issued > start => vec![
            subject
                .finding("D15", Severity::Accept, None)
                .with("issued", issued.to_string())
                .with("start", start.to_string()),
        ],
        _ => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::follows;

    #[test]
    fn a_pattern_of_digits_letters_and_runs() {
        assert!(follows("E-310-CH-01", "@-###-@@-##"));
        assert!(!follows("E-31-CH-01", "@-###-@@-##"));
        assert!(follows("E-310-CH-01", "@-*"));
        assert!(!follows("310-CH-01", "@-*"));
        assert!(follows("", "*"));
    }
}
