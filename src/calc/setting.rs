//! What the tool is set to: a torque rounded to what it can be set to, pass by pass.

use crate::job::Pattern;
use crate::joint::{Fact, Mechanics, Origin, Who};
use crate::standards::mechanics;
use crate::units::{Dimension, Quantity, Torque, Unit, unit_named};

use super::choose::Chosen;
use super::ids;
use super::ledger::{Basis, Id, Lack, Ledger};
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

/// The scale that a torque is set on: the tool's own, else that of the thread's system.
pub(crate) fn scale(joint: &Mechanics, chosen: &Chosen) -> &'static Unit {
    let inch = joint
        .studs
        .thread
        .get()
        .is_some_and(|thread| !thread.series.is_metric());
    let name = if inch { "ft·lb" } else { "N·m" };
    chosen.turning.first().map_or_else(
        || unit_named(Dimension::Torque, name).expect("the table of units holds both"),
        |tool| tool.scale,
    )
}

/// Default steps by range (common practice): 5, 10 from 500, 50 from 2,000 N·m; 5, 10, 25 ft·lb.
fn torque_step(torque: Torque, scale: &Unit, own: Option<Torque>) -> Torque {
    if let Some(step) = own {
        return step;
    }
    let count = scale.from_si(torque.si());
    let coarse = if scale.name == "ft·lb" { 25.0 } else { 50.0 };
    let step = if count < 500.0 {
        5.0
    } else if count < 2000.0 {
        10.0
    } else {
        coarse
    };
    Torque::from_si(scale.to_si(step))
}

/// The nearest multiple of a step.
pub(crate) fn to_step(value: f64, step: f64) -> f64 {
    (value / step * (1.0 + 1e-12)).round() * step
}

/// The step to which a torque of this size can be set.
pub(crate) fn step_of(joint: &Mechanics, chosen: &Chosen, torque: Torque) -> Torque {
    let own = chosen.turning.first().and_then(|tool| tool.torque_step);
    torque_step(torque, scale(joint, chosen), own)
}

/// The step of a small wrench, with which a low value is set: one unit of the scale.
pub(crate) fn fine_step(joint: &Mechanics, chosen: &Chosen) -> Torque {
    Torque::from_si(scale(joint, chosen).to_si(1.0))
}

/// Enters the torque that is set for the final value.
pub(crate) fn enter_torque(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) {
    round_torque(ledger, joint, chosen, ids::TORQUE, ids::SET_TORQUE);
    if let Some((wrench_length, extension)) = chosen.turning.first().and_then(|tool| tool.adapter) {
        let place = chosen.turning.first().map(|tool| tool.place);
        let fact = |value| match place {
            Some(place) => Fact::job(value, place, crate::joint::Level::Shared),
            None => Fact::computed(value),
        };
        ledger.input(ids::WRENCH_LENGTH, &fact(wrench_length));
        ledger.input(ids::ADAPTER_LENGTH, &fact(extension));
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
}

fn round_torque(
    ledger: &mut Ledger,
    joint: &Mechanics,
    chosen: &Chosen,
    exact: Id<Torque>,
    set: Id<Torque>,
) {
    let value = match (ledger.get(exact), ledger.lack(exact)) {
        (Some(torque), _) => {
            let step = step_of(joint, chosen, torque);
            Ok(Torque::from_si(to_step(torque.si(), step.si())))
        }
        (None, lack) => Err(lack.unwrap_or(no_points())),
    };
    ledger.enter(set, value, Basis::Rounded(exact.key()));
}

pub(crate) const fn no_points() -> Lack {
    Lack {
        key: "tools.*.calibration.points",
        who: Who::ToolStore,
    }
}

/// Enters what is set in a pass below the final value, from its exact torque.
pub(crate) type SetPass = fn(&mut Ledger, &Mechanics, &Chosen, u16);

/// Enters what is set in each pass and returns the passes in their order.
pub(crate) fn passes(
    ledger: &mut Ledger,
    joint: &Mechanics,
    chosen: &Chosen,
    set_pass: SetPass,
) -> Vec<Pass> {
    enter_snug(ledger, joint, scale(joint, chosen));
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
            set_pass(ledger, joint, chosen, number);
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
/// from memory), in whole units of the scale.
fn enter_snug(ledger: &mut Ledger, joint: &Mechanics, scale: &Unit) {
    let fifth = ledger
        .get(ids::SET_TORQUE)
        .map(|torque| scale.from_si(torque.si() / 5.0));
    let snug = match &joint.plan.snug {
        Fact::Known {
            origin: Origin::Default { key },
            ..
        } => {
            let usual = if scale.name == "ft·lb" { 20.0 } else { 25.0 };
            let most = fifth.map_or(usual, |fifth| (fifth * (1.0 + 1e-12)).floor());
            Fact::default(Torque::from_si(scale.to_si(usual.min(most).max(1.0))), key)
        }
        fact => fact.clone(),
    };
    ledger.input(ids::SNUG, &snug);
}

/// Enters the torque that is set in a pass.
pub(crate) fn enter_pass_torque(
    ledger: &mut Ledger,
    joint: &Mechanics,
    chosen: &Chosen,
    number: u16,
) {
    let (exact, set) = (
        ids::PASS_TORQUE_EXACT.at(number),
        ids::PASS_TORQUE.at(number),
    );
    round_torque(ledger, joint, chosen, exact, set);
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
    let lack = ledger.lack(ids::SET_TORQUE).unwrap_or(no_points());
    let basis = Basis::Rounded(ids::SET_TORQUE.key());
    ledger.enter(ids::PASS_TORQUE.at(number), torque.ok_or(lack), basis);
    if ledger.entry(ids::SET_PRESSURE.key()).is_some() {
        let pressure = ledger.get(ids::SET_PRESSURE);
        let lack = ledger.lack(ids::SET_PRESSURE).unwrap_or(no_points());
        let basis = Basis::Rounded(ids::SET_PRESSURE.key());
        ledger.enter(ids::PASS_PRESSURE.at(number), pressure.ok_or(lack), basis);
    }
}

/// The order of the stepped passes.
pub(crate) fn order(joint: &Mechanics, count: usize, tools: usize) -> Option<Order> {
    let pattern = joint.plan.pattern.value().unwrap_or(Pattern::Cross);
    Order::new(pattern, count, tools).ok()
}
