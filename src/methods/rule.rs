//! A rule, and what it looks at: one joint or the whole job, with their numbers.

use std::collections::BTreeMap;

use crate::job::{Isolation, Job, Pack, Person};
use crate::joint::{DAY, Joint, Mechanics, limit_of};
use crate::report::{Finding, Place, Severity};
use crate::units::{Date, Quantity, Ratio, Units};
use crate::yaml::At;

use super::computed::{Calculation, Computed, Group};

/// A rule.
pub struct Rule {
    /// Its id.
    pub id: &'static str,
    /// How much its findings weigh. A rule whose weight depends on the case gives the heaviest.
    pub severity: Severity,
    /// What it looks at.
    pub check: Check,
}

/// What a rule looks at.
pub enum Check {
    /// Each joint for itself.
    Joint(fn(&JointSubject<'_>) -> Vec<Finding>),
    /// The job as a whole.
    Job(fn(&Subject<'_>) -> Vec<Finding>),
    /// Nothing here: the reader or the resolver raises it as an error of the job.
    Earlier,
}

/// A revision that was issued before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IssuedRevision {
    /// The revision.
    pub revision: String,
    /// Its date as text.
    pub date: String,
    /// Whether it was only a draft.
    pub draft: bool,
}

/// The whole job with its numbers.
pub struct Subject<'a> {
    /// The job.
    pub job: &'a Job,
    /// The joints.
    pub all: &'a [Joint],
    /// Their numbers.
    pub plan: &'a Calculation,
    /// What was issued under this number.
    pub issued: &'a [IssuedRevision],
    /// The units of the pack.
    pub units: Units,
    /// People by name.
    people: BTreeMap<&'a str, (Place, &'a Person)>,
    /// Isolations by name.
    isolations: BTreeMap<&'a str, (Place, &'a Isolation)>,
}

/// One joint with its numbers.
pub struct JointSubject<'a> {
    /// The whole job.
    pub whole: &'a Subject<'a>,
    /// The joint.
    pub joint: &'a Joint,
    /// Its numbers.
    pub computed: &'a Computed,
}

impl<'a> Subject<'a> {
    /// Gathers what rules look at.
    pub fn new(
        job: &'a Job,
        all: &'a [Joint],
        plan: &'a Calculation,
        issued: &'a [IssuedRevision],
    ) -> Self {
        let people = named(job.people.as_ref());
        let isolations = named(job.isolations.as_ref());
        Self {
            job,
            all,
            plan,
            issued,
            units: job.units(),
            people,
            isolations,
        }
    }

    /// The joints one by one.
    pub fn joints(&'a self) -> impl Iterator<Item = JointSubject<'a>> {
        self.all.iter().enumerate().filter_map(|(index, joint)| {
            let group: &Group = self.plan.of(index)?;
            Some(JointSubject {
                whole: self,
                joint,
                computed: &group.computed,
            })
        })
    }

    /// The pack, if it could be read.
    pub fn pack(&self) -> Option<&'a Pack> {
        self.job.pack.get()
    }

    /// A person by name.
    pub fn person(&self, name: &str) -> Option<(Place, &'a Person)> {
        self.people.get(name).copied()
    }

    /// An isolation by name.
    pub fn isolation(&self, name: &str) -> Option<(Place, &'a Isolation)> {
        self.isolations.get(name).copied()
    }

    /// First and last day of the work: the pack's, widened to the days of its joints.
    pub fn days(&self) -> (Option<Date>, Option<Date>) {
        let work = self
            .pack()
            .and_then(|pack| pack.work.as_ref())
            .and_then(At::get);
        let day = |day: Option<&At<Date>>| day.and_then(At::get).copied();
        let first = day(work.and_then(|work| work.first_day.as_ref()));
        let last = day(work.and_then(|work| work.last_day.as_ref()));
        let starts = || self.all.iter().filter_map(|joint| joint.work.start);
        (
            first.into_iter().chain(starts()).min(),
            last.into_iter().chain(starts()).max(),
        )
    }

    /// The threshold in SI of a rule that looks at the whole job.
    pub fn limit(&self, rule: &'static str) -> f64 {
        // A joint cannot replace such a limit, so every joint has the job's.
        let own = self.all.first().map(|joint| joint.work.limit(rule));
        own.or_else(|| limit_of(rule).map(|limit| limit.value))
            .unwrap_or(f64::INFINITY)
    }

    /// Turns a finding that somebody accepts into a note that names him. Errors cannot be accepted.
    pub(crate) fn accept(&self, finding: &mut Finding) {
        if finding.severity != Severity::Accept {
            return;
        }
        let accepted = self
            .job
            .accepted
            .iter()
            .filter_map(At::get)
            .flatten()
            .filter_map(At::get);
        let by = accepted
            .filter(|entry| {
                entry
                    .rule
                    .get()
                    .is_some_and(|rule| rule.as_str() == finding.id)
            })
            .find(|entry| match entry.joint.as_ref().and_then(At::get) {
                Some(tag) => finding.joint.as_deref() == Some(tag.as_str()),
                None => true,
            })
            .and_then(|entry| entry.by.get());
        if let Some(by) = by {
            finding.severity = Severity::Note;
            finding.values.insert("accepted_by", by.as_str().to_owned());
        }
    }
}

fn named<T>(list: Option<&At<crate::yaml::Named<T>>>) -> BTreeMap<&str, (Place, &T)> {
    list.and_then(At::get)
        .into_iter()
        .flat_map(crate::yaml::Named::iter)
        .filter_map(|(name, value)| Some((name.get()?.as_str(), (name.place(), value.get()?))))
        .collect()
}

impl<'a> JointSubject<'a> {
    /// What the calculation read.
    pub fn mechanics(&self) -> &'a Mechanics {
        &self.joint.mechanics
    }

    /// A finding on this joint at the place of a fact, else at its tag.
    pub fn finding(&self, id: &'static str, severity: Severity, place: Option<Place>) -> Finding {
        Finding::rule(id, severity, place.unwrap_or(self.joint.place)).on(self.joint.tag.clone())
    }

    /// The threshold of a rule in SI.
    pub fn limit(&self, rule: &'static str) -> f64 {
        self.joint.work.limit(rule)
    }

    /// A quantity as it is printed, with its unit.
    pub fn print<Q: Quantity>(&self, quantity: Q) -> String {
        self.whole.units.print(quantity).joined()
    }
}

/// A ratio in whole or tenth per cent: `90 %`, `7.5 %`.
pub(crate) fn percent(ratio: Ratio) -> String {
    percent_si(ratio.si())
}

/// The same from a bare number.
pub(crate) fn percent_si(ratio: f64) -> String {
    let tenths = (ratio * 1000.0 * (1.0 + 1e-12)).round() / 10.0;
    let tenths = if tenths.abs() >= 100.0 {
        tenths.round()
    } else {
        tenths
    };
    format!("{}\u{a0}%", crate::units::digits(tenths))
}

/// Whether a day lies at most `limit` seconds behind `last`, on it included. A day before it is
/// another rule's.
pub(crate) fn soon_after(last: Date, day: Date, limit: f64) -> bool {
    let days = day.days_after(last);
    let span = i32::try_from(days).map_or(f64::INFINITY, f64::from) * DAY;
    days >= 0 && span <= limit
}
