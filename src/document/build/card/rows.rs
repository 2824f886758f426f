//! The settings in the order of the work, what is predicted after each, and the rule that ends them.

use crate::document::blocks::{
    Block, BoxColumn, BoxWidth, Expected as ExpectedWords, Fits, Head, Row, Rows, Stop, StopPart,
};
use crate::document::width;
use crate::units::{Angle, Quantity};
use crate::work::{
    Attendance, Bound, Expected, Kind, Limit, Priority, Reading, Sequence, Set, Setting, Step,
    Task, Value,
};

use super::View;
use super::front::{IN_PANEL, IN_STRIP, spare};

/// Studs with a tick each; of more one tick stands for all.
const MOST_TICKS: usize = 4;
/// Stands for the value of a limit while its words are cut in two.
const CUT: &str = "\u{1}";

/// What stands beside the words of each row.
#[derive(Clone)]
struct Beside {
    ticks: Vec<String>,
    has_turn: bool,
}

/// Whether each box of a reading belongs to a setting: then it stands in that row.
pub(super) fn is_in_rows(reading: &Reading) -> bool {
    let names = reading.rows.iter().map(|row| match row {
        Value::Text(name) => name.as_str(),
        _ => "",
    });
    reading.columns.len() == 1 && !reading.after.is_empty() && names.eq(reading.after.iter())
}

