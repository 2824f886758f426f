//! Whether a card fits its two pages: every text against its room, every side against its height.

use super::budget::{BUDGETS, Budget, Measure, Overrun, room};
use super::{Card, Entry, RecordList, RecordRow, heights};
use crate::document::width;

impl Card {
    /// Everything that does not fit its place; empty when the card is two whole pages.
    pub fn over_budget(&self) -> Vec<Overrun> {
        let mut found = Checker::default();
        found.identity(self);
        found.danger_and_cautions(self);
        match &self.jackbolts {
            Some(work) => found.jackbolts(self, work),
            None => {
                found.target(self);
                found.picture(self);
                found.steps(self);
            }
        }
        found.order(self);
        found.footer(self);
        found.record(self);
        found.height("side 1", heights::side_one(self), heights::SIDE);
        found.height("side 2", heights::side_two(self), heights::SIDE);
        found.overruns
    }

    /// What is left free on side one and side two when everything takes its least height, in mm;
    /// negative when it does not fit. A builder chooses by it what it can still put there.
    pub fn free_height(&self) -> [f64; 2] {
        [heights::side_one(self), heights::side_two(self)].map(|used| heights::SIDE - used)
    }
}

#[derive(Default)]
pub(super) struct Checker {
    overruns: Vec<Overrun>,
}

impl Checker {
    /// A text against its line of [`BUDGETS`].
    pub(super) fn text(&mut self, field: &'static str, text: &str) {
        if let Some(budget) = BUDGETS.iter().find(|budget| budget.field == field) {
            self.within(*budget, text);
        }
    }

    pub(super) fn within(&mut self, budget: Budget, text: &str) {
        let Budget {
            field,
            size,
            width,
            lines,
        } = budget;
        if width::lines(text, size, width).is_none_or(|count| count > lines) {
            self.overruns.push(Overrun {
                field,
                text: text.to_owned(),
                got: text.chars().count(),
                limit: width::characters_that_fit(text, size, width, lines),
                measure: Measure::Characters,
            });
        }
    }

    /// Texts of several sizes in one line, with gaps between them, in mm.
    pub(super) fn joined(
        &mut self,
        field: &'static str,
        parts: &[(&str, f64)],
        gaps: f64,
        room: f64,
    ) {
        let used: f64 = parts
            .iter()
            .map(|(text, size)| width::of(text, *size))
            .sum();
        if used + gaps > room {
            let text = parts
                .iter()
                .map(|(text, _)| *text)
                .collect::<Vec<_>>()
                .join(" ");
            let got = text.chars().count();
            // What fits is in proportion, because the sizes differ.
            let limit = parts
                .iter()
                .fold(got, |limit, _| limit.min(share(got, (room - gaps) / used)));
            self.overruns.push(Overrun {
                field,
                text,
                got,
                limit,
                measure: Measure::Characters,
            });
        }
    }

    pub(super) fn items(&mut self, field: &'static str, got: usize, limit: usize) {
        if got > limit {
            self.overruns.push(Overrun {
                field,
                text: String::new(),
                got,
                limit,
                measure: Measure::Items,
            });
        }
    }

    /// A tick that found no room beside those that are there.
    fn left_out(&mut self, text: &str, there: usize) {
        self.overruns.push(Overrun {
            field: "ticks.items",
            text: text.to_owned(),
            got: there + 1,
            limit: there,
            measure: Measure::Items,
        });
    }

    pub(super) fn height(&mut self, field: &'static str, got: f64, limit: f64) {
        if got > limit {
            let (got, limit) = (whole(got.ceil()), whole(limit));
            self.overruns.push(Overrun {
                field,
                text: String::new(),
                got,
                limit,
                measure: Measure::Millimetres,
            });
        }
    }

    fn identity(&mut self, card: &Card) {
        let it = &card.identity;
        self.text("running.left", &card.running.left);
        self.text("running.right", &card.running.right);
        let size = if it.tag.large { 34.0 } else { 20.0 };
        for line in &it.tag.lines {
            self.within(room("identity.tag", size, super::Tag::ROOM, 1), line);
        }
        self.text("identity.equipment", &it.equipment);
        self.text("identity.place", &it.place);
        self.text("identity.class", &it.class);
        self.text("identity.drawing", &it.drawing);
        self.text("identity.badge", &it.badge.word);
        self.text("identity.badge", &it.record_badge.word);
        if let Some(draft) = &card.draft {
            self.text("draft.word", &draft.word);
            self.text("draft.reason", &draft.reason);
        }
    }

