//! The chart of a plan of rounds: load of the stud after each step with its band, and the turn of the
//! jackbolts in each full-value round against the angles at which rounds may end.
//!
//! Every place is found here, in mm from the upper left corner of the chart, so that the template only
//! draws. The template keeps to black lines and filled dots, so nothing is lost on a copier.

use serde::Serialize;

use super::chart::{Mark, round_step};
use crate::document::blocks::Head;
use crate::document::width;
use crate::units::digits;

/// Height of the drawing above the names of the steps, in mm.
const HEIGHT: f64 = 40.0;
/// Left end and length of the two axes, in mm.
const LOAD: (f64, f64) = (10.0, 96.0);
const TURN: (f64, f64) = (122.0, 52.0);
/// Size of names and numbers, in pt, and the white between two of them, in mm.
const LABEL_SIZE: f64 = 8.0;
const LABEL_GAP: f64 = 1.2;
/// Least distance of two numbers at an axis, in mm.
const MARK_STEP: f64 = 3.6;
/// Most steps or rounds that are told apart on paper.
pub const MOST_STEPS: usize = 48;

/// The words of the chart.
#[derive(Clone, Debug, Default)]
pub struct PlanWords {
    /// Title and remark.
    pub head: Head,
    /// What it shows, for a reader that cannot see it.
    pub alt: String,
    /// Over the axis of loads: `stud load, % of full value`.
    pub load: String,
    /// Over the axis of turns: `largest turn in the round, deg`.
    pub turn: String,
    /// The signs of the loads explained, in one line.
    pub load_legend: String,
    /// The lines of the turns explained, at most two lines.
    pub turn_legend: Vec<String>,
}

/// The load of the stud after a step, in percent of its full value.
#[derive(Clone, Debug)]
pub struct StepLoad {
    /// `C0`, `D1`, `C1`.
    pub name: String,
    /// Low end of the prediction.
    pub low: f64,
    /// The likely value.
    pub likely: f64,
    /// High end.
    pub high: f64,
}

/// The largest turn of a jackbolt in a full-value round, in degrees.
#[derive(Clone, Debug)]
pub struct RoundTurn {
    /// `C1`.
    pub name: String,
    /// The likely value.
    pub likely: f64,
    /// High end of the prediction.
    pub high: f64,
}

/// The angles at which rounds may end, in degrees.
#[derive(Clone, Copy, Debug)]
pub struct EndAngles {
    /// That of common practice, drawn as a broken line.
    pub practice: f64,
    /// That of this stud, drawn as a whole line.
    pub own: f64,
}

/// The chart with everything in its place.
#[derive(Clone, Debug, Serialize)]
pub struct Plan {
    /// Title and remark.
    pub head: Head,
    /// What it shows, for a reader that cannot see it.
    pub alt: String,
    /// Loads and turns.
    pub panels: [Panel; 2],
}

/// One of the two drawings.
#[derive(Clone, Debug, Serialize)]
pub struct Panel {
    /// Over the axis.
    pub title: String,
    /// Left end of the drawing.
    pub from: f64,
    /// Its length.
    pub length: f64,
    /// Its height: the place of zero from above.
    pub height: f64,
    /// Whether the values are bars from zero; else dots on a line.
    pub bars: bool,
    /// Width of a bar or a whisker's ends.
    pub pitch: f64,
    /// Numbers at the axis, `at` from above.
    pub marks: Vec<Mark>,
    /// Steps or rounds from left to right.
    pub points: Vec<Point>,
    /// Lines across.
    pub lines: Vec<Line>,
    /// The signs explained.
    pub legend: Vec<String>,
}

/// A step or round.
#[derive(Clone, Debug, Serialize)]
pub struct Point {
    /// Its place from the left edge of the chart.
    pub x: f64,
    /// The likely value, from above.
    pub likely: f64,
    /// Low and high end, from above.
    pub ends: [f64; 2],
    /// Its name; empty where there is no room for all.
    pub name: String,
    /// The likely value as printed; empty with the name.
    pub text: String,
}

/// A line across a drawing.
#[derive(Clone, Debug, Serialize)]
pub struct Line {
    /// From above.
    pub at: f64,
    /// Whether it is broken.
    pub broken: bool,
}

