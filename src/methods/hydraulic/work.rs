//! What is done with hydraulic torque wrenches: what is set is the pressure of the pump.

use crate::joint::Tool;
use crate::methods::Case;
use crate::work::{
    Bound, Hazard, HazardKind, OPTIONAL, Phase, Priority, Role, Set, Task, Value, Work,
};

use crate::methods::steps::nuts::{NutSteps, back_up};
use HazardKind::{Hose, LastFasteners, Noise, Oil, ReactionArm, StudInLine};

pub(super) const STEPS: NutSteps = NutSteps {
    method: super::ID,
    has_arm: true,
    target: ["target_pressure", "target_pressures"],
    hazards,
    set_up,
    stroke,
    put_away: |work| {
        work.phase(Phase::Finish);
        work.tick("pump_off")
            .by(Role::ToolOperator)
            .accept("gauges_zero", Bound::Words)
            .priority(OPTIONAL)
            .meets(&[Oil, Hose]);
    },
    meets: &[StudInLine],
    meets_release: &[LastFasteners, StudInLine],
};

fn hazards(work: &mut Work, _: &Case<'_>) {
    for (kind, by) in [
        (Oil, "held_pump_zero"),
        (ReactionArm, "held_hands_off"),
        (Hose, "held_pump_zero"),
        (Noise, "held_ears"),
    ] {
        work.hazards.push(Hazard::new(kind, Value::Word(by)));
    }
}

/// Couplers, one voice and a trial off the nut have one box, back-up spanner and arm another.
fn set_up(work: &mut Work, case: &Case<'_>) {
    let chosen = &case.computed.chosen;
    let readings = case.computed.readings(case.joint);
    let (wrenches, highest) = match work.task {
        Task::Loosen => (&chosen.loosening, readings.never()),
        Task::Tighten | Task::Recheck => (&chosen.turning, readings.full()),
    };
    work.act("couple")
        .by(Role::ToolOperator)
        .priority(Priority::PackOnly);
    work.act("voice").priority(Priority::PackOnly);
    work.tick("dead_head")
        .by(Role::ToolOperator)
        .with("set", Set::by(highest).value())
        .accept("no_leak", Bound::Words)
        .accept("gauges_zero", Bound::Words)
        .meets(&[Oil, Hose]);
    arm(work, case);
    own_checks(work, wrenches.iter().map(AsRef::as_ref));
}

fn arm(work: &mut Work, case: &Case<'_>) {
    let spanner = back_up(case);
    let id = match (work.task, spanner.is_some()) {
        (Task::Loosen, true) => "back_up_and_reverse",
        (Task::Loosen, false) => "reverse",
        (Task::Tighten | Task::Recheck, true) => "back_up_and_arm",
        (Task::Tighten | Task::Recheck, false) => "arm",
    };
    if let Some(spanner) = spanner.clone() {
        work.act("back_up")
            .with("back_up", spanner)
            .priority(Priority::PackOnly);
    }
    let step = work.tick(id).meets(&[ReactionArm]);
    step.with("reaction", Value::text(&case.joint.work.reaction));
    step.values
        .extend(spanner.map(|spanner| ("back_up", spanner)));
}

/// How a wrench is checked is its own matter: the job gives it in words.
fn own_checks<'a>(work: &mut Work, wrenches: impl Iterator<Item = &'a Tool>) {
    let mut checks: Vec<&String> = wrenches.flat_map(|tool| &tool.checks).collect();
    checks.sort();
    checks.dedup();
    for check in checks {
        work.tick("own_check")
            .with("check", Value::Text(check.clone()))
            .priority(OPTIONAL);
    }
}

fn stroke(work: &mut Work) {
    work.act("change")
        .by(Role::ToolOperator)
        .priority(Priority::PackOnly);
    if work.task == Task::Loosen {
        work.act("start")
            .by(Role::ToolOperator)
            .meets(&[Oil, ReactionArm])
            .priority(Priority::PackOnly);
    }
    work.act("stroke")
        .accept("stalls", Bound::Words)
        .meets(&[ReactionArm, Noise])
        .priority(Priority::PackOnly);
}
