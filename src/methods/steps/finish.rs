//! What closes the work on a joint, and what is done when something is not as it should be.

use crate::job::PointRole;
use crate::joint::Joint;
use crate::methods::Case;
use crate::units::Quantity;
use crate::work::{
    Attendance, Bound, HazardKind, OPTIONAL, Phase, Priority, Role, Task, Value, Work,
};

use super::ALWAYS;
use super::thresholds::{NUDGE, STUCK_SOAK};
use HazardKind::{
    AfterBreak, Fragments, HotBolting, HotWork, LeakTest, Pressure, TurnedTwice, Weather,
};

/// The end of every work: parts counted, own points of the job, signatures in their order, handing over, decisions.
pub(crate) fn finish(work: &mut Work, case: &Case<'_>, signatures: &[(&'static str, Role)]) {
    work.phase(Phase::Finish);
    work.tick("count")
        .by(Role::CrewLead)
        .accept("tools_back", Bound::Words)
        .priority(OPTIONAL);
    work.tick("guards").priority(OPTIONAL);
    own_points(work, case.joint);
    work.tick("stub");
    for (id, role) in signatures {
        let step = work.sign(id, *role);
        // An inspector signs his points with date and time; the bare signature may go.
        if *role == Role::Inspector {
            step.priority(OPTIONAL);
        }
    }
    work.phase(Phase::HandOver);
    hand_over(work, case.joint);
    work.phase(Phase::Stop);
    decisions(work);
    work.hazards
        .sort_by_key(|hazard| (hazard.signal, hazard.kind));
}

fn own_points(work: &mut Work, joint: &Joint) {
    for point in &joint.work.hold_points {
        let attendance = match point.is_hold() {
            true => ALWAYS,
            false => [Attendance::Witness; 3],
        };
        let role = match point.by {
            Some(PointRole::CrewLead) => Role::CrewLead,
            Some(PointRole::Supervisor) => Role::Supervisor,
            Some(PointRole::Inspector) | None => Role::Inspector,
            Some(PointRole::Client) => Role::Client,
            Some(PointRole::ThirdParty) => Role::ThirdParty,
        };
        let step = work
            .point("own", point.point.as_str(), attendance, role)
            .with("what", Value::Text(point.text.clone()));
        if let Some(accept) = &point.accept {
            step.accept("own", Bound::Is(Value::Text(accept.clone())));
        }
    }
}

fn hand_over(work: &mut Work, joint: &Joint) {
    if let Some(sheet) = joint.work.isolation.get() {
        work.point("boundary", "H5", ALWAYS, Role::PersonInCharge)
            .also(Role::PlantOperator)
            .by(Role::PersonInCharge)
            .with("sheet", Value::Text(sheet.clone()))
            .accept("all_signed", Bound::Words)
            .priority(Priority::PackOnly);
    }
    if work.has(HotBolting) && work.task != Task::Recheck {
        work.act("written_order")
            .meets(&[HotBolting])
            .priority(Priority::PackOnly);
    }
    if work.has(LeakTest) {
        let attendance = [
            Attendance::Witness,
            Attendance::Witness,
            Attendance::Surveillance,
        ];
        let pressure = &joint.mechanics.service.pressure;
        let step = work.point("leak", "W3", attendance, Role::Client);
        step.by(Role::PlantOperator)
            .meets(&[LeakTest])
            .priority(Priority::PackOnly);
        match pressure.value() {
            Some(value) if value.si() <= 0.0 => step.accept("leak", Bound::Zero),
            _ => step.accept("leak", Bound::Is(Value::fact(pressure))),
        };
    }
}

fn decisions(work: &mut Work) {
    let mut decide = |id, who, meets: &'static [HazardKind], priority| {
        work.decide(id).by(who).meets(meets).priority(priority);
    };
    decide(
        "break",
        Role::CrewLead,
        &[AfterBreak, TurnedTwice],
        OPTIONAL,
    );
    decide("different", Role::Planner, &[], OPTIONAL);
    decide("alarm", Role::PlantOperator, &[], Priority::PackOnly);
    decide("bang", Role::Engineer, &[], Priority::PackOnly);
    decide("lock", Role::CrewLead, &[], Priority::PackOnly);
    decide("along", Role::CrewLead, &[], Priority::PackOnly);
    decide("galling", Role::CrewLead, &[], Priority::PackOnly);
    if work.task != Task::Loosen {
        decide_tightening(work);
    }
    if work.has(Pressure) {
        let priority = match work.task {
            Task::Loosen => Priority::Must,
            Task::Tighten | Task::Recheck => Priority::PackOnly,
        };
        work.decide("leaks")
            .by(Role::PlantOperator)
            .priority(priority);
    }
    if work.has(Weather) {
        work.decide("weather")
            .by(Role::Supervisor)
            .meets(&[Weather])
            .priority(Priority::PackOnly);
    }
}

fn decide_tightening(work: &mut Work) {
    work.decide("paste_wrong")
        .by(Role::Engineer)
        .priority(Priority::PackOnly);
    work.decide("reading_off")
        .by(Role::Engineer)
        .priority(Priority::PackOnly);
}

/// The way of a nut that is stuck: soak, nudge, and only then heat or cutting.
pub(crate) fn stuck(work: &mut Work) {
    let [least, most] = STUCK_SOAK.value.map(Value::of);
    work.act("stuck_soak")
        .with("least", least)
        .with("most", most)
        .priority(Priority::PackOnly);
    work.act("stuck_nudge")
        .with("angle", Value::of(NUDGE.value))
        .priority(Priority::PackOnly);
    work.act("stuck_neighbours").priority(Priority::PackOnly);
    work.act("stuck_cut")
        .by(Role::Engineer)
        .meets(&[Fragments, HotWork])
        .priority(Priority::PackOnly);
}
