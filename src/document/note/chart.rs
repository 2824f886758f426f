//! The chart of loads: bands of least, target and greatest load against the lines of the limits.
//!
//! Places are found here, in mm, so that the template only draws and labels never run into each
//! other.

use serde::Serialize;

use crate::document::blocks::Head;
use crate::document::width;
use crate::units::digits;

/// Left end and length of the axis, in mm from the text edge.
const AXIS_START: f64 = 36.0;
const AXIS_LENGTH: f64 = 140.0;
/// Size of the labels, in pt, and the height of one row of them, in mm.
const LABEL_SIZE: f64 = 9.5;
const LABEL_ROW: f64 = 4.6;
/// White between a line and its label, in mm.
const LABEL_GAP: f64 = 1.2;

/// A band before it has its place.
#[derive(Clone, Debug)]
pub struct Span {
    /// What the band is: `while tightening`.
    pub label: String,
    /// Least load.
    pub least: f64,
    /// Target load.
    pub target: f64,
    /// Greatest load.
    pub greatest: f64,
}

/// The chart with everything in its place.
#[derive(Clone, Debug, Serialize)]
pub struct Chart {
    /// Title with the unit, and remark.
    pub head: Head,
    /// What it shows, for a reader that cannot see it.
    pub alt: String,
    /// Height of the labels over the bands, in mm.
    pub labels_height: f64,
    /// The marks of the axis.
    pub ticks: Vec<Mark>,
    /// The bands from top to bottom.
    pub bands: Vec<Band>,
    /// The limits.
    pub limits: Vec<Limit>,
}

/// A number at a place of the axis.
#[derive(Clone, Debug, Serialize)]
pub struct Mark {
    /// In mm from the text edge.
    pub at: f64,
    /// As printed.
    pub text: String,
}

/// A band.
#[derive(Clone, Debug, Serialize)]
pub struct Band {
    /// What it is.
    pub label: String,
    /// Its left end.
    pub least: Mark,
    /// The heavy mark in it.
    pub target: Mark,
    /// Its right end.
    pub greatest: Mark,
    /// Whether the numbers have room in the band; else they stand in one line behind it.
    pub inside: bool,
}

/// A line of a limit with its label.
#[derive(Clone, Debug, Serialize)]
pub struct Limit {
    /// Place and value.
    pub mark: Mark,
    /// What limits.
    pub label: String,
    /// Row of the label, 0 next to the bands.
    pub row: usize,
    /// Whether the label ends at the line instead of beginning there.
    pub before: bool,
}

/// Puts bands and limits, all in the unit of the axis, on one axis. `None` when there is nothing
/// to draw or a number is not finite.
pub fn chart(head: Head, alt: String, bands: &[Span], limits: &[(String, f64)]) -> Option<Chart> {
    let values = bands
        .iter()
        .flat_map(|band| [band.least, band.target, band.greatest]);
    let all: Vec<f64> = values.chain(limits.iter().map(|limit| limit.1)).collect();
    if bands.is_empty() || all.iter().any(|value| !value.is_finite()) {
        return None;
    }
    let axis = Axis::over(&all);
    let mut limits: Vec<Limit> = limits
        .iter()
        .map(|(label, value)| Limit {
            mark: axis.mark(*value),
            label: label.clone(),
            row: 0,
            before: false,
        })
        .collect();
    let rows = place_labels(&mut limits);
    Some(Chart {
        head,
        alt,
        labels_height: f64::from(rows) * LABEL_ROW,
        ticks: axis.ticks(),
        bands: bands.iter().map(|band| axis.band(band)).collect(),
        limits,
    })
}

/// A stretch of numbers with round ends.
struct Axis {
    from: f64,
    step: f64,
    steps: u32,
}

impl Axis {
    fn over(values: &[f64]) -> Self {
        let least = values.iter().copied().fold(f64::INFINITY, f64::min);
        let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let span = (most - least).max(most.abs() * 1e-3).max(1e-9);
        let step = round_step(span / 5.0);
        let from = (least / step).floor() * step;
        let mut steps = 1;
        while from + f64::from(steps) * step < most && steps < 20 {
            steps += 1;
        }
        Self { from, step, steps }
    }

    fn mark(&self, value: f64) -> Mark {
        let share = (value - self.from) / (self.step * f64::from(self.steps));
        Mark {
            at: AXIS_START + share * AXIS_LENGTH,
            text: digits(value),
        }
    }

    fn ticks(&self) -> Vec<Mark> {
        (0..=self.steps)
            .map(|tick| self.mark(self.from + f64::from(tick) * self.step))
            .collect()
    }

    fn band(&self, band: &Span) -> Band {
        let (least, target, greatest) = (
            self.mark(band.least),
            self.mark(band.target),
            self.mark(band.greatest),
        );
        let room = |text: &str| width::of(text, LABEL_SIZE) + 2.0 * LABEL_GAP;
        let inside = target.at - least.at >= room(&least.text)
            && greatest.at - target.at >= room(&target.text) + room(&greatest.text);
        Band {
            label: band.label.clone(),
            least,
            target,
            greatest,
            inside,
        }
    }
}

/// The next 1, 2 or 5 times a power of ten.
pub(super) fn round_step(wanted: f64) -> f64 {
    let mut power = 1.0;
    while power * 10.0 <= wanted {
        power *= 10.0;
    }
    while power > wanted {
        power /= 10.0;
    }
    let steps = [1.0, 2.0, 5.0, 10.0];
    let step = steps.into_iter().find(|step| step * power >= wanted);
    step.unwrap_or(10.0) * power
}

