//! Identity, counts, documents.

use crate::calc::ids;
use crate::job::{DrawingReference, IssueStatus, Job, JointEntry, JointKeys, Revision};
use crate::report::{Finding, Severity};
use crate::yaml::{At, entries};

use crate::methods::rule::{Check, JointSubject, Rule, Subject, percent_si};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "D01",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "D02",
        severity: Severity::Error,
        check: Check::Joint(nameless),
    },
    Rule {
        id: "D03",
        severity: Severity::Accept,
        check: Check::Joint(tag_pattern),
    },
    Rule {
        id: "D05",
        severity: Severity::Error,
        check: Check::Job(revision),
    },
    Rule {
        id: "D06",
        severity: Severity::Error,
        check: Check::Job(same_person),
    },
    Rule {
        id: "D07",
        severity: Severity::Accept,
        check: Check::Job(reference_revision),
    },
    Rule {
        id: "D08",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "D12",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "D13",
        severity: Severity::Note,
        check: Check::Job(odd_members),
    },
    Rule {
        id: "D14",
        severity: Severity::Error,
        check: Check::Earlier,
    },
    Rule {
        id: "D15",
        severity: Severity::Accept,
        check: Check::Joint(issued_too_late),
    },
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
        .map(|(_, field)| {
            subject
                .finding("D02", Severity::Error, None)
                .with("field", field)
        })
        .collect()
}

fn tag_pattern(subject: &JointSubject<'_>) -> Vec<Finding> {
    let pattern = subject
        .whole
        .pack()
        .and_then(|pack| pack.tag_pattern.as_ref());
    let Some(pattern) = pattern.and_then(At::get) else {
        return Vec::new();
    };
    if follows(&subject.joint.tag, pattern.as_str()) {
        return Vec::new();
    }
    vec![
        subject
            .finding("D03", Severity::Accept, None)
            .with("pattern", pattern.as_str()),
    ]
}

/// `#` is a digit, `@` a letter, `*` any run of signs; everything else stands for itself.
fn follows(tag: &str, pattern: &str) -> bool {
    let mut signs = pattern.chars();
    let Some(first) = signs.next() else {
        return tag.is_empty();
    };
    let rest = signs.as_str();
    if first == '*' {
        let ends = tag.char_indices().map(|(at, _)| at).chain([tag.len()]);
        return ends.into_iter().any(|at| follows(&tag[at..], rest));
    }
    let mut tail = tag.chars();
    let Some(sign) = tail.next() else {
        return false;
    };
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
    let Some(pack) = subject.pack() else {
        return Vec::new();
    };
    let place = subject.job.pack.place();
    let no_number = pack.number.is_none().then(|| missing(place, "pack.number"));
    let of_revision = match current(subject) {
        Some(current) => already_issued(subject, current),
        None => vec![missing(place, "pack.revisions")],
    };
    no_number.into_iter().chain(of_revision).collect()
}

fn already_issued(subject: &Subject<'_>, current: &Revision) -> Vec<Finding> {
    let Some(name) = current.revision.get() else {
        return Vec::new();
    };
    let issued = subject
        .issued
        .iter()
        .find(|issued| !issued.draft && issued.revision == name.as_str());
    let Some(issued) = issued else {
        return later_than_issued(subject, current);
    };
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
    let Some(current) = current(subject) else {
        return Vec::new();
    };
    let name = |person: &Option<At<crate::job::Name>>| {
        person
            .as_ref()
            .and_then(At::get)
            .map(|name| name.as_str().to_owned())
    };
    let (prepared, approved) = (name(&current.prepared), name(&current.approved));
    match (prepared, approved) {
        (Some(prepared), Some(approved)) if prepared == approved => vec![
            Finding::rule(
                "D06",
                Severity::Error,
                current.approved.as_ref().map(At::place),
            )
            .with("name", approved),
        ],
        _ => Vec::new(),
    }
}

fn reference_revision(subject: &Subject<'_>) -> Vec<Finding> {
    let references = subject
        .pack()
        .and_then(|pack| pack.references.as_ref())
        .and_then(At::get);
    let listed = references
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter(|reference| reference.revision.is_none())
        .map(|reference| &reference.document);
    let drawn = drawings(subject.job)
        .filter(|drawing| drawing.revision.is_none())
        .map(|drawing| &drawing.number);
    listed
        .chain(drawn)
        .filter_map(|document| {
            let (name, place) = document.both()?;
            Some(Finding::rule("D07", Severity::Accept, place).with("document", name.as_str()))
        })
        .collect()
}

