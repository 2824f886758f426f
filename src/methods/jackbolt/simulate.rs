//! A plan, step by step: what every round leaves on the jackbolts and how far each of them turned.

use super::springs::Springs;
use super::state::State;

/// One round of turning.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The jackbolts in their order, from 0.
    pub order: Vec<usize>,
    /// To which share of the full load.
    pub level: f64,
    /// Whether all of them are turned at once.
    pub together: bool,
    /// What each jackbolt of the stud gets of that share, by number; empty for all of it.
    pub factors: Vec<f64>,
}

impl Step {
    /// One after the other.
    pub const fn one_by_one(order: Vec<usize>, level: f64) -> Self {
        Self {
            order,
            level,
            together: false,
            factors: Vec::new(),
        }
    }

    /// All at once, with what each spindle makes of the setting.
    pub const fn at_once(order: Vec<usize>, level: f64, factors: Vec<f64>) -> Self {
        Self {
            order,
            level,
            together: true,
            factors,
        }
    }

    fn load(&self, index: usize, full: f64) -> f64 {
        self.level * full * self.factors.get(index).copied().unwrap_or(1.0)
    }
}

/// What a round leaves; loads as shares of the full load.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record {
    /// Load of the stud.
    pub mean: f64,
    /// Least loaded jackbolt.
    pub least: f64,
    /// Most loaded jackbolt.
    pub greatest: f64,
    /// Largest turn in the round, rad.
    pub largest_turn: f64,
    /// Mean turn of all jackbolts in the round, rad.
    pub mean_turn: f64,
    /// Greatest tilt of the body on the way, as a difference of gaps, m.
    pub tilt: f64,
    /// Turn of each jackbolt, rad.
    pub turns: Vec<f64>,
    /// Load of each jackbolt.
    pub loads: Vec<f64>,
}

/// Works one round.
pub fn run(springs: &Springs, state: &mut State<'_>, step: &Step) -> Record {
    let mut turns = vec![0.0; springs.count];
    let mut tilt: f64 = 0.0;
    if step.together {
        let loads: Vec<f64> = step
            .order
            .iter()
            .map(|&index| step.load(index, springs.load))
            .collect();
        let turned = state.together(&step.order, &loads);
        for (&index, turn) in step.order.iter().zip(turned) {
            add(&mut turns, index, turn);
        }
        tilt = state.tilt();
    } else {
        for &index in &step.order {
            let turn = state.tighten(index, step.load(index, springs.load));
            add(&mut turns, index, turn);
            tilt = tilt.max(state.tilt());
        }
    }
    record(springs, state, turns, tilt)
}

fn add(turns: &mut [f64], index: usize, turn: f64) {
    if let Some(sum) = turns.get_mut(index) {
        *sum += turn;
    }
}

fn record(springs: &Springs, state: &State<'_>, turns: Vec<f64>, tilt: f64) -> Record {
    let loads: Vec<f64> = state
        .loads()
        .iter()
        .map(|load| load / springs.load)
        .collect();
    let count = springs.count as f64;
    Record {
        mean: loads.iter().sum::<f64>() / count,
        least: loads.iter().copied().fold(f64::INFINITY, f64::min),
        greatest: loads.iter().copied().fold(0.0, f64::max),
        largest_turn: turns.iter().copied().fold(0.0, f64::max),
        mean_turn: turns.iter().sum::<f64>() / count,
        tilt,
        turns,
        loads,
    }
}

/// Works a plan from snug.
pub fn run_all(springs: &Springs, steps: &[Step]) -> Vec<Record> {
    let mut state = State::snug(springs);
    steps
        .iter()
        .map(|step| run(springs, &mut state, step))
        .collect()
}
