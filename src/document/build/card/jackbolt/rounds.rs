//! The rounds of tightening: seat, raise, driver, full value, each with what it is expected to reach.

use crate::document::card::{Column, ColumnKind, Entry, Expected, Head, Round, Rounds, Value};
use crate::joint::Who;
use crate::methods::jackbolt::ids;
use crate::methods::jackbolt::{self, RoundKind};
use crate::units::{Angle, Printed, Quantity, Torque};
use crate::wording::Values;

use super::case::{Case, band, numbers, percent, whole_percent};
use super::circle::position;

/// Jackbolts that are tried after the driver (common practice, no source).
const TRIED: usize = 4;
/// A jackbolt that moves further there was let back by the reversal (common practice, no source), in degrees.
const MOVED: f64 = 5.0;

/// The rounds of the plan; without one, seat and full value with empty boxes.
pub(super) fn tightening(case: &Case<'_>) -> Rounds {
    let columns = columns(case, 4);
    let table = Table {
        case,
        boxes: columns.len(),
    };
    let rows = match case.plan() {
        Some(plan) => table.planned(plan),
        None => table.unplanned(),
    };
    Rounds {
        head: Head {
            title: case.label(if case.studs() > 1 {
                "jackbolt_card.rounds.title_many"
            } else {
                "jackbolt_card.rounds.title"
            }),
            note: String::new(),
        },
        expected: table.heads(),
        columns,
        rows,
        end: end(case),
    }
}

/// A tick for each of a few studs, else one for all.
pub(super) fn columns(case: &Case<'_>, most: usize) -> Vec<Column> {
    let tick = |head: String| Column {
        head,
        kind: ColumnKind::Tick,
    };
    match case.studs() {
        0 | 1 => vec![tick(case.label("jackbolt_card.rounds.done"))],
        studs if studs <= most => (1..=studs).map(|stud| tick(stud.to_string())).collect(),
        _ => vec![tick(case.label("jackbolt_card.rounds.all"))],
    }
}

/// What the printed loads and turns are.
fn end(case: &Case<'_>) -> Vec<String> {
    let line = case
        .plan()
        .map(|_| case.label("jackbolt_card.rounds.not_measured"));
    line.into_iter().collect()
}

/// What all rows share.
struct Table<'a> {
    case: &'a Case<'a>,
    boxes: usize,
}

