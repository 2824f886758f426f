//! What is measured, and the room around the nuts.

use crate::job::{self, Alignment, JointKeys, Seat};
use crate::joint::{Anchor, Checks, Clearance, Gasket, Recheck, Studs};
use crate::units::{Length, Quantity};
use crate::yaml::At;

use super::layers::Layers;

pub(super) fn checks(layers: &Layers<'_>, studs: &Studs, gasket: Option<&Gasket>) -> Checks {
    let alignment = layers.leaf(&job::Checks::alignment).map(|leaf| leaf.value);
    // PCC-1 Appendix E, read as an excerpt: twice the gasket's thickness.
    let twice = gasket
        .and_then(|gasket| gasket.thickness.value())
        .map(|thickness| Length::from_si(2.0 * thickness.si()));
    // One to three threads past the nut: common practice, no source.
    let threads = |count: f64| {
        let pitch = studs.thread.get().map(|thread| thread.pitch);
        pitch.map(|pitch| Length::from_si(pitch.si() * count))
    };
    // Numbers of studs: no counts, so they stay whole.
    let stretch = layers.leaf(&job::Checks::stretch);
    Checks {
        gaps: layers.fact(&job::Checks::gaps),
        gap_spread: layers.fact(&job::Checks::gap_spread),
        stretch: stretch
            .as_ref()
            .map(|leaf| leaf.value.iter().filter_map(At::get).copied().collect())
            .unwrap_or_default(),
        stretch_place: stretch.map(|leaf| leaf.place),
        zero_reading: layers.fact(&job::Checks::zero_reading),
        centreline: Alignment::centreline.shared(alignment),
        parallelism: Alignment::parallelism.shared(alignment),
        holes: Alignment::holes.shared(alignment),
        gap: Alignment::gap
            .shared(alignment)
            .or(|| Alignment::gap.default_or_missing(twice)),
        least_protrusion: layers
            .fact(&job::Checks::least_protrusion)
            .or(|| job::Checks::least_protrusion.default_or_missing(threads(1.0))),
        greatest_protrusion: layers
            .fact(&job::Checks::greatest_protrusion)
            .or(|| job::Checks::greatest_protrusion.default_or_missing(threads(3.0))),
    }
}

pub(super) fn clearance(layers: &Layers<'_>) -> Clearance {
    Clearance {
        socket: layers.fact(&job::Clearance::socket),
        radius: layers.fact(&job::Clearance::radius),
        at: layers.value(&job::Clearance::at),
    }
}

fn is_anchored(studs: &Studs) -> bool {
    studs.seat.value() == Some(Seat::Anchor)
}

pub(super) fn anchor(layers: &Layers<'_>, studs: &Studs) -> Option<Anchor> {
    is_anchored(studs).then(|| Anchor {
        grout: layers.fact(&job::Anchor::grout),
        movement: layers.fact(&job::Anchor::movement),
    })
}

/// Grout and sleeves settle, so anchors are looked at again (common practice, no source); other joints where the job
/// asks for it.
pub(super) fn recheck(layers: &Layers<'_>, studs: &Studs) -> Option<Recheck> {
    let is_asked = layers.leaf(&JointKeys::recheck).is_some();
    (is_asked || is_anchored(studs)).then(|| Recheck {
        after: layers.fact(&job::Recheck::after),
        state: layers.value(&job::Recheck::state),
        limit: layers.fact(&job::Recheck::limit),
    })
}
