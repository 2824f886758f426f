//! What surrounds the work on a joint: isolation, crew, numbering, reaction, signing points.

use crate::job::{self, JointKeys, Numbering, Reaction, Target, Tighten};
use crate::joint::{HoldPoint, LimitOverride, Work};
use crate::units::Date;
use crate::yaml::At;

use super::catalog::Catalog;
use super::layers::Layers;

/// `limits` are the replaced defaults that hold for the joint.
pub(super) fn work(layers: &Layers<'_>, catalog: &Catalog<'_>, limits: Vec<LimitOverride>) -> Work {
    let crew = layers.fact(&JointKeys::crew);
    let reaction = layers.leaf(&Tighten::reaction);
    let beside = reaction
        .as_ref()
        .and_then(|leaf| leaf.value.jackbolts.as_ref().and_then(At::get));
    let reaction_jackbolts = beside.and_then(|(first, last)| Some((*first.get()?, *last.get()?)));
    let (reaction, reaction_member) = match &reaction {
        Some(leaf) => (
            Reaction::on.at_level(Some(leaf.value), leaf.level),
            Reaction::member.at_level(Some(leaf.value), leaf.level),
        ),
        None => (Tighten::reaction.missing(), Tighten::reaction.missing()),
    };
    let (first, direction, seen_from) = match layers.leaf(&JointKeys::numbering) {
        Some(leaf) => (
            Numbering::first.at_level(Some(leaf.value), leaf.level),
            Numbering::direction.at_level(Some(leaf.value), leaf.level),
            Numbering::seen_from.value(Some(leaf.value)),
        ),
        None => (
            JointKeys::numbering.missing(),
            Numbering::direction.missing(),
            None,
        ),
    };
    let start = layers.value(&JointKeys::start);
    let isolation = layers.fact(&JointKeys::isolation);
    Work {
        boundary: isolation
            .get()
            .and_then(|name: &String| catalog.boundary(name)),
        isolation,
        people: crew
            .get()
            .map(|name| catalog.crew(name))
            .unwrap_or_default(),
        crew,
        start,
        last_day: last_day(catalog).max(start),
        first,
        direction,
        seen_from,
        obstacles: layers
            .leaf(&JointKeys::obstacles)
            .into_iter()
            .flat_map(|leaf| leaf.value)
            .filter_map(At::get)
            .filter_map(|obstacle| {
                Some((
                    obstacle.what.get()?.as_str().to_owned(),
                    *obstacle.at.get()?,
                ))
            })
            .collect(),
        reaction,
        reaction_member,
        reaction_jackbolts,
        hold_points: hold_points(layers),
        limits,
        target_reason: layers.value(&Target::reason),
    }
}

fn hold_points(layers: &Layers<'_>) -> Vec<HoldPoint> {
    layers
        .leaf(&JointKeys::hold_points)
        .into_iter()
        .flat_map(|leaf| leaf.value)
        .filter_map(|at| {
            let point = at.get();
            Some(HoldPoint {
                point: job::HoldPoint::point.value(point)?,
                text: job::HoldPoint::text.value(point)?,
                accept: job::HoldPoint::accept.value(point),
                by: job::HoldPoint::by.value(point),
                place: at.place(),
            })
        })
        .collect()
}

/// Tools must last until the end of the work; a joint with a later day of its own needs them until then.
fn last_day(catalog: &Catalog<'_>) -> Option<Date> {
    let work = catalog.pack()?.work.as_ref()?.get();
    job::Work::last_day.value(work)
}
