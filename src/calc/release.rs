//! Loosening: expected break-out, the value that is never exceeded, the first release round.

use crate::job::Method;
use crate::joint::{Fact, Joint, Level, Tool};
use crate::standards::{jackbolts, mechanics, practice, vdi_2230};
use crate::units::{Angle, Count, Quantity, Ratio, Torque};

use super::calibration::pressure_at;
use super::choose::Chosen;
use super::ids;
use super::jackbolt::JackboltPlan;
use super::jackbolt::enter::enter_release;
use super::ledger::{Basis, Key, Lack, Ledger};

/// The smallest angle that a crew can read off a paint line (common practice).
pub(crate) const LEAST_ANGLE: f64 = 5.0;
/// The largest angle of a first round (common practice).
const GREATEST_ANGLE: f64 = 45.0;

/// Enters the values of the loosening card.
pub(super) fn enter(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen) {
    enter_break_out(ledger, joint);
    enter_stud_limit(ledger, joint);
    enter_never_exceed(ledger, joint, chosen);
    enter_first_round(ledger, joint);
}

/// Enters the torques at which what was tightened is expected to come loose.
pub(super) fn enter_break_out(ledger: &mut Ledger, joint: &Joint) {
    let loosening = &joint.mechanics.loosening;
    for (share_id, share, result) in [
        (
            ids::BREAK_OUT_SHARE_LEAST,
            &loosening.break_out_least,
            ids::BREAK_OUT_LEAST,
        ),
        (
            ids::BREAK_OUT_SHARE_GREATEST,
            &loosening.break_out_greatest,
            ids::BREAK_OUT_GREATEST,
        ),
    ] {
        ledger.input(share_id, share);
        ledger.apply(
            result,
            &mechanics::PASS_TORQUE_OF,
            &[("q", share_id.key()), ("T", ids::SET_TORQUE.key())],
        );
    }
}

/// Enters the values of the loosening card of jackbolts: the torque that is never exceeded is that of one jackbolt.
pub(super) fn enter_jackbolts(
    ledger: &mut Ledger,
    joint: &Joint,
    chosen: &Chosen,
    plan: Option<&JackboltPlan>,
) {
    ledger.apply(
        ids::PEAK_TORQUE,
        &mechanics::PASS_TORQUE_OF,
        &[("q", ids::PEAK_GIVEN.key()), ("T", ids::SET_TORQUE.key())],
    );
    let wrench = chosen.loosening.first();
    for (id, fact) in [
        (ids::SQUARE_RATING, wrench.map(|tool| &tool.square_rating)),
        (
            ids::NEVER_EXCEED_GIVEN,
            joint.mechanics.loosening.never_exceed.as_ref(),
        ),
    ] {
        if let Some(fact @ Fact::Known { .. }) = fact {
            ledger.input(id, fact);
        }
    }
    let bounds = [
        ids::JACKBOLT_LIMIT_TORQUE,
        ids::PEAK_TORQUE,
        ids::TOOL_HIGHEST,
        ids::SQUARE_RATING,
        ids::SOCKET_RATING,
        ids::NEVER_EXCEED_GIVEN,
    ];
    let bounds = bounds
        .into_iter()
        .filter_map(|id| Some((id.key(), ledger.get(id)?)))
        .collect();
    let lack = ledger
        .lack(ids::JACKBOLT_LIMIT_TORQUE)
        .or(ledger.lack(ids::PEAK_TORQUE));
    enter_least(ledger, bounds, lack);
    enter_jackbolt_rounds(ledger, joint, chosen, plan);
}

/// A hand is set more easily by its travel than by a few degrees, where the length of the wrench is known.
fn enter_travel(ledger: &mut Ledger, plan: &JackboltPlan, chosen: &Chosen) {
    // An adapter moves the hand farther from the jackbolt than the wrench is long.
    let wrench = chosen.loosening.first();
    let wrench = wrench.filter(|tool| tool.adapter.is_none());
    let Some(length @ Fact::Known { .. }) = wrench.map(|tool| &tool.length) else {
        return;
    };
    ledger.input(ids::LOOSENING_LENGTH, length);
    for (number, round) in (1u16..).zip(&plan.release.rounds) {
        if round.angle.is_some() {
            ledger.apply(
                ids::RELEASE_ROUND_TRAVEL.at(number),
                &mechanics::HAND_TRAVEL_OF,
                &[
                    ("l_w", ids::LOOSENING_LENGTH.key()),
                    ("θ_Rk", ids::RELEASE_ROUND_ANGLE.at(number).key()),
                ],
            );
        }
    }
}

