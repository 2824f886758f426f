//! From the target as given to a load, and from a load to a torque and back.

use crate::job::{Method, StressArea, YieldMeasure};
use crate::joint::{Mechanics, TargetValue};
use crate::standards::{TorqueFormula, mechanics, vdi_2230};
use crate::units::{Force, Torque};

use super::ids;
use super::jackbolt::parts;
use super::ledger::{Id, Key, Ledger};

/// Enters friction, target load and the torque for it.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics) {
    if is_jackbolted(joint) {
        // The crew turns jackbolts, never the stud's nut: the torque is that of a jackbolt.
        parts::enter(ledger, joint);
        ledger.input(ids::SCATTER, &joint.lubricant.scatter);
        enter_target(ledger, joint);
        parts::share_load(ledger, ids::TARGET_LOAD, ids::JACKBOLT_TARGET);
        parts::torque_for(ledger, ids::JACKBOLT_TARGET, ids::TORQUE);
        return;
    }
    if form(joint) == TorqueFormula::NutFactor {
        ledger.input(ids::NUT_FACTOR, &joint.lubricant.nut_factor);
    } else {
        ledger.input(ids::THREAD_FRICTION, &joint.lubricant.thread_friction);
        ledger.input(ids::BEARING_FRICTION, &joint.lubricant.bearing_friction);
    }
    ledger.input(ids::SCATTER, &joint.lubricant.scatter);
    enter_target(ledger, joint);
    torque_for(ledger, joint, ids::TARGET_LOAD, ids::TORQUE);
}

/// Whether the studs are loaded by jackbolts.
pub(crate) fn is_jackbolted(joint: &Mechanics) -> bool {
    joint.method.value() == Some(Method::MultiJackboltTensioner)
}

/// The torque formula: as given; where only a nut factor is known, its own.
pub(crate) fn form(joint: &Mechanics) -> TorqueFormula {
    let lubricant = &joint.lubricant;
    let only_factor =
        lubricant.thread_friction.get().is_none() && lubricant.nut_factor.get().is_some();
    match joint.plan.formula.value() {
        Some(form) if !(only_factor && joint.plan.formula.is_default()) => form,
        _ if only_factor => TorqueFormula::NutFactor,
        _ => TorqueFormula::Iso16047,
    }
}

/// Whether stress is counted on the root area.
pub(crate) fn is_root(joint: &Mechanics) -> bool {
    joint.target.area.value() == Some(StressArea::Root)
}

fn enter_target(ledger: &mut Ledger, joint: &Mechanics) {
    let given = &joint.target.given;
    match given.value() {
        Some(TargetValue::Stress(stress)) => {
            ledger.input(ids::TARGET_STRESS, &given.clone().map(|_| stress));
            if is_root(joint) {
                let inputs = [
                    ("σ_r", ids::TARGET_STRESS.key()),
                    ("A_r", ids::ROOT_AREA.key()),
                ];
                ledger.apply(ids::TARGET_LOAD, &mechanics::LOAD_OF_ROOT_STRESS, &inputs);
            } else {
                let inputs = [
                    ("σ", ids::TARGET_STRESS.key()),
                    ("A_s", ids::TENSILE_AREA.key()),
                ];
                ledger.apply(ids::TARGET_LOAD, &mechanics::LOAD_OF_STRESS, &inputs);
            }
        }
        Some(TargetValue::ShareOfYield(share)) => {
            ledger.input(ids::TARGET_SHARE, &given.clone().map(|_| share));
            enter_share(ledger, joint);
        }
        Some(TargetValue::Torque(torque)) => {
            ledger.input(ids::TARGET_TORQUE, &given.clone().map(|_| torque));
            if is_jackbolted(joint) {
                parts::load_for(ledger, ids::TARGET_TORQUE, ids::JACKBOLT_GIVEN);
                parts::gather_load(ledger, ids::JACKBOLT_GIVEN, ids::TARGET_LOAD);
            } else {
                load_for(ledger, joint, ids::TARGET_TORQUE, ids::TARGET_LOAD);
            }
        }
        Some(TargetValue::Load(load)) => {
            ledger.input(ids::TARGET_LOAD, &given.clone().map(|_| load));
        }
        None => {
            let missing = given.clone().map(|_| crate::units::Quantity::from_si(0.0));
            ledger.input(ids::TARGET_LOAD, &missing);
        }
    }
}

fn enter_share(ledger: &mut Ledger, joint: &Mechanics) {
    let share = ("ν", ids::TARGET_SHARE.key());
    let strength = ("R_p0.2", ids::YIELD_STRENGTH.key());
    // Jackbolts do not twist the stud: tension alone is combined stress there.
    let combined = joint.target.measure.value() == Some(YieldMeasure::Combined);
    if combined && !is_jackbolted(joint) {
        let inputs = [
            share,
            strength,
            ("d2", ids::PITCH_DIAMETER.key()),
            ("d0", ids::STRESS_DIAMETER.key()),
            ("A0", ids::COMBINED_AREA.key()),
            ("P", ids::PITCH.key()),
            ("µ_th", ids::THREAD_FRICTION.key()),
        ];
        ledger.apply(ids::TARGET_LOAD, &vdi_2230::LOAD_AT_SHARE, &inputs);
    } else if is_root(joint) {
        let inputs = [share, strength, ("A_r", ids::ROOT_AREA.key())];
        ledger.apply(
            ids::TARGET_LOAD,
            &mechanics::LOAD_OF_YIELD_SHARE_ON_ROOT,
            &inputs,
        );
    } else {
        let inputs = [share, strength, ("A_s", ids::TENSILE_AREA.key())];
        ledger.apply(ids::TARGET_LOAD, &mechanics::LOAD_OF_YIELD_SHARE, &inputs);
    }
}

/// The keys under which every torque formula finds its symbols.
fn inputs(value: (&'static str, Key)) -> [(&'static str, Key); 8] {
    [
        value,
        ("d", ids::DIAMETER.key()),
        ("P", ids::PITCH.key()),
        ("d2", ids::PITCH_DIAMETER.key()),
        ("µ_th", ids::THREAD_FRICTION.key()),
        ("µ_b", ids::BEARING_FRICTION.key()),
        ("D_b", ids::BEARING_DIAMETER.key()),
        ("K", ids::NUT_FACTOR.key()),
    ]
}

/// Enters the torque for a load.
pub(super) fn torque_for(
    ledger: &mut Ledger,
    joint: &Mechanics,
    load: Id<Force>,
    torque: Id<Torque>,
) {
    ledger.apply(torque, form(joint).torque(), &inputs(("F", load.key())));
}

/// Enters the load for a torque.
pub(super) fn load_for(
    ledger: &mut Ledger,
    joint: &Mechanics,
    torque: Id<Torque>,
    load: Id<Force>,
) {
    ledger.apply(load, form(joint).load(), &inputs(("T", torque.key())));
}
