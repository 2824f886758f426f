//! Letting a stud go: every jackbolt by the same small angle in each round, so that the last one of a round never
//! carries more than its limit.

use super::bands::Bands;
use super::springs::Springs;
use super::state::State;
use crate::standards::{jackbolts, symbols};

/// The smallest angle that a crew can read off a paint line (common practice), in degrees.
pub const LEAST_STEP: f64 = 5.0;
/// The largest angle of a round, an eighth of a turn (common practice), in degrees.
pub const GREATEST_STEP: f64 = 45.0;
/// More rounds are not asked of a crew.
pub const MOST_ROUNDS: usize = 22;

/// What is asked of the release.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReleaseInputs {
    /// Highest load of a jackbolt as a share of its installed load.
    pub limit: f64,
    /// Angle of the first round where the job gives it, rad.
    pub first_step: Option<f64>,
}

/// One round of loosening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReleaseRound {
    /// Angle by which every jackbolt is turned back, rad, as printed; `None`: each is run loose in turn.
    pub angle: Option<f64>,
    /// What the stud still carries after the round, as a share of the installed load.
    pub mean_left: Bands<f64>,
    /// The highest load of a jackbolt in the round, as a share of the installed load; the worst of the bands.
    pub peak: f64,
}

/// Why a release in rounds is not to be had.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReleaseBreach {
    /// A round passes the limit even with the smallest angle that can be set; the number of the round from 1.
    Peak {
        /// The round.
        round: usize,
        /// The load of its last jackbolt as a share of the installed load.
        peak: f64,
    },
    /// More rounds than are asked of a crew.
    Rounds,
}

/// How a stud is let go.
#[derive(Clone, Debug, PartialEq)]
pub struct ReleasePlan {
    /// Highest load of a jackbolt as a share of its installed load.
    pub limit: f64,
    /// First angle by the closed form, rad, not rounded.
    pub first_angle: f64,
    /// The rounds.
    pub rounds: Vec<ReleaseRound>,
    /// Rounds at most by the closed form.
    pub rounds_bound: usize,
    /// Why the rounds alone will not do; then all jackbolts must be released at once by a driver, or the stud unloaded
    /// by a tensioner that pulls it.
    pub breach: Option<ReleaseBreach>,
    /// What the last jackbolt carries if the others are run loose one after the other, as a share.
    pub all_but_one: f64,
    /// What a seized jackbolt loses when the others are brought up to 1.1 of their load by torque, as a share.
    pub seized_loss: Bands<f64>,
}

/// The highest load (as a share) while every jackbolt in turn is moved from an even level by `back`.
fn peak_of(springs: &Springs, level: f64, back: impl Fn(&mut State<'_>, usize)) -> f64 {
    let mut state = State::even(springs, level);
    let mut peak = level;
    for index in 0..springs.count {
        back(&mut state, index);
        let loads = state.loads();
        peak = loads
            .iter()
            .fold(peak, |peak, load| peak.max(load / springs.load));
    }
    peak
}

/// The highest load while every jackbolt in turn is turned back by an angle (rad).
pub fn peak_of_round(springs: &Springs, level: f64, angle: f64) -> f64 {
    peak_of(springs, level, |state, index| state.turn(index, -angle))
}

/// The highest load while every jackbolt in turn is run loose.
pub fn peak_of_running_loose(springs: &Springs, level: f64) -> f64 {
    peak_of(springs, level, |state, index| state.run_loose(index))
}

/// One round of the exact plan: angle (rad; `None`: run loose), peak, even load left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExactRound {
    /// Angle, rad.
    pub angle: Option<f64>,
    /// The highest load in it.
    pub peak: f64,
    /// The even load that it leaves.
    pub level: f64,
}

/// The release with the largest angles that keep within the limit, whether or not they can be set; at most `most` rounds.
pub fn exact_release(springs: &Springs, limit: f64, most: usize) -> Vec<ExactRound> {
    let mut level = 1.0;
    let mut rounds = Vec::new();
    while rounds.len() < most {
        let loose = peak_of_running_loose(springs, level);
        if loose <= limit * (1.0 + 1e-12) {
            rounds.push(ExactRound {
                angle: None,
                peak: loose,
                level: 0.0,
            });
            break;
        }
        let angle = largest_angle(springs, level, limit);
        level -= angle / springs.turn_all;
        rounds.push(ExactRound {
            angle: Some(angle),
            peak: peak_of_round(springs, level + angle / springs.turn_all, angle),
            level,
        });
    }
    rounds
}

