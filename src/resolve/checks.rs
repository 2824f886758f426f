//! What is measured, and the room around the nuts.

use crate::joint::{Checks, Clearance, Fact, Gasket, Studs, Who};
use crate::units::{Length, Quantity};
use crate::yaml::At;

use super::layers::{Layers, fact, nested};
use super::plan::fact_of;

pub(super) fn checks(layers: &Layers<'_>, studs: &Studs, gasket: Option<&Gasket>) -> Checks {
    let alignment = layers
        .leaf(nested!(checks.alignment))
        .map(|leaf| leaf.value);
    let limit = |own: Option<&At<Length>>, key: &'static str, default: Option<Length>| {
        fact_of(own, key, Who::Engineer).or(|| match default {
            Some(length) => Fact::default(length, key),
            None => Fact::missing(key, Who::Engineer),
        })
    };
    // PCC-1 Appendix E, read as an excerpt: 1.5, 0.8, 3 mm, twice the gasket's thickness.
    let twice = gasket
        .and_then(|gasket| gasket.thickness.value())
        .map(|thickness| Length::from_si(2.0 * thickness.si()));
    let pitch = studs.thread.get().map(|thread| thread.pitch);
    let stretch = layers.leaf(nested!(checks.stretch));
    Checks {
        gaps: fact!(layers, checks.gaps, Engineer).or(|| Fact::default(true, "checks.gaps")),
        gap_spread: fact!(layers, checks.gap_spread, Engineer)
            .or(|| Fact::default(Length::mm(0.25), "checks.gap_spread")),
        stretch: stretch
            .as_ref()
            .map(|leaf| leaf.value.iter().filter_map(At::get).copied().collect())
            .unwrap_or_default(),
        stretch_place: stretch.map(|leaf| leaf.place),
        zero_reading: fact!(layers, checks.zero_reading, Engineer)
            .or(|| Fact::default(true, "checks.zero_reading")),
        centreline: limit(
            alignment.and_then(|limits| limits.centreline.as_ref()),
            "checks.alignment.centreline",
            Some(Length::mm(1.5)),
        ),
        parallelism: limit(
            alignment.and_then(|limits| limits.parallelism.as_ref()),
            "checks.alignment.parallelism",
            Some(Length::mm(0.8)),
        ),
        holes: limit(
            alignment.and_then(|limits| limits.holes.as_ref()),
            "checks.alignment.holes",
            Some(Length::mm(3.0)),
        ),
        gap: limit(
            alignment.and_then(|limits| limits.gap.as_ref()),
            "checks.alignment.gap",
            twice,
        ),
        least_protrusion: fact!(layers, checks.least_protrusion, Engineer)
            .or(|| threads(pitch, 1.0, "checks.least_protrusion")),
        greatest_protrusion: fact!(layers, checks.greatest_protrusion, Engineer)
            .or(|| threads(pitch, 3.0, "checks.greatest_protrusion")),
    }
}

/// One to three threads past the nut: common practice, no source.
fn threads(pitch: Option<Length>, count: f64, key: &'static str) -> Fact<Length> {
    match pitch {
        Some(pitch) => Fact::default(Length::from_si(pitch.si() * count), key),
        None => Fact::missing(key, Who::Engineer),
    }
}

pub(super) fn clearance(layers: &Layers<'_>) -> Clearance {
    Clearance {
        socket: fact!(layers, clearance.socket, Planner),
        radius: fact!(layers, clearance.radius, Planner),
        at: layers
            .leaf(nested!(clearance.at))
            .map(|leaf| leaf.value.as_str().to_owned()),
    }
}