impl View<'_> {
    /// Settings and the rule that ends them.
    pub(super) fn settings(&self, pictures: &[Block]) -> Vec<Block> {
        let needs = pictures.iter().map(|it| it.fits().needs(self.g)).max();
        let left = needs.unwrap_or_default().max(self.g.picture.least_width);
        let room = self.g.page.width - self.g.page.gutter - left;
        let mut found = None;
        for beside in self.besides() {
            let rows = self.rows(&beside);
            let fits = rows.needs(self.g) <= room;
            found = Some(rows);
            if fits {
                break;
            }
        }
        let mut rows: Rows = found.unwrap_or_default();
        let stop = self.stop();
        let has_value = |stop: &Stop| stop.parts.iter().any(|part| part.value.is_some());
        match stop {
            Some(stop) if has_value(&stop) => vec![Block::Rows(rows), Block::Stop(stop)],
            Some(stop) => {
                rows.end.splice(0..0, self.stop_lines(&stop));
                vec![Block::Rows(rows)]
            }
            None => vec![Block::Rows(rows)],
        }
    }

    /// From the fullest form to the narrowest.
    fn besides(&self) -> Vec<Beside> {
        let studs = self.work.picture.ring.as_ref().map_or(1, |ring| ring.count);
        let each = (2..=MOST_TICKS).contains(&studs);
        let each = each.then(|| (1..=studs).map(|stud| stud.to_string()).collect());
        let all = self.label(if studs > 1 { "all" } else { "done" });
        let has_turn = self.expected().any(|it| it.turn.is_some());
        let turns: &[bool] = if has_turn { &[true, false] } else { &[false] };
        let mut forms = Vec::new();
        for ticks in [each, Some(vec![all.to_owned()])].into_iter().flatten() {
            forms.extend(turns.iter().map(|&has_turn| Beside {
                ticks: ticks.clone(),
                has_turn,
            }));
        }
        forms
    }

    fn expected(&self) -> impl Iterator<Item = Expected> {
        self.work
            .settings()
            .filter_map(|(_, setting)| setting.expected)
    }

    fn rows(&self, beside: &Beside) -> Rows {
        let in_rows: Vec<(&Step, &Reading)> = self
            .work
            .readings()
            .filter(|(_, reading)| is_in_rows(reading))
            .collect();
        let steps = self.work.steps.iter().enumerate();
        let rows = steps.filter_map(|(at, step)| match &step.kind {
            Kind::Setting(setting) => Some(self.row((at, step, setting), beside, &in_rows)),
            _ => None,
        });
        let rows: Vec<Row> = rows.collect();
        let (end, end_spare) = self.decisions();
        Rows {
            head: Head::new(self.rows_title(), ""),
            expected: self.expected_heads(beside),
            boxes: self.box_columns(beside, &in_rows),
            rows,
            end,
            end_spare,
            ..Rows::default()
        }
    }

    fn rows_title(&self) -> &str {
        self.label(match (self.work.task, &self.work.picture.ring) {
            (Task::Loosen, _) => "release",
            (_, Some(_)) => "settings_of_all",
            (_, None) => "settings",
        })
    }

    fn box_columns(&self, beside: &Beside, in_rows: &[(&Step, &Reading)]) -> Vec<BoxColumn> {
        let column = |head: &str, width| BoxColumn {
            head: head.to_owned(),
            width,
        };
        let ticks = beside.ticks.iter().map(|head| column(head, BoxWidth::Tick));
        let read = in_rows.iter().map(|(step, reading)| {
            let what = self
                .voice
                .step(self.work, step, "short")
                .unwrap_or_default();
            column(&self.with_unit(&what, reading.dimension), BoxWidth::Number)
        });
        let has_room = in_rows.is_empty() && self.expected().next().is_none();
        let time = has_room.then(|| column(self.label("time"), BoxWidth::Time));
        ticks.chain(read).chain(time).collect()
    }

    fn row(
        &self,
        (at, step, setting): (usize, &Step, &Setting),
        beside: &Beside,
        in_rows: &[(&Step, &Reading)],
    ) -> Row {
        let ticks = beside.ticks.iter().map(|_| !setting.further);
        let read = in_rows
            .iter()
            .map(|(_, reading)| reading.after.contains(&setting.name));
        let time = in_rows.is_empty() && self.expected().next().is_none();
        let time = time.then_some(!setting.further);
        Row {
            name: setting.name.clone(),
            dial: match setting.set {
                Set::Turn(turn) => Some(turn.to_degrees()),
                _ => None,
            },
            value: (!setting.further).then(|| self.amount(&setting.set.value())),
            line: match setting.further {
                true => String::new(),
                false => self.line(step, setting),
            },
            expected: self.expected_of(setting, beside),
            boxes: ticks.chain(read).chain(time).collect(),
            hold: self.hold_before(at),
            spare: setting.further.then_some(1),
        }
    }

    /// `30 %, A to M, gaps`: share, in which order, what is read after it.
    fn line(&self, step: &Step, setting: &Setting) -> String {
        let share = setting
            .share
            .map(|it| self.voice.value(&Value::Percent(it)));
        let order = self.voice.step(self.work, step, "card");
        let limits = step.accept.iter().filter(|it| it.bound != Bound::Words);
        let limit = limits.map(|it| self.voice.bound(&it.bound)).next();
        let limit = limit.filter(|_| order.is_none());
        let order = order.or_else(|| match setting.order {
            Sequence::Circle => Some(self.label("in_circle").to_owned()),
            Sequence::Order | Sequence::First(_) | Sequence::AsWorded => None,
        });
        let read = self.work.readings();
        let read = read.filter(|(_, it)| it.after.contains(&setting.name) && !is_in_rows(it));
        let read = read.filter_map(|(step, _)| self.voice.step(self.work, step, "short"));
        let mut parts: Vec<String> = share.into_iter().chain(order).chain(limit).collect();
        for part in read {
            if !parts.contains(&part) {
                parts.push(part);
            }
        }
        self.side_by_side(parts)
    }

    /// Parts of a line, each said behind the one before it.
    pub(super) fn side_by_side(&self, parts: Vec<String>) -> String {
        let joined = |first: String, then: String| {
            let parts = [("first", Value::Text(first)), ("then", Value::Text(then))];
            self.voice.say(&["work", "card", "line"], &parts)
        };
        parts.into_iter().reduce(joined).unwrap_or_default()
    }

    /// The points at which work stops before a setting: those between it and the setting before it.
    fn hold_before(&self, at: usize) -> String {
        let before = self.work.steps.iter().take(at).rev();
        let before = before.take_while(|step| !matches!(step.kind, Kind::Setting(_)));
        let held = before.filter_map(|step| match &step.kind {
            Kind::Point(point) if ![IN_STRIP, IN_PANEL].contains(&step.id) => {
                let holds = point.attendance_of(self.class) == Attendance::Hold;
                point.name.as_deref().filter(|_| holds)
            }
            _ => None,
        });
        held.collect::<Vec<_>>().join(" ")
    }

    fn expected_heads(&self, beside: &Beside) -> Vec<ExpectedWords> {
        let Some(first) = self.expected().next() else {
            return Vec::new();
        };
        let head = |main: &str, under: &str| ExpectedWords {
            main: self.label(main).to_owned(),
            under: self.label(under).to_owned(),
        };
        let mut heads = vec![match first.peak {
            Some(_) => head("load_left", "load_last"),
            None => head("load", "predicted"),
        }];
        heads.extend(beside.has_turn.then(|| head("turn", "predicted")));
        heads
    }

    fn expected_of(&self, setting: &Setting, beside: &Beside) -> Vec<ExpectedWords> {
        let columns = self
            .expected()
            .next()
            .map_or(0, |_| 1 + usize::from(beside.has_turn));
        let mut cells = vec![ExpectedWords::default(); columns];
        let Some(expected) = &setting.expected else {
            return cells;
        };
        if let Some(load) = cells.first_mut() {
            let [low, likely, high] = expected.load.map(whole_percent);
            load.under = match expected.peak {
                Some(peak) => whole_percent(peak),
                None if low == high => String::new(),
                None => format!("{low}–{high}"),
            };
            load.main = likely;
        }
        if let (Some(cell), Some(turn)) = (cells.get_mut(1), expected.turn) {
            // Whole degrees: a line of paint shows no more.
            let whole = Angle::degrees(Angle::from_si(turn).to_degrees().round());
            cell.main = self.context.text(whole);
        }
        cells
    }

    /// What is done when something is not as it should be; the last ones may go.
    fn decisions(&self) -> (Vec<String>, usize) {
        let steps = self.work.steps.iter();
        let told = |is_spare: bool| {
            let decisions = steps.clone().filter(move |step| {
                step.kind == Kind::Decision
                    && step.priority != Priority::PackOnly
                    && spare(step.priority).is_some() == is_spare
            });
            decisions.filter_map(|step| self.voice.step(self.work, step, "card"))
        };
        let mut lines: Vec<String> = told(false).collect();
        let must = lines.len();
        lines.extend(told(true));
        let spare = lines.len() - must;
        (lines, spare)
    }

    /// A rule without a number needs no panel.
    fn stop_lines(&self, stop: &Stop) -> impl Iterator<Item = String> {
        let parts = stop.parts.iter().map(|part| part.words.clone()).collect();
        let what = [("what", Value::Text(self.side_by_side(parts)))];
        let line = self.voice.say(&["work", "card", "stop_line"], &what);
        let after = Some(stop.after.clone()).filter(|it| !it.is_empty());
        std::iter::once(line).chain(after)
    }

    /// Every part must hold.
    fn stop(&self) -> Option<Stop> {
        let stop = self.work.stop.as_ref()?;
        let step = self.work.step(stop.step)?;
        let after = stop.last.as_ref().and_then(|last| {
            let last = [("last", Value::Text(last.clone()))];
            self.voice.words(self.work.method, step, &["after"], &last)
        });
        Some(Stop {
            title: self.label("stop_all").to_owned(),
            parts: stop.parts.iter().map(|part| self.stop_part(part)).collect(),
            and: self.label("stop_and").to_owned(),
            after: after.unwrap_or_default(),
            ..Stop::default()
        })
    }

    /// The words of a limit before and behind its value.
    fn stop_part(&self, limit: &Limit) -> StopPart {
        let value = match &limit.bound {
            Bound::AtMost(value) | Bound::AtLeast(value) | Bound::Below(value) => Some(value),
            _ => None,
        };
        let said = match value {
            Some(_) => self.voice.limit(&cut(limit)),
            None => self.voice.limit(limit),
        };
        let (before, words) = said.split_once(CUT).unwrap_or(("", &said));
        StopPart {
            before: before.trim().to_owned(),
            value: value.map(|value| self.amount(value)),
            words: words.trim().to_owned(),
        }
    }
}

fn cut(limit: &Limit) -> Limit {
    let value = Value::Text(CUT.to_owned());
    let bound = match limit.bound {
        Bound::AtMost(_) => Bound::AtMost(value),
        Bound::AtLeast(_) => Bound::AtLeast(value),
        _ => Bound::Below(value),
    };
    Limit::new(limit.id, bound)
}

fn whole_percent(share: f64) -> String {
    format!("{:.0}", share * 100.0)
}

/// Lines of a width, as full as they come, of texts that stand behind one another.
pub(super) fn wrapped(texts: &[String], between: &str, size: f64, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for text in texts {
        match lines.last_mut() {
            Some(line) if width::of(&format!("{line}{between}{text}"), size) <= room => {
                line.push_str(between);
                line.push_str(text);
            }
            _ => lines.push(text.clone()),
        }
    }
    lines
}
