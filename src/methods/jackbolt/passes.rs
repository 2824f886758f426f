//! The rounds of a plan as passes of the card.

use crate::calc::{Basis, Ledger, Pass, PassKind};
use crate::joint::{Fact, Lack, Who};
use crate::units::{Quantity, Ratio, Torque};

use super::ids;
use super::{JackboltPlan, RoundKind};

/// The rounds of a plan for jackbolts as passes: the seating by hand, each raising round and each setting of the driver
/// as a step, the full-value rounds as one. Without a plan nothing is set.
pub(super) fn enter(ledger: &mut Ledger, plan: Option<&JackboltPlan>) -> Vec<Pass> {
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
