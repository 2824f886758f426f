//! What the procedures of multi-jackbolt tensioners name: seat, level, reversal, check, rounds; and where
//! the work goes on by hand when the driver is lost.

use crate::calc::LEAST_ANGLE;
use crate::joint::{Joint, ToolReading};
use crate::methods::jackbolt::ids;
use crate::methods::jackbolt::{DriverPlan, JackboltPlan, Restart, Round, RoundKind};
use crate::methods::{Computed, Readings};
use crate::units::{Quantity, Torque};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::procedures::{Member, StepTexts, common};

/// The joints whose tensioners a driver loads.
pub(super) fn driven<'a>(members: &[Member<'a>]) -> Vec<Member<'a>> {
    let has_driver = |member: &&Member<'a>| driver(member.1).is_some();
    members.iter().filter(has_driver).copied().collect()
}

fn plan(computed: &Computed) -> Option<&JackboltPlan> {
    computed.plan.jackbolts()
}

fn driver(computed: &Computed) -> Option<&DriverPlan> {
    plan(computed)?.driver.as_ref()
}

/// The values that the rows of these procedures name.
pub(super) fn values(context: &Context<'_>, members: &[Member<'_>]) -> Values {
    let on_card =
        |of: &dyn Fn(&Joint, &Computed) -> Option<String>| common(context, members, "value", of);
    let printed = |of: &dyn Fn(Readings<'_>) -> Option<ToolReading>| {
        on_card(&|joint, computed| {
            let reading = of(computed.readings(joint))?;
            Some(context.reading(&reading).joined())
        })
    };
    let seat = on_card(&|joint, computed| {
        let is_seat = |round: &&Round| round.kind == RoundKind::Seat;
        let round = plan(computed)?.rounds.iter().find(is_seat)?;
        let dial = computed.readings(joint).tightening().fine();
        let reading = dial.set(Torque::from_si(round.torque)).ok()?;
        let torque = context.reading(&reading).joined();
        Some(format!("{torque} ({})", percent(round.share)))
    });
    let check = printed(&|readings| readings.low(ids::DRIVER_CHECK).ok());
    let reversal = printed(&|readings| readings.reversal().ok());
    let level = on_card(&|_, computed| Some(percent(driver(computed)?.level)));
    let rounds = on_card(&|_, computed| Some(plan(computed)?.full_rounds.to_string()));
    let above = on_card(&|_, computed| {
        let tensioner = context.of(&computed.ledger, ids::ABOVE_BODY_LIMIT)?;
        Some(tensioner.joined())
    });
    Values::new()
        .with("seat", seat)
        .with("level", level)
        .with("full_rounds", rounds)
        .with("above", above)
        .with("check", check)
        .with("reversal", reversal)
}

/// The end of the work by angle instead of by further rounds, for those whose driver leaves the stud even.
pub(super) fn angle_finishes(context: &Context<'_>, members: &[Member<'_>]) -> Vec<StepTexts> {
    let mut seen: Vec<&str> = Vec::new();
    let mut steps = Vec::new();
    for (joint, computed) in members {
        let who = joint.family.as_deref().unwrap_or(&joint.tag);
        let ledger = &computed.ledger;
        let finish = plan(computed).and_then(|plan| plan.finish.as_ref());
        let printed = context
            .of(ledger, ids::FINISH_ROUNDS)
            .zip(context.of(ledger, ids::FINISH_TURN));
        let (Some(finish), Some((rounds, turn)), false) = (finish, printed, seen.contains(&who))
        else {
            continue;
        };
        seen.push(who);
        let values = Values::new()
            .with("who", who)
            .with("rounds", rounds.value)
            .with("turn", turn.joined())
            .with("level", percent(finish.level));
        let can_be_set = finish.turn.likely >= LEAST_ANGLE.to_radians();
        let texts = if can_be_set {
            ["by_angle", "by_angle_from"]
                .map(|key| context.say(&format!("pack.procedures.{key}"), &values))
        } else {
            let none = context.say("pack.procedures.by_angle_none", &values);
            [none, String::new()]
        };
        let [step, accept] = texts;
        steps.push([step, accept, String::new(), String::new()]);
    }
    steps
}

/// For each step of the driver: what stands when it is lost there, and the hand round that comes next.
pub(super) fn restarts(context: &Context<'_>, members: &[Member<'_>]) -> Vec<StepTexts> {
    let mut seen: Vec<&str> = Vec::new();
    let mut steps = Vec::new();
    for (joint, computed) in members {
        let who = joint.family.as_deref().unwrap_or(&joint.tag);
        let Some(plan) = plan(computed).filter(|_| !seen.contains(&who)) else {
            continue;
        };
        seen.push(who);
        let told = plan.restarts();
        steps.extend(
            (1..)
                .zip(&told)
                .filter_map(|(number, it)| restart(context, (joint, computed), who, (number, it))),
        );
    }
    steps
}

fn restart(
    context: &Context<'_>,
    (joint, computed): Member<'_>,
    who: &str,
    (number, it): (usize, &Restart),
) -> Option<StepTexts> {
    let by_hand = plan(computed)?.by_hand.as_ref()?;
    let behind = by_hand.rounds.get(it.next..)?;
    let next = behind.first()?;
    let raised = behind
        .iter()
        .skip(1)
        .filter(|round| round.kind == RoundKind::Raise);
    let then: Vec<String> = raised.map(|round| percent(round.share)).collect();
    let dial = computed.readings(joint).tightening();
    let set = dial.set(Torque::from_si(next.torque)).ok()?;
    let values = Values::new()
        .with("who", who)
        .with("step", format!("D{number}"))
        .with("stands", percent(it.stands))
        .with("share", percent(next.share))
        .with("torque", context.reading(&set).joined())
        .with("then", context.wording.join(&then))
        .with("full_rounds", by_hand.full_rounds.to_string());
    Some([
        context.say("pack.procedures.restart", &values),
        context.say("pack.procedures.restart_then", &values),
        String::new(),
        String::new(),
    ])
}
