//! The jackbolts of one stud seen from above, to the lengths that the job gives, with what the driver needs.

use crate::job::TurnDirection;
use crate::units::Length;
use crate::work::{Mark, Marked, Picture, Pictured, Ring, Value};

use super::facts::Facts;

/// Lengths that nobody gives, in diameters of the stud or of the jackbolt: drawn in a usual proportion, never printed.
const USUAL_CIRCLE: f64 = 1.55;
const USUAL_BODY: f64 = 2.1;
/// A stud of which nobody gives the diameter, in mm.
const USUAL_STUD: f64 = 64.0;
/// Across corners of a hexagon over across flats.
const CORNERS: f64 = 1.1547;

/// With the driver's positions and the side on which it leans; by hand with the order of the raising rounds.
pub(super) fn tightening(facts: &Facts<'_>) -> Picture {
    let mut picture = drawn(facts);
    let driver = facts.plan.and_then(|plan| plan.driver.as_ref());
    if let Some(driver) = driver.filter(|driver| driver.positions > 1) {
        picture.sets.clone_from(&driver.jackbolts);
        picture.legend.push("positions");
    }
    if let Some((first, last)) = reaction(facts, picture.count) {
        let by = Mark::Reaction;
        picture.sectors.push(Marked { first, last, by });
        picture.legend.push("reaction");
    }
    if facts.plan.is_some() {
        picture.legend.push("predicted");
    }
    if facts.driver().is_some() {
        picture.legend.extend(["while_it_runs", "driver_lost"]);
    } else if let Some(plan) = facts.plan {
        picture.order.clone_from(&plan.order);
        picture.legend.push("order");
    }
    picture
}

/// The jackbolts alone.
pub(super) fn rechecking(facts: &Facts<'_>) -> Picture {
    Picture {
        has_lines: true,
        ..drawn(facts)
    }
}

/// With the lines of paint, without the driver, which is not used for the first rounds.
pub(super) fn loosening(facts: &Facts<'_>) -> Picture {
    let mut picture = drawn(facts);
    picture.has_lines = true;
    if facts.plan.is_some_and(|plan| plan.release.breach.is_none()) {
        picture.legend.push("predicted");
    }
    picture
}

/// Body, washer and stud, all in mm; numbers run clockwise.
fn drawn(facts: &Facts<'_>) -> Picture {
    let studs = &facts.case.joint.mechanics.studs;
    let thread = studs.thread.get();
    let stud = thread.map_or(USUAL_STUD, |thread| thread.diameter.to_mm());
    let tensioner = facts.tensioner;
    let length = |of: Option<Length>, usual: f64| of.map_or(usual, Length::to_mm);
    let flats = length(tensioner.and_then(|it| it.across_flats.value()), stud / 4.0);
    let circle = length(
        tensioner.and_then(|it| it.circle.value()),
        stud * USUAL_CIRCLE,
    );
    let body = length(
        tensioner.and_then(|it| it.body_diameter.value()),
        (stud * USUAL_BODY).max(circle + 2.0 * flats),
    );
    // The washer carries every tip; a bearing face given for the stiffness may be narrower.
    let washer = length(studs.bearing_outer.value(), 0.0).max(circle + flats);
    Picture {
        subject: Pictured::Stud,
        circles: [body, washer, stud].map(|diameter| diameter / 2.0).to_vec(),
        count: facts.jackbolts(),
        on: circle / 2.0,
        fastener: flats * CORNERS / 2.0,
        ring: ring(facts),
        ..Picture::default()
    }
}

/// First and last jackbolt on the side on which the driver leans; none where it leans on nothing outside its head.
fn reaction(facts: &Facts<'_>, count: usize) -> Option<(usize, usize)> {
    facts.driver()?;
    let (first, last) = facts.case.joint.work.reaction_jackbolts?;
    let number = |number: u32| {
        usize::try_from(number)
            .ok()
            .filter(|it| (1..=count).contains(it))
    };
    number(first).zip(number(last))
}

/// The studs; none where there is only one.
fn ring(facts: &Facts<'_>) -> Option<Ring> {
    let count = facts.studs();
    let work = &facts.case.joint.work;
    (count > 1).then(|| Ring {
        count,
        is_clockwise: work.direction.value() != Some(TurnDirection::Anticlockwise),
        first: Value::text(&work.first),
    })
}
