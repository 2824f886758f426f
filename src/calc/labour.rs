//! Hours of work on a joint, from building blocks in minutes of the whole crew.
//!
//! Every block is a range: low, typical, high. Source of all figures in this file: common
//! practice, no source; they hold for an experienced crew with good access, and the times that a
//! site really needed replace them. The sum follows
//! `T = T_fixed + sum over rounds (ceil(n / k) * t_cycle * f) + holds`, labour = `T * crew`.

use crate::units::{Duration, Length, Quantity};

/// The product of the factors is never taken above this: stacked guesses are worse than one.
pub const GREATEST_FACTOR: f64 = 2.5;

/// A range of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// When all goes well.
    pub low: Duration,
    /// What a schedule is built on.
    pub typical: Duration,
    /// What the risk column shows.
    pub high: Duration,
}

impl Span {
    /// No time at all.
    pub const ZERO: Self = Self::minutes(0.0, 0.0, 0.0);

    /// From minutes.
    pub const fn minutes(low: f64, typical: f64, high: f64) -> Self {
        Self {
            low: Duration::minutes(low),
            typical: Duration::minutes(typical),
            high: Duration::minutes(high),
        }
    }

    /// The same so many times over.
    #[must_use]
    pub fn times(self, count: f64) -> Self {
        self.map(|time| Duration::from_si(time.si() * count))
    }

    /// Both, one after the other.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let sum = |a: Duration, b: Duration| Duration::from_si(a.si() + b.si());
        Self {
            low: sum(self.low, other.low),
            typical: sum(self.typical, other.typical),
            high: sum(self.high, other.high),
        }
    }

    /// Rounded as it is printed; see [`to_print`].
    #[must_use]
    pub fn to_print(self) -> Self {
        self.map(to_print)
    }

    fn map(self, change: impl Fn(Duration) -> Duration) -> Self {
        Self {
            low: change(self.low),
            typical: change(self.typical),
            high: change(self.high),
        }
    }
}

/// Rounds to 0.1 h up to 4 h and to 0.5 h beyond: nobody plans a shift to the minute.
pub fn to_print(time: Duration) -> Duration {
    let hours = time.si() / 3600.0;
    let steps_per_hour = if hours <= 4.0 { 10.0 } else { 2.0 };
    Duration::from_si((hours * steps_per_hour).round() / steps_per_hour * 3600.0)
}

