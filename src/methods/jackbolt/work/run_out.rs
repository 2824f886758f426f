//! After the release: the driver runs jackbolts out, and what came off is looked at.

use crate::joint::Dial;
use crate::work::{HazardKind, OPTIONAL, Phase, Priority, Role, Section, Work};

use super::super::JackboltPlan;
use super::driver_prepare::{hazards, own_checks, reaction, supply, zone};
use super::facts::Facts;

/// The driver, once every jackbolt has moved by hand.
pub(super) fn driver(work: &mut Work, facts: &Facts<'_>) {
    let drives = facts.plan.is_some_and(JackboltPlan::drives_loosening);
    let Some((tool, driver)) = facts.driver().filter(|_| drives) else {
        return;
    };
    hazards(work, facts, (tool, driver));
    work.phase(Phase::RunOut);
    match driver.reverse_torque.value() {
        Some(torque) => {
            let most = facts.on_driver(Some(torque), Dial::never).value();
            work.tick("loosen_set").with("most", most)
        }
        None => work.tick("loosen_set_lowest"),
    }
    .by(Role::ToolOperator);
    supply(work, driver);
    if let Some(zone) = zone(driver) {
        work.tick("zone").with("zone", zone);
    }
    reaction(work, facts, driver);
    own_checks(work, tool);
    work.act("driver_runs_out")
        .priority(Priority::PackOnly)
        .by(Role::ToolOperator)
        .meets(&[
            HazardKind::Driver,
            HazardKind::HungLoad,
            HazardKind::Noise,
            HazardKind::Vibration,
        ]);
    work.decide("stall_loosening");
}

/// What came off and its condition.
pub(super) fn inspect(work: &mut Work) {
    work.phase(Phase::RunOut);
    for id in [
        "run_out",
        "tips_flat",
        "washer_flat",
        "threads_clean",
        "parts_bagged",
    ] {
        work.tick(id);
    }
    for id in ["set_number", "washers_out", "studs_out"] {
        work.read(id, Section::Removed).priority(OPTIONAL);
    }
}