/// Puts the plan on its two axes. `None` when there is nothing to draw, too much of it, or a number
/// is not finite.
pub fn plan(
    words: PlanWords,
    steps: &[StepLoad],
    rounds: &[RoundTurn],
    ends: EndAngles,
) -> Option<Plan> {
    let loads: Vec<[f64; 3]> = steps
        .iter()
        .map(|it| [it.low, it.likely, it.high])
        .collect();
    let turns: Vec<[f64; 3]> = rounds
        .iter()
        .map(|it| [it.likely, it.likely, it.high])
        .collect();
    let lines = [ends.practice, ends.own];
    let all = loads.iter().chain(&turns).flatten().chain(&lines);
    let counts = [loads.len(), turns.len()];
    if all.clone().any(|value| !value.is_finite())
        || counts
            .into_iter()
            .any(|count| count == 0 || count > MOST_STEPS)
    {
        return None;
    }
    let names: Vec<&str> = steps.iter().map(|it| it.name.as_str()).collect();
    let load_axis = Axis::over(loads.iter().flatten().copied().chain([100.0]));
    let load = Panel {
        title: words.load,
        bars: false,
        marks: load_axis.marks(&[100.0]),
        lines: vec![load_axis.line(100.0, false)],
        legend: vec![words.load_legend],
        ..panel(LOAD, &load_axis, &names, &loads)
    };
    let names: Vec<&str> = rounds.iter().map(|it| it.name.as_str()).collect();
    let turn_axis = Axis::over(turns.iter().flatten().copied().chain(lines));
    let turn = Panel {
        title: words.turn,
        bars: true,
        marks: turn_axis.marks(&lines),
        lines: vec![
            turn_axis.line(ends.practice, true),
            turn_axis.line(ends.own, false),
        ],
        legend: words.turn_legend,
        ..panel(TURN, &turn_axis, &names, &turns)
    };
    Some(Plan {
        head: words.head,
        alt: words.alt,
        panels: [load, turn],
    })
}

/// The points of a drawing; names only where they keep apart, the last one always.
fn panel(place: (f64, f64), axis: &Axis, names: &[&str], values: &[[f64; 3]]) -> Panel {
    let (from, length) = place;
    let pitch = length / real(names.len());
    let texts: Vec<String> = values.iter().map(|it| whole(it[1])).collect();
    let widest = names
        .iter()
        .copied()
        .chain(texts.iter().map(String::as_str))
        .map(|text| width::of(text, LABEL_SIZE))
        .fold(0.0, f64::max);
    let every = (1..=names.len())
        .find(|every| real(*every) * pitch >= widest + LABEL_GAP)
        .unwrap_or(names.len());
    let last = names.len() - 1;
    let point = |index: usize| {
        let [low, likely, high] = values[index];
        let named = (last - index).is_multiple_of(every);
        let shown = |text: &str| {
            if named {
                text.to_owned()
            } else {
                String::new()
            }
        };
        Point {
            x: from + (real(index) + 0.5) * pitch,
            likely: axis.at(likely),
            ends: [axis.at(low), axis.at(high)],
            name: shown(names[index]),
            text: shown(&texts[index]),
        }
    };
    Panel {
        title: String::new(),
        from,
        length,
        height: HEIGHT,
        bars: false,
        pitch,
        marks: Vec::new(),
        points: (0..names.len()).map(point).collect(),
        lines: Vec::new(),
        legend: Vec::new(),
    }
}

fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

/// A value of the chart without decimals from 10 on: the drawing shows no more. Just below 100 it
/// keeps one, so that a load that is not there does not read as the full value.
fn whole(value: f64) -> String {
    if value.abs() >= 10.0 && !(99.0..100.0).contains(&value) {
        digits(value.round())
    } else {
        digits((value * 10.0).round() / 10.0)
    }
}

/// From zero to a round number.
struct Axis {
    step: f64,
    most: f64,
}

impl Axis {
    fn over(values: impl Iterator<Item = f64>) -> Self {
        let greatest = values.fold(0.0, f64::max).max(1e-9);
        let step = round_step(greatest / 8.0);
        let steps = (1..=20).find(|steps| f64::from(*steps) * step >= greatest - 1e-9);
        Self {
            step,
            most: step * f64::from(steps.unwrap_or(20)),
        }
    }

