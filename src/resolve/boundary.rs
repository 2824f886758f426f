//! Isolation boundaries as the joints behind them see them.

use crate::job::{EnergyControl, Isolation, PointKind};
use crate::joint::{Boundary, Energy};
use crate::yaml::At;

pub(super) fn boundary(isolation: &Isolation) -> Boundary {
    let points: Vec<_> = listed(isolation.points.as_ref()).collect();
    let tags = |kinds: &[PointKind]| {
        points
            .iter()
            .filter(|point| point.kind.get().is_some_and(|kind| kinds.contains(kind)))
            .filter_map(|point| Some(point.tag.get()?.as_str().to_owned()))
            .collect()
    };
    let purge = isolation.purge.as_ref().and_then(At::get);
    Boundary {
        has_contents: listed(isolation.contents.as_ref()).next().is_some(),
        purge: purge.and_then(|purge| Some(purge.medium.get()?.as_str().to_owned())),
        vents: tags(&[PointKind::Vent, PointKind::Drain]),
        drives: tags(&[PointKind::Motor]),
        energies: listed(isolation.energies.as_ref())
            .filter_map(energy)
            .collect(),
        cool_below: isolation.cool_below.as_ref().and_then(At::get).copied(),
        prove_again_every: isolation
            .prove_again_every
            .as_ref()
            .and_then(At::get)
            .copied(),
    }
}

fn energy(given: &EnergyControl) -> Option<Energy> {
    let control = given.control.as_ref().and_then(At::get);
    Some(Energy {
        kind: *given.kind.get()?,
        what: given.what.get()?.as_str().to_owned(),
        control: control.map(|text| text.as_str().to_owned()),
    })
}

/// The entries of a list that could be read.
fn listed<T>(list: Option<&At<Vec<At<T>>>>) -> impl Iterator<Item = &T> {
    list.and_then(At::get)
        .into_iter()
        .flatten()
        .filter_map(At::get)
}
