//! Multi-jackbolt tensioners: what a plan of rounds does to one stud, and how it is let go again.
//!
//! Friction, settling and the creep of gaskets are left out: what is worked out here is predicted, not measured.

mod bands;
mod driver;
mod driver_pays;
mod driver_settings;
mod enter;
pub mod exhibits;
mod finish;
mod hours;
pub mod ids;
mod loosening;
mod method;
mod names;
mod parts;
mod passes;
mod release;
pub(crate) mod release_rules;
mod rounds;
pub(crate) mod rules;
mod simulate;
mod springs;
mod state;
mod stiffness;
mod strength;
mod work;

pub use bands::Bands;
pub use driver::{DriverInputs, DriverPlan, MOST_POSITIONS, REVERSAL, positions};
pub use driver_pays::DriverPays;
pub(super) use method::METHOD;
pub use release::{
    ExactRound, GREATEST_STEP, LEAST_STEP, MOST_ROUNDS, ReleaseBreach, ReleaseInputs, ReleasePlan,
    ReleaseRound, exact_release, peak_of_round, peak_of_running_loose,
};
pub use rounds::{FLAT_RULE, FlatRule, MOST_FULL_ROUNDS};
pub use simulate::{Record, Step, run, run_all};
pub use springs::{Contraction, Deficit, Springs};
pub use state::State;

use crate::standards::{jackbolts, symbols};

/// As the job writes it.
pub const WORD: &str = "multi-jackbolt tensioner";
/// Its name in the wording.
const ID: &str = "jackbolt";
/// Shortest stud, in diameters.
pub const SHORTEST: f64 = 1.0;
/// Longest stud, in diameters.
pub const LONGEST: f64 = 30.0;
/// Beyond this many diameters the prediction has not been checked against others.
pub const CHECKED_TO: f64 = 20.0;
/// Mean turns (degrees) for which the table of deficits is printed.
const TABLE_TURNS: [f64; 10] = [1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 10.0, 13.0, 16.0, 20.0];
/// Peak of an angle finish, as a share of the full load: it is a tightening and stays gentler than a release.
const FINISH_PEAK: f64 = 1.15;

/// Everything that the plan of one tensioner hangs on.
#[derive(Clone, Debug, PartialEq)]
pub struct Inputs {
    /// The springs with soft, likely and stiff jackbolts.
    pub springs: Bands<Springs>,
    /// The order in which jackbolts are seated and raised, from 0.
    pub order: Vec<usize>,
    /// The full torque of a jackbolt, N·m.
    pub torque: f64,
    /// Share of the full value at which the body is seated.
    pub seat: f64,
    /// What one step of the wrench is of the full value.
    pub grain: f64,
    /// By how much a raising round may lift the setting, as a share of the full value.
    pub greatest_rise: f64,
    /// Gap difference across the body that no round may pass, m.
    pub greatest_tilt: f64,
    /// Mean deficit that may be left at the end.
    pub deficit: f64,
    /// The driver, where there is one.
    pub driver: Option<DriverInputs>,
    /// What is asked of the release.
    pub release: ReleaseInputs,
}

/// What a round is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundKind {
    /// Seats the body at a low value.
    Seat,
    /// Raises the load step by step.
    Raise,
    /// The driver, in this position from 0.
    Bulk {
        /// Which jackbolts: every so many-th, from this one on.
        position: usize,
    },
    /// At the full value, in circle.
    Full,
}

/// One round of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// What it is for.
    pub kind: RoundKind,
    /// Share of the full value that is set.
    pub share: f64,
    /// The torque that this is, N·m.
    pub torque: f64,
    /// The jackbolts in their order, from 1.
    pub order: Vec<usize>,
    /// What it leaves.
    pub predicted: Bands<Record>,
}

/// What is predicted of one band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prediction {
    /// Stiffness of all other jackbolts over that of stud and joint.
    pub ring_ratio: f64,
    /// What a round in circle leaves of a deficit.
    pub contraction: f64,
    /// Turn of one jackbolt alone from snug, rad.
    pub turn_one: f64,
    /// Turn of every jackbolt from snug until all stand at their load, rad.
    pub turn_all: f64,
    /// Full-value rounds until the wanted mean load stands.
    pub full_rounds: usize,
    /// Largest turn of a round that guarantees the wanted mean load, rad.
    pub stop_turn: f64,
    /// What a round with a largest turn of 20° is never worse than.
    pub flat_bound: Deficit,
    /// What such a round leaves to be expected.
    pub flat_expected: Deficit,
    /// Where the plan stands when the flat rule is just met.
    pub flat_rule: FlatRule,
}

