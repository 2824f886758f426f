//! What can hurt at a joint, whatever loads it: what stands behind it, what is stored in it, and what surrounds the
//! work. The hazards of a tool are added by the method that uses it.

use std::sync::Arc;

use crate::calc::ids;
use crate::job::{EnergyKind, Hazard as Named, ToolKind};
use crate::joint::{Joint, Lack, Tool, Who};
use crate::methods::Case;
use crate::units::{Mass, Quantity, Temperature};
use crate::work::{Hazard, HazardKind, Signal, Task, Value, Work};

use super::thresholds::{COLD, HOT, VERY_HOT};

/// What the job names that can move or escape; without any of it nobody knows.
const NAMED_ENERGIES: [Named; 9] = [
    Named::Hydrogen,
    Named::Toxic,
    Named::Flammable,
    Named::Oxygen,
    Named::Steam,
    Named::Corrosive,
    Named::Pyrophoric,
    Named::InertGas,
    Named::RotatingMachine,
];

/// What holds energies, where the job does not say.
const NO_CONTROL: Lack = Lack {
    key: "isolations.*.energies",
    who: Who::Operator,
};

fn has(joint: &Joint, hazard: Named) -> bool {
    joint.mechanics.hazards.contains(&hazard)
}

fn held(by: &'static str) -> Value {
    Value::Word(by)
}

/// Adds the hazards of a joint in a task.
pub(super) fn add(work: &mut Work, case: &Case<'_>) {
    let joint = case.joint;
    contents(work, joint);
    machines(work, joint);
    if !names_an_energy(joint) {
        let asked = Lack {
            key: "isolation",
            who: Who::Operator,
        };
        work.hazards
            .push(Hazard::new(HazardKind::NotKnown, Value::Missing(asked)).behind());
    }
    strain(work, case);
    temperature(work, joint);
    surroundings(work, case);
    quality(work, joint);
}

/// Whether the job names anything that can move or escape at the joint. A pressure of zero names none.
fn names_an_energy(joint: &Joint) -> bool {
    let service = &joint.mechanics.service;
    let is_pressed = service.pressure.value().is_some_and(|it| it.si() > 0.0);
    let boundary = joint.work.boundary.as_deref();
    is_pressed
        || service.fluid.get().is_some()
        || joint.identity.danger.is_some()
        || NAMED_ENERGIES.iter().any(|hazard| has(joint, *hazard))
        || boundary
            .is_some_and(|it| it.has_contents || !it.energies.is_empty() || !it.drives.is_empty())
}

fn contents(work: &mut Work, joint: &Joint) {
    let service = &joint.mechanics.service;
    let fluid = service
        .fluid
        .get()
        .map_or(held("contents"), |fluid| Value::Text(fluid.clone()));
    let sheet = Value::text(&joint.work.isolation);
    if service.can_hold() {
        let pressure = Hazard::new(HazardKind::Pressure, sheet);
        let known = known_contents(joint);
        work.hazards.push(match known.is_empty() {
            true => pressure,
            false => pressure.with("contents", Value::List(known)).behind(),
        });
        work.hazards.push(Hazard::new(
            HazardKind::HotBolting,
            held("held_written_order"),
        ));
    }
    let mut of_fluid = |kind, held_by| {
        work.hazards
            .push(Hazard::new(kind, held(held_by)).with("fluid", fluid.clone()));
    };
    if has(joint, Named::Toxic) {
        of_fluid(HazardKind::Toxic, "held_breathing_set");
    }
    if has(joint, Named::Flammable) || has(joint, Named::Hydrogen) {
        of_fluid(HazardKind::Flammable, "held_gas_test");
    }
    let is_opened = work.task == Task::Loosen;
    if is_opened && (has(joint, Named::Corrosive) || has(joint, Named::Steam)) {
        of_fluid(HazardKind::Corrosive, "held_skin_protection");
    }
    if has(joint, Named::InertGas) {
        let purge = joint.work.boundary.as_ref().and_then(|it| it.purge.clone());
        let gas = purge.map_or(fluid, Value::Text);
        work.hazards
            .push(Hazard::new(HazardKind::InertGas, held("held_gas_test")).with("gas", gas));
    }
    for (named, kind, by) in [
        (Named::Oxygen, HazardKind::Oxygen, "held_clean_tools"),
        (
            Named::ConfinedSpace,
            HazardKind::ConfinedSpace,
            "held_permit_watch",
        ),
    ] {
        if has(joint, named) {
            work.hazards.push(Hazard::new(kind, held(by)));
        }
    }
    old_parts(work, joint);
    if service.can_hold() && is_opened {
        work.hazards.push(Hazard::new(
            HazardKind::TrappedPocket,
            held("held_far_side_first"),
        ));
    }
    if service.can_hold() && !is_opened {
        work.hazards
            .push(Hazard::new(HazardKind::LeakTest, held("held_distance")));
    }
}

