//! The steps that every method has: before anyone goes to the joint, making it safe, making it up, what is read, and
//! what closes the work. A method's own steps stand with the method.

mod finish;
pub(crate) mod hazards;
pub(crate) mod make_up;
pub(crate) mod nuts;
mod picture;
mod reading;
mod safe;
pub mod thresholds;

use crate::calc::ids;
use crate::joint::{Lack, Who};
use crate::methods::Case;
use crate::units::{Quantity, Torque};
use crate::work::{Attendance, Bound, Phase, Priority, REPEATED, Role, Set, Task, Value, Work};

use HazardKind::{
    DroppedObject, Electrical, Handling, Height, HotWork, HungLoad, LookAlike, StudInLine,
};
pub(crate) use finish::{finish, stuck};
pub(crate) use make_up::{make_up, ready};
pub(crate) use picture::picture;
pub(crate) use reading::{
    facts, gaps, name_and_serial, of_joint, protrusion, removed, stretch, tools_used,
};

use crate::work::HazardKind;

/// The same in every class.
pub(crate) const ALWAYS: [Attendance; 3] = [Attendance::Hold; 3];
/// A hold in class A, read afterwards in class B.
pub(crate) const HELD_IN_A: [Attendance; 3] =
    [Attendance::Hold, Attendance::Review, Attendance::Off];
/// Witnessed in class A, read afterwards in class B.
pub(crate) const WITNESSED_IN_A: [Attendance; 3] =
    [Attendance::Witness, Attendance::Review, Attendance::Off];

/// A work with the hazards of the joint and everything that comes before its first step: papers, people, the right
/// joint, making it safe.
pub(crate) fn begin(method: &'static str, task: Task, case: &Case<'_>) -> Work {
    let mut work = Work::new(method, task);
    hazards::add(&mut work, case);
    work.phase(Phase::Before);
    front(&mut work, case);
    if task == Task::Recheck {
        state(&mut work, case);
    }
    safe::make_safe(&mut work, case);
    work
}

/// The state of the plant in which a loaded joint is looked at again: as the job words it, else cold and at rest.
fn state(work: &mut Work, case: &Case<'_>) {
    let recheck = case.joint.mechanics.recheck.as_ref();
    let worded = recheck.and_then(|it| it.state.clone());
    let after = recheck.map_or(Value::OnCard, |it| Value::fact(&it.after));
    work.tick("state")
        .by(Role::CrewLead)
        .with("state", worded.map_or(Value::Word("at_rest"), Value::Text))
        .with("after", after)
        .meets(&[HazardKind::HotBolting]);
}

/// The turn beyond which an engineer decides before pressure or running.
pub(crate) fn recheck_limit(case: &Case<'_>) -> Value {
    let recheck = case.joint.mechanics.recheck.as_ref();
    let unknown = || given(None, "recheck.limit", Who::Engineer);
    recheck.map_or_else(unknown, |it| Value::fact(&it.limit))
}

fn front(work: &mut Work, case: &Case<'_>) {
    let attendance = [Attendance::Hold, Attendance::Hold, Attendance::Surveillance];
    work.point("papers", "H1", attendance, Role::PersonInCharge)
        .covers(&["dates"])
        .by(Role::PersonInCharge)
        .accept("papers", Bound::Words);
    work.act("dates")
        .accept("due", Bound::Words)
        .priority(Priority::PackOnly);
    let turning = match work.task {
        Task::Loosen => &case.computed.chosen.loosening,
        Task::Tighten | Task::Recheck => &case.computed.chosen.turning,
    };
    if let Some(tool) = turning.iter().find(|tool| tool.kind.shows_load()) {
        work.tick("calibration")
            .with("tool", Value::Text(tool.name.clone()))
            .priority(REPEATED);
    }
    let people = case.computed.ledger.get(ids::CREW);
    let people = people.map_or(Value::OnCard, |count| {
        Value::Count(crate::calc::whole(count.si()))
    });
    work.act("people")
        .by(Role::CrewLead)
        .with("count", people)
        .priority(Priority::PackOnly);
    work.act("talk")
        .by(Role::CrewLead)
        .priority(Priority::PackOnly);
    if work.has(Electrical) {
        work.act("leads")
            .by(Role::ToolOperator)
            .meets(&[Electrical])
            .priority(Priority::PackOnly);
    }
    work.act("joint").priority(Priority::PackOnly);
    work.tick("barrier")
        .by(Role::CrewLead)
        .with("distance", Value::Word("barrier_distance"))
        .meets(&[
            LookAlike,
            StudInLine,
            HungLoad,
            DroppedObject,
            Height,
            HotWork,
            Handling,
        ]);
}

/// What the dial of the tool that turns shows at a torque of what is turned.
pub(crate) fn set(case: &Case<'_>, torque: Torque) -> Set {
    Set::by(case.computed.readings(case.joint).tightening().set(torque))
}

/// The same for what is never exceeded while loosening.
pub(crate) fn never(case: &Case<'_>, torque: Torque) -> Set {
    Set::by(case.computed.readings(case.joint).loosening().never(torque))
}

/// The end of each record: two who did it, who answers for them, who looked, whose plant it is.
pub(crate) const ASSEMBLED: &[(&str, Role)] = &[
    ("assembled", Role::Technician),
    ("assembled_too", Role::Technician),
    ("supervised", Role::Supervisor),
    ("inspected", Role::Inspector),
    ("client", Role::Client),
];
/// The same where a joint was loosened.
pub(crate) const LOOSENED: &[(&str, Role)] = &[
    ("loosened", Role::Technician),
    ("loosened_too", Role::Technician),
    ("supervised", Role::Supervisor),
    ("operated", Role::PlantOperator),
    ("client", Role::Client),
];

/// A text of the joint that is only sometimes given, or what it lacks.
pub(crate) fn given(text: Option<&String>, key: &'static str, who: Who) -> Value {
    text.map_or(Value::Missing(Lack { key, who }), |text| {
        Value::Text(text.clone())
    })
}
