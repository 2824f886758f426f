//! Whether the words of a card for jackbolts fit their places in `jackbolts.typ` and `record.typ`.

use super::budget::room;
use super::fit::Checker;
use super::{
    Card, Circle, Entry, JackboltRecord, Jackbolts, RecordRow, Round, Rounds, SideValue, StopRule,
    Target, heights,
};

/// Widths in mm: rounds beside the circle, one of two columns of rounds, the circle.
const ROUNDS: f64 = 108.0;
const COLUMN: f64 = 86.0;
const CIRCLE: f64 = 64.0;
/// What is expected, per column.
const EXPECTED: f64 = 19.0;

impl Checker {
    /// Values, circle, studs, rounds and their end.
    pub(super) fn jackbolts(&mut self, card: &Card, work: &Jackbolts) {
        let in_two = work.rounds.in_two_columns();
        self.values(&card.target, in_two);
        self.items("jackbolts.values", work.values.len(), 2);
        for value in &work.values {
            self.side_value(value);
        }
        self.circle(&work.circle);
        self.around_the_circle(work);
        self.rounds(&work.rounds, if in_two { COLUMN } else { ROUNDS });
        if let Some(stop) = &work.stop {
            self.stop(stop);
        }
    }

    fn values(&mut self, target: &Target, in_two: bool) {
        self.within(room("target.label", 11.0, 60.0, 1), &target.label);
        self.within(room("target.words", 11.0, 60.0, 1), &target.words);
        match &target.value.number {
            Entry::Missing(by) => self.within(room("target.value.missing", 8.5, 53.0, 1), by),
            Entry::Given(number) => {
                let parts = [(&**number, 34.0), (&*target.value.unit, 20.0)];
                self.joined("target.value", &parts, 3.0, 60.0);
            }
        }
        if let Some(second) = &target.second {
            let parts = [
                (&*second.number, 20.0),
                (&*second.unit, 13.0),
                (&*second.words, 11.0),
            ];
            self.joined("target.second", &parts, 4.0, 60.0);
        }
        self.items("target.facts", target.facts.len(), 6);
        for fact in &target.facts {
            match (&fact.value, in_two) {
                (Entry::Given(text) | Entry::Missing(text), true) => {
                    let parts = [(&*fact.label, 11.0), (&**text, 11.0)];
                    self.joined("target.facts.value", &parts, 1.6, 46.0);
                }
                (Entry::Given(text), false) => {
                    self.within(room("target.facts.label", 11.0, 22.0, 1), &fact.label);
                    self.within(room("target.facts.value", 11.0, 40.0, 1), text);
                }
                (Entry::Missing(by), false) => {
                    self.within(room("target.facts.label", 11.0, 22.0, 1), &fact.label);
                    self.within(room("target.facts.missing", 8.5, 37.0, 1), by);
                }
            }
        }
    }

    fn side_value(&mut self, it: &SideValue) {
        self.within(room("jackbolts.values.label", 11.0, 50.0, 1), &it.label);
        match &it.value.number {
            Entry::Missing(by) => self.within(room("jackbolts.values.missing", 8.5, 43.0, 1), by),
            Entry::Given(number) => {
                let parts = [(&**number, 20.0), (&*it.value.unit, 13.0)];
                self.joined("jackbolts.values", &parts, 2.0, 50.0);
                self.within(room("jackbolts.values.words", 11.0, 50.0, 1), &it.words);
            }
        }
    }

    fn circle(&mut self, circle: &Circle) {
        // The number of the first jackbolt may stand in the middle below the head.
        self.head("jackbolts.circle.head", &circle.head, CIRCLE);
        self.items("jackbolts.circle", circle.jackbolts.len(), 32);
        let missing = heights::circle_width(circle) - CIRCLE;
        self.height("jackbolts.circle", CIRCLE + missing.max(0.0), CIRCLE);
        self.items("jackbolts.circle.words", circle.words.len(), 2);
        for line in &circle.words {
            self.within(room("jackbolts.circle.words", 11.0, 18.0, 1), line);
        }
        self.items(
            "jackbolts.circle.legend",
            circle.legend.len(),
            Circle::LEGEND,
        );
        for line in &circle.legend {
            self.within(room("jackbolts.circle.legend", 8.5, CIRCLE, 1), line);
        }
    }

    fn around_the_circle(&mut self, work: &Jackbolts) {
        if let Some(ring) = &work.studs {
            self.items("jackbolts.studs", ring.studs.len(), super::StudRing::MOST);
            self.items("jackbolts.studs.words", ring.words.len(), 4);
            let left = CIRCLE - heights::studs_width(ring.studs.len()) - 3.0;
            for line in &ring.words {
                self.within(room("jackbolts.studs.words", 11.0, left, 1), line);
            }
        }
        if let Some(key) = &work.key {
            self.items("jackbolts.key", key.words.len(), 4);
            for line in &key.words {
                self.within(room("jackbolts.key", 11.0, 43.0, 1), line);
            }
        }
        self.items("jackbolts.measured", work.measured.len(), 2);
        for row in &work.measured {
            self.named_box("jackbolts.measured", row, [11.0, 11.0], 41.0);
        }
    }