    fn at(&self, value: f64) -> f64 {
        HEIGHT * (1.0 - value / self.most)
    }

    fn line(&self, value: f64, broken: bool) -> Line {
        Line {
            at: self.at(value),
            broken,
        }
    }

    /// The values of the lines, then those round numbers that keep clear of them and of one another.
    fn marks(&self, lines: &[f64]) -> Vec<Mark> {
        let mut marks: Vec<Mark> = Vec::new();
        let steps = (0..=20_u32).map(|step| f64::from(step) * self.step);
        let round = steps.take_while(|value| *value <= self.most + 1e-9);
        for value in lines.iter().copied().chain(round) {
            let at = self.at(value);
            if marks.iter().all(|mark| (mark.at - at).abs() >= MARK_STEP) {
                marks.push(Mark {
                    at,
                    text: whole(value),
                });
            }
        }
        marks
    }
}

/// What the crew reads from the mean turn of its last round without the program.
#[derive(Clone, Debug, Serialize)]
pub struct Lookup {
    /// Title and remark.
    pub head: Head,
    /// The words of the two lines: mean turn with its unit, load still missing with its unit.
    pub labels: [String; 2],
    /// Turn and missing load, at most ten pairs.
    pub entries: Vec<[String; 2]>,
    /// How it is used and what it does not know.
    pub notes: Vec<String>,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steps(count: usize) -> Vec<StepLoad> {
        let step = |index: usize| StepLoad {
            name: format!("C{index}"),
            low: 40.0,
            likely: 60.0,
            high: 104.0,
        };
        (0..count).map(step).collect()
    }

    fn rounds(count: usize) -> Vec<RoundTurn> {
        let round = |index: usize| RoundTurn {
            name: format!("C{index}"),
            likely: 20.0,
            high: 33.0,
        };
        (0..count).map(round).collect()
    }

    const ENDS: EndAngles = EndAngles {
        practice: 20.0,
        own: 3.0,
    };

    #[test]
    fn names_keep_apart_and_the_last_one_stands() {
        for count in [1, 4, 12, 30, 48] {
            let plan = plan(PlanWords::default(), &steps(count), &rounds(count), ENDS);
            for panel in plan.expect("finite").panels {
                let named: Vec<&Point> = panel
                    .points
                    .iter()
                    .filter(|it| !it.name.is_empty())
                    .collect();
                for pair in named.windows(2) {
                    let room = pair[1].x - pair[0].x;
                    assert!(room > width::of(&pair[1].name, LABEL_SIZE), "{count}");
                }
                assert!(panel.points.last().is_some_and(|it| !it.name.is_empty()));
            }
        }
    }

    #[test]
    fn values_stand_inside_and_in_proportion() {
        let plan = plan(PlanWords::default(), &steps(3), &rounds(3), ENDS).expect("finite");
        let [load, turn] = plan.panels;
        for point in load.points.iter().chain(&turn.points) {
            assert!(point.ends.iter().all(|at| (0.0..=HEIGHT).contains(at)));
            assert!(point.ends[0] >= point.likely && point.likely >= point.ends[1]);
        }
        // 60 stands three fifths of the way from zero to the line at 100.
        let share = (HEIGHT - load.points[0].likely) / (HEIGHT - load.lines[0].at);
        assert!((share - 0.6).abs() < 1e-12);
        let values: Vec<&str> = turn.marks.iter().map(|mark| mark.text.as_str()).collect();
        assert!(values.starts_with(&["20", "3"]), "{values:?}");
    }

    #[test]
    fn a_load_that_is_not_full_does_not_read_as_full() {
        assert_eq!(
            [99.6, 98.6, 104.2, 5.64].map(whole),
            ["99.6", "99", "104", "5.6"]
        );
    }

    #[test]
    fn what_is_not_a_number_is_not_drawn() {
        let mut wrong = steps(2);
        wrong[1].high = f64::NAN;
        assert!(plan(PlanWords::default(), &wrong, &rounds(2), ENDS).is_none());
        assert!(plan(PlanWords::default(), &[], &rounds(2), ENDS).is_none());
        assert!(plan(PlanWords::default(), &steps(49), &rounds(2), ENDS).is_none());
    }
}
