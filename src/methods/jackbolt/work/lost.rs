//! When the driver stalls or is lost, and when a jackbolt does not move.

use crate::joint::Who;
use crate::units::{Quantity, Torque};
use crate::work::{Bound, HazardKind, Phase, Priority, Role, Section, Value, Work};

use super::super::{RoundKind, ids};
use super::facts::{Facts, lack, words};

/// The others are brought up to at most this share of the full torque to take load off a seized one.
const OTHERS: f64 = 1.1;

/// A stall, and the work without the driver: the least number of rounds by hand, and for each level what stands and
/// which round comes next. What the broken level had begun counts as not done, on every stud.
pub(super) fn decisions(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Stop);
    work.decide("stall");
    let by_hand = facts.plan.and_then(|plan| plan.by_hand.as_ref());
    let rounds = match by_hand {
        Some(by_hand) => Value::Count(by_hand.full_rounds),
        None => Value::Missing(lack("studs.tensioner", Who::Engineer)),
    };
    work.decide("driver_lost").with("rounds", rounds.clone());
    let Some((plan, by_hand)) = facts.plan.zip(by_hand) else {
        return;
    };
    for (number, restart) in (1..).zip(plan.restarts()) {
        let behind = by_hand.rounds.get(restart.next..).unwrap_or_default();
        let Some(next) = behind.first() else { continue };
        let raised = behind
            .iter()
            .skip(1)
            .filter(|round| round.kind == RoundKind::Raise);
        let then: Vec<Value> = raised.map(|round| Value::Percent(round.share)).collect();
        let id = if then.is_empty() {
            "restart"
        } else {
            "restart_then"
        };
        let step = work
            .decide(id)
            .with("what", Value::Text(format!("D{number}")))
            .with("stands", Value::Percent(restart.stands))
            .with("share", Value::Percent(next.share))
            .with("set", facts.by_hand(next).value())
            .with("rounds", rounds.clone())
            .priority(Priority::PackOnly);
        if !then.is_empty() {
            step.with("then", Value::List(then));
        }
    }
}

/// A jackbolt that stays put while the stud is let go: never above the bound, never alone, no heat under load.
pub(super) fn seized(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Stop);
    let never = Value::reading(facts.readings().never());
    let others = facts.never(others(facts)).value();
    work.decide("seized").with("never", never);
    work.decide("seized_others").with("others", others.clone());
    work.decide("seized_fast")
        .by(Role::Engineer)
        .priority(Priority::PackOnly);
    work.act("seized_cut")
        .by(Role::Engineer)
        .meets(&[HazardKind::Fragments, HazardKind::HotWork])
        .priority(Priority::PackOnly);
    let columns = words(&["stud", "jackbolt", "tried_at", "came_free"]);
    work.read("seized_found", Section::Load)
        .grid(words(&["first_one", "second_one", "third_one"]), columns)
        .accept("others", Bound::AtMost(others));
}

/// Neither above 1.1 of the full torque nor above the bound of the card.
fn others(facts: &Facts<'_>) -> Option<Torque> {
    let set = facts.get(ids::SET_TORQUE)?;
    let never = facts.get(ids::NEVER_EXCEED)?;
    Some(Torque::from_si((OTHERS * set.si()).min(never.si())))
}
