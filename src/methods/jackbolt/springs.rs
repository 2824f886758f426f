//! The springs of one stud with its jackbolts, and what follows from them in closed form.

use crate::formula::{Formula, Symbol};
use crate::standards::jackbolts;
use crate::standards::symbols as s;

/// One stud, its body and clamped parts as one spring; equal jackbolts beside each other against it.
#[derive(Clone, Debug, PartialEq)]
pub struct Springs {
    /// Number of jackbolts.
    pub count: usize,
    /// Stiffness of one jackbolt, N/m.
    pub jackbolt: f64,
    /// Stiffness of stud, body and clamped parts together, N/m.
    pub joint: f64,
    /// Pitch of a jackbolt, m.
    pub pitch: f64,
    /// Full load of one jackbolt, N.
    pub load: f64,
    /// Stiffness of one jackbolt over that of the joint.
    pub stiffness_ratio: f64,
    /// Stiffness of all other jackbolts over that of the joint: the number that governs everything.
    pub ring_ratio: f64,
    /// What every other jackbolt loses for each unit that one gains.
    pub load_loss: f64,
    /// Turn of one jackbolt alone from snug to its load, the others tight, rad.
    pub turn_one: f64,
    /// Turn of every jackbolt from snug until all stand at their load, rad.
    pub turn_all: f64,
}

/// How fast rounds in circle bring the jackbolts together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contraction {
    /// What a whole round leaves of a deficit, as a share.
    pub of_round: f64,
    /// The same from one jackbolt to the next.
    pub of_step: f64,
}

/// What a round at full value may leave undone, as shares of the target.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deficit {
    /// Of the stud.
    pub mean: f64,
    /// Of its worst jackbolt.
    pub worst: f64,
}

impl Springs {
    /// From the compliances (m/N) of one jackbolt and of the joint, the pitch (m) and the full load (N) of one jackbolt.
    pub fn new(count: usize, jackbolt: f64, joint: f64, pitch: f64, load: f64) -> Self {
        let mut known = vec![
            (s::JACKBOLTS, count as f64),
            (s::JACKBOLT_COMPLIANCE, jackbolt),
            (s::JOINT_COMPLIANCE, joint),
            (s::JACKBOLT_PITCH, pitch),
            (s::JACKBOLT_LOAD, load),
        ];
        let mut next = |formula: &Formula| {
            let value = formula.value_with(&known);
            known.push((formula.symbol, value));
            value
        };
        Self {
            count,
            jackbolt: 1.0 / jackbolt,
            joint: 1.0 / joint,
            pitch,
            load,
            stiffness_ratio: next(&jackbolts::STIFFNESS_RATIO_OF),
            ring_ratio: next(&jackbolts::RING_RATIO_OF),
            load_loss: next(&jackbolts::LOAD_LOSS_OF),
            turn_one: {
                next(&jackbolts::OWN_COMPLIANCE_OF);
                next(&jackbolts::TURN_ONE_OF)
            },
            turn_all: next(&jackbolts::TURN_ALL_OF),
        }
    }

    /// A closed form of these springs; `more` are its inputs that the springs do not know.
    pub fn closed(&self, formula: &Formula, more: &[(Symbol, f64)]) -> f64 {
        let mut known = vec![
            (s::JACKBOLTS, self.count as f64),
            (s::STIFFNESS_RATIO, self.stiffness_ratio),
            (s::RING_RATIO, self.ring_ratio),
            (s::TURN_ALL, self.turn_all),
            (s::TURN_ONE, self.turn_one),
        ];
        known.extend_from_slice(more);
        formula.value_with(&known)
    }

    /// The advance of every jackbolt from snug when all stand at `share` of their load, m.
    pub fn advance(&self, share: f64) -> f64 {
        share * self.turn_all / std::f64::consts::TAU * self.pitch
    }

    /// The contraction of rounds in circle, whatever the order. With w the growth from one jackbolt to the one
    /// before it, the jump of each jackbolt makes good what the n − 1 jumps since its last turn took from it:
    /// ρ (w + w² + … + wⁿ⁻¹) = 1.
    pub fn contraction(&self) -> Contraction {
        if self.count < 2 || self.load_loss <= 0.0 {
            return Contraction {
                of_round: 0.0,
                of_step: 0.0,
            };
        }
        let wanted = 1.0 / self.load_loss;
        let terms = self.count - 1;
        // The last term alone is below the sum, so the start is at or above the root; the sum is convex and
        // rising, so Newton's steps come down to the root and never pass it.
        let mut growth = libm::pow(wanted, 1.0 / terms as f64);
        for _ in 0..100 {
            let (mut sum, mut slope) = (0.0, 0.0);
            for _ in 0..terms {
                slope = slope * growth + sum + 1.0;
                sum = (sum + 1.0) * growth;
            }
            let step = (sum - wanted) / slope;
            growth -= step;
            if step.abs() <= 1e-15 * growth {
                break;
            }
        }
        Contraction {
            of_round: libm::pow(growth, -(self.count as f64)),
            of_step: 1.0 / growth,
        }
    }

