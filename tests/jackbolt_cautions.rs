//! Cautions of joints with multi-jackbolt tensioners: each where its danger is, and nowhere else (common practice, no source).

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use built::tensioners::{by_hand_alone, rods_with_a_small_wrench, tie_rods};
use built::with_job;
use studbook::calc::labour::Task;
use studbook::document::build::cautions_for_card;

/// The driver's caution stands where the driver is on the jackbolts: always when tightening, and when loosening only
/// where the rounds end with it.
#[test]
fn the_driver_is_warned_of_where_it_is_used() {
    let warned = |text: &str, tag: &str| {
        with_job("tie-rods.yaml", text, |context| {
            let index = context.joints.iter().position(|joint| joint.tag == tag);
            let index = index.expect("a joint of the example");
            let computed = &context.plan.of(index).expect("its group").computed;
            let joint = &context.joints[index];
            [Task::Tighten, Task::Loosen].map(|task| {
                let cautions = cautions_for_card(context, joint, computed, task);
                let mut texts = cautions.iter().map(|caution| &caution.text);
                texts.any(|text| text.contains("Hands stay off head"))
            })
        })
    };
    assert_eq!(warned(&tie_rods(), "PR-120-AN-01"), [true, true]);
    assert_eq!(
        warned(&rods_with_a_small_wrench(), "PR-120-TR-01"),
        [true, false]
    );
    assert_eq!(warned(&by_hand_alone(), "PR-120-TR-01"), [false, false]);
}