/// One row of the table that a crew reads off: mean turn of the last round, and what is still missing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeficitRow {
    /// Mean turn of the last whole round, rad.
    pub mean_turn: f64,
    /// What the stud lacks, as a share of its target.
    pub deficit: Bands<f64>,
}

/// The end of the work by angle instead of by further rounds: from the even load that a driver leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AngleFinish {
    /// Even load at its start, as a share.
    pub level: f64,
    /// Rounds of equal turns.
    pub rounds: usize,
    /// Turn of each, rad.
    pub turn: Bands<f64>,
}

/// The rounds of a stud that is loaded by hand alone.
#[derive(Clone, Debug, PartialEq)]
pub struct ByHand {
    /// All rounds.
    pub rounds: Vec<Round>,
    /// The least number of full-value rounds.
    pub full_rounds: usize,
    /// Where they stand when the flat rule is just met.
    pub flat_rule: Bands<FlatRule>,
}

/// Where the work goes on by hand when the driver is lost in one of its steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Restart {
    /// Share of the step that broke.
    pub lost: f64,
    /// Share that every stud has: that of the last whole step.
    pub stands: f64,
    /// The hand round that comes next, by its place among the rounds of [`ByHand`].
    pub next: usize,
}

/// The plan of one tensioner.
#[derive(Clone, Debug, PartialEq)]
pub struct JackboltPlan {
    /// Number of jackbolts.
    pub count: usize,
    /// The evenly spaced ones that are seated first, from 1.
    pub first: Vec<usize>,
    /// The order of seating and raising, from 1.
    pub order: Vec<usize>,
    /// All rounds; as many at full value as the high band needs.
    pub rounds: Vec<Round>,
    /// The least number of full-value rounds: N of the card.
    pub full_rounds: usize,
    /// What the driver does.
    pub driver: Option<DriverPlan>,
    /// The same stud by hand alone: where no driver is to be had, or it fails on the way.
    pub by_hand: Option<ByHand>,
    /// What is predicted.
    pub predictions: Bands<Prediction>,
    /// How the stud is let go.
    pub release: ReleasePlan,
    /// The table of deficits.
    pub deficit: Vec<DeficitRow>,
    /// The end by angle, where a driver leaves the stud even.
    pub finish: Option<AngleFinish>,
    /// Whether every round stays within the limits of rise and tilt.
    pub within_limits: bool,
    /// Whether the flat rule alone may leave more than was asked for.
    pub flat_rule_leaves: bool,
    /// Whether the stud is no longer than what the prediction has been checked for.
    pub checked: bool,
}

impl JackboltPlan {
    /// Whether the driver runs the jackbolts out once the hand rounds have shown that every one moves.
    pub const fn drives_loosening(&self) -> bool {
        self.driver.is_some() && self.release.breach.is_none()
    }

    /// For each level of the driver, the hand round that comes next when the driver is lost in it. What it had begun
    /// counts as not done: the first hand round above the last whole step begins anew at the first jackbolt.
    pub fn restarts(&self) -> Vec<Restart> {
        let Some(by_hand) = &self.by_hand else {
            return Vec::new();
        };
        let mut restarts: Vec<Restart> = Vec::new();
        let mut stands = 0.0;
        for (index, round) in self.rounds.iter().enumerate() {
            let is_bulk = matches!(round.kind, RoundKind::Bulk { .. });
            let is_new = restarts.last().is_none_or(|it| round.share > it.lost);
            if is_bulk && is_new {
                let above = |it: &Round| it.share > stands * (1.0 + 1e-9);
                if let Some(next) = by_hand.rounds.iter().position(above) {
                    let lost = round.share;
                    restarts.push(Restart { lost, stands, next });
                }
            }
            // All positions and alternations of a level have to be through before it stands.
            let goes_on = self.rounds.get(index + 1).is_some_and(|next| {
                matches!(next.kind, RoundKind::Bulk { .. }) && next.share <= round.share
            });
            if !(is_bulk && goes_on) {
                stands = round.share;
            }
        }
        restarts
    }

