//! Papers of tools: serial, certificate, calibration date.

use std::collections::BTreeSet;

use crate::job::{Tool, ToolKind};
use crate::joint::DAY;
use crate::report::{Finding, Place, Severity};
use crate::units::{Date, digits};
use crate::yaml::{At, entries};

use crate::methods::rule::{Check, Rule, Subject, soon_after};

pub(super) const RULES: &[Rule] = &[
    Rule {
        id: "T04",
        severity: Severity::Error,
        check: Check::Job(out_of_calibration),
    },
    Rule {
        id: "T05",
        severity: Severity::Accept,
        check: Check::Job(calibration_ends_soon),
    },
    Rule {
        id: "T06",
        severity: Severity::Error,
        check: Check::Job(no_certificate),
    },
];

/// Gauges that no joint names; the crew takes them from the list of the job.
fn is_shared(kind: ToolKind) -> bool {
    matches!(
        kind,
        ToolKind::DepthGauge | ToolKind::FeelerGauge | ToolKind::Thermometer
    )
}

/// The papers of a tool.
struct Papers<'a> {
    name: &'a str,
    place: Place,
    kind: ToolKind,
    due: Option<(Date, Option<Place>)>,
    /// Keys that nobody gives.
    missing: Vec<&'static str>,
    /// The joint that uses it; `None` for what all joints share.
    joint: Option<&'a str>,
    /// The last day on which it is needed.
    last_day: Option<Date>,
}

impl Papers<'_> {
    fn finding(&self, id: &'static str, severity: Severity, place: Option<Place>) -> Finding {
        let finding = Finding::rule(id, severity, place.unwrap_or(self.place));
        match self.joint {
            Some(tag) => finding.on(tag),
            None => finding,
        }
    }
}

/// The keys that stand for papers, of those that are missing.
fn lacking(serial: bool, certificate: bool, due: bool) -> Vec<&'static str> {
    let keys = [
        (serial, "serial"),
        (certificate, "certificate"),
        (due, "due"),
    ];
    keys.into_iter()
        .filter(|(given, _)| !given)
        .map(|(_, key)| key)
        .collect()
}

/// The papers of every tool that a joint uses, when tightening and loosening.
fn of_joints<'a>(subject: &'a Subject<'a>) -> impl Iterator<Item = Papers<'a>> {
    subject.joints().flat_map(|joint| {
        let tools = joint.computed.chosen.all();
        let (tag, last_day) = (joint.joint.tag.as_str(), joint.joint.work.last_day);
        tools.map(move |tool| Papers {
            name: &tool.name,
            place: tool.place,
            kind: tool.kind,
            due: tool.due.value().map(|due| (due, tool.due.place())),
            missing: lacking(
                tool.serial.get().is_some(),
                tool.certificate.get().is_some(),
                tool.due.get().is_some(),
            ),
            joint: Some(tag),
            last_day,
        })
    })
}

/// The papers of what all joints share: gauges of the list, and those that prove zero at an
/// isolation, unless a joint names them too.
fn shared<'a>(subject: &'a Subject<'a>) -> impl Iterator<Item = Papers<'a>> {
    let isolations = entries(subject.job.isolations.as_ref());
    let proofs: BTreeSet<&str> = isolations
        .filter_map(|(_, isolation)| {
            isolation
                .get()?
                .proof
                .as_ref()?
                .get()?
                .gauge
                .as_ref()?
                .get()
        })
        .map(|name| name.as_str())
        .collect();
    let groups = subject.plan.groups.iter();
    let used: BTreeSet<&str> = groups
        .flat_map(|group| group.computed.chosen.all())
        .map(|tool| tool.name.as_str())
        .collect();
    let (_, last_day) = subject.days();
    let tools = entries(subject.job.tools.as_ref());
    tools
        .filter_map(move |(name, tool)| papers_of(name, tool.get()?, last_day))
        .filter(move |papers| is_shared(papers.kind) || proofs.contains(papers.name))
        .filter(move |papers| !used.contains(papers.name))
}

fn papers_of<'a>(
    name: &'a At<String>,
    tool: &'a Tool,
    last_day: Option<Date>,
) -> Option<Papers<'a>> {
    let calibration = tool.calibration.as_ref().and_then(At::get);
    let due = calibration
        .and_then(|calibration| calibration.due.as_ref())
        .and_then(At::both);
    let certificate = calibration.is_some_and(|calibration| calibration.certificate.is_some());
    Some(Papers {
        name: name.get()?,
        place: name.place(),
        kind: *tool.kind.get()?,
        due: due.map(|(due, place)| (*due, Some(place))),
        missing: lacking(tool.serial.is_some(), certificate, due.is_some()),
        joint: None,
        last_day,
    })
}

fn out_of_calibration(subject: &Subject<'_>) -> Vec<Finding> {
    of_joints(subject)
        .chain(shared(subject))
        .filter_map(|papers| {
            let ((due, place), last) = (papers.due?, papers.last_day?);
            (due < last).then(|| {
                papers
                    .finding("T04", Severity::Error, place)
                    .with("tool", papers.name)
                    .with("due", due.to_string())
                    .with("last_day", last.to_string())
            })
        })
        .collect()
}

/// A calibration that lasts the job by a few days only. Once it does not last the job it is T04's.
fn calibration_ends_soon(subject: &Subject<'_>) -> Vec<Finding> {
    let (Some(first), _) = subject.days() else {
        return Vec::new();
    };
    let limit = subject.limit("T05");
    of_joints(subject)
        .chain(shared(subject))
        .filter_map(|papers| {
            let (due, place) = papers.due?;
            let lasts = papers.last_day.is_none_or(|last| due >= last);
            (lasts && soon_after(first, due, limit)).then(|| {
                papers
                    .finding("T05", Severity::Accept, place)
                    .with("tool", papers.name)
                    .with("due", due.to_string())
                    .with("start", first.to_string())
                    .with("limit", digits(limit / DAY))
            })
        })
        .collect()
}

fn no_certificate(subject: &Subject<'_>) -> Vec<Finding> {
    of_joints(subject)
        .chain(shared(subject))
        .filter(|papers| papers.kind.shows_load() && !papers.missing.is_empty())
        .map(|papers| {
            papers
                .finding("T06", Severity::Error, None)
                .with("tool", papers.name)
                .with("missing", papers.missing.join(", "))
        })
        .collect()
}
