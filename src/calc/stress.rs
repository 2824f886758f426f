//! The load at the setting, its scatter, and the stress while tightening at the greatest load.

use crate::joint::Mechanics;
use crate::standards::{iso_16047, mechanics, nasa_std_5020, nut_factor, vdi_2230};

use super::ids;
use super::ledger::Ledger;
use super::load::{form, is_root};

/// Enters the stress at the load of the rounded setting.
pub(crate) fn enter_at_setting(ledger: &mut Ledger, joint: &Mechanics) {
    let strength = ("R_p0.2", ids::YIELD_STRENGTH.key());
    let load = ("F", ids::LOAD.key());
    if is_root(joint) {
        let area = ("A_r", ids::ROOT_AREA.key());
        ledger.apply(ids::STRESS, &mechanics::ROOT_STRESS_OF, &[load, area]);
        let stress = ("σ_r", ids::STRESS.key());
        ledger.apply(
            ids::SHARE_OF_YIELD,
            &mechanics::ROOT_YIELD_SHARE_OF,
            &[stress, strength],
        );
    } else {
        let area = ("A_s", ids::TENSILE_AREA.key());
        ledger.apply(ids::STRESS, &mechanics::STRESS_OF, &[load, area]);
        let stress = ("σ", ids::STRESS.key());
        ledger.apply(
            ids::SHARE_OF_YIELD,
            &mechanics::YIELD_SHARE_OF,
            &[stress, strength],
        );
    }
}

/// Enters the nut factor that the torque of a nut amounts to.
pub(crate) fn enter_nut_factor(ledger: &mut Ledger) {
    ledger.apply(
        ids::EQUIVALENT_NUT_FACTOR,
        &nut_factor::NUT_FACTOR_OF,
        &[
            ("T", ids::SET_TORQUE.key()),
            ("d", ids::DIAMETER.key()),
            ("F", ids::LOAD.key()),
        ],
    );
}

/// Enters least and greatest load, and the tension at the greatest.
pub(crate) fn enter_at_greatest(ledger: &mut Ledger) {
    let scatter = [("F", ids::LOAD.key()), ("s", ids::SCATTER.key())];
    ledger.apply(ids::LEAST_LOAD, &nasa_std_5020::LEAST_LOAD_OF, &scatter);
    ledger.apply(
        ids::GREATEST_LOAD,
        &nasa_std_5020::GREATEST_LOAD_OF,
        &scatter,
    );
    ledger.apply(
        ids::GREATEST_STRESS,
        &mechanics::STRESS_OF,
        &[
            ("F", ids::GREATEST_LOAD.key()),
            ("A_s", ids::TENSILE_AREA.key()),
        ],
    );
    ledger.apply(
        ids::GREATEST_SHARE,
        &mechanics::YIELD_SHARE_OF,
        &[
            ("σ", ids::GREATEST_STRESS.key()),
            ("R_p0.2", ids::YIELD_STRENGTH.key()),
        ],
    );
}

/// Enters the section that carries tension and torsion; it hangs on the thread alone.
pub(crate) fn enter_section(ledger: &mut Ledger) {
    ledger.apply(
        ids::STRESS_DIAMETER,
        &vdi_2230::STRESS_DIAMETER_OF,
        &[
            ("d2", ids::PITCH_DIAMETER.key()),
            ("d3", ids::ROOT_DIAMETER.key()),
        ],
    );
    let diameter = [("d0", ids::STRESS_DIAMETER.key())];
    ledger.apply(ids::COMBINED_AREA, &vdi_2230::COMBINED_AREA_OF, &diameter);
    ledger.apply(
        ids::TORSION_MODULUS,
        &vdi_2230::TORSION_MODULUS_OF,
        &diameter,
    );
}

/// Enters the stress of a stud that the torque of its nut twists. Tension is counted at the greatest load, torsion
/// from the thread torque at that load and nominal friction, combined in the form of VDI 2230. Without a thread
/// friction (nut factor) the torsion is not known and the combined stress is missing.
pub(crate) fn enter_twist(ledger: &mut Ledger, joint: &Mechanics) {
    let thread_torque = form(joint).thread_torque();
    if thread_torque.is_none() {
        ledger.input(ids::THREAD_FRICTION, &joint.lubricant.thread_friction);
    }
    ledger.apply(
        ids::THREAD_TORQUE,
        thread_torque.unwrap_or(&iso_16047::THREAD_TORQUE_OF),
        &[
            ("F", ids::GREATEST_LOAD.key()),
            ("P", ids::PITCH.key()),
            ("d2", ids::PITCH_DIAMETER.key()),
            ("µ_th", ids::THREAD_FRICTION.key()),
        ],
    );
    ledger.apply(
        ids::SHEAR_STRESS,
        &vdi_2230::SHEAR_OF,
        &[
            ("T_th", ids::THREAD_TORQUE.key()),
            ("W_p", ids::TORSION_MODULUS.key()),
        ],
    );
    ledger.apply(
        ids::COMBINED_STRESS,
        &vdi_2230::COMBINED_STRESS_OF,
        &[
            ("σ", ids::GREATEST_STRESS.key()),
            ("τ", ids::SHEAR_STRESS.key()),
        ],
    );
    ledger.apply(
        ids::COMBINED_SHARE,
        &mechanics::COMBINED_SHARE_OF,
        &[
            ("σ_red", ids::COMBINED_STRESS.key()),
            ("R_p0.2", ids::YIELD_STRENGTH.key()),
        ],
    );
}
