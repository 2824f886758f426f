//! Making the joint safe: zero shown and signed for, air tested, what can move held, the weight taken.

use crate::joint::Boundary;
use crate::methods::Case;
use crate::units::Temperature;
use crate::work::{Bound, HazardKind, Priority, Role, Task, Value, Work};

use super::ALWAYS;
use super::thresholds::{COLD, HOT};
use HazardKind::{
    Cold, ConfinedSpace, Drive, Flammable, Heat, HungLoad, InertGas, Machine, NotKnown, Oxygen,
    Pressure, Ram, SuddenRelease, Toxic,
};

/// Hazards for which the air is tested where people breathe.
const IN_AIR: &[HazardKind] = &[Toxic, InertGas, Flammable, Oxygen, ConfinedSpace];
/// Hazards that a lock, a pin or a block holds.
const HELD: &[HazardKind] = &[NotKnown, Machine, Ram, Drive];

pub(super) fn make_safe(work: &mut Work, case: &Case<'_>) {
    let boundary = case.joint.work.boundary.as_deref();
    let is_pressed = work.has(Pressure);
    if is_pressed {
        zero(work, case, boundary);
    }
    if IN_AIR.iter().any(|kind| work.has(*kind)) {
        air(work);
    }
    surface(work, case, boundary);
    let is_held = HELD.iter().any(|kind| work.has(*kind));
    if is_held {
        hold(work);
    }
    if is_pressed || is_held {
        work.point("safe", "H2", ALWAYS, Role::CrewLead)
            .covers(&["zero", "vent", "gas", "cool", "held", "ram", "part", "try"])
            .also(Role::PlantOperator);
    }
    if let (true, Some(interval)) = (is_pressed, boundary.and_then(|it| it.prove_again_every)) {
        work.decide("again")
            .by(Role::CrewLead)
            .with("interval", Value::of(interval))
            .priority(Priority::PackOnly);
    }
    if work.task == Task::Loosen {
        work.tick("support")
            .by(Role::Rigger)
            .meets(&[SuddenRelease, HungLoad]);
    }
}

/// Zero is shown at the joint; where the boundary has vents they stand open, and one box is for both.
fn zero(work: &mut Work, case: &Case<'_>, boundary: Option<&Boundary>) {
    let sheet = Value::text(&case.joint.work.isolation);
    let vents = boundary.map(|it| it.vents.as_slice()).unwrap_or_default();
    work.act("isolate")
        .by(Role::PlantOperator)
        .with("sheet", sheet.clone())
        .priority(Priority::PackOnly);
    let step = match vents.is_empty() {
        true => work.tick("zero"),
        false => work.act("zero").priority(Priority::PackOnly),
    };
    step.by(Role::PlantOperator)
        .with("sheet", sheet)
        .accept("zero", Bound::Words)
        .meets(&[Pressure]);
    if !vents.is_empty() {
        let vents = vents.iter().cloned().map(Value::Text).collect();
        work.tick("vent")
            .by(Role::CrewLead)
            .with("vent", Value::List(vents))
            .accept("flow", Bound::Words)
            .meets(&[Pressure]);
    }
}

fn air(work: &mut Work) {
    let explodes = work.has(Flammable);
    let poisons = work.has(Toxic);
    let step = work.tick("gas").by(Role::GasTester).meets(IN_AIR);
    step.accept("breathable", Bound::Words);
    if explodes {
        step.accept("explosive", Bound::Zero);
    }
    if poisons {
        step.accept("poison", Bound::Zero);
    }
}

/// A surface is read where it was hot or cold, or where nobody knows.
fn surface(work: &mut Work, case: &Case<'_>, boundary: Option<&Boundary>) {
    let surface = case.joint.mechanics.service.temperature.value();
    let is_usual = |it: Temperature| it <= HOT.value && it >= COLD.value;
    if work.has(Cold) {
        work.tick("warm").meets(&[Cold]);
    } else if work.task != Task::Tighten && !surface.is_some_and(is_usual) {
        let limit = cool_limit(boundary);
        work.tick("cool")
            .with("limit", Value::of(limit))
            .accept("surface", Bound::AtMost(Value::of(limit)))
            .meets(&[Heat]);
    }
}

/// The surface temperature up to which work may start: the boundary's, else [`HOT`].
pub(super) fn cool_limit(boundary: Option<&Boundary>) -> Temperature {
    let own = boundary.and_then(|it| it.cool_below);
    own.unwrap_or(HOT.value)
}

/// What can move is held. One box is for all of it, at the last of its steps.
fn hold(work: &mut Work) {
    let is_driven = work.has(Ram) || work.has(Drive);
    let (has_ram, has_part) = (work.has(Ram), work.has(Machine));
    let step = match is_driven {
        true => work.act("held").priority(Priority::PackOnly),
        false => work.tick("held"),
    };
    step.by(Role::PlantOperator)
        .accept("holders", Bound::Words)
        .meets(HELD);
    let mut named = |id, kind| {
        let values: Vec<_> = work
            .hazards
            .iter()
            .filter(|it| it.kind == kind)
            .flat_map(|it| it.values.clone())
            .collect();
        let step = work.act(id).by(Role::PlantOperator);
        step.priority(Priority::PackOnly).values = values;
    };
    if has_ram {
        named("ram", Ram);
    }
    if has_part {
        named("part", Machine);
    }
    if is_driven {
        work.tick("try")
            .by(Role::PlantOperator)
            .accept("dead", Bound::Words)
            .meets(HELD);
    }
}
