//! Rounds by hand: seating, raising, full value in circle.

use crate::joint::{Lack, Who};
use crate::units::{Dimension, Length};
use crate::work::{
    Bound, Expected, Phase, Priority, Role, Section, Sequence, Set, StopRule, Value, Work,
};

use super::super::names::{Named, named};
use super::super::{Round, RoundKind};
use super::STRAIN;
use super::facts::{Facts, lack, numbers};
use crate::methods::steps::WITNESSED_IN_A;

/// Greatest difference of the gap round a seated body (common practice, no source).
const GAP_SPREAD: Length = Length::mm(0.5);
/// What the rounds lack where there is no plan.
const NO_PLAN: Lack = lack("studs.tensioner", Who::Engineer);

/// What a round is predicted to leave; turns are read in full-value rounds only.
pub(super) fn expected(round: &Round) -> Expected {
    let mean = round.predicted.map(|record| record.mean);
    let turn = round.predicted.map(|record| record.largest_turn);
    let is_full = round.kind == RoundKind::Full;
    Expected {
        load: [mean.least(), mean.likely, mean.greatest()],
        turn: is_full.then_some(turn.likely),
        turn_most: is_full.then(|| turn.greatest()),
        peak: None,
    }
}

fn of_kind<'a>(facts: &Facts<'a>, kind: RoundKind) -> impl Iterator<Item = Named<'a>> {
    let all = facts.plan.map(named).unwrap_or_default();
    all.into_iter().filter(move |it| it.last.kind == kind)
}

/// The body is seated by a few jackbolts spread round it, then by all.
pub(super) fn seat(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Load);
    match facts.plan.zip(of_kind(facts, RoundKind::Seat).next()) {
        Some((plan, Named { name, last, .. })) => {
            let order = Sequence::First(plan.first.clone());
            work.set("seat", name, facts.by_hand(last), order)
                .with("order", numbers(&plan.first))
                .share(last.share)
                .expect(expected(last))
        }
        None => work.set(
            "seat_unknown",
            "C0",
            Set::Missing(NO_PLAN),
            Sequence::Circle,
        ),
    }
    .meets(STRAIN);
    work.read("seated", Section::AsFound)
        .dimension(Dimension::Length)
        .after(vec!["C0".into()])
        .accept("gap_spread", Bound::AtMost(Value::of(GAP_SPREAD)));
}

/// Rounds that raise the load by hand, in the printed order.
pub(super) fn raise(work: &mut Work, facts: &Facts<'_>) {
    let Some(plan) = facts.plan else { return };
    for Named { name, last, .. } in of_kind(facts, RoundKind::Raise) {
        work.set("raise", name, facts.by_hand(last), Sequence::AsWorded)
            .with("order", numbers(&plan.order))
            .share(last.share)
            .expect(expected(last))
            .meets(STRAIN);
    }
}

/// Rounds in circle at the full value, and the rule that ends them. Those behind the first only say what they reach.
pub(super) fn full(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Load);
    let set = Set::by(facts.readings().full());
    let mut is_further = false;
    for Named { name, last, .. } in of_kind(facts, RoundKind::Full) {
        let step = work
            .set("full", name, set.clone(), Sequence::Circle)
            .share(last.share)
            .expect(expected(last))
            .meets(STRAIN);
        if is_further {
            step.further();
        }
        is_further = true;
    }
    if !is_further {
        work.set("full", "C1", set, Sequence::Circle)
            .share(1.0)
            .meets(STRAIN);
    }
    work.stop = Some(StopRule {
        step: "full",
        parts: facts.stop_parts(),
        last: facts.full_rounds().map(|(_, last)| format!("C{last}")),
    });
    work.decide("too_many").priority(Priority::PackOnly);
    work.act("angle_alone").priority(Priority::PackOnly);
    by_angle(work, facts);
    work.phase(Phase::Check);
    work.point("rounds_done", "W2", WITNESSED_IN_A, Role::Inspector)
        .covers(&["full"]);
}

/// The end by angle instead of by further rounds, for studs that a driver leaves even.
fn by_angle(work: &mut Work, facts: &Facts<'_>) {
    let Some(finish) = facts.plan.and_then(|plan| plan.finish.as_ref()) else {
        return;
    };
    let can_be_set = finish.turn.likely >= crate::calc::LEAST_ANGLE.to_radians();
    let id = if can_be_set {
        "by_angle"
    } else {
        "not_by_angle"
    };
    work.decide(id)
        .with("rounds", Value::Count(finish.rounds))
        .with("turn", Value::Si(finish.turn.likely, Dimension::Angle))
        .with("level", Value::Percent(finish.level))
        .priority(Priority::PackOnly);
}

/// The numbers of rounds in the names of columns; beyond those, the last two.
pub(super) fn columns(facts: &Facts<'_>, most: usize) -> Vec<Value> {
    let last = facts.full_rounds().map_or(most, |(_, last)| last);
    let named = if last > most { most - 2 } else { last };
    let mut columns: Vec<Value> = (1..=named)
        .map(|round| Value::Text(format!("C{round}")))
        .collect();
    if last > most {
        columns.extend(["last_but_one", "last"].map(Value::Word));
    }
    columns
}