    /// Name above number and limit, in a room in front of the box; sizes of both lines.
    fn named_box(&mut self, field: &'static str, row: &RecordRow, sizes: [f64; 2], left: f64) {
        self.within(room(field, sizes[0], left, 1), &row.name);
        let under = format!("{} · {}", row.number, row.limit);
        self.within(room(field, sizes[1], left, 1), &under);
    }

    fn rounds(&mut self, rounds: &Rounds, width: f64) {
        self.items("jackbolts.rounds", rounds.rows.len(), Rounds::MOST);
        self.items("jackbolts.rounds.expected", rounds.expected.len(), 2);
        self.items("jackbolts.rounds.end", rounds.end.len(), 2);
        for line in &rounds.end {
            self.within(room("jackbolts.rounds.end", 11.0, width, 1), line);
        }
        let boxes: f64 = rounds
            .columns
            .iter()
            .map(|it| heights::column(it.kind))
            .sum();
        let left = width - boxes - 2.0 - EXPECTED * heights::count(rounds.expected.len());
        self.within(
            room("jackbolts.rounds.head", 11.0, left, 1),
            &rounds.head.title,
        );
        for column in &rounds.columns {
            let wide = heights::column(column.kind) + 1.0;
            self.within(room("jackbolts.rounds.columns", 8.5, wide, 1), &column.head);
        }
        for it in &rounds.expected {
            self.within(
                room("jackbolts.rounds.expected", 8.5, EXPECTED - 1.0, 1),
                &it.main,
            );
            self.within(
                room("jackbolts.rounds.expected", 8.5, EXPECTED - 1.0, 1),
                &it.under,
            );
        }
        for row in &rounds.rows {
            self.round(row, left);
        }
    }

    fn round(&mut self, row: &Round, left: f64) {
        self.within(room("jackbolts.rounds.name", 13.0, 10.4, 1), &row.name);
        let from = if row.dial.is_some() { 21.4 } else { 11.0 };
        match row.value.as_ref().map(|value| (&value.number, &value.unit)) {
            Some((Entry::Given(number), unit)) => {
                let parts = [(&**number, 20.0), (&**unit, 13.0)];
                self.joined("jackbolts.rounds.value", &parts, 2.0, left - from);
                self.within(
                    room("jackbolts.rounds.line", 11.0, left - from, 1),
                    &row.line,
                );
            }
            Some((Entry::Missing(by), _)) => {
                let inside = left - from - 4.0;
                self.within(room("jackbolts.rounds.value.missing", 8.5, inside, 1), by);
                self.within(room("jackbolts.rounds.line", 8.5, inside, 1), &row.line);
            }
            None => self.within(
                room("jackbolts.rounds.line", 11.0, left - 11.0, 1),
                &row.line,
            ),
        }
        for it in &row.expected {
            if row.value.is_some() {
                self.within(
                    room("jackbolts.rounds.expected", 11.0, EXPECTED - 1.0, 1),
                    &it.main,
                );
                self.within(
                    room("jackbolts.rounds.expected", 11.0, EXPECTED - 1.0, 1),
                    &it.under,
                );
            } else {
                let parts = [(&*it.main, 11.0), (&*it.under, 8.5)];
                self.joined("jackbolts.rounds.expected", &parts, 1.0, EXPECTED - 1.0);
            }
        }
    }

    fn stop(&mut self, stop: &StopRule) {
        self.within(room("jackbolts.stop.title", 11.0, 102.0, 1), &stop.title);
        self.within(room("jackbolts.stop.after", 11.0, 102.0, 1), &stop.after);
        self.within(room("jackbolts.stop.and", 11.0, 7.6, 1), &stop.and);
        for (part, wide) in stop.parts.iter().zip([48.4, 46.4]) {
            let number = match &part.value.number {
                Entry::Given(number) | Entry::Missing(number) => number,
            };
            let parts = [
                (&*part.before, 11.0),
                (&**number, 20.0),
                (&*part.value.unit, 13.0),
                (&*part.words, 11.0),
            ];
            self.joined("jackbolts.stop.parts", &parts, 4.6, wide);
        }
    }

    /// Rounds, studs, what was measured, checks and ticks of side two.
    pub(super) fn jackbolt_record(&mut self, record: &JackboltRecord) {
        self.grid("record.rounds", record.rounds.as_ref(), (176.0, 16.0));
        if let Some(row) = &record.tally {
            self.named_box("record.tally", row, [11.0, 8.5], 86.0);
        }
        if let Some(cells) = &record.studs {
            self.head("record.studs", &cells.head, 176.0);
            self.items("record.studs", cells.columns.len(), 32);
            for row in &cells.rows {
                self.within(room("record.studs", 11.0, 15.0, 1), &row.name);
            }
            for column in &cells.columns {
                self.within(room("record.studs", 11.0, 10.0, 1), column);
            }
        }
        self.grid("record.measured", record.measured.as_ref(), (116.0, 16.0));
        if !record.checks.rows.is_empty() {
            self.list("record.checks", &record.checks, (56.0, 33.0));
        }
        for ticks in [&record.before_driver, &record.ticks].into_iter().flatten() {
            self.head("record.ticks", &ticks.head, 176.0);
            self.items("record.ticks", ticks.items.len(), 9);
            for item in &ticks.items {
                self.within(room("record.ticks", 11.0, 43.5, 2), item);
            }
        }
    }
}