/// The drawings that families, joints and isolations name.
fn drawings(job: &Job) -> impl Iterator<Item = &DrawingReference> {
    let isolations = entries(job.isolations.as_ref());
    let of_joints = job.joint_keys().filter_map(|keys| keys.drawing.as_ref());
    let of_isolations = isolations
        .filter_map(|(_, isolation)| isolation.get())
        .filter_map(|isolation| isolation.drawing.as_ref());
    of_joints.chain(of_isolations).filter_map(At::get)
}

/// Whether a joint says something of its own that is worked out with; names, places and days differ
/// from joint to joint anyway.
fn overrides(keys: &JointKeys) -> bool {
    keys.class.is_some()
        || keys.hazards.is_some()
        || keys.service.is_some()
        || keys.seat.is_some()
        || keys.studs.is_some()
        || keys.gasket.is_some()
        || keys.lubricant.is_some()
        || keys.target.is_some()
        || keys.tighten.is_some()
        || keys.loosen.is_some()
        || keys.opened.is_some()
        || keys.large_or_stiff.is_some()
        || keys.checks.is_some()
        || keys.limits.is_some()
}

fn odd_members(subject: &Subject<'_>) -> Vec<Finding> {
    let limit = subject.limit("D13");
    let families = entries(subject.job.families.as_ref());
    families
        .filter_map(|(family, _)| family.both())
        .filter_map(|(family, place)| {
            let joints = subject
                .job
                .joints
                .get()
                .into_iter()
                .flatten()
                .filter_map(At::get);
            let members: Vec<&JointEntry> =
                joints.filter(|entry| is_member(entry, family)).collect();
            let odd = members
                .iter()
                .filter(|entry| overrides(&entry.keys))
                .count();
            let share = share_of(odd, members.len())?;
            (share > limit).then(|| {
                Finding::rule("D13", Severity::Note, place)
                    .with("family", family.as_str())
                    .with("count", odd.to_string())
                    .with("members", members.len().to_string())
                    .with("percent", percent_si(share))
            })
        })
        .collect()
}

fn is_member(entry: &JointEntry, family: &str) -> bool {
    entry
        .family
        .as_ref()
        .and_then(At::get)
        .is_some_and(|name| name.as_str() == family)
}

/// A family has far fewer members than a `u32` holds.
fn share_of(part: usize, whole: usize) -> Option<f64> {
    let count = |number: usize| u32::try_from(number).ok().map(f64::from);
    let whole = count(whole).filter(|whole| *whole > 0.0)?;
    Some(count(part)? / whole)
}

/// "For construction" with open errors: the status stays DRAFT. It looks at what the other rules
/// have said, so it is asked last.
pub(super) fn open_errors(subject: &Subject<'_>, findings: &[Finding]) -> Option<Finding> {
    let status = subject.pack()?.status.as_ref()?;
    if status.get() != Some(&IssueStatus::ForConstruction) {
        return None;
    }
    let errors = findings
        .iter()
        .filter(|finding| finding.severity == Severity::Error)
        .count();
    let missing = subject.joints().filter(|joint| !has_setting(joint)).count();
    (errors + missing > 0).then(|| {
        Finding::rule("D08", Severity::Error, status.place())
            .with("count", count_of(errors))
            .with("missing", count_of(missing))
    })
}

/// Nothing to say of is no value.
fn count_of(number: usize) -> String {
    if number == 0 {
        String::new()
    } else {
        number.to_string()
    }
}

/// Without number of studs, thread and setting there is nothing to tighten by.
fn has_setting(subject: &JointSubject<'_>) -> bool {
    let ledger = &subject.computed.ledger;
    ledger.get(ids::COUNT).is_some()
        && ledger.get(ids::DIAMETER).is_some()
        && (ledger.get(ids::SET_TORQUE).is_some() || ledger.get(ids::SET_TURN).is_some())
}

fn issued_too_late(subject: &JointSubject<'_>) -> Vec<Finding> {
    let issued = current(subject.whole).and_then(|revision| revision.date.both());
    match (issued, subject.joint.work.start) {
        (Some((issued, place)), Some(start)) if *issued > start => vec![
            subject
                .finding("D15", Severity::Accept, Some(place))
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
