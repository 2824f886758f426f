//! What must be true before the first jackbolt turns, and before the driver does.

use crate::job::DriverInput;
use crate::joint::{Driver, Tool};
use crate::methods::jackbolt::ids;
use crate::wording::Values;

use super::case::Case;

/// What a job writes where a driver has no marking for explosive zones.
const NO_ZONE: &str = "none";

/// A tick, and when it gives way on a side that is too full.
#[derive(Clone, Debug)]
pub(super) struct Tick {
    /// Its text.
    pub(super) text: String,
    /// How long it stays.
    pub(super) stays: Stays,
}

/// How long a tick stays on a side that is too full, the first to give way first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Stays {
    /// A box, a record or a panel of the same card asks for the same.
    SaidElsewhere,
    /// Stands in the pack too.
    General,
    /// Set, lift, supply and own checks of the driver: what is left out is a finding.
    OfDriver,
    /// The joint, its zero energy, its temperature, the marks: never left out.
    Always,
}

/// Ticks in the order of the work.
#[derive(Default)]
struct List(Vec<Tick>);

impl List {
    fn push(&mut self, stays: Stays, text: String) {
        self.0.push(Tick { text, stays });
    }
}

/// Preparation by hand, then the driver's fit, setting, supply and lift, then its own checks from the job.
pub(super) fn tightening(case: &Case<'_>) -> Vec<Tick> {
    let label = |key: &str| case.label(&format!("jackbolt_card.ticks.{key}"));
    let mut ticks = List::default();
    ticks.push(Stays::Always, label("washer"));
    ticks.push(Stays::Always, label("lubricant"));
    let gap = case.get(ids::START_GAP);
    ticks.push(
        Stays::General,
        match gap {
            Some(gap) => case.say1("jackbolt_card.ticks.gap", "gap", &case.context.text(gap)),
            None => label("gap_unknown"),
        },
    );
    // Its box stands below the circle.
    ticks.push(Stays::SaidElsewhere, label("stud_end"));
    let wrench = case.subject.computed.chosen.turning.first();
    // The record asks for the last day of its calibration.
    ticks.push(
        Stays::SaidElsewhere,
        match wrench {
            Some(tool) => case
                .context
                .say1("tick.calibration_hand", "tool", tool.name.as_str()),
            None => case.context.label("tick.calibration_any"),
        },
    );
    match case.driver() {
        Some((tool, driver)) => before_driver(case, tool, driver, &mut ticks),
        None => {
            ticks.push(Stays::General, case.context.label("tick.clear_hand"));
            ticks.push(Stays::General, label("marked"));
        }
    }
    ticks.0
}

fn before_driver(case: &Case<'_>, tool: &Tool, driver: &Driver, ticks: &mut List) {
    let circle = driver.spindle_circle.value();
    if let Some((spindles, circle)) = driver.spindles.value().zip(circle) {
        let values = Values::new()
            .with("count", case.context.text(spindles))
            .with("circle", case.context.text(circle));
        let text = case.say("jackbolt_card.ticks.fit", &values);
        ticks.push(Stays::OfDriver, text);
    }
    if let Some(set) = case.printed(case.readings().driver_level()) {
        let text = case.say1("jackbolt_card.ticks.setting", "torque", &set.joined());
        ticks.push(Stays::OfDriver, text);
    }
    needs(case, driver, ticks);
    let lift = match (tool.mass.value(), driver.lift.get()) {
        (Some(mass), Some(lift)) => {
            let values = Values::new()
                .with("mass", case.context.text(mass))
                .with("hanger", lift);
            case.say("jackbolt_card.ticks.lift", &values)
        }
        _ => case.label("jackbolt_card.ticks.lift_unknown"),
    };
    ticks.push(Stays::OfDriver, lift);
    reaction(case, driver, ticks);
    own_checks(tool, ticks);
}

/// Where its reaction goes: the joint's own point, else what the driver says.
fn reaction(case: &Case<'_>, driver: &Driver, ticks: &mut List) {
    let of_joint = &case.subject.joint.work.reaction;
    if let Some(reaction) = of_joint.get().or(driver.reaction.get()) {
        let text = case.say1("jackbolt_card.ticks.reaction", "reaction", reaction);
        ticks.push(Stays::OfDriver, text);
    }
}

