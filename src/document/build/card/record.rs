//! The sides to record: ticks of making up, what was used, found and measured, late ticks, who signed.

use crate::document::blocks::{
    Block, BoxWidth, Cell, Deviation, Grid, Head, Line, List, Tick, Ticks,
};
use crate::document::build::capital;
use crate::units::Dimension;
use crate::work::{Bound, Limit, Phase, Priority, Reading, Section, Step, Value};

use super::View;
use super::cautions::Told;
use super::front::is_overleaf;
use super::numbers::Numbers;
use super::rows::is_in_rows;

/// The tick of the stub, which stands with the signatures.
pub(super) const STUB: &str = "stub";

type Read<'a> = (&'a Step, &'a Reading);

impl View<'_> {
    /// From the top down; `least` leaves away what may go.
    pub(super) fn record(&self, told: &Told, least: bool) -> Vec<Block> {
        let mut numbers = Numbers::default();
        let mut blocks: Vec<Block> = told.overleaf.clone().into_iter().collect();
        let made_up = self.ticks(|step| step.phase == Phase::MakeUp);
        let kept = |tick: &Tick| !(least && tick.spare.is_some());
        let made_up = made_up.into_iter().filter(kept);
        blocks.push(self.tick_block("make_up", made_up.collect()));
        let readings = self.work.readings();
        let readings: Vec<Read<'_>> = readings
            .filter(|(step, it)| !(is_in_rows(it) || least && is_spare(step.priority)))
            .collect();
        blocks.extend(self.lists(&readings, &mut numbers));
        blocks.extend(self.grids(&readings, &mut numbers));
        let late = self.ticks(|step| {
            is_overleaf(step.phase) && step.phase != Phase::MakeUp && step.id != STUB
        });
        let late = late.into_iter().filter(kept);
        blocks.push(self.tick_block("late", late.collect()));
        blocks.push(self.deviation(&mut numbers));
        blocks.push(self.signatures(least, &mut numbers));
        blocks
    }

    fn tick_block(&self, id: &str, items: Vec<Tick>) -> Block {
        Block::Ticks(Ticks::new(Head::new(self.label(id), ""), items))
    }

    /// Single boxes, those of one kind together.
    fn lists(&self, readings: &[Read<'_>], numbers: &mut Numbers) -> Vec<Block> {
        let single = |it: &&Read<'_>| it.1.columns.is_empty() && it.1.rows.is_empty();
        let mut sections: Vec<Section> = readings
            .iter()
            .filter(single)
            .map(|it| it.1.section)
            .collect();
        sections.sort_unstable();
        sections.dedup();
        let mut blocks = Vec::new();
        for section in sections {
            let is_here = |it: &&Read<'_>| it.1.section == section;
            let here: Vec<&Read<'_>> = readings.iter().filter(single).filter(is_here).collect();
            let rows = here
                .iter()
                .map(|(step, _)| {
                    let name = self.voice.step(self.work, step, "box").unwrap_or_default();
                    Line::new(numbers.next(), name, self.limit_beside(step))
                })
                .collect();
            let strokes = here.iter().any(|(step, _)| is_tallied(step));
            let width = match section {
                _ if strokes => BoxWidth::Strokes,
                Section::Tools | Section::Materials | Section::Removed => BoxWidth::Wide,
                _ => BoxWidth::Number,
            };
            blocks.push(Block::List(List::new(
                self.section_head(section),
                width,
                rows,
            )));
        }
        blocks
    }

    fn section_head(&self, section: Section) -> Head {
        let note = self.voice.find(&["work", "section_note", section.key()]);
        Head::new(
            self.voice.label(&["work", "section", section.key()]),
            note.unwrap_or_default(),
        )
    }

    /// Tables of boxes. Those of one section with the same columns are one table.
    fn grids(&self, readings: &[Read<'_>], numbers: &mut Numbers) -> Vec<Block> {
        let many = readings
            .iter()
            .filter(|it| !it.1.columns.is_empty() || !it.1.rows.is_empty());
        let mut tables: Vec<Vec<Read<'_>>> = Vec::new();
        for it in many {
            let is_like = |table: &&mut Vec<Read<'_>>| {
                table.first().is_some_and(|first| {
                    let (one, other) = (first.1, it.1);
                    (one.section, &one.columns, one.dimension)
                        == (other.section, &other.columns, other.dimension)
                        && !one.columns.is_empty()
                })
            };
            match tables.iter_mut().find(is_like) {
                Some(table) => table.push(*it),
                None => tables.push(vec![*it]),
            }
        }
        tables
            .iter()
            .map(|table| self.grid(table, numbers))
            .collect()
    }

    fn grid(&self, table: &[Read<'_>], numbers: &mut Numbers) -> Block {
        let (first, reading) = table[0];
        let title = self.voice.step(self.work, first, "box").unwrap_or_default();
        let title = capital(&self.with_unit(&title, reading.dimension));
        let is_shared = table.iter().all(|it| it.0.accept == first.accept);
        let notes = table.iter().map(|(step, reading)| {
            let limits = self.voice.limits(&step.accept);
            let rows = reading.rows.iter().map(|row| self.voice.value(row));
            let values = [
                ("rows", Value::Text(self.side_by_side(rows.collect()))),
                ("limit", Value::Text(limits)),
            ];
            self.voice.say(&["work", "card", "limit_of_rows"], &values)
        });
        let note = match is_shared {
            true => self.voice.limits(&first.accept),
            false => self.side_by_side(notes.collect()),
        };
        let mut rows = Vec::new();
        for (_, reading) in table {
            for row in &reading.rows {
                rows.push(Line::new(numbers.next(), self.voice.value(row), ""));
            }
        }
        let head = Head::new(title, note);
        if reading.columns.is_empty() {
            return Block::List(List::new(head, BoxWidth::Number, rows));
        }
        let columns = reading
            .columns
            .iter()
            .map(|it| self.voice.value(it))
            .collect();
        Block::Grid(Grid::new(head, columns, rows, Cell::Number))
    }

    /// The limit in front of a box: the bound alone, where the words of the box say what is bounded.
    fn limit_beside(&self, step: &Step) -> String {
        step.accept
            .first()
            .map_or_else(String::new, |limit| match limit.bound {
                Bound::Words => self.voice.limit(limit),
                Bound::Zero => self.voice.bound(&limit.bound),
                _ if self.has_own_words(limit) => self.voice.limit(limit),
                _ => self.voice.bound(&limit.bound),
            })
    }

    fn has_own_words(&self, limit: &Limit) -> bool {
        self.voice.find(&["work", "limit", limit.id]).is_none()
    }

    /// What is read with the unit in which it is written.
    pub(super) fn with_unit(&self, what: &str, dimension: Option<Dimension>) -> String {
        let unit = dimension.map(|it| self.context.units.print_si(1.0, it).unit);
        match unit {
            Some(unit) if !unit.is_empty() => {
                let values = [
                    ("what", Value::Text(what.to_owned())),
                    ("unit", Value::Text(unit)),
                ];
                self.voice.say(&["work", "card", "in_unit"], &values)
            }
            _ => what.to_owned(),
        }
    }

    fn deviation(&self, numbers: &mut Numbers) -> Block {
        let context = self.context;
        Block::Deviation(Deviation {
            head: Head::new(
                context.label("card.record.deviation"),
                context.label("card.record.deviation_note"),
            ),
            number: numbers.next(),
            options: ["card.record.none", "card.record.some"].map(|id| context.label(id)),
            next: Head::new(context.label("card.record.next_time"), ""),
            next_number: numbers.next(),
        })
    }
}

pub(super) const fn is_spare(priority: Priority) -> bool {
    matches!(priority, Priority::May(_))
}

/// A count between two others is kept by strokes.
fn is_tallied(step: &Step) -> bool {
    let between = |limit: &Limit| {
        matches!(
            limit.bound,
            Bound::Between(Value::Count(_), Value::Count(_))
        )
    };
    step.accept.iter().any(between)
}