    fn danger_and_cautions(&mut self, card: &Card) {
        self.text("danger.word", &card.danger.word);
        self.text("danger.hazard", &card.danger.hazard);
        self.text("danger.stop", &card.danger.stop);
        for (label, width) in card.danger.boxes.iter().zip([41.0, 43.0, 21.0, 22.0]) {
            self.within(room("danger.boxes", 11.0, width, 1), label);
        }
        self.items("cautions", card.cautions.len(), 3);
        for caution in &card.cautions {
            self.text("cautions.word", &caution.word);
            self.text("cautions.text", &caution.text);
        }
        self.head("ticks.head", &card.ticks.head, 176.0);
        let most = match card.jackbolts {
            Some(_) => super::Ticks::MOST_WITH_DRIVER,
            None => super::Ticks::MOST,
        };
        self.items("ticks.items", card.ticks.items.len(), most);
        for item in &card.ticks.left_out {
            self.left_out(item, card.ticks.items.len());
        }
        for item in &card.ticks.items {
            self.text("ticks.items", item);
        }
    }

    fn target(&mut self, card: &Card) {
        let target = &card.target;
        self.text("target.label", &target.label);
        self.text("target.words", &target.words);
        match &target.value.number {
            Entry::Missing(by) => self.text("target.value.missing", by),
            Entry::Given(number) => {
                self.joined(
                    "target.value",
                    &[(number, 34.0), (&target.value.unit, 20.0)],
                    3.0,
                    84.0,
                );
            }
        }
        if let Some(second) = &target.second {
            let parts = [
                (&*second.number, 20.0),
                (&second.unit, 13.0),
                (&second.words, 11.0),
            ];
            self.joined("target.second", &parts, 5.0, 84.0);
        }
        self.items("target.facts", target.facts.len(), 6);
        for (index, fact) in target.facts.iter().enumerate() {
            self.text("target.facts.label", &fact.label);
            match &fact.value {
                Entry::Missing(by) => self.text("target.facts.missing", by),
                Entry::Given(text) if index == 0 => self.text("target.facts.first", text),
                Entry::Given(text) => self.text("target.facts.value", text),
            }
        }
    }

    fn picture(&mut self, card: &Card) {
        let picture = &card.picture;
        // The number of the first fastener stands between title and remark.
        self.within(room("picture.head", 11.0, 37.0, 1), &picture.head.title);
        self.within(room("picture.head", 8.5, 37.0, 1), &picture.head.note);
        self.items("picture.direction", picture.direction.len(), 2);
        for line in &picture.direction {
            self.text("picture.direction", line);
        }
        self.text("picture.top", &picture.top);
        self.items("picture.legend", picture.legend.len(), 2);
        for line in &picture.legend {
            self.text("picture.legend", line);
        }
    }

    fn steps(&mut self, card: &Card) {
        let steps = &card.steps;
        let room_left = 88.0 - heights::columns(&steps.columns);
        self.within(room("steps.head", 11.0, room_left, 1), &steps.head.title);
        for column in &steps.columns {
            self.within(
                room("steps.columns", 8.5, heights::column(column.kind) + 1.6, 1),
                &column.head,
            );
        }
        for step in &steps.rows {
            self.text("steps.name", &step.name);
            let left = room_left - if step.dial.is_some() { 20.6 } else { 10.0 };
            match &step.value.number {
                Entry::Missing(by) => {
                    self.within(room("steps.value.missing", 8.5, left - 5.0, 1), by);
                    self.within(room("steps.line", 8.5, left - 5.0, 1), &step.line);
                }
                Entry::Given(number) => {
                    self.joined(
                        "steps.value",
                        &[(number, 20.0), (&step.value.unit, 13.0)],
                        2.0,
                        left,
                    );
                    self.within(room("steps.line", 11.0, left, 1), &step.line);
                }
            }
        }
        self.items("steps.end", steps.end.len(), 2);
        for line in &steps.end {
            self.text("steps.end", line);
        }
    }

    fn order(&mut self, card: &Card) {
        let order = &card.order;
        self.text("order.title", &order.title);
        self.text("order.note", &order.note);
        self.items("order", order.rows, 4);
    }