/// The largest angle (rad) of a round within the limit: by halving, since the peak rises with the angle.
fn largest_angle(springs: &Springs, level: f64, limit: f64) -> f64 {
    let (mut within, mut beyond) = (0.0, level * springs.turn_all);
    for _ in 0..60 {
        let middle = (within + beyond) / 2.0;
        if peak_of_round(springs, level, middle) <= limit {
            within = middle;
        } else {
            beyond = middle;
        }
    }
    within
}

/// The plan in whole degrees that a crew can set, within the limit at both ends of what is not known.
pub(super) fn plan(springs: &Bands<Springs>, inputs: &ReleaseInputs) -> ReleasePlan {
    let mut planner = Planner {
        springs,
        limit: inputs.limit,
        levels: Bands::each(|| 1.0),
        last: LEAST_STEP,
    };
    let mut rounds = Vec::new();
    let mut breach = None;
    loop {
        if let Some(loose) = planner.run_loose() {
            rounds.push(loose);
            break;
        }
        if rounds.len() + 1 >= MOST_ROUNDS {
            breach = breach.or(Some(ReleaseBreach::Rounds));
            break;
        }
        let given = inputs.first_step.filter(|_| rounds.is_empty());
        let round = planner.next(given.map(f64::to_degrees));
        rounds.push(round);
        if round.peak > inputs.limit * (1.0 + 1e-9) && breach.is_none() {
            breach = Some(ReleaseBreach::Peak {
                round: rounds.len(),
                peak: round.peak,
            });
        }
    }
    let limit = [(symbols::PEAK_LIMIT, inputs.limit)];
    let first = springs.map(|springs| springs.closed(&jackbolts::RELEASE_TURN_OF, &limit));
    let bounds = springs.map(|springs| springs.release_rounds(inputs.limit));
    let last = springs.map(|springs| springs.closed(&jackbolts::LAST_SHARE_OF, &[]));
    let raised = [(symbols::PEAK_LIMIT, 1.1)];
    ReleasePlan {
        limit: inputs.limit,
        first_angle: first.least(),
        rounds,
        rounds_bound: bounds.all().into_iter().copied().max().unwrap_or(1),
        breach,
        all_but_one: last.greatest(),
        seized_loss: springs.map(|springs| springs.closed(&jackbolts::SEIZED_LOSS_OF, &raised)),
    }
}

/// Goes from round to round with all bands at once.
struct Planner<'a> {
    springs: &'a Bands<Springs>,
    limit: f64,
    levels: Bands<f64>,
    /// The angle of the last round, in degrees: the next is never smaller.
    last: f64,
}

impl Planner<'_> {
    fn peak(&self, degrees: f64) -> f64 {
        let of = |(springs, level): &(&Springs, &f64)| {
            peak_of_round(springs, **level, degrees.to_radians())
        };
        self.springs.zip(&self.levels).map(of).greatest()
    }

    /// The last round, once every jackbolt may be run loose in turn.
    fn run_loose(&self) -> Option<ReleaseRound> {
        let of = |(springs, level): &(&Springs, &f64)| peak_of_running_loose(springs, **level);
        let peak = self.springs.zip(&self.levels).map(of).greatest();
        (peak <= self.limit).then(|| ReleaseRound {
            angle: None,
            mean_left: Bands::each(|| 0.0),
            peak,
        })
    }

    fn next(&mut self, given: Option<f64>) -> ReleaseRound {
        let degrees = given.unwrap_or_else(|| self.largest());
        let peak = self.peak(degrees);
        self.last = self.last.max(degrees.min(GREATEST_STEP));
        let left = |(springs, level): &(&Springs, &f64)| {
            (**level - degrees.to_radians() / springs.turn_all).max(0.0)
        };
        self.levels = self.springs.zip(&self.levels).map(left);
        ReleaseRound {
            angle: Some(degrees.to_radians()),
            mean_left: self.levels,
            peak,
        }
    }

    /// The largest whole degrees within the limit, from the last angle up.
    fn largest(&self) -> f64 {
        let mut degrees = self.last;
        while degrees + 1.0 <= GREATEST_STEP && self.peak(degrees + 1.0) <= self.limit {
            degrees += 1.0;
        }
        degrees
    }
}
