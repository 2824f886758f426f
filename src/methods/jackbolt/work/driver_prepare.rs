//! What must be true before the multi-spindle driver runs, and what it can do to people.

use std::sync::Arc;

use crate::calc::whole;
use crate::job::DriverInput;
use crate::joint::{Driver, Tool, Who};
use crate::units::{Length, Quantity};
use crate::work::{Bound, Hazard, HazardKind, OPTIONAL, Phase, Priority, Role, Value, Work};

use super::facts::{Facts, lack};

/// What a job writes where a driver has no marking for explosive zones.
const NO_ZONE: &str = "none";
/// The circle of the spindles may differ by so much from that of the jackbolts (common practice, no source).
const CIRCLE_DIFFERS: Length = Length::mm(0.5);

type OwnDriver<'a> = (&'a Arc<Tool>, &'a Driver);

/// Fit, lift, supply, setting, reaction, then its own checks from the job.
pub(super) fn prepare(work: &mut Work, facts: &Facts<'_>, (tool, driver): OwnDriver<'_>) {
    hazards(work, facts, (tool, driver));
    work.phase(Phase::Prepare);
    fit(work, driver);
    supply(work, driver);
    hang(work, (tool, driver));
    setting(work, facts, driver);
    reaction(work, facts, driver);
    own_checks(work, tool);
}

/// Direction and value, ticked with the marking where there is one.
fn setting(work: &mut Work, facts: &Facts<'_>, driver: &Driver) {
    let set = Value::reading(facts.readings().driver_level());
    let step = match zone(driver) {
        Some(zone) => {
            work.act("zone")
                .with("zone", zone.clone())
                .priority(Priority::PackOnly);
            work.tick("driver_set_in_zone").with("zone", zone)
        }
        None => work.tick("driver_set"),
    };
    step.with("set", set).by(Role::ToolOperator);
}

/// Spindles, circle and sockets against the tensioner. Where they are not known, the step says so.
fn fit(work: &mut Work, driver: &Driver) {
    let count = match driver.spindles.value() {
        Some(count) => Value::Count(whole(count.si())),
        None => Value::Missing(lack("tools.*.driver.spindles", Who::ToolStore)),
    };
    work.act("fit")
        .with("count", count)
        .with("circle", Value::fact(&driver.spindle_circle))
        .with("socket", Value::fact(&driver.socket))
        .accept("circle_differs", Bound::AtMost(Value::of(CIRCLE_DIFFERS)))
        .meets(&[HazardKind::Driver])
        .priority(Priority::PackOnly);
}

