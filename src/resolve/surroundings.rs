//! What surrounds the work on a joint: isolation, crew, numbering, reaction, signing points.

use crate::joint::{Fact, HoldPoint, Limit, LimitOverride, Who, Work, limit_of};
use crate::report::Finding;
use crate::units::parse_si;
use crate::yaml::{At, Named};

use super::Catalog;
use super::layers::{Layers, nested};

pub(super) fn work(layers: &Layers<'_>, catalog: &Catalog<'_>, found: &mut Vec<Finding>) -> Work {
    let crew = layers.text("crew", Who::Planner, |keys| keys.crew.as_ref());
    let reaction = layers.leaf(nested!(tighten.reaction));
    let beside = reaction
        .as_ref()
        .and_then(|leaf| leaf.value.jackbolts.as_ref().and_then(At::get));
    let reaction_jackbolts = beside.and_then(|(first, last)| Some((*first.get()?, *last.get()?)));
    let (reaction, reaction_member) = match &reaction {
        Some(leaf) => (
            text_of(&leaf.value.on, "tighten.reaction.on", leaf.level),
            match leaf.value.member.as_ref().and_then(At::both) {
                Some((member, place)) => Fact::job(*member, place, leaf.level),
                None => Fact::missing("tighten.reaction.member", Who::Planner),
            },
        ),
        None => (
            Fact::missing("tighten.reaction", Who::Planner),
            Fact::missing("tighten.reaction", Who::Planner),
        ),
    };
    let numbering = layers.leaf(|keys| keys.numbering.as_ref());
    Work {
        isolation: layers.text("isolation", Who::Operator, |keys| keys.isolation.as_ref()),
        people: crew
            .get()
            .map(|name| catalog.crew(name))
            .unwrap_or_default(),
        crew,
        start: layers
            .leaf(|keys| keys.start.as_ref())
            .map(|leaf| *leaf.value),
        last_day: last_day(layers, catalog),
        first: match &numbering {
            Some(leaf) => text_of(&leaf.value.first, "numbering.first", leaf.level),
            None => Fact::missing("numbering", Who::Planner),
        },
        direction: match numbering.as_ref().and_then(|leaf| {
            leaf.value
                .direction
                .as_ref()
                .and_then(At::both)
                .map(|both| (both, leaf.level))
        }) {
            Some(((direction, place), level)) => Fact::job(*direction, place, level),
            None => Fact::missing("numbering.direction", Who::Planner),
        },
        seen_from: numbering
            .and_then(|leaf| leaf.value.seen_from.as_ref().and_then(At::get))
            .map(|text| text.as_str().to_owned()),
        obstacles: layers
            .leaf(|keys| keys.obstacles.as_ref())
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
        limits: limits(layers, catalog, found),
        target_reason: layers
            .leaf(nested!(target.reason))
            .map(|leaf| leaf.value.as_str().to_owned()),
    }
}

fn text_of<const MAX: usize>(
    text: &At<crate::yaml::Text<MAX>>,
    key: &'static str,
    level: crate::joint::Level,
) -> Fact<String> {
    match text.both() {
        Some((text, place)) => Fact::job(text.as_str().to_owned(), place, level),
        None => Fact::missing(key, Who::Planner),
    }
}

fn hold_points(layers: &Layers<'_>) -> Vec<HoldPoint> {
    layers
        .leaf(|keys| keys.hold_points.as_ref())
        .into_iter()
        .flat_map(|leaf| leaf.value)
        .filter_map(|at| {
            let point = at.get()?;
            Some(HoldPoint {
                point: point.point.get()?.as_str().to_owned(),
                text: point.text.get()?.as_str().to_owned(),
                accept: point
                    .accept
                    .as_ref()
                    .and_then(At::get)
                    .map(|text| text.as_str().to_owned()),
                by: point.by.as_ref().and_then(At::get).copied(),
                place: at.place(),
            })
        })
        .collect()
}

/// Replaced defaults of rules: the joint's own before the job's. The value is read in the
/// dimension of the default that it replaces.
fn limits(
    layers: &Layers<'_>,
    catalog: &Catalog<'_>,
    found: &mut Vec<Finding>,
) -> Vec<LimitOverride> {
    let own = layers
        .leaf(|keys| keys.limits.as_ref())
        .map(|leaf| leaf.value);
    let mut limits = own
        .map(|named| read_limits(named, found))
        .unwrap_or_default();
    limits.retain(|limit| {
        let whole = limit_of(&limit.rule).is_some_and(|default| default.whole);
        if whole {
            found.push(
                Finding::job("job.whole_limit", limit.place).with("name", limit.rule.as_str()),
            );
        }
        !whole
    });
    for limit in catalog.limits() {
        if !limits.iter().any(|own| own.rule == limit.rule) {
            limits.push(limit.clone());
        }
    }
    limits
}

/// Reads a map of replaced limits.
pub(super) fn read_limits(
    named: &Named<crate::job::LimitOverride>,
    found: &mut Vec<Finding>,
) -> Vec<LimitOverride> {
    let mut limits = Vec::new();
    for (rule, entry) in named.iter() {
        let (Some(name), Some(entry)) = (rule.get(), entry.get()) else {
            continue;
        };
        let (Some(text), Some(reason)) = (entry.value.get(), entry.reason.get()) else {
            continue;
        };
        let Some(Limit {
            rule: id,
            dimension,
            ..
        }) = limit_of(name)
        else {
            found.push(Finding::job("job.unknown_limit", rule.place()).with("name", name.as_str()));
            continue;
        };
        match parse_si(text.as_str(), *dimension) {
            Ok(value) if value > 0.0 => limits.push(LimitOverride {
                rule: (*id).to_owned(),
                value,
                printed: text.as_str().to_owned(),
                reason: reason.as_str().to_owned(),
                place: entry.value.place(),
            }),
            _ => found.push(
                Finding::job("job.limit_value", entry.value.place())
                    .with("name", name.as_str())
                    .with("text", text.as_str())
                    .with("quantity", dimension.word()),
            ),
        }
    }
    limits
}

/// Tools must last until the end of the work, or until the joint's own day if that is later.
fn last_day(layers: &Layers<'_>, catalog: &Catalog<'_>) -> Option<crate::units::Date> {
    let work = catalog
        .pack()
        .and_then(|pack| pack.work.as_ref())
        .and_then(At::get);
    let last = work
        .and_then(|work| work.last_day.as_ref())
        .and_then(At::get)
        .copied();
    last.max(
        layers
            .leaf(|keys| keys.start.as_ref())
            .map(|leaf| *leaf.value),
    )
}
