//! Stress of a jackbolt while it is turned, pressure of its tip, and the loads and torques that it may see when it is
//! turned back.

use crate::joint::{Fact, Joint, Lack, Level, Mechanics, Tensioner};
use crate::standards::{jackbolts, mechanics};
use crate::units::{Force, Quantity, Ratio, Stress};

use super::ids;
use super::parts;
use crate::calc::Chosen;
use crate::calc::{Basis, Id, Key, Ledger};

/// Enters what the greatest load makes of a jackbolt, and what its papers allow.
pub(super) fn enter(ledger: &mut Ledger, joint: &Mechanics) {
    parts::share_load(ledger, ids::GREATEST_LOAD, ids::JACKBOLT_GREATEST);
    let load = ("F_j", ids::JACKBOLT_GREATEST.key());
    ledger.apply(
        ids::TIP_PRESSURE,
        &jackbolts::TIP_PRESSURE_OF,
        &[load, ("d_t", ids::TIP_DIAMETER.key())],
    );
    enter_stress(ledger, load, ids::JACKBOLT_STRESS);
    ledger.apply(
        ids::JACKBOLT_TORSION,
        &jackbolts::TORSION_MODULUS_OF,
        &[("d_0j", ids::JACKBOLT_STRESS_DIAMETER.key())],
    );
    parts::thread_torque_for(ledger, ids::JACKBOLT_GREATEST, ids::JACKBOLT_THREAD_TORQUE);
    enter_combined(
        ledger,
        (
            ids::JACKBOLT_THREAD_TORQUE.key(),
            ids::JACKBOLT_STRESS.key(),
        ),
        (ids::JACKBOLT_SHEAR, ids::JACKBOLT_COMBINED),
    );
    ledger.apply(
        ids::JACKBOLT_SHARE,
        &jackbolts::YIELD_SHARE_OF,
        &[
            ("σ_redj", ids::JACKBOLT_COMBINED.key()),
            ("R_p0.2j", ids::JACKBOLT_YIELD.key()),
        ],
    );
    // What the papers do not give is left out: the rules say so.
    let Some(tensioner) = joint.tensioner.as_deref() else {
        return;
    };
    enter_threads(ledger, tensioner);
    enter_papers(ledger, tensioner);
}

/// Enters how near the threads of body and jackbolt come to stripping at the greatest load. What it needs and is not given
/// is printed as missing: nobody checks it then but the maker's own limit of the load.
fn enter_threads(ledger: &mut Ledger, tensioner: &Tensioner) {
    ledger.input(ids::JACKBOLT_ENGAGEMENT, &tensioner.thread_engagement);
    ledger.input(ids::BODY_YIELD, &tensioner.body_yield);
    let sizes = [
        ("d_j", ids::JACKBOLT_DIAMETER.key()),
        ("d_2j", ids::JACKBOLT_PITCH_DIAMETER.key()),
        ("P_j", ids::JACKBOLT_PITCH.key()),
        ("l_ej", ids::JACKBOLT_ENGAGEMENT.key()),
    ];
    let loads = [
        ("F_j", ids::JACKBOLT_GREATEST.key()),
        ("A_Sb", ids::BODY_SHEAR_AREA.key()),
        ("R_p0.2b", ids::BODY_YIELD.key()),
        ("A_Sj", ids::THREAD_SHEAR_AREA.key()),
        ("R_p0.2j", ids::JACKBOLT_YIELD.key()),
    ];
    ledger.apply(ids::BODY_SHEAR_AREA, &jackbolts::BODY_SHEAR_AREA_OF, &sizes);
    ledger.apply(
        ids::BODY_SHEAR_SHARE,
        &jackbolts::BODY_SHEAR_SHARE_OF,
        &loads,
    );
    ledger.apply(
        ids::THREAD_SHEAR_AREA,
        &jackbolts::THREAD_SHEAR_AREA_OF,
        &sizes,
    );
    ledger.apply(
        ids::THREAD_SHEAR_SHARE,
        &jackbolts::THREAD_SHEAR_SHARE_OF,
        &loads,
    );
}

fn enter_papers(ledger: &mut Ledger, tensioner: &Tensioner) {
    if let Fact::Known { .. } = tensioner.jackbolt_load {
        ledger.input::<Force>(ids::JACKBOLT_RATING, &tensioner.jackbolt_load);
    }
    if let Fact::Known { .. } = tensioner.tip_pressure {
        ledger.input::<Stress>(ids::TIP_PRESSURE_LIMIT, &tensioner.tip_pressure);
    }
}

