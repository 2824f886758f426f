//! What the tool is set to: a torque rounded to what it can be set to, pass by pass.

use crate::job::Pattern;
use crate::joint::{Dial, Fact, Lack, Level, Mechanics, NO_POINTS, Origin, Tool, ToolReading};
use crate::standards::mechanics;
use crate::units::{Quantity, Torque};

use super::choose::Chosen;
use super::ids;
use super::labour::Task;
use super::ledger::{Basis, Id, Key, Ledger};
use super::order::Order;

/// What kind of pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PassKind {
    /// P0, by hand.
    Snug,
    /// A share of the final value, crosswise.
    Stepped,
    /// Round the circle at the final value until no nut turns.
    Circular,
    /// The same again after hours.
    Repeat,
}

/// One pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pass {
    /// Its number: P0, P1...
    pub number: u16,
    /// Its kind.
    pub kind: PassKind,
}

/// Enters the torque that is set for the final value.
pub(crate) fn enter_torque(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) {
    let dial = chosen.dial(joint, Task::Tighten);
    set_torque(ledger, dial, ids::TORQUE, ids::SET_TORQUE);
    if let Some(tool) = chosen.turning.first() {
        enter_adapter(ledger, tool);
    }
}

/// Enters what the dial shows of the torque that the nut gets, where an adapter makes the wrench longer.
fn enter_adapter(ledger: &mut Ledger, tool: &Tool) {
    let Some((wrench_length, extension)) = tool.adapter else {
        return;
    };
    for (id, length) in [
        (ids::WRENCH_LENGTH, wrench_length),
        (ids::ADAPTER_LENGTH, extension),
    ] {
        ledger.input(id, &Fact::job(length, tool.place, Level::Shared));
    }
    ledger.apply(
        ids::SET_ADAPTED,
        &mechanics::WRENCH_SETTING_OF,
        &[
            ("T", ids::SET_TORQUE.key()),
            ("l_w", ids::WRENCH_LENGTH.key()),
            ("l_a", ids::ADAPTER_LENGTH.key()),
        ],
    );
}

/// Enters what the nut gets when the wrench is set as near to a torque as it can be.
fn set_torque(ledger: &mut Ledger, dial: Dial<'_>, exact: Id<Torque>, set: Id<Torque>) {
    let reading = reading(ledger, dial, exact, exact.key());
    let value = reading.map(|reading| reading.gives());
    ledger.enter(set, value, Basis::Rounded(exact.key()));
}

/// The reading nearest to a torque of the ledger, or what `behind` lacks.
pub(crate) fn reading(
    ledger: &Ledger,
    dial: Dial<'_>,
    torque: Id<Torque>,
    behind: Key,
) -> Result<ToolReading, Lack> {
    let lack = ledger.entry(behind).and_then(|entry| entry.value.err());
    match (ledger.get(torque), lack) {
        (Some(torque), None) => dial.about(torque),
        (_, lack) => Err(lack.unwrap_or(NO_POINTS)),
    }
}

