//! From the target as given to a load, and from a load to the torque of a nut and back.

use crate::job::{StressArea, YieldMeasure};
use crate::joint::{Mechanics, TargetValue};
use crate::standards::{TorqueFormula, mechanics, vdi_2230};
use crate::units::{Force, Torque};

use super::ids;
use super::ledger::{Id, Key, Ledger};

/// How the torque of a method loads a stud.
pub(crate) struct Loading {
    /// Enters the target load of a stud from the torque that others gave.
    pub(crate) from_given_torque: fn(&mut Ledger, &Mechanics),
    /// Whether what is turned twists the stud, so that its stress is combined.
    pub(crate) twists: bool,
}

/// Enters the friction of thread and nut, or the nut factor.
pub(crate) fn enter_friction(ledger: &mut Ledger, joint: &Mechanics) {
    if form(joint) == TorqueFormula::NutFactor {
        ledger.input(ids::NUT_FACTOR, &joint.lubricant.nut_factor);
    } else {
        ledger.input(ids::THREAD_FRICTION, &joint.lubricant.thread_friction);
        ledger.input(ids::BEARING_FRICTION, &joint.lubricant.bearing_friction);
    }
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

/// Enters the scatter and the target load.
pub(crate) fn enter_target(ledger: &mut Ledger, joint: &Mechanics, loading: &Loading) {
    ledger.input(ids::SCATTER, &joint.lubricant.scatter);
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
            enter_share(ledger, joint, loading.twists);
        }
        Some(TargetValue::ShareOfStrength(share)) => {
            ledger.input(ids::TARGET_STRENGTH_SHARE, &given.clone().map(|_| share));
            ledger.input(ids::TENSILE_STRENGTH, &joint.studs.tensile_strength);
            let inputs = [
                ("q", ids::TARGET_STRENGTH_SHARE.key()),
                ("R_m", ids::TENSILE_STRENGTH.key()),
                ("A_s", ids::TENSILE_AREA.key()),
            ];
            let formula = &mechanics::LOAD_OF_STRENGTH_SHARE;
            ledger.apply(ids::TARGET_LOAD, formula, &inputs);
        }
        Some(TargetValue::Torque(torque)) => {
            ledger.input(ids::TARGET_TORQUE, &given.clone().map(|_| torque));
            (loading.from_given_torque)(ledger, joint);
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

fn enter_share(ledger: &mut Ledger, joint: &Mechanics, twists: bool) {
    let share = ("ν", ids::TARGET_SHARE.key());
    let strength = ("R_p0.2", ids::YIELD_STRENGTH.key());
    // A stud that is pulled and not twisted has its tension as combined stress.
    let combined = joint.target.measure.value() == Some(YieldMeasure::Combined);
    if combined && twists {
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

/// Enters the torque of a nut for a load.
pub(crate) fn torque_for(
    ledger: &mut Ledger,
    joint: &Mechanics,
    load: Id<Force>,
    torque: Id<Torque>,
) {
    ledger.apply(torque, form(joint).torque(), &inputs(("F", load.key())));
}

/// Enters the load for the torque of a nut.
pub(crate) fn load_for(
    ledger: &mut Ledger,
    joint: &Mechanics,
    torque: Id<Torque>,
    load: Id<Force>,
) {
    ledger.apply(load, form(joint).load(), &inputs(("T", torque.key())));
}
