//! The prediction for multi-jackbolt tensioners against figures from outside, against a dense solve by a linear
//! algebra crate, and against what must hold for every set of springs.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot read its own figures stops"
)]

#[path = "jackbolts/cases.rs"]
mod cases;
#[path = "jackbolts/checks.rs"]
mod checks;
#[path = "jackbolts/dense.rs"]
mod dense;
#[path = "jackbolts/invariants.rs"]
mod invariants;
#[path = "jackbolts/job.rs"]
mod job;
#[path = "jackbolts/parts.rs"]
mod parts;
#[path = "jackbolts/plans.rs"]
mod plans;
#[path = "jackbolts/sizes.rs"]
mod sizes;

use studbook::methods::jackbolt::Springs;

/// Springs from stiffnesses in N/mm, a pitch in mm, a load in N.
fn springs(count: usize, jackbolt: f64, joint: f64, pitch: f64, load: f64) -> Springs {
    let compliance = |stiffness: f64| 1.0 / (stiffness * 1e3);
    Springs::new(
        count,
        compliance(jackbolt),
        compliance(joint),
        pitch * 1e-3,
        load,
    )
}

fn circle(count: usize) -> Vec<usize> {
    (0..count).collect()
}

#[track_caller]
fn near(got: f64, expected: f64, within: f64) {
    assert!(
        (got - expected).abs() <= within,
        "{got} instead of {expected} within {within}"
    );
}