/// Gives each label a side and a row in as few rows as possible, so that it runs into no other
/// label and across no line that reaches up to it; returns the number of rows. Limits are few, so
/// trying all ways is quick; more than eight stand one label a row.
fn place_labels(limits: &mut [Limit]) -> u32 {
    limits.sort_by(|a, b| a.mark.at.total_cmp(&b.mark.at));
    let lengths: Vec<f64> = limits.iter().map(label_length).collect();
    let most = limits.len();
    let found = (1..=most.min(8)).find_map(|rows| try_rows(&lengths, limits, rows));
    let places = found.unwrap_or_else(|| one_label_a_row(&lengths, limits));
    for (limit, place) in limits.iter_mut().zip(&places) {
        (limit.row, limit.before) = (place.row, place.before);
    }
    let rows = places.iter().map(|place| place.row + 1).max();
    u32::try_from(rows.unwrap_or(0)).unwrap_or(0)
}

fn label_length(limit: &Limit) -> f64 {
    let words = format!("{} {}", limit.label, limit.mark.text);
    width::of(&words, LABEL_SIZE) + 2.0 * LABEL_GAP
}

/// Where a label stands: its line, its ends, its row.
#[derive(Clone, Copy)]
struct Place {
    line: f64,
    from: f64,
    to: f64,
    row: usize,
    before: bool,
}

impl Place {
    fn new(line: f64, length: f64, row: usize, before: bool) -> Option<Self> {
        let from = if before { line - length } else { line };
        let to = from + length;
        let fits = from >= 0.0 && to <= AXIS_START + AXIS_LENGTH;
        fits.then_some(Self {
            line,
            from,
            to,
            row,
            before,
        })
    }

    fn disturbs(&self, other: &Self) -> bool {
        let labels_meet = self.row == other.row && self.from < other.to && other.from < self.to;
        labels_meet || self.crosses_line_of(other) || other.crosses_line_of(self)
    }

    fn crosses_line_of(&self, other: &Self) -> bool {
        self.from < other.line && other.line < self.to && other.row >= self.row
    }
}

fn try_rows(lengths: &[f64], limits: &[Limit], rows: usize) -> Option<Vec<Place>> {
    fn next(lengths: &[f64], limits: &[Limit], rows: usize, places: &mut Vec<Place>) -> bool {
        let Some(limit) = limits.get(places.len()) else {
            return true;
        };
        let length = lengths[places.len()];
        for row in 0..rows {
            for before in [false, true] {
                let place = Place::new(limit.mark.at, length, row, before);
                let Some(place) = place.filter(|new| !places.iter().any(|old| new.disturbs(old)))
                else {
                    continue;
                };
                places.push(place);
                if next(lengths, limits, rows, places) {
                    return true;
                }
                places.pop();
            }
        }
        false
    }
    let mut places = Vec::new();
    next(lengths, limits, rows, &mut places).then_some(places)
}

fn one_label_a_row(lengths: &[f64], limits: &[Limit]) -> Vec<Place> {
    let count = limits.len();
    let numbered = limits.iter().zip(lengths).enumerate();
    numbered
        .map(|(index, (limit, &length))| {
            let line = limit.mark.at;
            let before = line + length > AXIS_START + AXIS_LENGTH;
            let from = if before { line - length } else { line };
            Place {
                line,
                from,
                to: from + length,
                row: count - 1 - index,
                before,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_of_an_axis_are_round() {
        for (wanted, step) in [
            (100.0, 100.0),
            (90.0, 100.0),
            (0.3, 0.5),
            (11.0, 20.0),
            (0.02, 0.02),
        ] {
            assert!((round_step(wanted) - step).abs() < 1e-12, "{wanted}");
        }
    }

    #[test]
    fn labels_of_near_limits_stand_in_different_rows() {
        let bands = [Span {
            label: "b".into(),
            least: 400.0,
            target: 500.0,
            greatest: 600.0,
        }];
        let limits = [
            ("flange".to_owned(), 690.0),
            ("gasket".to_owned(), 700.0),
            ("stud".to_owned(), 790.0),
        ];
        let chart = chart(Head::default(), String::new(), &bands, &limits).expect("finite");
        let places: Vec<Place> = chart
            .limits
            .iter()
            .map(|limit| Place::new(limit.mark.at, label_length(limit), limit.row, limit.before))
            .map(|place| place.expect("on the page"))
            .collect();
        for (index, place) in places.iter().enumerate() {
            assert!(places[..index].iter().all(|other| !place.disturbs(other)));
        }
        assert!(chart.limits[2].before, "no room behind the last line");
        assert!(chart.labels_height < 3.0 * LABEL_ROW, "two rows are enough");
        let ends = (chart.ticks[0].at, chart.ticks.last().map(|tick| tick.at));
        assert!((ends.0 - 36.0).abs() < 1e-9);
        assert!(ends.1.is_some_and(|at| (at - 176.0).abs() < 1e-9));
    }

    #[test]
    fn what_is_not_a_number_is_not_drawn() {
        let bands = [Span {
            label: "b".into(),
            least: 1.0,
            target: f64::NAN,
            greatest: 2.0,
        }];
        assert!(chart(Head::default(), String::new(), &bands, &[]).is_none());
        assert!(chart(Head::default(), String::new(), &[], &[]).is_none());
    }
}