fn enter_jackbolt_rounds(
    ledger: &mut Ledger,
    joint: &Joint,
    chosen: &Chosen,
    plan: Option<&JackboltPlan>,
) {
    if ledger.entry(ids::RING_RATIO_HIGH.key()).is_some() {
        ledger.apply(
            ids::RELEASE_ANGLE,
            &jackbolts::RELEASE_TURN_OF,
            &[
                ("q_R", ids::PEAK.key()),
                ("θ_tot", ids::TURN_ALL_HIGH.key()),
                ("R", ids::RING_RATIO_HIGH.key()),
            ],
        );
    }
    let Some(plan) = plan else {
        ledger.input(ids::RELEASE_ROUNDS, &joint.mechanics.loosening.rounds);
        return;
    };
    let first = plan.release.rounds.first().and_then(|round| round.angle);
    if let Some(first) = first {
        let basis = Basis::Rounded(ids::RELEASE_ANGLE.key());
        ledger.enter(ids::RELEASE_SET, Ok(Angle::from_si(first)), basis);
    }
    enter_release(ledger, plan);
    enter_travel(ledger, plan, chosen);
    let rounds = Count::from_si(plan.release.rounds.len() as f64);
    let basis = Basis::Simulated(&[ids::PEAK.key(), ids::RING_RATIO_HIGH.key()]);
    ledger.enter(ids::RELEASE_ROUNDS, Ok(rounds), basis);
}

/// The torque that brings the installed stud to its limit if all of it twists the stud, as it does
/// when the thread has seized.
fn enter_stud_limit(ledger: &mut Ledger, joint: &Joint) {
    let limit = Fact::default(Ratio::from_si(joint.work.limit("L01")), "limits.L01");
    let own = joint.work.limits.iter().find(|own| own.rule == "L01");
    let fact = match own {
        Some(own) => Fact::job(Ratio::from_si(own.value), own.place, Level::Joint),
        None => limit,
    };
    ledger.input(ids::STRESS_LIMIT, &fact);
    ledger.apply(
        ids::INSTALLED_STRESS,
        &mechanics::STRESS_OF,
        &[("F", ids::LOAD.key()), ("A_s", ids::TENSILE_AREA.key())],
    );
    ledger.apply(
        ids::STUD_LIMIT_TORQUE,
        &vdi_2230::LIMIT_TORQUE_OF,
        &[
            ("W_p", ids::TORSION_MODULUS.key()),
            ("ν", ids::STRESS_LIMIT.key()),
            ("R_p0.2", ids::YIELD_STRENGTH.key()),
            ("σ", ids::INSTALLED_STRESS.key()),
        ],
    );
}

/// The least of what the stud, the tool, its square, the socket and the job allow.
fn enter_never_exceed(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen) {
    let mut bounds: Vec<(Key, Torque)> = Vec::new();
    if let Some(torque) = ledger.get(ids::STUD_LIMIT_TORQUE) {
        bounds.push((ids::STUD_LIMIT_TORQUE.key(), torque));
    }
    let turning = chosen.loosening.first();
    let socket = chosen.socket.as_ref();
    let facts = [
        (ids::TOOL_HIGHEST, turning.map(|tool| &tool.highest)),
        (ids::SQUARE_RATING, turning.map(|tool| &tool.square_rating)),
        (
            ids::SOCKET_RATING,
            socket.map(|socket| &socket.torque_rating),
        ),
        (
            ids::NEVER_EXCEED_GIVEN,
            joint.mechanics.loosening.never_exceed.as_ref(),
        ),
    ];
    for (id, fact) in facts {
        if let Some(fact @ Fact::Known { value, .. }) = fact {
            ledger.input(id, fact);
            bounds.push((id.key(), *value));
        }
    }
    let lack = ledger.lack(ids::STUD_LIMIT_TORQUE);
    enter_least(ledger, bounds, lack);
    if joint.mechanics.method.value() == Some(Method::HydraulicTorqueWrench) {
        enter_pressure(ledger, turning.map(AsRef::as_ref), chosen);
    }
}

