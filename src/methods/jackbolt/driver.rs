//! The driver that turns all jackbolts of a stud at once, or every second or third of them in turn.

use super::bands::Bands;
use super::simulate::{Step, run};
use super::springs::Springs;
use super::state::State;
use crate::standards::jackbolts::greatest_level;

/// The brief reversal that frees the sockets stays below this share of the bulk setting: a jackbolt needs 0.45 to
/// 0.75 of its torque to come back.
pub const REVERSAL: f64 = 1.0 / 3.0;
/// More positions than a crew can keep apart.
pub const MOST_POSITIONS: usize = 4;
/// Going round the positions again is given up when it gains the stud no more than this.
const LEAST_GAIN: f64 = 0.05;
/// It is never done more often.
const MOST_ALTERNATIONS: usize = 3;

/// What is known of the driver.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriverInputs {
    /// Number of spindles.
    pub spindles: usize,
    /// Share of the full value that it is set to.
    pub level: f64,
    /// ± limit from spindle to spindle.
    pub scatter: f64,
}

/// What the driver does.
#[derive(Clone, Debug, PartialEq)]
pub struct DriverPlan {
    /// Number of spindles.
    pub spindles: usize,
    /// In how many positions it is set on one stud: the spindles' count divides the jackbolts' count.
    pub positions: usize,
    /// The jackbolts of each position, from 1.
    pub jackbolts: Vec<Vec<usize>>,
    /// Share of the full value that it is set to.
    pub level: f64,
    /// The highest level that its scatter allows.
    pub level_greatest: f64,
    /// How often all positions are gone through at the last level.
    pub alternations: usize,
    /// What the stud carries then, as a share of the target.
    pub stud_load_reached: Bands<f64>,
    /// Highest torque of the reversal, as a share of the full torque.
    pub reversal_greatest: f64,
    /// What the check wrench is set to after lift-off, as a share of the full torque.
    pub check: f64,
}

/// The block steps of a driver that fits.
pub(super) struct Bulk {
    pub(super) level: f64,
    pub(super) positions: usize,
    pub(super) alternations: usize,
    count: usize,
    factors: Vec<f64>,
}

/// Positions of a head on a stud: one, or an exact divisor of the count. `None` where the head does not fit.
pub fn positions(count: usize, spindles: usize) -> Option<usize> {
    if spindles == 0 || !count.is_multiple_of(spindles) {
        return None;
    }
    let positions = count / spindles;
    (positions <= MOST_POSITIONS && spindles >= 2).then_some(positions)
}

impl Bulk {
    /// The bulk of a driver that fits the stud, with as many alternations as are worth while.
    pub(super) fn new(springs: &Bands<Springs>, seat: f64, driver: &DriverInputs) -> Option<Self> {
        let count = springs.likely.count;
        let positions = positions(count, driver.spindles)?;
        let mut bulk = Self {
            level: driver.level,
            positions,
            alternations: 1,
            count,
            factors: spread(count, driver.scatter),
        };
        if positions > 1 {
            bulk.alternations = bulk.worth_while(&springs.likely, seat);
        }
        Some(bulk)
    }

    /// One step for each position, with its number from 0.
    pub(super) fn steps(&self, level: f64) -> impl Iterator<Item = (usize, Step)> {
        (0..self.positions).map(move |position| {
            let order = self.members(position).collect();
            (position, Step::at_once(order, level, self.factors.clone()))
        })
    }

    fn members(&self, position: usize) -> impl Iterator<Item = usize> {
        (position..self.count).step_by(self.positions)
    }

    fn worth_while(&self, springs: &Springs, seat: f64) -> usize {
        let mut state = State::snug(springs);
        run(
            springs,
            &mut state,
            &Step::one_by_one((0..self.count).collect(), seat),
        );
        let mut before = 0.0;
        for round in 1..=MOST_ALTERNATIONS {
            let mean = self.alternate(springs, &mut state);
            if mean - before < LEAST_GAIN {
                return (round - 1).max(1);
            }
            before = mean;
        }
        MOST_ALTERNATIONS
    }

    /// Goes through all positions once and returns the mean load.
    fn alternate(&self, springs: &Springs, state: &mut State<'_>) -> f64 {
        let steps: Vec<Step> = self.steps(self.level).map(|(_, step)| step).collect();
        steps
            .iter()
            .map(|step| run(springs, state, step).mean)
            .last()
            .unwrap_or(0.0)
    }

    pub(super) fn plan(&self, driver: &DriverInputs, reached: Bands<f64>) -> DriverPlan {
        DriverPlan {
            spindles: driver.spindles,
            positions: self.positions,
            jackbolts: (0..self.positions)
                .map(|position| self.members(position).map(|index| index + 1).collect())
                .collect(),
            level: self.level,
            level_greatest: greatest_level(driver.scatter),
            alternations: self.alternations,
            stud_load_reached: reached,
            reversal_greatest: self.level * REVERSAL,
            check: self.level * (1.0 - driver.scatter),
        }
    }
}

/// What each spindle makes of the setting: an even spread with a standard deviation of half the ± limit (a limit is
/// read as two of them), laid round the circle so that high and low ones alternate.
fn spread(count: usize, scatter: f64) -> Vec<f64> {
    let half_width = scatter / 2.0 * 3.0_f64.sqrt();
    let value = |rank: usize| {
        let place = (2 * rank + 1) as f64 / count as f64 - 1.0;
        1.0 + half_width * place
    };
    (0..count)
        .map(|index| {
            let rank = if index.is_multiple_of(2) {
                index / 2
            } else {
                count - 1 - index / 2
            };
            value(rank)
        })
        .collect()
}
