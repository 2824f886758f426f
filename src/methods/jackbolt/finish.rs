//! The end of the work by angle, entered into the ledger.

use super::ids;
use crate::calc::{Basis, Ledger};
use crate::units::{Angle, Count, Quantity};

use super::JackboltPlan;

/// Enters rounds and turn of the angle finish, where a driver leaves the stud even.
pub(super) fn enter(ledger: &mut Ledger, made: &JackboltPlan) {
    let Some(finish) = &made.finish else {
        return;
    };
    let from = Basis::Simulated(&[ids::RING_RATIO_HIGH.key(), ids::DRIVER_LEVEL.key()]);
    let rounds = Count::from_si(finish.rounds as f64);
    ledger.enter(ids::FINISH_ROUNDS, Ok(rounds), from);
    let turn = Angle::from_si(finish.turn.likely);
    ledger.enter(ids::FINISH_TURN, Ok(turn), from);
}
