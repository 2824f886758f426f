//! Which rounds bring a stud to its load: seating, as few raising rounds as the limits allow, full-value rounds.

use super::bands::Bands;
use super::driver::Bulk;
use super::simulate::{Record, Step, run};
use super::springs::Springs;
use super::state::State;
use super::{Inputs, Round, RoundKind};

/// More rounds are no plan: stiff jackbolts on a very long stud want an angle finish or a stretch reading.
pub const MOST_FULL_ROUNDS: usize = 99;
/// More raising rounds do not make it gentler.
const MOST_RAISING: usize = 9;
/// The flat rule of the trade: rounds end when no jackbolt moves so far (common practice, no source).
pub const FLAT_RULE: f64 = 20.0;

/// What the flat rule alone would leave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlatRule {
    /// Full-value rounds until no jackbolt moves 20° or more in a whole round.
    pub rounds: usize,
    /// Load of the stud then, as a share of the target.
    pub mean: f64,
    /// Least loaded jackbolt then.
    pub least: f64,
}

/// The rounds of a plan with what each of them leaves.
pub(super) struct Planned {
    pub(super) rounds: Vec<Round>,
    /// Full-value rounds until the wanted mean load stands, by band.
    pub(super) full_rounds: Bands<usize>,
    pub(super) flat_rule: Bands<FlatRule>,
    /// Whether every round stays within the limits.
    pub(super) within_limits: bool,
}

/// A step with its kind.
struct Named {
    kind: RoundKind,
    step: Step,
}

/// The plan with the fewest raising rounds that stays within the limits.
pub(super) fn plan(inputs: &Inputs, bulk: Option<&Bulk>) -> Planned {
    let top = bulk.map_or(1.0, |bulk| bulk.level);
    let (mut named, mut within_limits) = (Vec::new(), false);
    for raising in 0..=MOST_RAISING {
        named = opening(inputs, bulk, &levels(inputs, top, raising));
        within_limits = small_steps(inputs, &named) && upright(inputs, &named);
        if within_limits {
            break;
        }
    }
    let mut planned = with_full_rounds(inputs, named);
    planned.within_limits = within_limits;
    planned
}

/// Evenly between the seating value and the top, as the tool can be set.
fn levels(inputs: &Inputs, top: f64, raising: usize) -> Vec<f64> {
    let rise = (top - inputs.seat) / (raising + 1) as f64;
    (1..=raising)
        .map(|number| {
            let level = inputs.seat + rise * number as f64;
            (level / inputs.grain).round() * inputs.grain
        })
        .collect()
}

/// Everything before the full-value rounds.
fn opening(inputs: &Inputs, bulk: Option<&Bulk>, levels: &[f64]) -> Vec<Named> {
    let mut named = vec![Named {
        kind: RoundKind::Seat,
        step: Step::one_by_one(inputs.order.clone(), inputs.seat),
    }];
    match bulk {
        None => named.extend(levels.iter().map(|&level| Named {
            kind: RoundKind::Raise,
            step: Step::one_by_one(inputs.order.clone(), level),
        })),
        Some(bulk) => {
            for &level in levels {
                named.extend(bulk.steps(level).map(name_bulk));
            }
            for _ in 0..bulk.alternations {
                named.extend(bulk.steps(bulk.level).map(name_bulk));
            }
        }
    }
    named
}

fn name_bulk((position, step): (usize, Step)) -> Named {
    Named {
        kind: RoundKind::Bulk { position },
        step,
    }
}

/// No setting rises by more than the limit; the full value follows the last of them.
fn small_steps(inputs: &Inputs, named: &[Named]) -> bool {
    let by_hand = named
        .iter()
        .all(|named| !matches!(named.kind, RoundKind::Bulk { .. }));
    let mut levels: Vec<f64> = named.iter().map(|named| named.step.level).collect();
    // After a driver the rest of the way is short by its own limit.
    if by_hand {
        levels.push(1.0);
    }
    levels
        .windows(2)
        .all(|pair| pair[1] - pair[0] <= inputs.greatest_rise + 1e-9)
}

