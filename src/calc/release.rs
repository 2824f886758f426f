//! Loosening: expected break-out, the torque that is never exceeded, the first release round.

use crate::joint::{Dial, Fact, Joint, Lack, Level, Who};
use crate::standards::{mechanics, practice, vdi_2230};
use crate::units::{Angle, Quantity, Ratio, Torque};

use super::choose::Chosen;
use super::ids;
use super::labour::Task;
use super::ledger::{Basis, Key, Ledger};

/// The smallest angle that a crew can read off a paint line (common practice).
pub(crate) const LEAST_ANGLE: f64 = 5.0;
/// The largest angle of a first round (common practice).
const GREATEST_ANGLE: f64 = 45.0;

/// Enters the torques at which what was tightened is expected to come loose.
pub(crate) fn enter_break_out(ledger: &mut Ledger, joint: &Joint) {
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

/// Enters the torque of a nut that is never exceeded: the least of what the stud, the tool, its square, the socket
/// and the job allow.
pub(crate) fn enter_never_exceed(ledger: &mut Ledger, joint: &Joint, chosen: &Chosen) {
    enter_stud_limit(ledger, joint);
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
    let dial = chosen.dial(&joint.mechanics, Task::Loosen);
    enter_least(ledger, dial, bounds, lack);
}

/// Enters the least of the bounds, down to what can be read. What limits the fastener itself must be known: a tool alone
/// is no reason to pull so hard.
pub(crate) fn enter_least(
    ledger: &mut Ledger,
    dial: Dial<'_>,
    bounds: Vec<(Key, Torque)>,
    lack: Option<Lack>,
) {
    let least = bounds
        .iter()
        .map(|(_, torque)| *torque)
        .min_by(|a, b| a.si().total_cmp(&b.si()));
    let value = match (least, lack) {
        (Some(least), None) => dial.by_torque().never(least).map(|reading| reading.gives()),
        (_, lack) => Err(lack.unwrap_or(Lack {
            key: "loosen.never_exceed",
            who: Who::Engineer,
        })),
    };
    let keys: Vec<Key> = bounds.into_iter().map(|(key, _)| key).collect();
    ledger.enter(ids::NEVER_EXCEED, value, Basis::Chosen(&keys));
}

/// Enters the first release round of nuts: half the computed turn, down to whole degrees, between the smallest and
/// the largest that can be set. The peak on the last fasteners is not predicted here.
pub(crate) fn enter_first_round(ledger: &mut Ledger, joint: &Joint) {
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
                who: Who::Planner,
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
