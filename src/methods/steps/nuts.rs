//! What is done to nuts that are turned by torque, whatever turns them: pass by pass on, round by round off, and looked
//! at again later.

use crate::calc::{Pass, PassKind, ids};
use crate::job::Pattern;
use crate::joint::Lack;
use crate::methods::Case;
use crate::units::{Dimension, Quantity};
use crate::work::{
    Bound, Hazard, HazardKind, KeyValue, Limit, OPTIONAL, Phase, Priority, Role, Section, Sequence,
    Set, StopRule, Task, Value, Work,
};

use super::thresholds::{FAR_STEP, LAST_GAP_PASS, MOST_FULL_ROUNDS, MOST_RELEASE_ROUNDS, SOAK};
use super::{WITNESSED_IN_A, of_joint, reading, safe};
use HazardKind::{
    Corrosive, Flammable, InertGas, LastFasteners, Pyrophoric, StudInLine, SuddenRelease, Toxic,
    TrappedPocket,
};

/// What differs from one way of turning nuts to another.
pub(crate) struct NutSteps {
    /// The group of its words.
    pub(crate) method: &'static str,
    /// The key of the value of the card; for several wrenches the second.
    pub(crate) target: [&'static str; 2],
    /// Whether the tool leans on something while it turns.
    pub(crate) has_arm: bool,
    /// Hazards of the tool.
    pub(crate) hazards: fn(&mut Work, &Case<'_>),
    /// What is set up before the first nut turns.
    pub(crate) set_up: fn(&mut Work, &Case<'_>),
    /// How a nut is turned, said before the first pass.
    pub(crate) stroke: fn(&mut Work),
    /// How the tool is put away.
    pub(crate) put_away: fn(&mut Work),
    /// What the passes meet, and what the release rounds meet.
    pub(crate) meets: &'static [HazardKind],
    pub(crate) meets_release: &'static [HazardKind],
}

/// Letters of the first and the last move of the order.
fn letters(case: &Case<'_>) -> Option<(String, String)> {
    let order = case.computed.order.as_ref()?;
    let mut letters = order.lettered().map(|(letter, _)| letter);
    let first = letters.next()?;
    Some((first, letters.last()?))
}

fn place_of(wrenches: usize) -> usize {
    usize::from(wrenches > 1)
}

/// The work in a task.
pub(crate) fn work(steps: &NutSteps, case: &Case<'_>, task: Task) -> Work {
    match task {
        Task::Tighten => tighten(steps, case),
        Task::Loosen => loosen(steps, case),
        Task::Recheck => recheck(steps, case),
    }
}

/// The work of tightening.
fn tighten(steps: &NutSteps, case: &Case<'_>) -> Work {
    let mut work = super::begin(steps.method, Task::Tighten, case);
    (steps.hazards)(&mut work, case);
    super::make_up(&mut work, case, |_| ());
    (steps.set_up)(&mut work, case);
    let chosen = &case.computed.chosen;
    let shown = chosen.hydraulics.iter().filter(reading::shows_pressure);
    super::tools_used(&mut work, chosen.turning.iter().chain(shown));
    target(&mut work, steps, case);
    work.phase(Phase::Load);
    passes(&mut work, steps, case);
    work.phase(Phase::Check);
    proof(&mut work, case);
    (steps.put_away)(&mut work);
    super::facts(&mut work, case, chosen.turning.iter());
    work.picture = super::picture(case, work.task, steps.has_arm);
    super::finish(&mut work, case, super::ASSEMBLED);
    work.closed()
}

/// The one number of the card; on several wrenches of a pump one pressure.
fn target(work: &mut Work, steps: &NutSteps, case: &Case<'_>) {
    let wrenches = case.computed.chosen.turning.len();
    let readings = case.computed.readings(case.joint);
    work.keys.push(KeyValue {
        id: steps.target[place_of(wrenches)],
        set: Set::by(readings.full()),
        values: vec![("count", Value::Count(wrenches))],
    });
}

/// What holds the far nut, where something is named for it.
pub(crate) fn back_up(case: &Case<'_>) -> Option<Value> {
    let tool = case.computed.chosen.back_up.as_ref();
    tool.map(|tool| Value::Text(tool.name.clone()))
}

fn passes(work: &mut Work, steps: &NutSteps, case: &Case<'_>) {
    let checks = &case.joint.mechanics.checks;
    let passes = &case.computed.passes;
    let names = |is: fn(&&Pass) -> bool| -> Vec<String> {
        let read = passes.iter().filter(|it| it.number <= LAST_GAP_PASS.value);
        read.filter(is).map(|it| name(*it)).collect()
    };
    let snugged = names(|it| it.kind == PassKind::Snug);
    let loaded = names(|it| it.kind != PassKind::Snug);
    for pass in passes.iter().filter(|it| it.kind == PassKind::Snug) {
        snug(work, case, *pass);
    }
    // At rest and just snug the same limit holds; under load the joint must be closer.
    let at_rest = Value::fact(&checks.parallelism);
    super::gaps(work, case, "gap_snug", snugged, at_rest);
    super::ready(work, case);
    (steps.stroke)(work);
    for pass in passes.iter().filter(|it| it.kind != PassKind::Snug) {
        match pass.kind {
            PassKind::Circular => circle(work, case, *pass),
            PassKind::Repeat => repeat(work, case, *pass),
            PassKind::Snug | PassKind::Stepped => stepped(work, case, *pass),
        }
        .meets(steps.meets);
    }
    let under_load = Value::fact(&checks.gap_spread);
    super::gaps(work, case, "gaps", loaded, under_load);
}

fn name(pass: Pass) -> String {
    format!("P{}", pass.number)
}

fn snug(work: &mut Work, case: &Case<'_>, pass: Pass) {
    let set = Set::by(case.computed.readings(case.joint).low(ids::SNUG));
    work.set("snug", name(pass), set, Sequence::Order);
}

fn stepped<'a>(work: &'a mut Work, case: &Case<'_>, pass: Pass) -> &'a mut crate::work::Step {
    let readings = case.computed.readings(case.joint);
    let set = Set::by(readings.pass(pass.number));
    let share = case.computed.ledger.get(ids::PASS_SHARE.at(pass.number));
    let is_crossed = case.joint.mechanics.plan.pattern.value() != Some(Pattern::Circular);
    let step = match letters(case).filter(|_| is_crossed) {
        Some((first, last)) => work
            .set("pass", name(pass), set, Sequence::Order)
            .with("first", Value::Text(first))
            .with("last", Value::Text(last)),
        None => work.set("pass_in_order", name(pass), set, Sequence::Circle),
    };
    if let Some(share) = share {
        step.share(share.si());
    }
    step
}

fn circle<'a>(work: &'a mut Work, case: &Case<'_>, pass: Pass) -> &'a mut crate::work::Step {
    let set = Set::by(case.computed.readings(case.joint).full());
    let id = match case.computed.chosen.turning.len() {
        0 | 1 => "round",
        _ => "round_one_wrench",
    };
    work.stop = Some(StopRule {
        step: id,
        parts: vec![Limit::new("nuts_turned", Bound::Zero)],
        last: Some(MOST_FULL_ROUNDS.value.to_string()),
    });
    work.set(id, name(pass), set, Sequence::Circle).share(1.0)
}

fn repeat<'a>(work: &'a mut Work, case: &Case<'_>, pass: Pass) -> &'a mut crate::work::Step {
    let set = Set::by(case.computed.readings(case.joint).full());
    let wait = case.joint.mechanics.plan.repeat_after.as_ref();
    let wait = wait.map_or(Value::OnCard, Value::fact);
    let before = format!("P{}", pass.number.saturating_sub(1));
    work.set("later", name(pass), set, Sequence::Circle)
        .with("wait", wait)
        .with("pass", Value::Text(before))
}

/// Full rounds until no nut turns, then stretch and thread.
fn proof(work: &mut Work, case: &Case<'_>) {
    let count = of_joint(case);
    work.read("nuts_turned", Section::Rounds)
        .with("count", Value::Count(count))
        .accept("nuts_turned", Bound::Zero);
    work.read("rounds_made", Section::Rounds);
    let setting = Set::by(case.computed.readings(case.joint).full()).value();
    work.point("no_turn", "W2", WITNESSED_IN_A, Role::Inspector)
        .covers(&["round", "round_one_wrench", "nuts_turned", "gaps"])
        .with("set", setting);
    let has_zero = case.joint.mechanics.checks.zero_reading.value() != Some(false);
    let columns: &[&str] = match has_zero {
        true => &["before", "after", "difference"],
        false => &["after"],
    };
    super::stretch(work, case, columns);
    super::protrusion(work, case);
    work.phase(Phase::Stop);
    if work.stop.is_some() {
        work.decide("rounds")
            .by(Role::Engineer)
            .with("most", Value::Count(MOST_FULL_ROUNDS.value))
            .priority(Priority::PackOnly);
    }
    if !work.readings().any(|(step, _)| step.id == "gaps") {
        return;
    }
    work.decide("gap_over")
        .by(Role::Engineer)
        .priority(Priority::PackOnly);
}

/// The work of loosening.
fn loosen(steps: &NutSteps, case: &Case<'_>) -> Work {
    let mut work = super::begin(steps.method, Task::Loosen, case);
    let last = Hazard::new(LastFasteners, Value::Word("held_printed_rounds"));
    work.hazards
        .push(last.with("fasteners", Value::Word("studs")));
    (steps.hazards)(&mut work, case);
    let chosen = &case.computed.chosen;
    work.phase(Phase::Prepare);
    soak_and_line(&mut work);
    (steps.set_up)(&mut work, case);
    let shown = chosen.hydraulics.iter().filter(reading::shows_pressure);
    super::tools_used(&mut work, chosen.loosening.iter().chain(shown));
    let limit = safe::cool_limit(case.joint.work.boundary.as_deref());
    work.read("surface", Section::AsFound)
        .dimension(Dimension::Temperature)
        .accept("surface", Bound::AtMost(Value::of(limit)));
    bounds(&mut work, case);
    work.phase(Phase::Loosen);
    (steps.stroke)(&mut work);
    release(&mut work, steps, case);
    work.phase(Phase::RunOut);
    run_out(&mut work, case);
    (steps.put_away)(&mut work);
    super::facts(&mut work, case, chosen.loosening.iter());
    work.picture = super::picture(case, work.task, steps.has_arm);
    super::finish(&mut work, case, super::LOOSENED);
    work.closed()
}

/// What is never exceeded, and between which torques nuts are expected to move.
fn bounds(work: &mut Work, case: &Case<'_>) {
    let readings = case.computed.readings(case.joint);
    let never = Set::by(readings.never());
    work.keys.push(KeyValue {
        id: "never",
        set: never.clone(),
        values: Vec::new(),
    });
    let expected = match readings.break_out() {
        Ok(range) => Set::Value(Value::Span(Box::new(range.map(Value::Reading)))),
        Err(lack) => Set::Missing(lack),
    };
    work.keys.push(KeyValue {
        id: "break_out",
        set: expected,
        values: vec![("never", never.value())],
    });
    work.phase(Phase::Stop);
    work.decide("stuck")
        .by(Role::Engineer)
        .with("never", never.value());
    super::stuck(work);
}

/// All nuts back by the printed turn, the same again, then to slack from the far side, then off.
fn release(work: &mut Work, steps: &NutSteps, case: &Case<'_>) {
    let ledger = &case.computed.ledger;
    let unknown = Lack {
        key: "studs.grip",
        who: crate::joint::Who::Engineer,
    };
    let turn = ledger
        .get(ids::RELEASE_SET)
        .ok_or(ledger.lack(ids::RELEASE_SET).unwrap_or(unknown));
    let least = ledger.get(ids::RELEASE_ROUNDS);
    let least = least.map_or(2, |rounds| crate::calc::whole(rounds.si()));
    let is_staged = case.joint.mechanics.loosening.staged.value() == Some(true);
    let rounds = match is_staged {
        true => least.clamp(1, MOST_RELEASE_ROUNDS.value),
        false => 1,
    };
    let (first, last) = letters(case).unwrap_or_default();
    for round in 1..=rounds {
        let id = if round == 1 { "back" } else { "back_again" };
        work.set(id, format!("R{round}"), Set::back_by(turn), Sequence::Order)
            .with("first", Value::Text(first.clone()))
            .with("last", Value::Text(last.clone()))
            .meets(steps.meets_release);
    }
    let slack = Set::Word("slack");
    let is_pressed = work.has(HazardKind::Pressure);
    if is_pressed {
        work.set(
            "far_side",
            format!("R{}", rounds + 1),
            slack,
            Sequence::AsWorded,
        )
        .with("angle", Value::of(FAR_STEP.value))
        .meets(&[
            TrappedPocket,
            Toxic,
            Flammable,
            InertGas,
            Corrosive,
            SuddenRelease,
        ]);
        work.read("breathe", Section::AsFound)
            .by(Role::CrewLead)
            .after(vec![format!("R{}", rounds + 1)])
            .accept("dry", Bound::Words);
    } else {
        work.set("slack", format!("R{}", rounds + 1), slack, Sequence::Order)
            .meets(&[SuddenRelease]);
    }
    let after: Vec<String> = (1..=rounds + 1).map(|round| format!("R{round}")).collect();
    let rows = after.iter().cloned().map(Value::Text).collect();
    work.read("gap_open", Section::Gaps)
        .dimension(Dimension::Length)
        .grid(rows, vec![Value::Word("gap")])
        .after(after);
    work.act("wedge").priority(Priority::PackOnly);
    work.phase(Phase::RunOut);
    work.set(
        "off",
        format!("R{}", rounds + 2),
        Set::Word("off"),
        Sequence::AsWorded,
    )
    .meets(&[SuddenRelease, Pyrophoric, HazardKind::Fibre]);
    work.read("rounds_made", Section::Rounds)
        .accept("rounds_least", Bound::AtLeast(Value::Count(least)));
    work.read("nuts_stuck", Section::Rounds);
}

fn run_out(work: &mut Work, case: &Case<'_>) {
    work.act("lift")
        .by(Role::Rigger)
        .priority(Priority::PackOnly);
    let never = Set::by(case.computed.readings(case.joint).never()).value();
    work.read("largest_torque", Section::AsFound)
        .dimension(Dimension::Torque)
        .accept("never", Bound::AtMost(never));
    super::removed(work, case);
}

/// The work of looking at loaded nuts again: one round at the full value, never more.
fn recheck(steps: &NutSteps, case: &Case<'_>) -> Work {
    let mut work = super::begin(steps.method, Task::Recheck, case);
    (steps.hazards)(&mut work, case);
    let chosen = &case.computed.chosen;
    work.phase(Phase::Prepare);
    work.tick("lines");
    (steps.set_up)(&mut work, case);
    let shown = chosen.hydraulics.iter().filter(reading::shows_pressure);
    super::tools_used(&mut work, chosen.turning.iter().chain(shown));
    target(&mut work, steps, case);
    work.phase(Phase::Load);
    (steps.stroke)(&mut work);
    let full = Set::by(case.computed.readings(case.joint).full());
    work.set("once_more", "P1", full.clone(), Sequence::Circle)
        .meets(steps.meets)
        .share(1.0);
    work.phase(Phase::Check);
    work.read("nuts_turned", Section::Rounds)
        .with("count", Value::Count(of_joint(case)))
        .accept("nuts_turned", Bound::Zero);
    let limit = super::recheck_limit(case);
    work.read("turn_most", Section::Rounds)
        .dimension(Dimension::Angle)
        .accept("turn_most", Bound::AtMost(limit.clone()));
    work.point("no_turn", "W2", WITNESSED_IN_A, Role::Inspector)
        .covers(&["nuts_turned"])
        .with("set", full.value());
    work.phase(Phase::Stop);
    work.decide("turned")
        .by(Role::Engineer)
        .with("limit", limit)
        .meets(&[StudInLine]);
    (steps.put_away)(&mut work);
    super::facts(&mut work, case, chosen.turning.iter());
    work.picture = super::picture(case, work.task, steps.has_arm);
    super::finish(&mut work, case, super::ASSEMBLED);
    work.closed()
}

/// Threads are soaked and every nut is lined before it turns back.
pub(crate) fn soak_and_line(work: &mut Work) {
    let [least, most] = SOAK.value.map(Value::of);
    work.tick("soak")
        .with("least", least)
        .with("most", most)
        .meets(&[HazardKind::Oxygen])
        .priority(OPTIONAL);
    work.tick("lines");
}
