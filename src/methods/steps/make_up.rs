//! Making the joint up: measured as found, faces, gasket, studs, lubricant, numbers.

use crate::job::{Seat, TurnDirection, Washers};
use crate::joint::{Fact, needed_engagement};
use crate::methods::Case;
use crate::units::{Dimension, Length, Quantity};
use crate::work::{
    Attendance, Bound, HazardKind, Phase, Priority, REPEATED, Role, Section, Value, Work,
};

use super::{ALWAYS, HELD_IN_A};
use HazardKind::{Fibre, InertGas, Lubricant, OneLubricant, Oxygen, Pyrophoric};

/// Dials on a sole plate: one at each corner (common practice, no source).
const DIALS: usize = 4;

/// What is accepted before load comes on.
const BEFORE_LOAD: &[&str] = &[
    "centreline",
    "parallel",
    "holes",
    "free_gap",
    "gap_snug",
    "engagement",
    "centre",
    "seated",
    "stud_end",
    "fit",
    "grout",
    "made_up",
];

/// The steps of making up, with those of the method before the lubricant. The box on side one says that all of them were ticked overleaf.
pub(crate) fn make_up(work: &mut Work, case: &Case<'_>, own: impl FnOnce(&mut Work)) {
    let mechanics = &case.joint.mechanics;
    work.phase(Phase::MakeUp);
    if mechanics.gasket.is_some() {
        as_found(work, case);
    }
    faces(work, case);
    studs(work, case);
    own(work);
    paste(work, case);
    materials(work, case);
    anchor(work, case);
    numbers(work, case);
    made_up(work);
}

/// The box on side one that says that every step of making up was ticked overleaf.
pub(crate) fn made_up(work: &mut Work) {
    work.phase(Phase::Prepare);
    work.tick("made_up").accept("made_up", Bound::Words);
}

/// The hold before load comes on; the grout of an anchor is accepted in every class.
pub(crate) fn ready(work: &mut Work, case: &Case<'_>) {
    let attendance = match case.joint.mechanics.anchor {
        Some(_) => ALWAYS,
        None => HELD_IN_A,
    };
    work.point("ready", "H3", attendance, Role::Inspector)
        .covers(BEFORE_LOAD);
}

/// What holds an anchor, and dials on what it holds. One box is for grout and sleeve.
pub(crate) fn anchor(work: &mut Work, case: &Case<'_>) {
    let Some(anchor) = &case.joint.mechanics.anchor else {
        return;
    };
    let grout = Value::text(&anchor.grout);
    work.act("grout")
        .by(Role::CrewLead)
        .with("grout", grout.clone())
        .accept("grout", Bound::Is(grout.clone()))
        .priority(Priority::PackOnly);
    work.tick("sleeve").with("grout", grout);
    anchor_dials(work, case);
}

/// What the dials on the sole plate show before and after.
pub(crate) fn anchor_dials(work: &mut Work, case: &Case<'_>) {
    let Some(anchor) = &case.joint.mechanics.anchor else {
        return;
    };
    let rows = ["before", "after"].map(Value::Word);
    work.read("position", Section::AsFound)
        .dimension(Dimension::Length)
        .grid(rows.to_vec(), (1..=DIALS).map(Value::Count).collect())
        .accept("movement", Bound::AtMost(Value::fact(&anchor.movement)));
}

/// Over a limit nobody pulls the joint in.
fn as_found(work: &mut Work, case: &Case<'_>) {
    let checks = &case.joint.mechanics.checks;
    for (id, limit) in [
        ("centreline", &checks.centreline),
        ("parallel", &checks.parallelism),
        ("holes", &checks.holes),
        ("free_gap", &checks.gap),
    ] {
        let step = work.read(id, Section::AsFound).dimension(Dimension::Length);
        if let Fact::Known { value, .. } = limit {
            step.accept(id, Bound::AtMost(Value::of(*value)));
        }
    }
    work.act("no_pull").priority(Priority::PackOnly);
}

fn faces(work: &mut Work, case: &Case<'_>) {
    let Some(gasket) = &case.joint.mechanics.gasket else {
        work.tick("faces");
        return;
    };
    work.tick("seats")
        .accept("seats", Bound::Words)
        .meets(&[InertGas, Fibre, Pyrophoric]);
    work.tick("gasket")
        .with("gasket", Value::Text(gasket.name.clone()))
        .accept("gasket", Bound::Words);
}

fn studs(work: &mut Work, case: &Case<'_>) {
    let mechanics = &case.joint.mechanics;
    work.tick("studs");
    if mechanics.studs.seat.value() == Some(Seat::TappedHole)
        && let Some(thread) = mechanics.studs.thread.get()
    {
        let least = thread.diameter.si() * needed_engagement(case.joint);
        let least = Value::of(Length::from_si(least));
        work.tick("engagement")
            .with("least", least.clone())
            .accept("engagement", Bound::AtLeast(least));
    }
    // A tensioner has a washer of its own, and no nut whose end is looked at.
    if mechanics.tensioner.is_some() {
        return;
    }
    match mechanics.studs.washers.value() {
        Some(Washers::None) => work.tick("no_washers"),
        _ => work.tick("washers"),
    };
    let checks = &mechanics.checks;
    if let (Some(least), Some(most)) = (
        checks.least_protrusion.value(),
        checks.greatest_protrusion.value(),
    ) {
        let (least, most) = (Value::of(least), Value::of(most));
        work.tick("centre")
            .with("least", least.clone())
            .with("most", most.clone())
            .accept("protrusion", Bound::Between(least, most))
            .priority(REPEATED);
    }
}

fn paste(work: &mut Work, case: &Case<'_>) {
    let lubricant = Value::text(&case.joint.mechanics.lubricant.name);
    work.tick("paste")
        .with("lubricant", lubricant)
        .accept("one_paste", Bound::Words)
        .meets(&[Oxygen, Lubricant, OneLubricant]);
    let attendance = [
        Attendance::Witness,
        Attendance::Review,
        Attendance::Surveillance,
    ];
    work.point("fitted", "W1", attendance, Role::Inspector)
        .covers(&["seats", "gasket", "washer", "paste"]);
}

/// Batches and heats of what was fitted.
fn materials(work: &mut Work, case: &Case<'_>) {
    let mechanics = &case.joint.mechanics;
    let gasketed = mechanics.gasket.is_some();
    let washed = !gasketed && mechanics.studs.washers.value() != Some(Washers::None);
    let ids = [
        gasketed.then_some("batch_gasket"),
        Some("batch_studs"),
        mechanics.tensioner.is_none().then_some("batch_nuts"),
        washed.then_some("batch_washers"),
        Some("batch_paste"),
    ];
    for id in ids.into_iter().flatten() {
        work.read(id, Section::Materials);
    }
}

pub(crate) fn numbers(work: &mut Work, case: &Case<'_>) {
    let surroundings = &case.joint.work;
    let direction = match surroundings.direction.value() {
        Some(TurnDirection::Anticlockwise) => "anticlockwise",
        Some(TurnDirection::Clockwise) | None => "clockwise",
    };
    work.tick("numbers")
        .with("first", Value::text(&surroundings.first))
        .with("direction", Value::Word(direction));
}