/// What it runs on, ticked with its fit.
pub(super) fn supply(work: &mut Work, driver: &Driver) {
    let pressure = Value::fact(&driver.supply);
    let (id, values): (_, Vec<(&'static str, Value)>) = match driver.input.value() {
        Some(DriverInput::Hand) => ("supply_hand", Vec::new()),
        Some(DriverInput::Battery) => match driver.studs_per_battery.value() {
            Some(studs) => (
                "supply_battery",
                vec![("studs", Value::Count(whole(studs.si())))],
            ),
            None => ("supply_battery_spare", Vec::new()),
        },
        Some(DriverInput::Pneumatic) => {
            let flow = Value::fact(&driver.flow);
            ("supply_air", vec![("supply", pressure), ("flow", flow)])
        }
        Some(DriverInput::Hydraulic) => ("supply_oil", vec![("supply", pressure)]),
        None => ("supply_unknown", Vec::new()),
    };
    let step = work.tick(id).by(Role::ToolOperator).meets(&[
        HazardKind::AirHose,
        HazardKind::Battery,
        HazardKind::Oil,
        HazardKind::Hose,
    ]);
    step.values.extend(values);
    if let Some(spindles) = driver.spindles.value() {
        step.with("count", Value::Count(whole(spindles.si())));
    }
}

/// Its marking, where the job names one for explosive zones.
pub(super) fn zone(driver: &Driver) -> Option<Value> {
    let zone = driver.zone.get().filter(|zone| *zone != NO_ZONE)?;
    Some(Value::Text(zone.clone()))
}

fn hang(work: &mut Work, (tool, driver): OwnDriver<'_>) {
    let step = match (tool.mass.value(), driver.lift.get()) {
        (Some(mass), Some(lift)) => work
            .tick("hang")
            .with("mass", Value::of(mass))
            .with("hanger", Value::Text(lift.clone())),
        _ => work.tick("hang_unknown"),
    };
    step.meets(&[HazardKind::HungLoad]).by(Role::Rigger);
}

/// Where it leans: the joint's own point, which is said nowhere else on a card, else what the driver says of every joint.
pub(super) fn reaction(work: &mut Work, facts: &Facts<'_>, driver: &Driver) {
    let of_joint = facts.case.joint.work.reaction.get();
    if let Some(reaction) = of_joint.or(driver.reaction.get()) {
        let priority = match of_joint {
            Some(_) => Priority::Must,
            None => OPTIONAL,
        };
        work.tick("reaction")
            .with("reaction", Value::Text(reaction.clone()))
            .priority(priority);
    }
}

/// Every check that the job gives for the driver.
pub(super) fn own_checks(work: &mut Work, tool: &Tool) {
    for check in &tool.checks {
        work.tick("own_check")
            .with("check", Value::Text(check.clone()));
    }
}

/// What the driver can do to people, each kind once and in the order of harm.
pub(super) fn hazards(work: &mut Work, facts: &Facts<'_>, (tool, driver): OwnDriver<'_>) {
    let name = Value::Text(tool.name.clone());
    let of_joint = &facts.case.joint.work.reaction;
    let reaction = of_joint.get().or(driver.reaction.get());
    let reaction = match reaction {
        Some(reaction) => Value::Text(reaction.clone()),
        None => Value::Missing(lack("tools.*.driver.reaction", Who::ToolStore)),
    };
    let hands = Value::Word("held_control");
    add(
        work,
        Hazard::new(HazardKind::Driver, hands)
            .with("tool", name.clone())
            .with("reaction", reaction),
    );
    let hook = Hazard::new(HazardKind::HungLoad, Value::Word("held_signaller"));
    add(
        work,
        hook.with("item", name.clone())
            .with("mass", Value::fact(&tool.mass)),
    );
    let off = Value::Word("held_supply_off");
    let supply = Value::fact(&driver.supply);
    match driver.input.value() {
        Some(DriverInput::Pneumatic) => {
            add(
                work,
                Hazard::new(HazardKind::AirHose, off).with("pressure", supply),
            );
        }
        Some(DriverInput::Battery) => add(work, Hazard::new(HazardKind::Battery, off)),
        Some(DriverInput::Hydraulic) => {
            add(
                work,
                Hazard::new(HazardKind::Oil, off.clone()).with("pressure", supply.clone()),
            );
            add(
                work,
                Hazard::new(HazardKind::Hose, off).with("pressure", supply),
            );
        }
        _ => {}
    }
    let worn = || Value::Word("held_ears");
    if let Some(noise) = driver.noise.value() {
        let noise = Hazard::new(HazardKind::Noise, worn()).with("level", Value::of(noise));
        add(work, noise.with("tool", name.clone()));
    }
    if let Some(vibration) = driver.vibration.value() {
        let shaken = Hazard::new(HazardKind::Vibration, Value::Word("held_shared"));
        add(
            work,
            shaken
                .with("level", Value::of(vibration))
                .with("tool", name),
        );
    }
    work.hazards.sort_by_key(|hazard| hazard.kind);
}

fn add(work: &mut Work, hazard: Hazard) {
    match work
        .hazards
        .iter_mut()
        .find(|known| known.kind == hazard.kind)
    {
        Some(known) => *known = hazard,
        None => work.hazards.push(hazard),
    }
}