macro_rules! blocks {
    ($($(#[$doc:meta])* $name:ident = $key:literal, $low:expr, $typical:expr, $high:expr;)*) => {
        /// A building block of the counts.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Block { $($(#[$doc])* $name,)* }

        impl Block {
            /// The key of its words.
            pub const fn key(self) -> &'static str {
                match self { $(Self::$name => $key,)* }
            }

            /// The time of one unit of this block. [`Block::CleanFaces`] hangs on a diameter and is zero here: see
            /// [`clean_faces`].
            pub const fn span(self) -> Span {
                match self { $(Self::$name => Span::minutes($low, $typical, $high),)* }
            }
        }
    };
}

// Minutes: low, typical, high.
blocks! {
    /// Walk to the permit, own lock on, brief; per shift and joint.
    PermitAndBrief = "permit", 20.0, 40.0, 90.0;
    // The driver with its supply is set up and tried as a pump with its tool is.
    /// Set up pump and hoses, try the tool; per set-up.
    SetUpPump = "pump", 15.0, 25.0, 45.0;
    // The driver with its supply is set up and tried as a pump with its tool is.
    /// Set up a multi-spindle driver with its supply and lift, try it; per set-up.
    SetUpDriver = "set_up_driver", 15.0, 25.0, 45.0;
    /// Clean faces, inspect, record; per joint, by the diameter of the seat.
    CleanFaces = "faces", 0.0, 0.0, 0.0;
    /// Clean, chase and lubricate one stud with its nut.
    LubricateStud = "lubricate", 1.0, 2.0, 4.0;
    // Only the ends of the next two ranges are known: typical is their middle.
    /// Bring the gasket in and align; per joint.
    GasketIn = "gasket", 10.0, 20.0, 30.0;
    /// Run one stud down and snug it.
    Snug = "snug", 1.5, 2.25, 3.0;
    /// Run the body of one tensioner down by hand, its tips retracted.
    RunBodyDown = "run_body_down", 1.5, 2.25, 3.0;
    /// One stud in one pass with a torque wrench by hand.
    TorqueByHand = "by_hand", 0.5, 0.8, 1.5;
    /// One stud in one pass with a torque wrench and a multiplier.
    TorqueByMultiplier = "by_multiplier", 1.0, 1.5, 2.5;
    /// One stud in one pass with a hydraulic torque wrench.
    TorqueByHydraulicWrench = "by_hydraulic", 1.5, 2.5, 5.0;
    /// One nut marked and turned by an angle.
    TurnNut = "turn_nut", 0.8, 1.3, 2.0;
    /// One stud in one check round at the final value.
    CheckRound = "check", 0.5, 0.9, 1.5;
    /// One stud in one release round by hand.
    LoosenByHand = "loosen_by_hand", 0.4, 0.8, 1.5;
    /// One stud in one release round with a hydraulic torque wrench.
    LoosenByHydraulicWrench = "loosen_by_hydraulic", 1.0, 2.0, 4.0;
    // A stud with twelve jackbolts is complete by hand in 8 to 25 min: six rounds of twelve.
    /// One jackbolt in one round by hand.
    JackboltByHand = "jackbolt_by_hand", 8.0 / 72.0, 14.0 / 72.0, 25.0 / 72.0;
    /// One setting of a multi-spindle driver on one stud, with its reversal and lift-off.
    DriverOnStud = "driver_on_stud", 2.0, 3.0, 5.0;
    // After the driver the hand rounds of such a stud take 2 to 7 min: three rounds of twelve.
    /// One jackbolt in one full round by hand after a driver, which has left it little to turn.
    JackboltFinish = "jackbolt_finish", 2.0 / 36.0, 4.0 / 36.0, 7.0 / 36.0;
    /// One jackbolt in one release round by hand.
    LoosenJackbolt = "loosen_jackbolt", 0.15, 0.25, 0.5;
    /// One set of gap readings.
    Gaps = "gaps", 3.0, 5.0, 8.0;
    /// Stretch of one stud.
    Stretch = "stretch", 0.7, 1.2, 2.5;
    // 15 to 30 min each: typical is the middle.
    /// Waiting at one hold point.
    Hold = "hold", 15.0, 22.5, 30.0;
    /// Record, sign, tag; per joint.
    Record = "record", 8.0, 12.0, 20.0;
    /// Clear the area; per joint.
    ClearArea = "clear", 10.0, 15.0, 30.0;
}

/// Cleaning and inspecting both faces of a seat of this diameter: 20, 35, 60 and 120 min at 300,
/// 600, 1,000 and 2,000 mm, straight lines between them and beyond the last; 20 min below the
/// first. One figure is known, so it stands for low, typical and high.
pub fn clean_faces(seat: Length) -> Span {
    const KNOWN: [(f64, f64); 4] = [
        (300.0, 20.0),
        (600.0, 35.0),
        (1000.0, 60.0),
        (2000.0, 120.0),
    ];
    let diameter = seat.to_mm().max(KNOWN[0].0);
    let mut minutes = KNOWN[0].1;
    for pair in KNOWN.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        if diameter > from.0 {
            minutes = from.1 + (diameter - from.0) / (to.0 - from.0) * (to.1 - from.1);
        }
    }
    Span::minutes(minutes, minutes, minutes)
}

/// What is done to a joint, and what a card is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// The joint is opened.
    Loosen,
    /// The joint is closed and loaded.
    Tighten,
    /// A loaded joint is looked at again, after 24 h or after first runs.
    Recheck,
}

