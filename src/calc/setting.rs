//! What the tool is set to: torque and pressure rounded to what they can be set to,
//! pass by pass.

use crate::job::{Method, Pattern};
use crate::joint::{Fact, Mechanics, Origin, Who};
use crate::standards::mechanics;
use crate::units::{Dimension, Pressure, Quantity, Ratio, Torque, Unit, unit_named};

use super::calibration::{enter_segment, segment, segment_keys, torque_at, within};
use super::choose::Chosen;
use super::ids;
use super::jackbolt::{JackboltPlan, RoundKind};
use super::ledger::{Basis, Id, Key, Lack, Ledger};
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

fn to_step(value: f64, step: f64) -> f64 {
    (value / step * (1.0 + 1e-12)).round() * step
}

/// The step to which a torque of this size can be set.
pub(super) fn step_of(joint: &Mechanics, chosen: &Chosen, torque: Torque) -> Torque {
    let own = chosen.turning.first().and_then(|tool| tool.torque_step);
    torque_step(torque, scale(joint, chosen), own)
}

/// The step of a small wrench, with which a low value is set: one unit of the scale.
pub(super) fn fine_step(joint: &Mechanics, chosen: &Chosen) -> Torque {
    Torque::from_si(scale(joint, chosen).to_si(1.0))
}

/// Enters what is set for the final value.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) {
    if joint.method.value() == Some(Method::HydraulicTorqueWrench) {
        let ids = PressureIds {
            number: 0,
            torque: ids::TORQUE.key(),
            exact: ids::PRESSURE,
            set: ids::SET_PRESSURE,
            set_torque: ids::SET_TORQUE,
        };
        set_pressure(ledger, chosen, &ids);
        for (index, tool) in chosen.turning.iter().enumerate().skip(1) {
            let number = u16::try_from(index + 1).unwrap_or(u16::MAX);
            let torque = ledger
                .get(ids::SET_PRESSURE)
                .and_then(|pressure| torque_at(&tool.points, pressure));
            let value = torque.ok_or(no_points());
            ledger.enter(
                ids::TOOL_TORQUE.at(number),
                value,
                Basis::Rounded(ids::SET_PRESSURE.key()),
            );
        }
        return;
    }
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

pub(super) const fn no_points() -> Lack {
    Lack {
        key: "tools.*.calibration.points",
        who: Who::ToolStore,
    }
}

/// The ids of one pressure setting.
struct PressureIds {
    number: u16,
    torque: Key,
    exact: Id<Pressure>,
    set: Id<Pressure>,
    set_torque: Id<Torque>,
}

/// Pressure for a torque by straight lines between the calibration points of the first wrench,
/// rounded to what the gauge can be read to, and the torque at that pressure.
fn set_pressure(ledger: &mut Ledger, chosen: &Chosen, ids: &PressureIds) {
    let tool = chosen.turning.first();
    let points = tool.map(|tool| tool.points.as_slice()).unwrap_or_default();
    let torque = ledger.entry(ids.torque).and_then(|entry| entry.value.ok());
    let segment = torque.and_then(|torque| segment(points, |point| point.1.si(), torque));
    let place = tool.and_then(|tool| tool.points_place);
    enter_segment(ledger, ids.number, segment, place);
    let keys = segment_keys(ids.number);
    ledger.apply(
        ids.exact,
        &mechanics::PRESSURE_BETWEEN,
        &[("T", ids.torque), keys[0], keys[1], keys[2], keys[3]],
    );
    let step = chosen.pressure_step();
    let set = match (ledger.get(ids.exact), ledger.lack(ids.exact)) {
        (Some(exact), _) => {
            let rounded = to_step(exact.si(), step.si());
            Ok(Pressure::from_si(within(points, rounded, step.si())))
        }
        (None, lack) => Err(lack.unwrap_or(no_points())),
    };
    ledger.enter(ids.set, set, Basis::Rounded(ids.exact.key()));
    ledger.apply(
        ids.set_torque,
        &mechanics::TORQUE_BETWEEN,
        &[("p_t", ids.set.key()), keys[0], keys[1], keys[2], keys[3]],
    );
}

/// Enters what is set in each pass and returns the passes in their order.
pub(super) fn passes(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen) -> Vec<Pass> {
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
        enter_pass(ledger, joint, chosen, number, *share);
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

/// The rounds of a plan for jackbolts as passes: the seating by hand, each raising round and each setting of the driver
/// as a step, the full-value rounds as one. Without a plan nothing is set.
pub(super) fn jackbolt_passes(ledger: &mut Ledger, plan: Option<&JackboltPlan>) -> Vec<Pass> {
    let mut passes = vec![Pass {
        number: 0,
        kind: PassKind::Snug,
    }];
    let rounds = plan.map(|plan| plan.rounds.as_slice()).unwrap_or_default();
    let seat = rounds.first().map(|round| Torque::from_si(round.torque));
    let lack = ledger.lack(ids::FULL_ROUNDS).unwrap_or(Lack {
        key: "studs.tensioner",
        who: Who::Planner,
    });
    let set = || Basis::Rounded(ids::SET_TORQUE.key());
    ledger.enter(ids::SNUG, seat.ok_or(lack), set());
    let mut number = 0;
    for round in rounds.iter().skip(1) {
        if round.kind == RoundKind::Full {
            break;
        }
        // The positions of a driver at one setting are one pass.
        if matches!(round.kind, RoundKind::Bulk { position } if position > 0) {
            continue;
        }
        number += 1;
        let share = Fact::computed(Ratio::from_si(round.share));
        ledger.input(ids::PASS_SHARE.at(number), &share);
        let torque = Ok(Torque::from_si(round.torque));
        ledger.enter(ids::PASS_TORQUE.at(number), torque, set());
        passes.push(Pass {
            number,
            kind: PassKind::Stepped,
        });
    }
    number += 1;
    passes.push(Pass {
        number,
        kind: PassKind::Circular,
    });
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

fn enter_pass(ledger: &mut Ledger, joint: &Mechanics, chosen: &Chosen, number: u16, share: Ratio) {
    let full = share.si() >= 1.0;
    if joint.method.value() == Some(Method::HydraulicTorqueWrench) {
        share_of(ledger, number);
        if full {
            repeat_setting(ledger, number);
        } else {
            let ids = PressureIds {
                number,
                torque: ids::PASS_TORQUE_EXACT.at(number).key(),
                exact: ids::PASS_PRESSURE_EXACT.at(number),
                set: ids::PASS_PRESSURE.at(number),
                set_torque: ids::PASS_TORQUE.at(number),
            };
            set_pressure(ledger, chosen, &ids);
        }
    } else {
        share_of(ledger, number);
        if full {
            repeat_setting(ledger, number);
        } else {
            let (exact, set) = (
                ids::PASS_TORQUE_EXACT.at(number),
                ids::PASS_TORQUE.at(number),
            );
            round_torque(ledger, joint, chosen, exact, set);
        }
    }
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
pub(super) fn order(joint: &Mechanics, count: usize, tools: usize) -> Option<Order> {
    let pattern = joint.plan.pattern.value().unwrap_or(Pattern::Cross);
    Order::new(pattern, count, tools).ok()
}
