//! The totals of a pack. Joints, studs and hours are summed over the rows of the register, so that
//! the cover and the last row of the register cannot disagree.

use std::collections::BTreeMap;

use crate::document::register::Register;
use crate::units::{Duration, Quantity, digits};
use crate::yaml::At;

use super::super::context::Context;
use super::works::Works;

/// The totals.
pub(in crate::document) struct Totals {
    pub(super) joints: usize,
    pub(super) studs: u32,
    pub(super) holds: usize,
    /// Crews by name; none where no joint has one.
    pub(super) crews: Option<usize>,
    /// Shifts of all crews; none where the job does not say how long a shift is.
    pub(super) shifts: Option<usize>,
    /// Hours of labour as printed.
    pub(super) hours: String,
}

/// More shifts than this are no plan.
const MOST_SHIFTS: usize = 100_000;

pub(in crate::document) fn totals(
    context: &Context<'_>,
    register: &Register,
    works: &Works,
) -> Totals {
    let rows = register.rows();
    let hours: f64 = rows.iter().map(|row| row.hours).sum();
    let crews = by_crew(context);
    let named = crews.keys().filter(|crew| crew.is_some()).count();
    Totals {
        joints: rows.len(),
        studs: rows.iter().map(|row| row.studs).sum(),
        holds: works.holds.iter().sum(),
        crews: (named > 0).then_some(named),
        shifts: shifts(context, &crews),
        hours: digits((hours * 10.0).round() / 10.0),
    }
}

/// Seconds of work by the clock of each crew.
fn by_crew<'a>(context: &Context<'a>) -> BTreeMap<Option<&'a str>, f64> {
    let mut crews = BTreeMap::new();
    for (index, joint) in context.joints.iter().enumerate() {
        let Some(group) = context.plan.of(index) else {
            continue;
        };
        let crew = joint.work.crew.get().map(String::as_str);
        *crews.entry(crew).or_insert(0.0) +=
            super::plan::elapsed(joint, &group.computed).typical.si();
    }
    crews
}

/// Every crew begins a shift of its own.
fn shifts(context: &Context<'_>, crews: &BTreeMap<Option<&str>, f64>) -> Option<usize> {
    let shift = shift_length(context)?.si();
    let needed = |seconds: f64| {
        let mut begun = 0.0;
        (0..MOST_SHIFTS).find(|_| {
            let enough = begun >= seconds - 1e-6;
            begun += shift;
            enough
        })
    };
    (shift > 0.0).then(|| crews.values().filter_map(|seconds| needed(*seconds)).sum())
}

/// Length of a shift as the job gives it.
pub(super) fn shift_length(context: &Context<'_>) -> Option<Duration> {
    let work = context.pack()?.work.as_ref().and_then(At::get)?;
    work.shift.as_ref().and_then(At::get).copied()
}