    /// How many of its rounds are of such a kind.
    pub fn count_of(&self, kind: impl Fn(RoundKind) -> bool) -> usize {
        self.rounds.iter().filter(|round| kind(round.kind)).count()
    }
}

/// The plan of one tensioner.
pub fn plan(inputs: &Inputs) -> JackboltPlan {
    let springs = &inputs.springs;
    let driver = inputs.driver.as_ref();
    let bulk = driver.and_then(|driver| driver::Bulk::new(springs, inputs.seat, driver));
    let planned = rounds::plan(inputs, bulk.as_ref());
    let most = |counts: &Bands<usize>| counts.all().into_iter().copied().max().unwrap_or(1);
    let predictions = springs
        .zip(&planned.full_rounds)
        .zip(&planned.flat_rule)
        .map(|((springs, full_rounds), flat_rule)| {
            predict(springs, inputs.deficit, **full_rounds, **flat_rule)
        });
    let left = planned.flat_rule.map(|rule| 1.0 - rule.mean);
    let is_bulk = |round: &&Round| matches!(round.kind, RoundKind::Bulk { .. });
    let last_bulk = planned.rounds.iter().rfind(is_bulk);
    let reached = last_bulk.map(|round| round.predicted.map(|record| record.mean));
    let driver = bulk
        .as_ref()
        .zip(driver)
        .zip(reached)
        .map(|((bulk, driver), reached)| bulk.plan(driver, reached));
    JackboltPlan {
        count: springs.likely.count,
        first: evenly_spaced(springs.likely.count),
        order: inputs.order.iter().map(|index| index + 1).collect(),
        full_rounds: most(&planned.full_rounds),
        by_hand: driver.is_some().then(|| by_hand(inputs)),
        rounds: planned.rounds,
        driver,
        predictions,
        release: release::plan(springs, &inputs.release),
        deficit: TABLE_TURNS
            .iter()
            .map(|turn| deficit_row(springs, turn.to_radians()))
            .collect(),
        finish: bulk
            .filter(|bulk| bulk.positions == 1)
            .map(|bulk| angle_finish(springs, bulk.level)),
        within_limits: planned.within_limits,
        flat_rule_leaves: left.greatest() > inputs.deficit,
        checked: true,
    }
}

fn by_hand(inputs: &Inputs) -> ByHand {
    let planned = rounds::plan(inputs, None);
    let most = planned.full_rounds.all().into_iter().copied().max();
    ByHand {
        rounds: planned.rounds,
        full_rounds: most.unwrap_or(1),
        flat_rule: planned.flat_rule,
    }
}

fn predict(springs: &Springs, deficit: f64, full_rounds: usize, flat_rule: FlatRule) -> Prediction {
    let flat = FLAT_RULE.to_radians();
    Prediction {
        ring_ratio: springs.ring_ratio,
        contraction: springs.contraction().of_round,
        turn_one: springs.turn_one,
        turn_all: springs.turn_all,
        full_rounds,
        stop_turn: springs.stop_turn(deficit),
        flat_bound: springs.deficit_bound(flat),
        flat_expected: springs.deficit_expected(flat),
        flat_rule,
    }
}

fn deficit_row(springs: &Bands<Springs>, turn: f64) -> DeficitRow {
    DeficitRow {
        mean_turn: turn,
        deficit: springs.map(|springs| springs.deficit_of_mean_turn(turn)),
    }
}

fn angle_finish(springs: &Bands<Springs>, level: f64) -> AngleFinish {
    let finishes = springs.map(|springs| springs.angle_finish(level, FINISH_PEAK));
    let rounds = finishes.map(|(rounds, _)| *rounds);
    let rounds = rounds.all().into_iter().copied().max().unwrap_or(1);
    let known = [
        (symbols::LEVEL, level),
        (symbols::FINISH_ROUNDS, rounds as f64),
    ];
    AngleFinish {
        level,
        rounds,
        turn: springs.map(|springs| springs.closed(&jackbolts::FINISH_TURN_OF, &known)),
    }
}

/// Four jackbolts a quarter of the circle apart where the count allows it, else three, as evenly as it does; from 1.
fn evenly_spaced(count: usize) -> Vec<usize> {
    let corners = if count.is_multiple_of(4) { 4 } else { 3 };
    (0..corners)
        .map(|corner| (2 * corner * count + corners) / (2 * corners) + 1)
        .collect()
}
