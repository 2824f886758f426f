//! What must be true before the first jackbolt turns.

use crate::calc::ids;
use crate::calc::jackbolt::JackboltPlan;
use crate::job::DriverInput;
use crate::joint::{Driver, Tool};
use crate::wording::Values;

use super::case::Case;

/// Most ticks on side one, and beside rounds in two columns.
const MOST: usize = 9;
const MOST_IN_TWO_COLUMNS: usize = 6;

/// Preparation by hand, then the driver's fit, setting, supply and lift, then its own checks from the job.
pub(super) fn tightening(case: &Case<'_>) -> Vec<String> {
    let mut ticks: Vec<String> = ["washer", "lubricant"]
        .map(|key| case.label(&format!("jackbolt_card.ticks.{key}")))
        .to_vec();
    ticks.push(match case.get(ids::START_GAP) {
        Some(gap) => case.say1("jackbolt_card.ticks.gap", "gap", &case.context.text(gap)),
        None => case.label("jackbolt_card.ticks.gap_unknown"),
    });
    ticks.push(case.label("jackbolt_card.ticks.stud_end"));
    let wrench = case.subject.computed.chosen.turning.first();
    ticks.push(match wrench {
        Some(tool) => case
            .context
            .say1("tick.calibration_hand", "tool", tool.name.as_str()),
        None => case.context.label("tick.calibration_any"),
    });
    match case.driver() {
        Some((tool, driver)) => driver_ticks(case, tool, driver, &mut ticks),
        None => {
            ticks.push(case.context.label("tick.clear_hand"));
            ticks.push(case.label("jackbolt_card.ticks.marked"));
        }
    }
    ticks.truncate(MOST);
    ticks
}

fn driver_ticks(case: &Case<'_>, tool: &Tool, driver: &Driver, ticks: &mut Vec<String>) {
    let circle = driver.spindle_circle.value();
    if let Some((spindles, circle)) = driver.spindles.value().zip(circle) {
        let values = Values::new()
            .with("count", case.context.text(spindles))
            .with("circle", case.context.text(circle));
        ticks.push(case.say("jackbolt_card.ticks.fit", &values));
    }
    if let Some(torque) = case.get(ids::DRIVER_TORQUE) {
        let torque = case.on_driver(torque).joined();
        ticks.push(case.say1("jackbolt_card.ticks.setting", "torque", &torque));
    }
    ticks.extend(supply(case, driver));
    ticks.push(match (tool.mass.value(), driver.lift.get()) {
        (Some(mass), Some(lift)) => {
            let values = Values::new()
                .with("mass", case.context.text(mass))
                .with("hanger", lift);
            case.say("jackbolt_card.ticks.lift", &values)
        }
        _ => case.label("jackbolt_card.ticks.lift_unknown"),
    });
    ticks.extend(tool.checks.iter().cloned());
    if let Some(reaction) = driver.reaction.get() {
        ticks.push(case.say1("jackbolt_card.ticks.reaction", "reaction", reaction));
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
                .with("supply", supply?)
                .with("flow", flow.unwrap_or_default());
            case.say("jackbolt_card.ticks.input_pneumatic", &values)
        }
        DriverInput::Hydraulic => {
            case.say1("jackbolt_card.ticks.input_hydraulic", "supply", &supply?)
        }
    })
}

/// Zero energy, soak, marks; the driver waits.
pub(super) fn loosening(case: &Case<'_>, rounds_in_two_columns: bool) -> Vec<String> {
    let tick = |key: &str| case.context.label(&format!("tick.{key}"));
    let limit = crate::units::Temperature::celsius(60.0);
    let mut ticks = vec![tick("right_joint")];
    if let Some(sheet) = case.subject.joint.work.isolation.get() {
        ticks.push(case.context.say1("tick.isolation", "sheet", sheet.as_str()));
    }
    ticks.push(tick("zero"));
    ticks.extend(
        ["jackbolt_card.ticks.paint", "jackbolt_card.ticks.soaked"].map(|key| case.label(key)),
    );
    ticks.push(
        case.context
            .say1("tick.cool", "limit", case.context.text(limit)),
    );
    if case.plan().is_some_and(JackboltPlan::drives_loosening) {
        ticks.push(case.label("jackbolt_card.ticks.driver_aside"));
    }
    ticks.push(tick("way_out"));
    ticks.push(tick("supported"));
    ticks.truncate(if rounds_in_two_columns {
        MOST_IN_TWO_COLUMNS
    } else {
        MOST
    });
    ticks
}
