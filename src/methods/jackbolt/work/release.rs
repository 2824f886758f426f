//! Letting a stud go: every jackbolt by the same small angle in each round.

use crate::joint::Who;
use crate::methods::steps;
use crate::methods::steps::thresholds::SOAK;
use crate::units::{Angle, Dimension, Length, Quantity, digits};
use crate::work::{
    Bound, Expected, Hazard, HazardKind, KeyValue, OPTIONAL, Phase, Section, Sequence, Set, Value,
    Work,
};

use super::super::{ReleaseBreach, ReleasePlan, ReleaseRound, ids};
use super::facts::{Facts, lack};
use super::lost::seized;

/// Sides of a jackbolt's hexagon.
const FLATS: f64 = 6.0;
/// The last jackbolt gathers what the others lose.
const RELEASE: &[HazardKind] = &[HazardKind::LastFasteners, HazardKind::StudInLine];

/// Oil, lines, and the driver kept away.
pub(super) fn prepare(work: &mut Work, facts: &Facts<'_>) {
    let rounds = Value::Word("held_printed_rounds");
    let last = Hazard::new(HazardKind::LastFasteners, rounds);
    work.hazards
        .push(last.with("fasteners", Value::Word("jackbolts")));
    work.hazards.sort_by_key(|hazard| hazard.kind);
    work.phase(Phase::Prepare);
    let [least, most] = SOAK.value.map(Value::of);
    work.tick("soak")
        .with("least", least)
        .with("most", most)
        .meets(&[HazardKind::Oxygen, HazardKind::Lubricant])
        .priority(OPTIONAL);
    work.tick("lines");
    steps::tools_used(work, facts.case.computed.chosen.loosening.iter());
    if facts.driver().is_some() {
        work.tick("driver_aside").priority(crate::work::REPEATED);
    }
}

/// The one bound of the card and the range in which a jackbolt is expected to move.
pub(super) fn keys(work: &mut Work, facts: &Facts<'_>) {
    let readings = facts.readings();
    let never = Set::by(readings.never());
    let value = never.value();
    work.keys.push(KeyValue {
        id: "never",
        set: never,
        values: Vec::new(),
    });
    let expected = match readings.break_out() {
        Ok(range) => Set::Value(Value::Span(Box::new(range.map(Value::Reading)))),
        Err(lack) => Set::Missing(lack),
    };
    work.keys.push(KeyValue {
        id: "break_out_by_hand",
        set: expected,
        values: vec![("never", value)],
    });
}

/// The rounds of the release plan; none of its numbers where it is missing or overloads the last jackbolt.
pub(super) fn rounds(work: &mut Work, facts: &Facts<'_>) {
    work.phase(Phase::Loosen);
    let plan = facts.plan.map(|plan| &plan.release);
    match plan.filter(|plan| plan.breach.is_none()) {
        Some(plan) => planned(work, facts, plan),
        None => unplanned(work, plan.and_then(|plan| plan.breach)),
    }
    let never = Value::reading(facts.readings().never());
    let made = work.read("rounds_made", Section::Rounds);
    if let Some(plan) = plan.filter(|plan| plan.breach.is_none()) {
        made.accept("rounds_planned", Bound::Is(Value::Count(plan.rounds.len())));
    }
    work.read("largest_torque", Section::Rounds)
        .dimension(Dimension::Torque)
        .accept("never", Bound::AtMost(never));
    seized(work, facts);
}

fn planned(work: &mut Work, facts: &Facts<'_>, plan: &ReleasePlan) {
    work.decide("whole_round");
    for (number, round) in (1..).zip(&plan.rounds) {
        let name = format!("R{number}");
        let expected = expected(round);
        match round.angle {
            Some(angle) => back(work, facts, (number, angle)),
            None => work.set("loose", name, Set::Word("loose"), Sequence::Circle),
        }
        .expect(expected)
        .meets(RELEASE);
    }
    if facts
        .plan
        .is_some_and(super::super::JackboltPlan::drives_loosening)
    {
        work.decide("driver_after");
    }
}

fn expected(round: &ReleaseRound) -> Expected {
    let left = &round.mean_left;
    Expected {
        load: [left.least(), left.likely, left.greatest()],
        turn: None,
        turn_most: None,
        peak: Some(round.peak),
    }
}

/// Back by an angle, said in parts of a flat and, where the length of the wrench is known, as travel of the hand.
fn back<'w>(
    work: &'w mut Work,
    facts: &Facts<'_>,
    (number, angle): (u16, f64),
) -> &'w mut crate::work::Step {
    let name = format!("R{number}");
    let set = Set::back_by(Ok(Angle::from_si(angle)));
    let flats = angle.to_degrees() * FLATS / 360.0;
    match facts.get(ids::RELEASE_ROUND_TRAVEL.at(number)) {
        Some(travel) => work
            .set("back_at_hand", name, set, Sequence::Circle)
            .with("part", Value::Text(nearest_part(flats)))
            .with("travel", Value::of(by_eye(travel))),
        None => work
            .set("back", name, set, Sequence::Circle)
            .with("part", Value::Text(part_of_flat(flats))),
    }
}

/// Nothing turns before an engineer gives the angles.
fn unplanned(work: &mut Work, breach: Option<ReleaseBreach>) {
    let unknown = lack("loosen.first_step", Who::Engineer);
    work.decide("no_plan");
    match breach {
        Some(ReleaseBreach::Rounds) => {
            work.decide("too_many_rounds");
        }
        Some(ReleaseBreach::Peak { .. }) => {
            work.decide("unload");
        }
        None => {}
    }
    work.set(
        "back_unknown",
        "R1",
        Set::Missing(unknown),
        Sequence::Circle,
    )
    .meets(RELEASE);
}

/// A hand is held to 5 mm at best.
fn by_eye(travel: Length) -> Length {
    const STEP: f64 = 0.005;
    Length::from_si((travel.si() / STEP).round() * STEP)
}

/// Parts of a flat that an eye can tell; between two of them stands the travel of the hand.
const PARTS: [(u8, u8); 17] = [
    (1, 12),
    (1, 11),
    (1, 10),
    (1, 9),
    (1, 8),
    (1, 7),
    (1, 6),
    (1, 5),
    (1, 4),
    (1, 3),
    (5, 12),
    (1, 2),
    (7, 12),
    (2, 3),
    (3, 4),
    (5, 6),
    (11, 12),
];

/// The nearest part of a flat.
fn nearest_part(flats: f64) -> String {
    let away = |(over, under): &(u8, u8)| (f64::from(*over) / f64::from(*under) - flats).abs();
    let nearest = PARTS.iter().min_by(|a, b| away(a).total_cmp(&away(b)));
    nearest.map_or_else(String::new, |(over, under)| format!("{over}/{under}"))
}

/// `1/4.3` of a flat, or `1.2` from a whole flat on: a flat is a sixth of a turn.
fn part_of_flat(flats: f64) -> String {
    if flats < 1.0 {
        format!("1/{}", digits((10.0 / flats).round() / 10.0))
    } else {
        digits((flats * 10.0).round() / 10.0)
    }
}