/// Every check that the job gives for the driver.
fn own_checks(tool: &Tool, ticks: &mut List) {
    for check in &tool.checks {
        ticks.push(Stays::OfDriver, check.clone());
    }
}

/// What the driver needs to run: battery, air or oil, and its marking in an explosive zone.
fn needs(case: &Case<'_>, driver: &Driver, ticks: &mut List) {
    if let Some(supply) = supply(case, driver) {
        ticks.push(Stays::OfDriver, supply);
    }
    let zone = driver.zone.get().filter(|zone| *zone != NO_ZONE);
    if let Some(zone) = zone {
        let text = case.say1("jackbolt_card.ticks.zone", "zone", zone);
        ticks.push(Stays::OfDriver, text);
    }
}

fn supply(case: &Case<'_>, driver: &Driver) -> Option<String> {
    let supply = driver.supply.value().map(|it| case.context.text(it));
    Some(match driver.input.value()? {
        DriverInput::Hand => case.label("jackbolt_card.ticks.input_hand"),
        DriverInput::Battery => match driver.studs_per_battery.value() {
            Some(studs) => case.say1(
                "jackbolt_card.ticks.input_battery",
                "studs",
                &case.context.text(studs),
            ),
            None => case.label("jackbolt_card.ticks.input_battery_spare"),
        },
        DriverInput::Pneumatic => {
            let flow = driver.flow.value().map(|it| case.context.text(it));
            let values = Values::new()
                .with("supply", supply.unwrap_or_default())
                .with("flow", flow.unwrap_or_default());
            case.say("jackbolt_card.ticks.input_pneumatic", &values)
        }
        DriverInput::Hydraulic => case.say1(
            "jackbolt_card.ticks.input_hydraulic",
            "supply",
            &supply.unwrap_or_default(),
        ),
    })
}

/// Zero energy, soak, marks; then what the driver needs, which waits.
pub(super) fn loosening(case: &Case<'_>) -> Vec<Tick> {
    let tick = |key: &str| case.context.label(&format!("tick.{key}"));
    let limit = crate::units::Temperature::celsius(60.0);
    let mut ticks = List::default();
    ticks.push(Stays::Always, tick("right_joint"));
    if let Some(sheet) = case.subject.joint.work.isolation.get() {
        let text = case.context.say1("tick.isolation", "sheet", sheet.as_str());
        ticks.push(Stays::Always, text);
    }
    ticks.push(Stays::Always, tick("zero"));
    ticks.push(Stays::Always, case.label("jackbolt_card.ticks.paint"));
    ticks.push(Stays::General, case.label("jackbolt_card.ticks.soaked"));
    let cool = case
        .context
        .say1("tick.cool", "limit", case.context.text(limit));
    ticks.push(Stays::Always, cool);
    ticks.push(Stays::SaidElsewhere, tick("way_out"));
    ticks.push(Stays::SaidElsewhere, tick("supported"));
    if let Some((tool, driver)) = case.driver() {
        // The line below the rounds says the same.
        let aside = case.label("jackbolt_card.ticks.driver_aside");
        ticks.push(Stays::SaidElsewhere, aside);
        if case.driver_loosens() {
            driver_in_reverse(case, driver, &mut ticks);
            reaction(case, driver, &mut ticks);
            own_checks(tool, &mut ticks);
        }
    }
    ticks.0
}

/// Direction and torque of a driver that runs jackbolts out, and what it needs for that.
fn driver_in_reverse(case: &Case<'_>, driver: &Driver, ticks: &mut List) {
    let torque = driver.reverse_torque.value();
    let text = match torque.and_then(|torque| case.driver_set(torque)) {
        Some(torque) => case.say1("jackbolt_card.ticks.loosen", "torque", &torque.joined()),
        None => case.label("jackbolt_card.ticks.loosen_unknown"),
    };
    ticks.push(Stays::OfDriver, text);
    needs(case, driver, ticks);
}
