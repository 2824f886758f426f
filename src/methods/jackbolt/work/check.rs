//! What proves the load: turns of each round, a second person, stretch, the gap that has grown.

use crate::methods::steps;
use crate::units::Dimension;
use crate::work::{Bound, OPTIONAL, Phase, Priority, Section, Value, Work};

use super::facts::{Facts, below_flat, words};
use super::rounds::columns;

/// Rounds that get a column of their own.
const MOST_ROUNDS: usize = 8;
/// Studs that get a line of their own; more get a box each for the last round.
const MOST_LINES: usize = 4;
/// Studs that boxes hold.
const MOST_BOXES: usize = 32;
/// Every so many-th stud is tried by a second person (common practice, no source).
const SAMPLE: usize = 10;
/// At least so many studs, where there are as many (common practice, no source).
const LEAST_SAMPLE: usize = 2;
/// Jackbolts that are tried on a stud, spread round it (common practice, no source).
pub(super) const TRIED: usize = 4;

/// Everything that is read from the first full-value round on.
pub(super) fn readings(work: &mut Work, facts: &Facts<'_>) {
    turns(work, facts);
    second_person(work, facts);
    work.read("gap_end", Section::AsFound)
        .dimension(Dimension::Length)
        .accept
        .extend(greatest_gap(facts));
    if facts.case.joint.mechanics.checks.stretch.is_empty() {
        growth(work, facts);
    }
    steps::stretch(work, facts.case, &["before", "after", "stretch"]);
    work.phase(Phase::Finish);
    work.act("wrench_down").priority(Priority::PackOnly);
    work.tick("caps").priority(OPTIONAL);
}

/// Largest and mean turn of each round: the load still missing is read off the mean turn.
fn turns(work: &mut Work, facts: &Facts<'_>) {
    let parts = facts.stop_parts();
    work.read("turns", Section::Rounds)
        .with("set", Value::reading(facts.readings().full()))
        .dimension(Dimension::Angle)
        .grid(
            words(&["largest", "mean", "done_by"]),
            columns(facts, MOST_ROUNDS),
        )
        .accept
        .extend(parts);
    if let Some((least, last)) = facts.full_rounds().filter(|(_, last)| *last > MOST_ROUNDS) {
        let bound = Bound::Between(Value::Count(least), Value::Count(last));
        work.read("tally", Section::Rounds).accept("tally", bound);
    }
    let studs = facts.studs();
    if studs > MOST_LINES && studs <= MOST_BOXES {
        let columns = (1..=studs).map(Value::Count).collect();
        work.read("last_round", Section::Rounds)
            .dimension(Dimension::Angle)
            .grid(words(&["last"]), columns)
            .accept
            .push(below_flat());
    }
}

/// A few jackbolts on a sample of studs, by another person.
fn second_person(work: &mut Work, facts: &Facts<'_>) {
    let studs = facts.studs();
    let sample = studs.div_ceil(SAMPLE).max(LEAST_SAMPLE).min(studs.max(1));
    work.read("second", Section::Rounds)
        .with("studs", Value::Count(sample))
        .with("count", Value::Count(TRIED))
        .with("set", Value::reading(facts.readings().full()))
        .dimension(Dimension::Angle)
        .grid(words(&["tried", "largest"]), Vec::new())
        .accept("studs_tried", Bound::AtLeast(Value::Count(sample)))
        .accept("jackbolts_tried", Bound::AtLeast(Value::Count(TRIED)))
        .accept
        .push(below_flat());
}

/// The greatest gap under load, from the tensioner's papers.
fn greatest_gap(facts: &Facts<'_>) -> Option<crate::work::Limit> {
    let most = facts.tensioner.and_then(|it| it.greatest_gap.value())?;
    Some(crate::work::Limit::new(
        "gap_end",
        Bound::AtMost(Value::of(most)),
    ))
}

/// What the gap has grown by, for information: the stud end against its own body shows nothing.
fn growth(work: &mut Work, facts: &Facts<'_>) {
    let rows = (1..=facts.studs().min(MOST_LINES))
        .map(Value::Count)
        .collect();
    work.read("growth", Section::Load)
        .dimension(Dimension::Length)
        .grid(rows, words(&["seated", "final"]))
        .priority(OPTIONAL);
}

/// What is done where a jackbolt turns further than a re-check allows.
pub(super) fn recheck_limit(work: &mut Work, facts: &Facts<'_>) {
    let limit = steps::recheck_limit(facts.case);
    work.decide("recheck_over").with("limit", limit);
    work.read("gap_end", Section::AsFound)
        .dimension(Dimension::Length)
        .accept
        .extend(greatest_gap(facts));
}