fn enter_stress(ledger: &mut Ledger, load: (&'static str, Key), stress: Id<Stress>) {
    let inputs = [load, ("A_sj", ids::JACKBOLT_STRESS_AREA.key())];
    ledger.apply(stress, &jackbolts::STRESS_OF, &inputs);
}

fn enter_combined(
    ledger: &mut Ledger,
    (thread_torque, stress): (Key, Key),
    (shear, combined): (Id<Stress>, Id<Stress>),
) {
    ledger.apply(
        shear,
        &jackbolts::SHEAR_OF,
        &[
            ("T_thj", thread_torque),
            ("W_pj", ids::JACKBOLT_TORSION.key()),
        ],
    );
    let inputs = [("σ_j", stress), ("τ_j", shear.key())];
    ledger.apply(combined, &jackbolts::COMBINED_STRESS_OF, &inputs);
}

/// Enters the stress of an installed jackbolt while it breaks loose, the torque that brings it to its limit, and how far
/// its load may rise: by the job, its yield, the wrench and the socket. Returns the least of them.
pub(super) fn enter_release(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen) -> Option<f64> {
    let limit = joint.work.limits.iter().find(|own| own.rule == "L01");
    let share = match limit {
        Some(own) => Fact::job(Ratio::from_si(own.value), own.place, Level::Joint),
        None => Fact::default(Ratio::from_si(joint.work.limit("L01")), "limits.L01"),
    };
    ledger.input(ids::STRESS_LIMIT, &share);
    let installed = ("F_j", ids::JACKBOLT_LOAD.key());
    enter_stress(ledger, installed, ids::BREAK_OUT_STRESS);
    let yields = [
        ("ν", ids::STRESS_LIMIT.key()),
        ("R_p0.2j", ids::JACKBOLT_YIELD.key()),
    ];
    ledger.apply(
        ids::JACKBOLT_LIMIT_TORQUE,
        &jackbolts::LIMIT_TORQUE_OF,
        &[
            ("W_pj", ids::JACKBOLT_TORSION.key()),
            ("σ_j", ids::BREAK_OUT_STRESS.key()),
            yields[0],
            yields[1],
        ],
    );
    // The thread's part of the torque stays the same part of it; at the greatest load it is a little higher.
    ledger.apply(
        ids::BREAK_OUT_THREAD,
        &mechanics::PASS_TORQUE_OF,
        &[
            ("q", ids::BREAK_OUT_SHARE_GREATEST.key()),
            ("T", ids::JACKBOLT_THREAD_TORQUE.key()),
        ],
    );
    enter_combined(
        ledger,
        (ids::BREAK_OUT_THREAD.key(), ids::BREAK_OUT_STRESS.key()),
        (ids::BREAK_OUT_SHEAR, ids::BREAK_OUT_COMBINED),
    );
    ledger.input(ids::PEAK_GIVEN, &joint.mechanics.loosening.peak);
    ledger.apply(
        ids::PEAK_OF_YIELD,
        &jackbolts::PEAK_OF_YIELD,
        &[
            yields[0],
            yields[1],
            ("σ_redj", ids::BREAK_OUT_COMBINED.key()),
        ],
    );
    parts::loosening_for(ledger, ids::JACKBOLT_LOAD, ids::BREAK_OUT_LIKELY);
    enter_tools(ledger, chosen);
    let peak = choose_peak(ledger);
    let worst = [("q", ids::PEAK.key()), ("T", ids::BREAK_OUT_GREATEST.key())];
    ledger.apply(ids::WRENCH_NEEDED, &mechanics::PASS_TORQUE_OF, &worst);
    peak
}

/// The wrench and the socket turn a jackbolt back at its highest load, or they lower that load. This holds at the friction
/// of the tightening: one that sticks harder stops the wrench, and nothing is overloaded.
fn enter_tools(ledger: &mut Ledger, chosen: &Chosen) {
    let wrench = chosen.loosening.first().map(|tool| &tool.highest);
    let socket = chosen.socket.as_ref().map(|socket| &socket.torque_rating);
    for (bound, peak, fact) in [
        (ids::TOOL_HIGHEST, ids::PEAK_OF_TOOL, wrench),
        (ids::SOCKET_RATING, ids::PEAK_OF_SOCKET, socket),
    ] {
        if let Some(fact @ Fact::Known { .. }) = fact {
            ledger.input(bound, fact);
            ledger.apply(
                peak,
                &jackbolts::PEAK_OF_TORQUE,
                &[
                    ("T_limj", bound.key()),
                    ("T_Lj", ids::BREAK_OUT_LIKELY.key()),
                ],
            );
        }
    }
}

/// The least of all bounds. The yield must be known: a wrench alone is no reason to let a jackbolt be loaded so high.
fn choose_peak(ledger: &mut Ledger) -> Option<f64> {
    let bounds = [
        ids::PEAK_GIVEN,
        ids::PEAK_OF_YIELD,
        ids::PEAK_OF_TOOL,
        ids::PEAK_OF_SOCKET,
    ];
    let known: Vec<(Key, f64)> = bounds
        .into_iter()
        .filter_map(|id| Some((id.key(), ledger.get(id)?.si())))
        .collect();
    let least = known
        .iter()
        .map(|(_, peak)| *peak)
        .fold(f64::INFINITY, f64::min);
    let value = match ledger.lack(ids::PEAK_OF_YIELD) {
        None if least.is_finite() => Ok(Ratio::from_si(least)),
        lack => Err(lack.unwrap_or(Lack {
            key: "tensioners.*.grade",
            who: crate::joint::Who::Engineer,
        })),
    };
    let keys: Vec<Key> = known.into_iter().map(|(key, _)| key).collect();
    ledger.enter(ids::PEAK, value, Basis::Chosen(&keys));
    value.ok().map(Quantity::si)
}