/// Scale and fibre come with the old parts: when the joint is opened, and when its seats are cleaned.
fn old_parts(work: &mut Work, joint: &Joint) {
    let is_cleaned = work.task == Task::Tighten && joint.mechanics.gasket.is_some();
    if work.task != Task::Loosen && !is_cleaned {
        return;
    }
    for (named, kind, by) in [
        (Named::Pyrophoric, HazardKind::Pyrophoric, "held_wet"),
        (Named::HazardousFibre, HazardKind::Fibre, "held_survey"),
    ] {
        if has(joint, named) {
            work.hazards.push(Hazard::new(kind, held(by)));
        }
    }
}

/// Substance, pressure and temperature, as far as they are known. A pressure of zero is none.
fn known_contents(joint: &Joint) -> Vec<Value> {
    let service = &joint.mechanics.service;
    let fluid = service.fluid.get().map(|fluid| Value::Text(fluid.clone()));
    let pressure = service.pressure.value().filter(|it| it.si() > 0.0);
    let stands_for_something = fluid.is_some() || pressure.is_some();
    let temperature = service.temperature.value().filter(|_| stands_for_something);
    fluid
        .into_iter()
        .chain(pressure.map(Value::of))
        .chain(temperature.map(Value::of))
        .collect()
}

fn machines(work: &mut Work, joint: &Joint) {
    let boundary = joint.work.boundary.as_deref();
    let energies = boundary
        .map(|it| it.energies.as_slice())
        .unwrap_or_default();
    let mut add = |kind, name, named: Vec<String>, of: &[EnergyKind]| {
        let found: Vec<_> = energies.iter().filter(|it| of.contains(&it.kind)).collect();
        let what = found.iter().map(|it| it.what.clone());
        let mut names: Vec<Value> = Vec::new();
        for name in named.into_iter().chain(what).map(Value::Text) {
            if !names.contains(&name) {
                names.push(name);
            }
        }
        if names.is_empty() {
            return;
        }
        let controls = found.iter().filter_map(|it| it.control.clone());
        let controls: Vec<Value> = controls.map(Value::Text).collect();
        let held_by = match controls.is_empty() {
            true => Value::Missing(NO_CONTROL),
            false => Value::List(controls),
        };
        let hazard = Hazard::new(kind, held_by).behind();
        work.hazards.push(hazard.with(name, Value::List(names)));
    };
    let identity = &joint.identity;
    let equipment = || {
        let name = identity.equipment_name.clone();
        name.or_else(|| identity.equipment.get().cloned())
            .unwrap_or_else(|| joint.tag.clone())
    };
    let rotating = has(joint, Named::RotatingMachine).then(equipment);
    let drives = boundary.map(|it| it.drives.clone()).unwrap_or_default();
    use EnergyKind::{Electrical, Gravity, Mechanical, Pneumatic, Rotating};
    add(
        HazardKind::Machine,
        "part",
        rotating.into_iter().collect(),
        &[Mechanical, Rotating, Gravity],
    );
    add(HazardKind::Ram, "ram", Vec::new(), &[Pneumatic]);
    add(HazardKind::Drive, "drive", drives, &[Electrical]);
}