impl Table<'_> {
    fn heads(&self) -> Vec<Expected> {
        let head = |main: &str, under: &str| Expected {
            main: self.case.label(main),
            under: self.case.label(under),
        };
        let mut heads = vec![head(
            "jackbolt_card.rounds.load",
            "jackbolt_card.rounds.predicted",
        )];
        if !self.case.is_narrow() {
            heads.push(head(
                "jackbolt_card.rounds.largest_turn",
                "jackbolt_card.rounds.predicted",
            ));
        }
        heads
    }

    fn planned(&self, plan: &jackbolt::JackboltPlan) -> Vec<Round> {
        let mut rows = Vec::new();
        let (mut raised, mut driven, mut full) = (0, 0, 0);
        let mut rest = plan.rounds.as_slice();
        while let Some((round, mut behind)) = rest.split_first() {
            match round.kind {
                RoundKind::Seat => {
                    rows.push(self.by_hand("C0".into(), round, ("seat", &plan.first)))
                }
                RoundKind::Raise => {
                    raised += 1;
                    rows.push(self.by_hand(format!("U{raised}"), round, ("raise", &[])));
                }
                RoundKind::Bulk { .. } => {
                    // All positions at one level are one row: what it reaches stands after the last.
                    let same = rest
                        .iter()
                        .take_while(|it| {
                            matches!(it.kind, RoundKind::Bulk { .. }) && is_level(it, round)
                        })
                        .count();
                    let (level, others) = rest.split_at(same);
                    driven += 1;
                    rows.extend(self.bulk(format!("D{driven}"), level));
                    behind = others;
                    let is_last = !matches!(
                        others.first().map(|it| it.kind),
                        Some(RoundKind::Bulk { .. })
                    );
                    if is_last {
                        rows.push(self.reversal(format!("D{}", driven + 1)));
                        rows.push(self.check(format!("D{}", driven + 2), plan));
                    }
                }
                RoundKind::Full => {
                    full += 1;
                    rows.push(self.full(full, round));
                }
            }
            rest = behind;
        }
        rows
    }

    fn unplanned(&self) -> Vec<Round> {
        let full = self.case.printed(self.case.readings().full());
        let row = |name: &str, value: Option<Printed>, line: &str, boxes: bool| Round {
            name: name.into(),
            dial: None,
            value: Some(self.case.value(value, Who::Engineer)),
            line: self.case.label(line),
            expected: self.expected(None, None),
            boxes: vec![boxes; self.boxes],
        };
        let mut rows = vec![row("C0", None, "jackbolt_card.rounds.seat_unknown", true)];
        rows.push(row("C1", full, "jackbolt_card.rounds.full_short", false));
        rows
    }

    /// Load with its band, and the largest turn where a column is left for it.
    fn expected(&self, load: Option<&jackbolt::Round>, turn: Option<f64>) -> Vec<Expected> {
        let mut expected = vec![load.map_or_else(Expected::default, |round| {
            let means = round.predicted.map(|record| record.mean);
            Expected {
                main: whole_percent(means.likely),
                under: band(&means),
            }
        })];
        if !self.case.is_narrow() {
            expected.push(Expected {
                main: turn.map(|turn| self.degrees(turn)).unwrap_or_default(),
                under: String::new(),
            });
        }
        expected
    }

    /// Whole degrees: a paint line shows no more.
    fn degrees(&self, turn: f64) -> String {
        let whole = Angle::from_si(turn).to_degrees().round();
        self.case.context.text(Angle::degrees(whole))
    }

    /// What the wrench in hand is set to; a body is seated with a small wrench.
    fn set(&self, round: &jackbolt::Round) -> Option<Value> {
        let printed = match round.kind {
            RoundKind::Seat => self.case.seat(round.torque),
            _ => self.case.hand(round.torque),
        };
        Some(self.case.value(printed, Who::ToolStore))
    }

    /// The long words of a line, or the short ones where ticks leave little room.
    fn line(&self, key: &str, values: &Values) -> String {
        let length = if self.case.is_narrow() {
            "short"
        } else {
            "long"
        };
        self.case
            .say(&format!("jackbolt_card.rounds.{key}_{length}"), values)
    }

    fn by_hand(
        &self,
        name: String,
        round: &jackbolt::Round,
        (key, first): (&str, &[usize]),
    ) -> Round {
        let values = Values::new()
            .with("percent", percent(round.share))
            .with("order", numbers(first));
        Round {
            name,
            dial: None,
            value: self.set(round),
            line: self.line(key, &values),
            expected: self.expected(Some(round), None),
            boxes: vec![true; self.boxes],
        }
    }

    /// The driver at one level, in each of its positions as often as the plan says.
    fn bulk(&self, name: String, level: &[jackbolt::Round]) -> Option<Round> {
        let last = level.last()?;
        let order: Vec<&str> = level
            .iter()
            .filter_map(|round| match round.kind {
                RoundKind::Bulk { position: index } => Some(position(index)),
                _ => None,
            })
            .collect();
        let values = Values::new()
            .with("percent", percent(last.share))
            .with("order", order.join(" "));
        let key = if order.iter().any(|it| *it != "X") {
            "bulk_positions"
        } else {
            "bulk"
        };
        let printed = self.case.driver_set(Torque::from_si(last.torque));
        Some(Round {
            name,
            dial: None,
            value: Some(self.case.value(printed, Who::ToolStore)),
            line: self.line(key, &values),
            expected: self.expected(Some(last), None),
            boxes: vec![true; self.boxes],
        })
    }

    /// The brief reversal that frees the sockets: never above a third of the bulk, and by hand where the driver's
    /// torque in reverse is not known or too high.
    fn reversal(&self, name: String) -> Round {
        let limit = self.case.get(ids::REVERSAL_LIMIT);
        let asked = self.reversal_torque();
        let within = asked
            .zip(limit)
            .filter(|(asked, limit)| asked.si() <= limit.si() * (1.0 + 1e-9));
        let (value, key) = match within.and_then(|(asked, _)| self.case.driver_never(asked)) {
            Some(printed) => {
                let value = Value {
                    number: Entry::Given(format!("≤\u{a0}{}", printed.value)),
                    unit: printed.unit,
                };
                (value, "reverse")
            }
            None => (
                Value {
                    number: Entry::Given(self.case.label("jackbolt_card.rounds.by_hand")),
                    unit: String::new(),
                },
                "free_sockets",
            ),
        };
        Round {
            name,
            dial: None,
            value: Some(value),
            line: self.line(key, &Values::new()),
            expected: self.expected(None, None),
            boxes: vec![true; self.boxes],
        }
    }

    /// What the job asks for, else the driver's own torque in reverse.
    fn reversal_torque(&self) -> Option<Torque> {
        let asked = self.case.subject.joint.mechanics.plan.reversal.as_ref();
        let (_, driver) = self.case.driver()?;
        let own = driver.reverse_torque.value();
        asked.and_then(|it| it.value()).or(own)
    }

    /// The wrench after lift-off, on jackbolts spread round the circle.
    fn check(&self, name: String, plan: &jackbolt::JackboltPlan) -> Round {
        let tried = self.tried(plan);
        let moved = self.case.context.text(Angle::degrees(MOVED));
        let values = Values::new()
            .with("order", numbers(&tried))
            .with("count", tried.len())
            .with("angle", &moved);
        let torque = self
            .case
            .printed(self.case.readings().low(ids::DRIVER_CHECK));
        Round {
            name,
            dial: None,
            value: Some(self.case.value(torque, Who::ToolStore)),
            line: self.line("check", &values),
            expected: self.expected(None, None),
            boxes: vec![true; self.boxes],
        }
    }

    fn tried(&self, plan: &jackbolt::JackboltPlan) -> Vec<usize> {
        (0..TRIED.min(plan.count))
            .map(|index| index * plan.count / TRIED.min(plan.count) + 1)
            .collect()
    }

    /// The first round at full value is turned; those behind it only say what they reach.
    fn full(&self, number: usize, round: &jackbolt::Round) -> Round {
        let turn = round.predicted.likely.largest_turn;
        let values = Values::new().with("angle", self.degrees(turn));
        let is_first = number == 1;
        let line = if self.case.is_narrow() {
            self.case.say("jackbolt_card.rounds.turn", &values)
        } else if is_first {
            self.case.label("jackbolt_card.rounds.full_long")
        } else {
            String::new()
        };
        Round {
            name: format!("C{number}"),
            dial: None,
            value: if is_first { self.set(round) } else { None },
            line,
            expected: self.expected(Some(round), Some(turn)),
            boxes: if is_first {
                vec![false; self.boxes]
            } else {
                Vec::new()
            },
        }
    }
}

fn is_level(one: &jackbolt::Round, other: &jackbolt::Round) -> bool {
    (one.share - other.share).abs() < 1e-9
}