    /// Never passed after a round at full value whose largest turn was `turn` (rad), if every jackbolt was turned.
    pub fn deficit_bound(&self, turn: f64) -> Deficit {
        let turn = [(s::LARGEST_TURN, turn)];
        Deficit {
            mean: self.closed(&jackbolts::MEAN_BOUND_OF, &turn).min(1.0),
            worst: self.closed(&jackbolts::WORST_BOUND_OF, &turn).min(1.0),
        }
    }

    /// To be expected after such a round, once the turns shrink evenly from round to round.
    pub fn deficit_expected(&self, turn: f64) -> Deficit {
        let Contraction { of_round, of_step } = self.contraction();
        let jump = turn / self.turn_one;
        // Each jackbolt has lost ρ times the jumps that followed its own.
        let (mut sum, mut power) = (0.0, 1.0);
        for later in 1..=self.count {
            sum += (later - 1) as f64 * power;
            power *= of_step;
        }
        let mean = self.load_loss / self.count as f64 * sum * jump;
        Deficit {
            mean: mean.min(1.0),
            worst: (of_round * jump).min(1.0),
        }
    }

    /// The mean deficit to expect from the mean turn (rad) of the last whole round.
    pub fn deficit_of_mean_turn(&self, turn: f64) -> f64 {
        let value = self.closed(&jackbolts::DEFICIT_OF_TURN, &[(s::MEAN_TURN, turn)]);
        value.min(1.0)
    }

    /// The largest turn (rad) of a round that guarantees a mean deficit.
    pub fn stop_turn(&self, deficit: f64) -> f64 {
        self.closed(&jackbolts::STOP_TURN_OF, &[(s::DEFICIT, deficit)])
    }

    /// Rounds in circle from an even level to a mean deficit; the step by step calculation needs this many or one more.
    pub fn full_rounds(&self, level: f64, deficit: f64) -> usize {
        if self.ring_ratio <= 0.0 || 1.0 - level <= deficit {
            return 1;
        }
        let known = [(s::LEVEL, level), (s::DEFICIT, deficit)];
        round_up(self.closed(&jackbolts::FULL_ROUNDS_OF, &known)).max(1)
    }

    /// Rounds of loosening at most, within a peak.
    pub fn release_rounds(&self, limit: f64) -> usize {
        round_up(self.closed(&jackbolts::RELEASE_ROUNDS_OF, &[(s::PEAK_LIMIT, limit)])).max(1)
    }

    /// The even load below which each jackbolt may be run loose in turn within a peak.
    pub fn run_loose_level(&self, limit: f64) -> f64 {
        let level = self.closed(&jackbolts::RUN_LOOSE_LEVEL_OF, &[(s::PEAK_LIMIT, limit)]);
        level.min(1.0)
    }

    /// Rounds of equal turns that bring an even level to the full value within a peak, and the turn (rad) of each.
    pub fn angle_finish(&self, level: f64, limit: f64) -> (usize, f64) {
        let known = [(s::LEVEL, level), (s::PEAK_LIMIT, limit)];
        let rounds = round_up(self.closed(&jackbolts::FINISH_ROUNDS_OF, &known)).max(1);
        let known = [(s::LEVEL, level), (s::FINISH_ROUNDS, rounds as f64)];
        (rounds, self.closed(&jackbolts::FINISH_TURN_OF, &known))
    }

    /// Loads (as shares) to which each jackbolt in turn would have to be brought so that one round from an even
    /// level ends even at the full value: what the later ones will take from it, added beforehand.
    pub fn compensated_round(&self, level: f64) -> Vec<f64> {
        let later = |place: usize| (self.count - place) as f64;
        (1..=self.count)
            .map(|place| 1.0 + self.stiffness_ratio * later(place) * (1.0 - level))
            .collect()
    }
}

/// Up to a whole number, but not for a rounding error; at most what a `u16` holds.
pub(super) fn round_up(value: f64) -> usize {
    let wanted = libm::ceil(value - 1e-9);
    (0..=u16::MAX)
        .find(|&number| f64::from(number) >= wanted)
        .map_or(usize::from(u16::MAX), usize::from)
}
