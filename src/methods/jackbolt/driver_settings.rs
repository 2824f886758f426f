//! What the driver is set to in the ledger, and what of it the plan hangs on.

use crate::calc::labour::Task;
use crate::calc::{Basis, Chosen, Id, Ledger, whole};
use crate::joint::{Dial, Fact, Lack, Mechanics, ToolReading, Who};
use crate::standards::jackbolts;
use crate::units::{Quantity, Torque};

use super::{DriverInputs, REVERSAL, ids};

/// The driver at the level that its own step can be set to.
pub(super) fn inputs(ledger: &Ledger, joint: &Mechanics, full: Torque) -> Option<DriverInputs> {
    let tool = joint.tools.driver.as_ref()?;
    let driver = tool.driver.as_ref()?;
    let level = ledger.get(ids::DRIVER_TORQUE)?.si() / full.si();
    Some(DriverInputs {
        spindles: whole(driver.spindles.value()?.si()),
        level,
        scatter: driver.scatter.value()?.si(),
    })
}

/// Enters what the driver is set to, what its reversal may be and what the check after lift-off is set to.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) {
    let Some(tool) = joint.tools.driver.as_ref() else {
        return;
    };
    let scatter = match tool.driver.as_ref() {
        Some(driver) => driver.scatter.clone(),
        None => Fact::missing("tools.*.driver", Who::ToolStore),
    };
    ledger.input(ids::SPINDLE_SCATTER, &scatter);
    ledger.input(ids::DRIVER_LEVEL, &joint.plan.driver_level);
    ledger.apply(
        ids::DRIVER_LEVEL_LIMIT,
        &jackbolts::LEVEL_LIMIT_OF,
        &[("s_d", ids::SPINDLE_SCATTER.key())],
    );
    let known = ledger
        .get(ids::DRIVER_LEVEL)
        .zip(ledger.get(ids::SET_TORQUE))
        .zip(ledger.get(ids::SPINDLE_SCATTER));
    let lack = ledger
        .lack(ids::SPINDLE_SCATTER)
        .or(ledger.lack(ids::SET_TORQUE));
    let lack = lack.unwrap_or(Lack {
        key: "tools.*.driver",
        who: Who::ToolStore,
    });
    let from = |id: Id<Torque>| Basis::Rounded(id.key());
    let gives = |reading: Result<ToolReading, Lack>| reading.map(|reading| reading.gives());
    let dial = Dial::of_driver(tool);
    let set = known.ok_or(lack).and_then(|((level, full), scatter)| {
        let level = Torque::from_si(level.si() * full.si());
        Ok((gives(dial.never(level))?, scatter))
    });
    let torque = set.map(|(torque, _)| torque);
    ledger.enter(ids::DRIVER_TORQUE, torque, from(ids::SET_TORQUE));
    let third = torque.map(|torque| Torque::from_si(torque.si() * REVERSAL));
    let third = third.and_then(|third| gives(dial.fine().never(third)));
    ledger.enter(ids::REVERSAL_LIMIT, third, from(ids::DRIVER_TORQUE));
    // What the driver brought is tried by hand.
    let hand = chosen.dial(joint, Task::Tighten).fine();
    let least = set.map(|(torque, scatter)| Torque::from_si(torque.si() * (1.0 - scatter.si())));
    let check = least.and_then(|least| gives(hand.about(least)));
    ledger.enter(ids::DRIVER_CHECK, check, from(ids::DRIVER_TORQUE));
}