/// Load in studs. Where nothing else stands behind the joint it is what the danger panel tells of.
fn strain(work: &mut Work, case: &Case<'_>) {
    let ledger = &case.computed.ledger;
    let mut stud = Hazard::new(HazardKind::StudInLine, held("held_printed_steps"));
    if let Some(count) = ledger.get(ids::COUNT) {
        stud = stud.with("count", Value::Count(crate::calc::whole(count.si())));
    }
    if let Some(load) = ledger.get(ids::LOAD) {
        stud = stud.with("load", Value::of(load));
    }
    let is_alone = !work.hazards.iter().any(|it| it.is_behind);
    work.hazards.push(match is_alone && stud.values.len() == 2 {
        true => stud.behind(),
        false => stud,
    });
    if work.task != Task::Loosen {
        return;
    }
    for (kind, by) in [
        (HazardKind::LookAlike, "held_second_person"),
        (HazardKind::SuddenRelease, "held_support"),
        (HazardKind::Fragments, "held_screen"),
    ] {
        work.hazards.push(Hazard::new(kind, held(by)));
    }
}

fn temperature(work: &mut Work, joint: &Joint) {
    let Some(surface) = joint.mechanics.service.temperature.value() else {
        return;
    };
    let signal = heat(surface).filter(|_| work.task != Task::Tighten);
    let found = match signal {
        Some(signal) => Some(Hazard::new(HazardKind::Heat, held("held_cool")).signalled(signal)),
        None => (surface < COLD.value).then(|| Hazard::new(HazardKind::Cold, held("held_gloves"))),
    };
    let found = found.map(|hazard| hazard.with("temperature", Value::of(surface)));
    work.hazards.extend(found);
}

/// How grave the heat of a surface is; none up to [`HOT`].
fn heat(surface: Temperature) -> Option<Signal> {
    if surface > VERY_HOT.value {
        Some(Signal::Warning)
    } else if surface > HOT.value {
        Some(Signal::Caution)
    } else {
        None
    }
}

/// The heaviest of some tools, the first of equal ones.
pub(crate) fn heaviest<'a>(tools: impl Iterator<Item = &'a Arc<Tool>>) -> Option<(&'a Tool, Mass)> {
    tools
        .filter_map(|tool| Some((&**tool, tool.mass.value()?)))
        .fold(None, |best, (tool, mass)| match best {
            Some((_, most)) if most >= mass => best,
            _ => Some((tool, mass)),
        })
}

fn surroundings(work: &mut Work, case: &Case<'_>) {
    let joint = case.joint;
    let chosen = &case.computed.chosen;
    let heaviest = heaviest(chosen.all());
    let is_above = |rule| heaviest.is_some_and(|(_, mass)| mass.si() > joint.work.limit(rule));
    let of_heaviest = |kind, by| {
        let hazard = Hazard::new(kind, held(by));
        match heaviest {
            Some((tool, mass)) => hazard
                .with("item", Value::Text(tool.name.clone()))
                .with("mass", Value::of(mass)),
            None => hazard,
        }
    };
    let uses = |kind| chosen.all().any(|tool| tool.kind == kind);
    let is_high = has(joint, Named::Height);
    let bare = |kind, by| Hazard::new(kind, held(by));
    let found = [
        (is_high && heaviest.is_some())
            .then(|| of_heaviest(HazardKind::DroppedObject, "held_tethers")),
        is_high.then(|| bare(HazardKind::Height, "held_edges")),
        is_high.then(|| bare(HazardKind::Weather, "held_site_limits")),
        (uses(ToolKind::LiftingGear) || is_above("S02"))
            .then(|| of_heaviest(HazardKind::HungLoad, "held_signaller")),
        is_above("S01").then(|| of_heaviest(HazardKind::Handling, "held_two_people")),
        has(joint, Named::HotWork).then(|| bare(HazardKind::HotWork, "held_hot_work_permit")),
        uses(ToolKind::Pump).then(|| bare(HazardKind::Electrical, "held_earth_leakage")),
    ];
    work.hazards.extend(found.into_iter().flatten());
}

fn quality(work: &mut Work, joint: &Joint) {
    let is_loosened = work.task == Task::Loosen;
    if let Some(lubricant) = joint.mechanics.lubricant.name.get()
        && work.task == Task::Tighten
    {
        for (kind, by) in [
            (HazardKind::Lubricant, "held_gloves"),
            (HazardKind::OneLubricant, "held_named_paste"),
        ] {
            work.hazards.push(
                Hazard::new(kind, held(by)).with("lubricant", Value::Text(lubricant.clone())),
            );
        }
    }
    let kind = match is_loosened {
        true => HazardKind::TurnedTwice,
        false => HazardKind::AfterBreak,
    };
    work.hazards.push(Hazard::new(kind, held("held_order")));
}
