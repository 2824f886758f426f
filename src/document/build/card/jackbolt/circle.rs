//! The circle of jackbolts on one stud, to the lengths that the job gives, and the studs of the joint in small.

use crate::document::card::{Circle, Head, Mark, Sector, StudRing};
use crate::job::TurnDirection;
use crate::units::Length;

use super::case::{Case, numbers};

/// Names of the positions of a driver.
const POSITIONS: [&str; 4] = ["X", "Y", "Z", "W"];
/// Lengths that nobody gives, in diameters of the stud or of the jackbolt: drawn in a usual proportion, never printed.
const USUAL_CIRCLE: f64 = 1.55;
const USUAL_BODY: f64 = 2.1;
const CORNERS: f64 = 1.1547;
/// A smaller stud, as a share of the body, has no room for its words.
const LEAST_FOR_WORDS: f64 = 0.3;
/// Numbers of the raising order in one line below the circle.
const ORDER_IN_LINE: usize = 12;

/// The circle; while loosening with paint lines and without the driver, which is not used for the first rounds.
pub(super) fn circle(case: &Case<'_>, loosening: bool) -> Circle {
    let count = case.jackbolts();
    let marks = |texts: &dyn Fn(usize) -> String, number: usize| -> Vec<Mark> {
        (0..number)
            .map(|index| Mark {
                angle: angle(index, count, true),
                text: texts(index),
                first: index == 0,
            })
            .collect()
    };
    let sized = to_proportion(case);
    let drawn = Circle {
        words: if sized.stud < LEAST_FOR_WORDS * sized.body {
            Vec::new()
        } else {
            words(case)
        },
        head: Head {
            title: case.label("jackbolt_card.circle.title"),
            note: case.label("jackbolt_card.circle.note"),
        },
        jackbolts: (0..count).map(|index| angle(index, count, true)).collect(),
        numbers: marks(&|index| (index + 1).to_string(), count),
        clockwise: true,
        paint: loosening,
        ..sized
    };
    if loosening {
        let is_planned = case
            .plan()
            .is_some_and(|plan| plan.release.breach.is_none());
        return Circle {
            legend: is_planned
                .then(|| case.label("jackbolt_card.circle.not_measured"))
                .into_iter()
                .collect(),
            ..drawn
        };
    }
    let driver = case.plan().and_then(|plan| plan.driver.as_ref());
    let positions = driver.map_or(1, |driver| driver.positions);
    let by_position = driver.filter(|_| positions > 1);
    let first = by_position.and_then(|driver| driver.jackbolts.first());
    Circle {
        positions: marks(
            &|index| POSITIONS.get(index).copied().unwrap_or_default().into(),
            if positions > 1 { positions } else { 0 },
        ),
        driven: first
            .into_iter()
            .flatten()
            .map(|number| angle(number.saturating_sub(1), count, true))
            .collect(),
        reaction: reaction(case, count),
        legend: legend(case, positions),
        ..drawn
    }
}

/// The side on which the driver leans, from half a step before its first jackbolt to half a step behind its last;
/// none where it leans on nothing outside its head.
fn reaction(case: &Case<'_>, count: usize) -> Option<Sector> {
    let (first, last) = case
        .driver()
        .and(case.subject.joint.work.reaction_jackbolts)?;
    let number = |number: u32| {
        usize::try_from(number)
            .ok()
            .filter(|it| (1..=count).contains(it))
    };
    let (first, last) = (number(first)?, number(last)?);
    let step = 360.0 / real(count);
    let from = (real(first) - 1.5) * step;
    // Clockwise past the first jackbolt where the last number is the lower one.
    let steps = if last >= first {
        last - first
    } else {
        last + count - first
    };
    Some(Sector {
        from,
        to: from + (real(steps) + 1.0) * step,
    })
}

/// Name of a position of the driver from 0.
pub(super) fn position(index: usize) -> &'static str {
    POSITIONS.get(index).copied().unwrap_or_default()
}

