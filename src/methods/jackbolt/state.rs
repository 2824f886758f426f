//! How far each jackbolt has been turned, and what it carries: contact in one direction only.
//!
//! The advance of a jackbolt is its travel from snug at zero load. With δ the give of stud and joint, jackbolt i
//! carries k · max(0, a_i − δ), and all of them together carry K · δ. Loads hang on the advances alone, so the
//! order in which they came about does not matter.

use std::f64::consts::TAU;

use super::springs::Springs;

/// The jackbolts of one stud at one moment.
#[derive(Clone, Debug)]
pub struct State<'a> {
    springs: &'a Springs,
    advances: Vec<f64>,
    /// By how much a resting jackbolt holds more than its setting before it moves, as a share of the setting.
    breakaway: f64,
}

impl<'a> State<'a> {
    /// All jackbolts snug and without load.
    pub fn snug(springs: &'a Springs) -> Self {
        Self::even(springs, 0.0)
    }

    /// All jackbolts at this share of their load.
    pub fn even(springs: &'a Springs, share: f64) -> Self {
        Self {
            springs,
            advances: vec![springs.advance(share); springs.count],
            breakaway: 0.0,
        }
    }

    /// The same with friction that must be broken before a resting jackbolt moves.
    #[must_use]
    pub fn with_breakaway(mut self, share: f64) -> Self {
        self.breakaway = share;
        self
    }

    /// The advances from snug, m.
    pub fn advances(&self) -> &[f64] {
        &self.advances
    }

    /// The loads, N.
    pub fn loads(&self) -> Vec<f64> {
        let give = self.give(0.0, &[]);
        self.advances
            .iter()
            .map(|advance| self.springs.jackbolt * (advance - give).max(0.0))
            .collect()
    }

    /// The give δ of stud and joint under these jackbolts and a load beside them; those in `without` do not count.
    ///
    /// What is missing, K δ − P − Σ k max(0, a_i − δ), is a rising and concave function of δ, so from a δ that is
    /// too small each line through the jackbolts still in contact comes nearer and never passes the root.
    fn give(&self, beside: f64, without: &[usize]) -> f64 {
        let Springs {
            jackbolt, joint, ..
        } = *self.springs;
        let mut give = beside / joint;
        let mut in_contact = usize::MAX;
        loop {
            let pushing = self
                .advances
                .iter()
                .enumerate()
                .filter(|(index, advance)| **advance > give && !without.contains(index));
            let (count, sum) = pushing.fold((0, 0.0), |(count, sum), (_, advance)| {
                (count + 1, sum + advance)
            });
            if count == in_contact || count == 0 {
                return give;
            }
            in_contact = count;
            give = (beside + jackbolt * sum) / (joint + count as f64 * jackbolt);
        }
    }

    fn load_of(&self, index: usize) -> f64 {
        let give = self.give(0.0, &[]);
        let advance = self.advances.get(index).copied().unwrap_or(0.0);
        self.springs.jackbolt * (advance - give).max(0.0)
    }

    /// Turns one jackbolt until it carries `load` (N); a wrench that tightens never turns it back. Returns the turn, rad.
    pub fn tighten(&mut self, index: usize, load: f64) -> f64 {
        // The last bits of a load that was set before are no reason to turn.
        if self.load_of(index) >= load / (1.0 + self.breakaway) * (1.0 - 1e-12) {
            return 0.0;
        }
        let wanted = self.give(load, &[index]) + load / self.springs.jackbolt;
        match self.advances.get_mut(index) {
            Some(advance) if wanted > *advance => {
                let moved = wanted - *advance;
                *advance = wanted;
                moved / self.springs.pitch * TAU
            }
            _ => 0.0,
        }
    }

    /// Turns several jackbolts at once until each carries its load (N), as spindles do. One that would have to turn
    /// back stays where it is. Returns the turns in the order of `group`, rad.
    pub fn together(&mut self, group: &[usize], loads: &[f64]) -> Vec<f64> {
        let mut turning: Vec<(usize, f64)> = group
            .iter()
            .copied()
            .zip(loads.iter().copied())
            .filter(|(index, _)| *index < self.advances.len())
            .collect();
        let moved = loop {
            let members: Vec<usize> = turning.iter().map(|(index, _)| *index).collect();
            let beside: f64 = turning.iter().map(|(_, load)| load).sum();
            let give = self.give(beside, &members);
            let wanted = |load: f64| give + load / self.springs.jackbolt;
            let before = turning.len();
            let advances = &self.advances;
            turning.retain(|&(index, load)| wanted(load) >= advances[index]);
            if turning.len() == before {
                break turning
                    .iter()
                    .map(|&(index, load)| (index, wanted(load)))
                    .collect::<Vec<_>>();
            }
        };
        let before = self.advances.clone();
        for (index, advance) in moved {
            self.advances[index] = advance;
        }
        group
            .iter()
            .map(
                |&index| match (self.advances.get(index), before.get(index)) {
                    (Some(now), Some(then)) => (now - then) / self.springs.pitch * TAU,
                    _ => 0.0,
                },
            )
            .collect()
    }

    /// Turns one jackbolt by an angle (rad), forward or back.
    pub fn turn(&mut self, index: usize, angle: f64) {
        if let Some(advance) = self.advances.get_mut(index) {
            *advance += angle / TAU * self.springs.pitch;
        }
    }

    /// Runs one jackbolt loose.
    pub fn run_loose(&mut self, index: usize) {
        if let Some(advance) = self.advances.get_mut(index) {
            *advance = f64::NEG_INFINITY;
        }
    }

    /// Gap that the advances tilt the body by, from one side of the circle to the other, m: twice the first
    /// harmonic round the circle, as if the stud did not resist at all.
    pub fn tilt(&self) -> f64 {
        let count = self.advances.len() as f64;
        let (mut along, mut across) = (0.0, 0.0);
        for (index, advance) in self.advances.iter().enumerate() {
            let angle = TAU * index as f64 / count;
            along += advance * libm::cos(angle);
            across += advance * libm::sin(angle);
        }
        2.0 * 2.0 / count * libm::hypot(along, across)
    }
}
