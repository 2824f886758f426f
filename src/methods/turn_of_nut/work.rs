//! What is done to nuts that are turned by an angle from snug.

use crate::calc::ids;
use crate::job::Turn;
use crate::joint::{Lack, Who};
use crate::methods::Case;
use crate::methods::steps::{self, make_up};
use crate::units::{Angle, Force, Quantity};
use crate::work::{
    Attendance, Bound, Hazard, HazardKind, KeyValue, Limit, Phase, Priority, Role, Section,
    Sequence, Set, StopRule, Task, Value, Work,
};

use super::{ID, NO_LOAD, STAGES, is_anchored, turns};
use HazardKind::{
    LastFasteners, Lubricant, Noise, OneLubricant, StudInLine, SuddenRelease, Vibration,
};

/// Lines are looked at in every class: nothing else shows the turn later.
const LOOKED_AT: [Attendance; 3] = [
    Attendance::Witness,
    Attendance::Review,
    Attendance::Surveillance,
];
/// What is accepted before nuts are turned from snug.
const CLOSED: &[&str] = &["lot", "close", "grip_clean", "made_up"];

/// The work in a task.
pub(super) fn work(case: &Case<'_>, task: Task) -> Work {
    let mut work = steps::begin(ID, task, case);
    // A torque may be set twice, a turn may not.
    for hazard in &mut work.hazards {
        if hazard.kind == HazardKind::AfterBreak {
            *hazard = Hazard::new(HazardKind::TurnedTwice, Value::Word("held_order"));
        }
    }
    let is_anchor = is_anchored(&case.joint.mechanics);
    match task {
        Task::Tighten => tighten(&mut work, case, is_anchor),
        Task::Loosen => loosen(&mut work, case, is_anchor),
        Task::Recheck => recheck(&mut work, case),
    }
    let chosen = &case.computed.chosen;
    let tools = match task {
        Task::Loosen => &chosen.loosening,
        Task::Tighten | Task::Recheck => &chosen.turning,
    };
    steps::facts(&mut work, case, tools.iter());
    // Any wrench turns a nut by an angle: one that nobody names is not missing.
    if tools.is_empty() {
        work.facts.retain(|(fact, _)| *fact != "wrench");
    }
    // Bolts of a splice stand on no circle.
    if is_anchor {
        work.picture = steps::picture(case, task, false);
    }
    let signatures = match task {
        Task::Loosen => steps::LOOSENED,
        Task::Tighten | Task::Recheck => steps::ASSEMBLED,
    };
    steps::finish(&mut work, case, signatures);
    work.closed()
}

fn angle(case: &Case<'_>, id: crate::calc::Id<Angle>) -> Result<Angle, Lack> {
    let ledger = &case.computed.ledger;
    ledger.get(id).ok_or(ledger.lack(id).unwrap_or(NO_LOAD))
}

/// A share of the whole turn from snug.
fn turned(case: &Case<'_>, share: f64) -> Set {
    angle(case, ids::SET_TURN).map_or_else(Set::Missing, |turn| Set::Turn(turn.si() * share))
}

fn powered(work: &mut Work) {
    for (kind, by) in [(Noise, "held_ears"), (Vibration, "held_sharing")] {
        work.hazards.push(Hazard::new(kind, Value::Word(by)));
    }
}

fn tighten(work: &mut Work, case: &Case<'_>, is_anchor: bool) {
    let [least, most] = [ids::LEAST_TURN, ids::GREATEST_TURN].map(|id| angle(case, id));
    let [least, most] = [least, most].map(Value::or_missing);
    let accepted = if is_anchor { "marks_anchor" } else { "marks" };
    let accepted = Limit::new(accepted, Bound::Between(least.clone(), most.clone()));
    work.keys.push(KeyValue {
        id: "turn",
        set: turned(case, 1.0),
        values: vec![("least", least), ("most", most)],
    });
    if is_anchor {
        make_up::make_up(work, case, |_| ());
    } else {
        powered(work);
        make_up_bolts(work, case);
    }
    hold_far_end(work, case);
    if !case.computed.chosen.turning.is_empty() {
        steps::tools_used(work, &case.computed.chosen.turning);
    }
    work.phase(Phase::Load);
    if is_anchor {
        work.set("snug", "P0", Set::Word("by_hand_pull"), Sequence::AsWorded);
        steps::ready(work, case);
    } else {
        work.set("close", "P0", Set::Word("shut"), Sequence::AsWorded)
            .meets(&[Noise, Vibration])
            .accept("shut", Bound::Words);
        work.point("ready", "H3", steps::ALWAYS, Role::Inspector)
            .covers(CLOSED);
    }
    work.tick("mark");
    if is_anchor {
        for (name, share) in ["P1", "P2"].into_iter().zip(STAGES) {
            work.set("turn_anchor", name, turned(case, share), Sequence::AsWorded)
                .meets(&[StudInLine])
                .share(share);
        }
    } else {
        work.set("turn", "P1", turned(case, 1.0), Sequence::AsWorded)
            .meets(&[StudInLine, Noise, Vibration]);
    }
    work.stop = Some(StopRule {
        step: "marks",
        parts: vec![accepted],
        last: None,
    });
    work.phase(Phase::Check);
    marks(work, case);
    if is_anchor {
        steps::stretch(work, case, &["before", "after", "difference"]);
        steps::protrusion(work, case);
    }
    work.phase(Phase::Stop);
    work.decide("overturned").by(Role::Engineer);
}