/// The body stays square enough, through the first full-value round.
fn upright(inputs: &Inputs, named: &[Named]) -> bool {
    inputs.springs.all().into_iter().all(|springs| {
        let mut state = State::snug(springs);
        let full = full_step(springs);
        let mut steps = named.iter().map(|named| &named.step).chain([&full]);
        steps.all(|step| run(springs, &mut state, step).tilt <= inputs.greatest_tilt)
    })
}

fn full_step(springs: &Springs) -> Step {
    Step::one_by_one((0..springs.count).collect(), 1.0)
}

/// Adds the full-value rounds: as many as the high band needs.
fn with_full_rounds(inputs: &Inputs, named: Vec<Named>) -> Planned {
    let mut runs = inputs
        .springs
        .map(|springs| Run::new(springs, &named, inputs.deficit));
    let full_rounds = runs.map(|run| run.rounds_to(inputs.deficit));
    let flat_rule = runs.map(Run::flat_rule);
    let most = full_rounds.all().into_iter().copied().max();
    let rounds = named.len() + most.unwrap_or(1);
    for run in [&mut runs.low, &mut runs.likely, &mut runs.high] {
        run.go_on(|records| records.len() >= rounds);
    }
    let of_full = Named {
        kind: RoundKind::Full,
        step: full_step(&inputs.springs.likely),
    };
    let rounds = (0..rounds)
        .map(|index| {
            let named = named.get(index).unwrap_or(&of_full);
            Round {
                kind: named.kind,
                share: named.step.level,
                torque: named.step.level * inputs.torque,
                order: named.step.order.iter().map(|index| index + 1).collect(),
                predicted: runs.map(|run| run.records.get(index).cloned().unwrap_or_default()),
            }
        })
        .collect();
    Planned {
        rounds,
        full_rounds,
        flat_rule,
        within_limits: true,
    }
}

/// One band's run through the opening and as many full-value rounds as anybody asks for.
struct Run<'a> {
    springs: &'a Springs,
    state: State<'a>,
    opening: usize,
    records: Vec<Record>,
}

impl<'a> Run<'a> {
    /// Until the wanted mean load stands and the flat rule is met.
    fn new(springs: &'a Springs, named: &[Named], deficit: f64) -> Self {
        let mut state = State::snug(springs);
        let records = named
            .iter()
            .map(|named| run(springs, &mut state, &named.step))
            .collect();
        let mut own = Self {
            springs,
            state,
            opening: named.len(),
            records,
        };
        let done = |record: &Record| is_loaded(record, deficit) && is_still(record);
        own.go_on(|records| records.len() > named.len() && records.last().is_some_and(done));
        own
    }

    /// Full-value rounds until `enough`, and never more than the most.
    fn go_on(&mut self, enough: impl Fn(&[Record]) -> bool) {
        let full = full_step(self.springs);
        while self.records.len() < self.opening + MOST_FULL_ROUNDS && !enough(&self.records) {
            let record = run(self.springs, &mut self.state, &full);
            self.records.push(record);
        }
    }

    fn full(&self) -> &[Record] {
        self.records.get(self.opening..).unwrap_or_default()
    }

    /// Full-value rounds until no more than this is missing, and one at least.
    fn rounds_to(&self, deficit: f64) -> usize {
        let index = self
            .full()
            .iter()
            .position(|record| is_loaded(record, deficit));
        index.map_or(MOST_FULL_ROUNDS, |index| index + 1)
    }

    fn flat_rule(&self) -> FlatRule {
        let index = self.full().iter().position(is_still);
        let index = index.unwrap_or(MOST_FULL_ROUNDS - 1);
        let record = self.full().get(index);
        FlatRule {
            rounds: index + 1,
            mean: record.map_or(0.0, |record| record.mean),
            least: record.map_or(0.0, |record| record.least),
        }
    }
}

fn is_loaded(record: &Record, deficit: f64) -> bool {
    record.mean >= 1.0 - deficit
}

/// Nobody moved as far as the flat rule says.
fn is_still(record: &Record) -> bool {
    record.largest_turn < FLAT_RULE.to_radians()
}