    fn footer(&mut self, card: &Card) {
        let footer = &card.footer;
        self.text("footer.number", &footer.number);
        self.text(
            "footer.code",
            &format!("{} {}", footer.code_label, footer.code),
        );
        self.text("footer.issued", &footer.issued);
        for side in 0..2 {
            self.text("footer.notes", &footer.notes[side]);
            self.text("footer.pages", &footer.pages[side]);
        }
    }

    pub(super) fn head(&mut self, field: &'static str, head: &super::Head, width: f64) {
        self.joined(field, &[(&head.title, 11.0), (&head.note, 8.5)], 2.0, width);
    }

    fn record(&mut self, card: &Card) {
        let record = &card.record;
        self.list("record.tools", &record.tools, (56.0, 33.0));
        self.list("record.materials", &record.materials, (56.0, 25.0));
        self.list("record.as_found", &record.as_found, (56.0, 31.0));
        self.grid("record.gaps", record.gaps.as_ref(), (176.0, 16.0));
        self.grid("record.stretch", record.stretch.as_ref(), (86.0, 14.0));
        self.grid(
            "record.protrusion",
            record.protrusion.as_ref(),
            (86.0, 38.0),
        );
        if let Some(it) = &record.jackbolts {
            self.jackbolt_record(it);
        }
        self.readings("record.last_round", &record.last_round);
        self.head("record.deviation", &record.deviation.head, 56.0);
        for option in &record.deviation.options {
            self.text("record.deviation", option);
        }
        self.head("record.next_time", &record.next_time.head, 116.0);
        self.head("record.signed", &record.signed, 176.0);
        for signature in &record.signatures {
            self.text(
                "record.signatures",
                &format!("{}  {}", signature.number, signature.label),
            );
        }
        if let Some(stub) = &record.stub {
            self.text("record.stub", &stub.name);
        }
    }

    /// Names of a list; `widths` are those of the block and of the names, in mm.
    pub(super) fn list(&mut self, field: &'static str, list: &RecordList, widths: (f64, f64)) {
        self.head(field, &list.head, widths.0);
        for RecordRow {
            number,
            name,
            limit,
        } in &list.rows
        {
            self.within(room(field, 11.0, widths.1, 1), name);
            self.within(
                room(field, 8.5, widths.1, 1),
                &format!("{number} · {limit}"),
            );
        }
    }

    pub(super) fn grid(
        &mut self,
        field: &'static str,
        grid: Option<&super::Grid>,
        widths: (f64, f64),
    ) {
        let Some(grid) = grid else { return };
        let cell = (widths.0 - widths.1) / heights::count(grid.columns.len().max(1));
        // A number needs 20 mm to be written in with gloves on.
        self.items(
            field,
            grid.columns.len(),
            whole((widths.0 - widths.1) / 20.0),
        );
        let head_room = if grid.head.note.is_empty() {
            widths.1
        } else {
            widths.0
        };
        self.head(field, &grid.head, head_room);
        for column in &grid.columns {
            self.within(room(field, 11.0, cell, 1), column);
        }
        for row in &grid.rows {
            self.within(room(field, 11.0, widths.1 - 1.0, 1), &row.name);
            let under = if row.limit.is_empty() {
                row.number.clone()
            } else {
                format!("{} · {}", row.number, row.limit)
            };
            self.within(room(field, 8.5, widths.1 - 1.0, 1), &under);
        }
    }

    fn readings(&mut self, field: &'static str, list: &RecordList) {
        self.head(field, &list.head, 86.0);
        self.items(field, list.rows.len(), 2);
        let cell = 88.0 / heights::count(list.rows.len().max(1));
        for row in &list.rows {
            self.within(room(field, 11.0, cell - 2.0, 1), &row.name);
            self.within(room(field, 8.5, cell - 23.0, 1), &row.limit);
        }
    }
}

/// A part of a count, rounded down.
fn share(count: usize, part: f64) -> usize {
    whole(heights::count(count) * part.clamp(0.0, 1.0))
}

/// Whole units of a length that is never negative nor above a few metres.
pub(super) fn whole(length: f64) -> usize {
    (0..=10_000_u32)
        .take_while(|whole| f64::from(*whole) <= length)
        .count()
        .saturating_sub(1)
}