impl Task {
    /// Every task, in the order in which a joint sees them.
    pub const ALL: [Self; 3] = [Self::Loosen, Self::Tighten, Self::Recheck];

    /// The key of its words.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Loosen => "loosen",
            Self::Tighten => "tighten",
            Self::Recheck => "recheck",
        }
    }
}

/// The counts that the hours of one joint hang on.
#[derive(Clone, Debug, PartialEq)]
pub struct Counts {
    /// What is done.
    pub task: Task,
    /// Number of studs.
    pub studs: usize,
    /// What is set up before the tools can run.
    pub set_up: Option<Block>,
    /// How a stud is brought to snug when tightening.
    pub run_down: Block,
    /// The blocks of the tools, each as often as it is worked.
    pub tools: Vec<(Block, usize)>,
    /// Sets of gap readings.
    pub gap_sets: usize,
    /// Hold points at which the crew waits.
    pub holds: usize,
    /// Outer diameter of the seat, when the faces are cleaned and a gasket goes in.
    pub seat: Option<Length>,
    /// Factors of place, weather and state (1.1 for night...), each at least 1.
    pub factors: Vec<f64>,
    /// People in the crew.
    pub crew: usize,
}

/// One line of the sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// The block.
    pub block: Block,
    /// How many of it.
    pub count: usize,
    /// Its time, factors included.
    pub time: Span,
}

/// The hours of one joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Labour {
    /// The lines of the sum, in the order of the counts.
    pub lines: Vec<Line>,
    /// The factor on the tool work, at most [`GREATEST_FACTOR`].
    pub factor: f64,
    /// By the clock.
    pub elapsed: Span,
    /// Elapsed time of everybody in the crew.
    pub labour: Span,
    /// The part in which the tools run.
    pub tool: Span,
}

/// The hours of one joint, from its counts.
pub fn labour(counts: &Counts) -> Labour {
    let factor = counts
        .factors
        .iter()
        .product::<f64>()
        .clamp(1.0, GREATEST_FACTOR);
    let tool_lines: Vec<Line> = counts
        .tools
        .iter()
        .map(|&(block, count)| Line {
            block,
            count,
            time: block.span().times(number(count) * factor),
        })
        .collect();
    let tool = total(&tool_lines);
    let mut lines: Vec<Line> = before(counts);
    lines.extend(tool_lines);
    lines.extend(after(counts));
    lines.retain(|line| line.count > 0);
    let elapsed = total(&lines);
    Labour {
        lines,
        factor,
        elapsed,
        labour: elapsed.times(number(counts.crew)),
        tool,
    }
}

fn before(counts: &Counts) -> Vec<Line> {
    let mut lines = vec![plain(Block::PermitAndBrief, 1)];
    lines.extend(counts.set_up.map(|block| plain(block, 1)));
    if counts.task == Task::Tighten {
        if let Some(seat) = counts.seat {
            lines.push(Line {
                block: Block::CleanFaces,
                count: 1,
                time: clean_faces(seat),
            });
        }
        lines.push(plain(Block::LubricateStud, counts.studs));
        lines.push(plain(Block::GasketIn, usize::from(counts.seat.is_some())));
        lines.push(plain(counts.run_down, counts.studs));
    }
    lines
}

fn after(counts: &Counts) -> [Line; 4] {
    [
        plain(Block::Gaps, counts.gap_sets),
        plain(Block::Hold, counts.holds),
        plain(Block::Record, 1),
        plain(Block::ClearArea, 1),
    ]
}

fn plain(block: Block, count: usize) -> Line {
    Line {
        block,
        count,
        time: block.span().times(number(count)),
    }
}

fn total(lines: &[Line]) -> Span {
    lines
        .iter()
        .fold(Span::ZERO, |sum, line| sum.and(line.time))
}

/// Counts on a joint are far below 2^32; one beyond it would stand at that bound.
fn number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

#[cfg(test)]
mod tests;