/// Enters the least of the bounds, rounded down. What limits the fastener itself must be known: a tool alone is no
/// reason to pull so hard.
fn enter_least(ledger: &mut Ledger, bounds: Vec<(Key, Torque)>, lack: Option<Lack>) {
    let least = bounds
        .iter()
        .map(|(_, torque)| *torque)
        .min_by(|a, b| a.si().total_cmp(&b.si()));
    let value = match (least, lack) {
        (Some(least), None) => Ok(round_down(least)),
        (_, lack) => Err(lack.unwrap_or(Lack {
            key: "loosen.never_exceed",
            who: crate::joint::Who::Engineer,
        })),
    };
    let keys: Vec<Key> = bounds.into_iter().map(|(key, _)| key).collect();
    ledger.enter(ids::NEVER_EXCEED, value, Basis::Chosen(&keys));
}

/// Down to a round figure, so that the printed value never passes the limit.
fn round_down(torque: Torque) -> Torque {
    let step = if torque.si() < 500.0 {
        5.0
    } else if torque.si() < 2000.0 {
        10.0
    } else {
        50.0
    };
    Torque::from_si((torque.si() / step).floor() * step)
}

/// The same as a pressure: by the calibration points, at most the weakest rating on the pump.
fn enter_pressure(ledger: &mut Ledger, tool: Option<&Tool>, chosen: &Chosen) {
    let points = tool.map(|tool| tool.points.as_slice()).unwrap_or_default();
    let torque = ledger.get(ids::NEVER_EXCEED);
    let by_torque = torque.and_then(|torque| {
        let top = points.last().map(|point| point.1)?;
        pressure_at(points, if torque > top { top } else { torque })
    });
    let rating = chosen
        .weakest_with(&chosen.loosening)
        .map(|(_, rating)| rating);
    let step = crate::units::Pressure::bar(5.0).si();
    let value = match (by_torque, rating) {
        (Some(pressure), Some(rating)) => Some(pressure.si().min(rating.si())),
        (Some(pressure), None) => Some(pressure.si()),
        _ => None,
    };
    let value = value
        .map(|pressure| {
            crate::units::Pressure::from_si((pressure / step * (1.0 + 1e-12)).floor() * step)
        })
        .ok_or(Lack {
            key: "tools.*.calibration.points",
            who: crate::joint::Who::ToolStore,
        });
    ledger.enter(
        ids::NEVER_EXCEED_PRESSURE,
        value,
        Basis::Rounded(ids::NEVER_EXCEED.key()),
    );
}

/// Half the computed turn, down to whole degrees, between the smallest and the largest that can be
/// set. The peak on the last fasteners is not predicted here.
fn enter_first_round(ledger: &mut Ledger, joint: &Joint) {
    ledger.apply(
        ids::RELEASE_ANGLE,
        &practice::RELEASE_TURN_OF,
        &[("θ", ids::TURN.key())],
    );
    let loosening = &joint.mechanics.loosening;
    let set = match &loosening.first_step {
        Some(Fact::Known { value, .. }) => Ok(*value),
        _ => match (
            ledger.get(ids::RELEASE_ANGLE),
            ledger.lack(ids::RELEASE_ANGLE),
        ) {
            (Some(half), _) => {
                let degrees = (half.to_degrees() * (1.0 + 1e-12)).floor();
                Ok(Angle::degrees(degrees.clamp(LEAST_ANGLE, GREATEST_ANGLE)))
            }
            (None, lack) => Err(lack.unwrap_or(Lack {
                key: "studs.grip",
                who: crate::joint::Who::Planner,
            })),
        },
    };
    ledger.enter(
        ids::RELEASE_SET,
        set,
        Basis::Rounded(ids::RELEASE_ANGLE.key()),
    );
    ledger.input(ids::RELEASE_ROUNDS, &loosening.rounds);
}
