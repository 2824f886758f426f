//! Steps of torque scales, where a tool says none.

use crate::units::{Quantity, Torque, Unit};

/// Powers of ten between which the numbers on torque scales lie.
const DECADES: [f64; 12] = [
    1e6, 1e5, 1e4, 1e3, 1e2, 1e1, 1.0, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5,
];

/// Numbers on the scale from which the second and the third of the usual steps hold.
const USUAL_FROM: [f64; 2] = [500.0, 2000.0];

/// What is usual on a torque scale in common use, in its units (common practice, no source; snug by PCC-1, from memory).
struct Usual {
    scale: &'static str,
    steps: [f64; 3],
    snug: f64,
}

/// The scales in common use, that of the SI first.
const USUAL: [Usual; 2] = [
    Usual {
        scale: "N·m",
        steps: [5.0, 10.0, 50.0],
        snug: 25.0,
    },
    Usual {
        scale: "ft·lb",
        steps: [5.0, 10.0, 25.0],
        snug: 20.0,
    },
];

fn usual(scale: &Unit) -> Option<&'static Usual> {
    USUAL.iter().find(|usual| usual.scale == scale.name)
}

/// The three usual steps of a scale, from small to large numbers; none where they follow from the number alone.
pub fn usual_steps(scale: &Unit) -> Option<[f64; 3]> {
    usual(scale).map(|usual| usual.steps)
}

/// Snug by hand where the job gives none: a round number of the scale, else that of the SI.
pub(super) fn usual_snug(scale: &Unit) -> Torque {
    match usual(scale) {
        Some(usual) => Torque::from_si(scale.to_si(usual.snug)),
        None => Torque::nm(USUAL[0].snug),
    }
}

fn decade(number: f64) -> f64 {
    let below = DECADES.into_iter().find(|decade| *decade <= number);
    below.unwrap_or(1e-5)
}

/// The usual step for a number on a scale: by its range on the scales in common use, elsewhere a twentieth of its
/// power of ten, from five times that power a tenth.
pub(super) fn usual_step(scale: &Unit, number: f64) -> f64 {
    let decade = decade(number);
    match usual_steps(scale) {
        Some([small, ..]) if number < USUAL_FROM[0] => small,
        Some([_, middle, _]) if number < USUAL_FROM[1] => middle,
        Some([.., large]) => large,
        None if number < 5.0 * decade => decade / 20.0,
        None => decade / 10.0,
    }
}

/// The step of a small wrench, with which low values are set: one unit of a scale in common use, elsewhere the third
/// figure of the number.
pub(super) fn fine_step(scale: &Unit, number: f64) -> f64 {
    match usual_steps(scale) {
        Some(_) => 1.0,
        None => decade(number) / 100.0,
    }
}
