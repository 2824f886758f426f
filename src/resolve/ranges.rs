//! Values that were read but cannot be: a length below zero, a friction above one, a stud that is
//! not there. The table of keys says in which range each must lie.

use crate::job::table::Range::{Open, Positive, Within};
use crate::job::table::{Field, Key};
use crate::job::values::{Leaf, Visit};
use crate::job::{self, Checks, Job, JointKeys, Loosen, Studs};
use crate::report::{Finding, Place};
use crate::units::{Date, Quantity, Units, digits};
use crate::yaml::{At, Named, items};

use super::layers::{Layers, OfJoint};

/// Looks at every number of a job; those outside their range become findings, with the joint that they belong to.
struct Numbers {
    units: Units,
    joint: Option<String>,
    found: Vec<Finding>,
}

impl Visit for Numbers {
    fn leaf(&mut self, field: &'static Field, leaf: Leaf<'_>, place: Place) {
        let (Leaf::Si(si, dimension), Some(range)) = (leaf, field.range) else {
            return;
        };
        let finding = match range {
            range if range.holds(si) => return,
            Positive => Finding::job("job.not_positive", place).with("key", field.name()),
            Open(least, most) | Within(least, most) => {
                let print = |si: f64| self.units.print_si(si, dimension).joined();
                Finding::job("job.out_of_range", place)
                    .with("key", field.name())
                    .with("text", print(si))
                    .with("least", print(least))
                    .with("most", print(most))
            }
        };
        self.found.push(match &self.joint {
            Some(tag) => finding.on(tag.as_str()),
            None => finding,
        });
    }

    fn joint(&mut self, tag: Option<&str>) {
        self.joint = tag.map(str::to_owned);
    }
}

/// The greater of two values that belong together must be above the lesser.
fn rising<Q: Quantity>(
    (lesser_key, lesser): (&'static str, Option<&At<Q>>),
    (greater_key, greater): (&'static str, Option<&At<Q>>),
    units: &Units,
) -> Option<Finding> {
    let (lesser, (greater, place)) = (lesser?.get()?, greater?.both()?);
    (greater.si() <= lesser.si()).then(|| {
        Finding::job("job.order", place)
            .with("key", greater_key)
            .with("text", units.print(*greater).joined())
            .with("other", lesser_key)
            .with("least", units.print(*lesser).joined())
    })
}

/// The last day of a stretch of time must not lie before its first.
fn in_time(
    (first_key, first): (&'static str, Option<&At<Date>>),
    (last_key, last): (&'static str, Option<&At<Date>>),
) -> Option<Finding> {
    let (first, (last, place)) = (first?.get()?, last?.both()?);
    (last < first).then(|| {
        Finding::job("job.before", place)
            .with("key", last_key)
            .with("text", last.to_string())
            .with("other", first_key)
            .with("first", first.to_string())
    })
}

/// Everything of a job that is outside its range, and pairs that do not rise.
pub(super) fn check(job: &Job) -> Vec<Finding> {
    let units = job.units();
    let mut numbers = Numbers {
        units: job.units(),
        joint: None,
        found: Vec::new(),
    };
    job.visit(&mut numbers);
    let mut findings: Vec<Option<Finding>> = Vec::new();
    for gasket in values(job.gaskets.as_ref()) {
        let (inner, outer) = (gasket.inner.as_ref(), gasket.outer.as_ref());
        findings.push(rising(("inner", inner), ("outer", outer), &units));
    }
    findings.extend(days(job));
    if let Some(notice) = notice(job) {
        let (confirmed, given) = (Some(&notice.confirmed), Some(&notice.given));
        findings.push(rising(("confirmed", confirmed), ("given", given), &units));
    }
    numbers.found.extend(findings.into_iter().flatten());
    numbers.found
}

fn values<T>(list: Option<&At<Named<T>>>) -> impl Iterator<Item = &T> {
    list.and_then(At::get)
        .into_iter()
        .flat_map(Named::iter)
        .filter_map(|(_, value)| value.get())
}

fn work(job: &Job) -> Option<&job::Work> {
    job.pack.get()?.work.as_ref()?.get()
}

fn notice(job: &Job) -> Option<&job::Notice> {
    job.pack.get()?.notice.as_ref()?.get()
}

fn days(job: &Job) -> Vec<Option<Finding>> {
    let permits = items(job.permits.as_ref());
    let of_permits =
        permits.map(|permit| in_time(("from", permit.from.as_ref()), ("to", permit.to.as_ref())));
    let of_work = work(job).map(|work| {
        in_time(
            ("first_day", work.first_day.as_ref()),
            ("last_day", work.last_day.as_ref()),
        )
    });
    of_work.into_iter().chain(of_permits).collect()
}

/// What can only be seen once a joint lies over its family: pairs that belong together, and studs
/// that are named by number.
pub(super) fn of_layers(layers: &Layers<'_>, units: &Units) -> Vec<Finding> {
    let order = [
        pair(layers, &Studs::bearing_inner, &Studs::bearing_outer, units),
        pair(
            layers,
            &Checks::least_protrusion,
            &Checks::greatest_protrusion,
            units,
        ),
        pair(layers, &Studs::bolt_circle, &Studs::flange_diameter, units),
    ];
    let mut findings: Vec<Finding> = order.into_iter().flatten().collect();
    let shares = layers.leaf(&Loosen::break_out).map(|leaf| leaf.value);
    findings.extend(shares.and_then(|(least, greatest)| {
        rising(
            ("break_out", Some(least)),
            ("break_out", Some(greatest)),
            units,
        )
    }));
    if let Some(count) = layers.leaf(&Studs::count).map(|leaf| *leaf.value) {
        findings.extend(stud_numbers(layers, count));
    }
    findings
}

fn pair<G: OfJoint, Q: Quantity>(
    layers: &Layers<'_>,
    lesser: &Key<G, Q>,
    greater: &Key<G, Q>,
    units: &Units,
) -> Option<Finding> {
    rising(
        (lesser.field.name(), layers.at(lesser)),
        (greater.field.name(), layers.at(greater)),
        units,
    )
}

fn stud_numbers(layers: &Layers<'_>, count: u32) -> Vec<Finding> {
    let stretch = layers.leaf(&Checks::stretch).map(|leaf| leaf.value);
    let stretch = stretch.into_iter().flatten().filter_map(At::both);
    let obstacles = layers.leaf(&JointKeys::obstacles).map(|leaf| leaf.value);
    let obstacles = obstacles
        .into_iter()
        .flatten()
        .filter_map(At::get)
        .filter_map(|one| one.at.both());
    let named = stretch.map(|(stud, place)| ("stretch", *stud, place));
    let beside = obstacles.map(|(stud, place)| ("at", *stud, place));
    named
        .chain(beside)
        .filter_map(|(key, stud, place)| number(key, stud, place, count))
        .collect()
}

/// A number counts from 1.
pub(super) fn number(key: &'static str, value: u32, place: Place, most: u32) -> Option<Finding> {
    (value == 0 || value > most).then(|| {
        Finding::job("job.out_of_range", place)
            .with("key", key)
            .with("text", digits(f64::from(value)))
            .with("least", "1")
            .with("most", digits(f64::from(most)))
    })
}
