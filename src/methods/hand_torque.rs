//! Nuts turned with a hand torque wrench.

mod work;

use crate::calc::labour::Block;
use crate::calc::{Common, setting};
use crate::job::ToolKind;
use crate::joint::Joint;
use crate::units::{Quantity, Torque};

use super::computed::Computed;
use super::method::Method;
use super::nuts::{self, Turning};
use super::steps;

/// As the job writes it.
pub const WORD: &str = "hand torque wrench";

/// Its name in the wording.
const ID: &str = "hand_torque";
/// People that it needs (common practice, no source).
const CREW: usize = 1;
/// A torque wrench is worked by hand up to this torque, through a multiplier above it (common practice, no source).
const BY_HAND: Torque = Torque::nm(400.0);

pub(super) const METHOD: Method = Method {
    word: WORD,
    id: ID,
    tools: &[ToolKind::HandTorqueWrench],
    // The nut of a tensioner is never turned.
    is_told_by: |tool, has_tensioner| tool == Some(ToolKind::HandTorqueWrench) && !has_tensioner,
    crew: CREW,
    scatter: "torque_friction_estimated",
    break_out: nuts::BREAK_OUT,
    fit: |_| (),
    compute,
    work: |case, task| Some(steps::nuts::work(&work::STEPS, case, task)),
    rules: &[],
};

const TURNING: Turning = Turning {
    chooses_wrench: true,
    shows_pressure: false,
    set: setting::enter_torque,
    set_pass: setting::enter_pass_torque,
    never_exceed: |_, _| (),
    crew: CREW,
    set_up: None,
    pass: block_at,
    release: Block::LoosenByHand,
};

fn compute(joint: &Joint, common: &Common) -> Computed {
    nuts::compute(joint, common, &TURNING)
}

/// Works out a joint whose method nobody gives: as by hand, but no wrench is chosen for it.
pub(super) fn compute_unnamed(joint: &Joint, common: &Common) -> Computed {
    let turning = Turning {
        chooses_wrench: false,
        ..TURNING
    };
    nuts::compute(joint, common, &turning)
}

/// One stud in one pass at a final torque.
fn block_at(torque: Torque) -> Block {
    if torque.si() <= BY_HAND.si() {
        Block::TorqueByHand
    } else {
        Block::TorqueByMultiplier
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common practice, no source.
    #[test]
    fn multiplier_is_used_above_400_nm() {
        assert_eq!(block_at(Torque::nm(400.0)), Block::TorqueByHand);
        assert_eq!(block_at(Torque::nm(401.0)), Block::TorqueByMultiplier);
    }
}
