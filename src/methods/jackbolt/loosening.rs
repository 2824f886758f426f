//! Loosening: the torque of a jackbolt that is never exceeded, and the rounds of the release plan.

use crate::calc::labour::Task;
use crate::calc::release::enter_least;
use crate::calc::{Basis, Chosen, Ledger};
use crate::joint::{Fact, Joint};
use crate::standards::{jackbolts, mechanics};
use crate::units::{Angle, Count, Quantity};

use super::JackboltPlan;
use super::enter::enter_release;
use super::ids;

/// Enters the values of the loosening card of jackbolts: the torque that is never exceeded is that of one jackbolt.
pub(super) fn enter(
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
    let dial = chosen.dial(&joint.mechanics, Task::Loosen);
    enter_least(ledger, dial, bounds, lack);
    enter_rounds(ledger, joint, chosen, plan);
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

fn enter_rounds(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen, plan: Option<&JackboltPlan>) {
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
