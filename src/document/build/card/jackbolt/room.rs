//! Which ticks and cautions stay on a side that is too full.

use crate::calc::labour::Task;
use crate::document::card::{Card, Head, Ticks};

use super::super::with_fitting_record;
use super::case::Case;
use super::ticks::{Stays, Tick};

/// Rows of the lists at the top of a record side that is full.
const LEAST_ROWS: usize = 2;

/// The card with a record side that fits: where it is too full the batch of the washers gives way, then the plain
/// signature of an inspector who signs a point, then who made each round, which the
/// signatures say. Client and stretch stay.
pub(super) fn with_record(case: &Case<'_>, mut card: Card) -> Card {
    if card.free_height()[1] < 0.0 {
        let rows = &mut card.record.materials.rows;
        // Body first, lubricant last: both are asked for by the calculation.
        while rows.len() > LEAST_ROWS {
            rows.remove(1);
        }
    }
    let mut card = with_fitting_record(case.context, card);
    let rounds = card.record.jackbolts.as_ref();
    let rows = rounds
        .and_then(|it| it.rounds.as_ref())
        .map_or(0, |it| it.rows.len());
    if card.free_height()[1] < 0.0
        && rows > LEAST_ROWS
        && let Some(record) = &mut card.record.jackbolts
        && let Some(grid) = &mut record.rounds
    {
        grid.rows.truncate(LEAST_ROWS);
    }
    card
}

/// The card with its ticks. Where side one is too full, what other parts of the card say gives way first, then
/// the cautions, which stand in the pack too, then the general ticks; those of the driver last, and each of them
/// that is left out is kept for the finding.
pub(super) fn with_ticks(case: &Case<'_>, card: Card, ticks: Vec<Tick>, task: Task) -> Card {
    let mut choice = Choice {
        studs: case.label("jackbolt_card.fact.studs"),
        kept: vec![true; ticks.len()],
        ticks,
        card,
    };
    choice.show();
    choice.drop_while_full(Stays::SaidElsewhere);
    choice.card = choice.card.giving_way();
    choice.leave_out_repeats();
    // A driver that only runs jackbolts out is not needed before the last round: its ticks may stand on side two.
    if task == Task::Loosen {
        choice.drop_while_full(Stays::OfDriver);
    }
    while choice.is_full() && choice.card.cautions.pop().is_some() {}
    choice.drop_while_full(Stays::General);
    choice.drop_while_full(Stays::OfDriver);
    choice.take_back();
    onto_record(case, choice.card, task)
}

/// What side one does not hold is ticked on side two, as far as that has room; the rest stays for the finding.
fn onto_record(case: &Case<'_>, mut card: Card, task: Task) -> Card {
    let mut rest = std::mem::take(&mut card.ticks.left_out);
    let mut there = Vec::new();
    while !rest.is_empty() && there.len() < Ticks::MOST {
        let mut next = card.clone();
        there.push(rest.remove(0));
        if let Some(record) = &mut next.record.jackbolts {
            record.before_driver = Some(Ticks {
                head: Head {
                    title: case.label("jackbolt_card.ticks.title_driver"),
                    note: case.label("jackbolt_card.ticks.note_driver"),
                },
                items: there.clone(),
                left_out: Vec::new(),
            });
        }
        // Two lines for seized jackbolts do where more ticks need the third.
        if next.free_height()[1] < 0.0 && task == Task::Loosen {
            shorten_seized(&mut next);
        }
        if next.free_height()[1] < 0.0 {
            rest.splice(0..0, there.pop());
            break;
        }
        card = next;
    }
    if !there.is_empty() {
        card.ticks.head.note = case.label("jackbolt_card.ticks.note_both_sides");
    }
    card.ticks.left_out = rest;
    card
}

fn shorten_seized(card: &mut Card) {
    let record = card.record.jackbolts.as_mut();
    if let Some(seized) = record.and_then(|it| it.measured.as_mut()) {
        seized.rows.truncate(LEAST_ROWS);
    }
}

struct Choice {
    /// The label of the fact that names the studs.
    studs: String,
    card: Card,
    ticks: Vec<Tick>,
    kept: Vec<bool>,
}

impl Choice {
    fn is_full(&self) -> bool {
        self.card.free_height()[0] < 0.0
    }

    /// The torque of the seat stands in its round, the size of the stud in the circle, the driver's serial on the
    /// record: beside the one number they stand only where there is room.
    fn leave_out_repeats(&mut self) {
        if !self.is_full() {
            return;
        }
        if let Some(work) = &mut self.card.jackbolts
            && work.values.len() > 1
        {
            work.values.remove(0);
            let facts = &mut self.card.target.facts;
            facts.truncate(Case::OWN_FACTS);
            facts.retain(|it| it.label != self.studs);
        }
    }

    /// Puts the kept ticks on the card, and the others of the driver where the finding looks for them.
    fn show(&mut self) {
        let texts = |which: &dyn Fn(&Tick, bool) -> bool| -> Vec<String> {
            let both = self.ticks.iter().zip(&self.kept);
            both.filter(|(tick, kept)| which(tick, **kept))
                .map(|(tick, _)| tick.text.clone())
                .collect()
        };
        let items = texts(&|_, kept| kept);
        let left_out = texts(&|tick, kept| !kept && tick.stays == Stays::OfDriver);
        self.card.ticks.items = items;
        self.card.ticks.left_out = left_out;
    }

    /// Leaves the ticks of one kind out, the last one first, until the side is full no more.
    fn drop_while_full(&mut self, stays: Stays) {
        for index in (0..self.ticks.len()).rev() {
            if self.is_full() && self.ticks[index].stays == stays {
                self.kept[index] = false;
                self.show();
            }
        }
    }

    /// A row that is gone may have left room in the one above: what matters most comes back.
    fn take_back(&mut self) {
        let mut gone: Vec<usize> = (0..self.ticks.len())
            .filter(|index| !self.kept[*index])
            .collect();
        gone.sort_by_key(|index| std::cmp::Reverse(self.ticks[*index].stays));
        for index in gone {
            self.kept[index] = true;
            self.show();
            if self.is_full() {
                self.kept[index] = false;
                self.show();
            }
        }
    }
}