fn to_proportion(case: &Case<'_>) -> Circle {
    let studs = &case.subject.joint.mechanics.studs;
    let stud = studs
        .thread
        .get()
        .map_or(64.0, |thread| thread.diameter.to_mm());
    let tensioner = case.tensioner();
    let length = |of: Option<Length>, usual: f64| of.map_or(usual, Length::to_mm);
    let flats = length(tensioner.and_then(|it| it.across_flats.value()), stud / 4.0);
    let ring = length(
        tensioner.and_then(|it| it.circle.value()),
        stud * USUAL_CIRCLE,
    );
    let body = length(
        tensioner.and_then(|it| it.body_diameter.value()),
        (stud * USUAL_BODY).max(ring + 2.0 * flats),
    );
    // The washer carries every tip; a bearing face given for the stiffness may be narrower.
    let washer = length(studs.bearing_outer.value(), 0.0).max(ring + flats);
    Circle {
        body,
        washer,
        circle: ring,
        jackbolt: flats * CORNERS,
        stud,
        ..Circle::default()
    }
}

fn words(case: &Case<'_>) -> Vec<String> {
    let thread = case.subject.joint.mechanics.studs.thread.get();
    let size = thread.map(|thread| thread.designation.clone());
    [case.label("jackbolt_card.circle.stud")]
        .into_iter()
        .chain(size)
        .collect()
}

/// What the signs of the driver mean, and what to look for while it runs; by hand the order of the raising rounds.
fn legend(case: &Case<'_>, positions: usize) -> Vec<String> {
    let mut lines = Vec::new();
    if positions > 1 {
        lines.push(case.label("jackbolt_card.circle.positions"));
    }
    if reaction(case, case.jackbolts()).is_some() {
        lines.push(case.label("jackbolt_card.circle.reaction"));
    }
    match case.plan() {
        _ if case.driver().is_some() => {
            lines.extend(
                ["while_it_runs", "lost"]
                    .map(|key| case.label(&format!("jackbolt_card.circle.{key}"))),
            );
        }
        Some(plan) => {
            // As many lines as it takes, evenly filled.
            let count = plan.order.len();
            let in_line = count.div_ceil(count.div_ceil(ORDER_IN_LINE).max(1)).max(1);
            let parts = plan.order.chunks(in_line).enumerate();
            lines.extend(parts.map(|(index, part)| match index {
                0 => case.say1("jackbolt_card.circle.order", "order", &numbers(part)),
                _ => numbers(part),
            }));
        }
        None => {}
    }
    lines
}

/// The studs; none where there is only one.
pub(super) fn studs(case: &Case<'_>) -> Option<StudRing> {
    let count = case.studs();
    if count < 2 {
        return None;
    }
    let work = &case.subject.joint.work;
    let clockwise = work.direction.value() != Some(TurnDirection::Anticlockwise);
    let drawn = if count <= StudRing::MOST { count } else { 0 };
    let mut words = vec![case.say1("jackbolt_card.studs.count", "studs", &count.to_string())];
    words.extend(
        work.first
            .get()
            .map(|first| case.say1("jackbolt_card.studs.first", "first", first)),
    );
    words
        .extend(["jackbolt_card.studs.all", "jackbolt_card.studs.next"].map(|key| case.label(key)));
    Some(StudRing {
        studs: (0..drawn)
            .map(|index| Mark {
                angle: angle(index, count, clockwise),
                text: (index + 1).to_string(),
                first: index == 0,
            })
            .collect(),
        words,
    })
}

/// The angle of place `index` in degrees clockwise from the top.
fn angle(index: usize, count: usize, clockwise: bool) -> f64 {
    let share = real(index) / real(count.max(1));
    let turned = if clockwise { share } else { -share };
    (360.0 * turned).rem_euclid(360.0)
}

fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}
