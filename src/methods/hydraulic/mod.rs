//! Nuts turned with a hydraulic torque wrench.

mod calibration;
mod pressure;
pub(crate) mod rules;
mod work;

use crate::calc::Common;
use crate::calc::labour::Block;
use crate::job::ToolKind;
use crate::joint::Joint;

use super::computed::Computed;
use super::method::Method;
use super::nuts::{self, Turning};
use super::steps;

/// As the job writes it.
pub const WORD: &str = "hydraulic torque wrench";

/// Its name in the wording.
const ID: &str = "hydraulic_torque";
/// People that it needs (common practice, no source).
const CREW: usize = 2;

pub(super) const METHOD: Method = Method {
    word: WORD,
    id: ID,
    tools: &[ToolKind::HydraulicTorqueWrench],
    is_told_by: |tool, _| tool == Some(ToolKind::HydraulicTorqueWrench),
    crew: CREW,
    scatter: "torque_friction_estimated",
    break_out: nuts::BREAK_OUT,
    fit: |_| (),
    compute,
    work: |case, task| Some(steps::nuts::work(&work::STEPS, case, task)),
    rules: rules::RULES,
};

const TURNING: Turning = Turning {
    chooses_wrench: false,
    shows_pressure: true,
    set: pressure::enter,
    set_pass: pressure::enter_pass,
    never_exceed: pressure::enter_never_exceed,
    crew: CREW,
    set_up: Some(Block::SetUpPump),
    pass: |_| Block::TorqueByHydraulicWrench,
    release: Block::LoosenByHydraulicWrench,
};

fn compute(joint: &Joint, common: &Common) -> Computed {
    nuts::compute(joint, common, &TURNING)
}