/// What is looked at before bolts go in: the test of their lot, faces, marks, rust.
fn make_up_bolts(work: &mut Work, case: &Case<'_>) {
    let own = &case.joint.mechanics.own;
    let lot = Value::text(&own.text(&Turn::lot));
    work.phase(Phase::MakeUp);
    work.tick("lot")
        .by(Role::Inspector)
        .with("lot", lot)
        .accept("lot", Bound::AtLeast(least_lot_tension(case)));
    work.tick("grip_clean");
    work.tick("match")
        .meets(&[HazardKind::Oxygen, Lubricant, OneLubricant]);
    make_up::numbers(work, case);
    work.read("lot_number", Section::Materials);
    make_up::made_up(work);
}

/// What the test of the lot must have shown.
fn least_lot_tension(case: &Case<'_>) -> Value {
    let standard = case.joint.mechanics.own.text(&Turn::standard);
    let standard = standard.get().and_then(|name| turns::named(name));
    let load = case.computed.ledger.get(ids::LOAD);
    let least = standard
        .zip(load)
        .map(|(standard, load)| Value::of(Force::from_si(load.si() * standard.lot_share)));
    least.unwrap_or_else(|| steps::given(None, "turn.standard", Who::Engineer))
}

fn hold_far_end(work: &mut Work, case: &Case<'_>) {
    let held = case.computed.chosen.back_up.as_ref();
    if let Some(held) = held {
        work.tick("back_up")
            .with("back_up", Value::Text(held.name.clone()));
    }
}

/// Every line is looked at; the counts stand in boxes.
fn marks(work: &mut Work, case: &Case<'_>) {
    let rows = ["inside", "short", "over"].map(Value::Word);
    work.read("marks", Section::Rounds)
        .with("count", Value::Count(steps::of_joint(case)))
        .grid(rows.to_vec(), Vec::new());
    work.point("marks_seen", "W2", LOOKED_AT, Role::Inspector)
        .covers(&["marks"]);
}

fn loosen(work: &mut Work, case: &Case<'_>, is_anchor: bool) {
    let last = Hazard::new(LastFasteners, Value::Word("held_printed_rounds"));
    work.hazards
        .push(last.with("fasteners", Value::Word("studs")));
    let back = Set::back_by(angle(case, ids::RELEASE_SET));
    work.keys.push(KeyValue {
        id: "turn_back",
        set: back.clone(),
        values: Vec::new(),
    });
    work.phase(Phase::Prepare);
    steps::nuts::soak_and_line(work);
    hold_far_end(work, case);
    work.phase(Phase::Loosen);
    work.set("pairs_back", "R1", back, Sequence::AsWorded)
        .meets(&[LastFasteners, StudInLine]);
    work.set("pairs", "R2", Set::Word("slack"), Sequence::AsWorded)
        .meets(&[SuddenRelease]);
    work.phase(Phase::RunOut);
    work.set("out", "R3", Set::Word("off"), Sequence::AsWorded)
        .meets(&[SuddenRelease]);
    work.act("lift")
        .by(Role::Rigger)
        .priority(Priority::PackOnly);
    if is_anchor {
        make_up::anchor_dials(work, case);
    } else {
        work.act("scrap").priority(Priority::PackOnly);
    }
    work.read("rounds_made", Section::Rounds);
    steps::removed(work, case);
    work.phase(Phase::Stop);
    work.decide("holds").by(Role::Engineer);
    steps::stuck(work);
}

/// Nothing is turned: lines whole, plates shut.
fn recheck(work: &mut Work, case: &Case<'_>) {
    work.phase(Phase::Check);
    work.read("lines_whole", Section::Rounds)
        .with("count", Value::Count(steps::of_joint(case)))
        .accept("lines_whole", Bound::Words);
    work.point("rechecked", "W2", LOOKED_AT, Role::Inspector)
        .covers(&["lines_whole"]);
    work.phase(Phase::Stop);
    work.decide("loose").by(Role::Engineer);
}