/// Enters what is set in a pass below the final value, from its exact torque.
pub(crate) type SetPass = fn(&mut Ledger, Dial<'_>, u16);

/// Enters what is set in each pass and returns the passes in their order.
pub(crate) fn passes(
    ledger: &mut Ledger,
    joint: &Mechanics,
    chosen: &Chosen,
    set_pass: SetPass,
) -> Vec<Pass> {
    let dial = chosen.dial(joint, Task::Tighten);
    enter_snug(ledger, joint, dial.fine());
    let mut passes = vec![Pass {
        number: 0,
        kind: PassKind::Snug,
    }];
    let shares = joint
        .plan
        .passes
        .get()
        .map(Vec::as_slice)
        .unwrap_or_default();
    let origin = joint.plan.passes.origin().unwrap_or(&Origin::Computed);
    for (number, share) in (1u16..).zip(shares) {
        ledger.enter(ids::PASS_SHARE.at(number), Ok(*share), Basis::Input(origin));
        share_of(ledger, number);
        if share.si() >= 1.0 {
            repeat_setting(ledger, number);
        } else {
            set_pass(ledger, dial, number);
        }
        enter_load(ledger, number);
        passes.push(Pass {
            number,
            kind: PassKind::Stepped,
        });
    }
    let mut number = u16::try_from(shares.len()).unwrap_or(u16::MAX);
    if joint.plan.circular_round.value() == Some(true) {
        number += 1;
        passes.push(Pass {
            number,
            kind: PassKind::Circular,
        });
    }
    if joint.plan.repeat_after.is_some() {
        number += 1;
        passes.push(Pass {
            number,
            kind: PassKind::Repeat,
        });
    }
    passes
}

/// Snug by hand: as given, else 25 N·m or 20 ft·lb, but at most a fifth of the final torque (PCC-1,
/// from memory), down to what a small wrench can be set to.
fn enter_snug(ledger: &mut Ledger, joint: &Mechanics, dial: Dial<'_>) {
    let fifth = ledger.get(ids::SET_TORQUE).map(|torque| torque.si() / 5.0);
    let snug = match &joint.plan.snug {
        Fact::Known {
            origin: Origin::Default { key },
            ..
        } => {
            let usual = dial.usual_snug().si();
            let most = Torque::from_si(fifth.map_or(usual, |fifth| fifth.min(usual)));
            // Less than a step is the first step.
            let least = Torque::from_si(most.si().max(dial.step(most).si()));
            let value = dial.never(least).map_or(least, |reading| reading.gives());
            Fact::default(value, key)
        }
        fact => fact.clone(),
    };
    ledger.input(ids::SNUG, &snug);
}

/// Enters what the nut gets in a pass, where the dial shows a torque.
pub(crate) fn enter_pass_torque(ledger: &mut Ledger, dial: Dial<'_>, number: u16) {
    let exact = ids::PASS_TORQUE_EXACT.at(number);
    set_torque(ledger, dial, exact, ids::PASS_TORQUE.at(number));
}

fn enter_load(ledger: &mut Ledger, number: u16) {
    ledger.apply(
        ids::PASS_LOAD.at(number),
        &mechanics::PASS_LOAD_OF,
        &[
            ("F", ids::LOAD.key()),
            ("T_k", ids::PASS_TORQUE.at(number).key()),
            ("T", ids::SET_TORQUE.key()),
        ],
    );
}

fn share_of(ledger: &mut Ledger, number: u16) {
    ledger.apply(
        ids::PASS_TORQUE_EXACT.at(number),
        &mechanics::PASS_TORQUE_OF,
        &[
            ("q", ids::PASS_SHARE.at(number).key()),
            ("T", ids::SET_TORQUE.key()),
        ],
    );
}

/// The full-value pass is the final setting itself, to the digit.
fn repeat_setting(ledger: &mut Ledger, number: u16) {
    let torque = ledger.get(ids::SET_TORQUE);
    let lack = ledger.lack(ids::SET_TORQUE).unwrap_or(NO_POINTS);
    let basis = Basis::Rounded(ids::SET_TORQUE.key());
    ledger.enter(ids::PASS_TORQUE.at(number), torque.ok_or(lack), basis);
    if ledger.entry(ids::SET_PRESSURE.key()).is_some() {
        let pressure = ledger.get(ids::SET_PRESSURE);
        let lack = ledger.lack(ids::SET_PRESSURE).unwrap_or(NO_POINTS);
        let basis = Basis::Rounded(ids::SET_PRESSURE.key());
        ledger.enter(ids::PASS_PRESSURE.at(number), pressure.ok_or(lack), basis);
    }
}

/// The order of the stepped passes.
pub(crate) fn order(joint: &Mechanics, count: usize, tools: usize) -> Option<Order> {
    let pattern = joint.plan.pattern.value().unwrap_or(Pattern::Cross);
    Order::new(pattern, count, tools).ok()
}
