//! Jackbolts that are let go: what P08 and T03 say of them besides nuts.

use super::ids;
use crate::joint::Fact;
use crate::report::{Finding, Severity};
use crate::units::{Angle, Quantity};

use super::ReleaseBreach;
use super::rules::tensioner;
use crate::methods::rule::{JointSubject, percent_si};

/// A wrench that ends below what a sticking jackbolt may need: the rest of T03. It overloads nothing, it only stops.
pub(crate) fn short_of_break_out(subject: &JointSubject<'_>) -> Option<Finding> {
    tensioner(subject)?;
    if subject.mechanics().loosening.opened.value() == Some(false) {
        return None;
    }
    let needed = subject.computed.ledger.get(ids::WRENCH_NEEDED)?;
    let dial = subject.computed.readings(subject.joint).loosening();
    let needed = dial.shows(needed);
    let tool = subject.computed.chosen.loosening.first()?;
    // A bar has no scale: its square is where it ends.
    let end = [&tool.highest, &tool.square_rating]
        .into_iter()
        .find(|fact| fact.value().is_some())?;
    let highest = end.value()?;
    (needed.si() > highest.si() * (1.0 + 1e-9)).then(|| {
        subject
            .finding("T03", Severity::Accept, end.place().or(Some(tool.place)))
            .with("share", percent_si(needed.si() / highest.si()))
            .with("tool", tool.name.clone())
            .with("needed", subject.print(needed))
            .with("highest", subject.print(highest))
    })
}

/// Why a stud with jackbolts cannot be let go in the printed rounds: the rest of P08.
pub(crate) fn release_breach(subject: &JointSubject<'_>) -> Vec<Finding> {
    let Some(plan) = subject.computed.plan.jackbolts() else {
        return Vec::new();
    };
    let loosening = &subject.mechanics().loosening;
    let first_step = loosening.first_step.as_ref().and_then(Fact::place);
    let (round, peak, place, fault) = match plan.release.breach {
        Some(ReleaseBreach::Peak { round, peak }) => {
            let of_job = first_step.filter(|_| round == 1);
            let place = of_job.or(loosening.peak.place());
            (round.to_string(), percent_si(peak), place, "peak")
        }
        Some(ReleaseBreach::Rounds) => {
            (String::new(), String::new(), loosening.peak.place(), "many")
        }
        None => return Vec::new(),
    };
    let angle = plan.release.rounds.first().and_then(|round| round.angle);
    let angle = angle.map(|angle| subject.print(Angle::from_si(angle)));
    vec![
        subject
            .finding("P08", Severity::Error, place)
            .with("rounds", plan.release.rounds.len().to_string())
            .with("angle", angle.unwrap_or_default())
            .with("half", "")
            .with("round", round)
            .with("peak", peak)
            .with("limit", percent_si(plan.release.limit))
            .with("fault", fault),
    ]
}
