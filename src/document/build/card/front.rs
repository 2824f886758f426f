//! The sides to do: danger, cautions, ticks, the values, the picture with its settings, the order of the moves.

use crate::calc::{Order, order};
use crate::document::blocks::{Band, Block, Front, Head, Order as OrderStrip, Tick, Ticks};
use crate::wording::Values;
use crate::work::{Kind, Phase, Priority, Step};

use super::View;
use super::cautions::Told;

/// The step whose point is signed in the identity strip, and the one whose point is signed in the danger panel.
pub(super) const IN_STRIP: &str = "papers";
pub(super) const IN_PANEL: &str = "safe";

/// Most ticks on side one: what a crew reads before the first turn (common practice, no source).
const MOST_TICKS: usize = 9;

/// Whether ticks of a phase stand on the record side: making up is ticked there and counts as one tick on side one.
pub(super) const fn is_overleaf(phase: Phase) -> bool {
    !matches!(
        phase,
        Phase::Before | Phase::Prepare | Phase::Load | Phase::Loosen
    )
}

impl View<'_> {
    /// From the top down.
    pub(super) fn front(&self, told: &Told) -> Front {
        let g = self.g;
        let of = |block: Block| Band::of(block, g);
        let mut bands = vec![of(self.danger())];
        bands.extend(told.early.clone().map(of));
        bands.push(of(Block::Ticks(self.first_ticks())));
        bands.extend(self.keys().map(|keys| of(Block::Keys(Box::new(keys)))));
        bands.extend(told.late.clone().map(of));
        let pictures = self.pictures();
        let settings = self.settings(&pictures);
        bands.extend(Band::beside(pictures, settings, g));
        Front {
            bands,
            foot: self.order(),
        }
    }

    fn first_ticks(&self) -> Ticks {
        let mut items = self.ticks(|step| !is_overleaf(step.phase));
        while items.len() > MOST_TICKS {
            let Some(rank) = items.iter().filter_map(|it| it.spare).max() else {
                break;
            };
            if let Some(at) = items.iter().rposition(|it| it.spare == Some(rank)) {
                items.remove(at);
            }
        }
        Ticks::new(
            Head::new(self.label("ticks"), self.label("ticks_note")),
            items,
        )
    }

    /// The ticks of some steps.
    pub(super) fn ticks(&self, is_here: impl Fn(&Step) -> bool) -> Vec<Tick> {
        let ticks = self.work.steps.iter().filter(|step| {
            step.kind == Kind::Tick && step.priority != Priority::PackOnly && is_here(step)
        });
        let tick = |step: &Step| {
            Some(Tick {
                text: self.voice.step(self.work, step, "card")?,
                hold: String::new(),
                spare: spare(step.priority),
            })
        };
        ticks.filter_map(tick).collect()
    }

    /// The moves; of very many studs the list stands in the calculation note.
    fn order(&self) -> Option<Block> {
        let order = self.subject.computed.order.as_ref()?;
        let count = order.moves.iter().map(Vec::len).sum::<usize>();
        let title = self.context.label("card.order.title");
        if count > order::MOST_LISTED_ON_CARD {
            let note = Values::new().with("note", self.note_number());
            let note = self.context.say("card.order.note", &note);
            return Some(Block::Order(OrderStrip::new(title, Vec::new(), note)));
        }
        let moves = order
            .lettered()
            .map(|(letter, studs)| (letter, move_text(order, studs)))
            .collect();
        Some(Block::Order(OrderStrip::new(title, moves, "")))
    }

    /// The number of the calculation note of this joint's group.
    fn note_number(&self) -> String {
        let values = Values::new()
            .with("number", self.context.number())
            .with("group", self.subject.group);
        self.context.say("note.number", &values)
    }
}

/// When something may go from a full side.
pub(super) const fn spare(priority: Priority) -> Option<u8> {
    match priority {
        Priority::May(rank) => Some(rank),
        Priority::Must | Priority::PackOnly => None,
    }
}

/// `1·13`, or `1–4` for a group that is gone through one by one.
fn move_text(order: &Order, studs: &[usize]) -> String {
    match (order.within, studs) {
        (order::Move::OneByOne, [first, .., last]) => format!("{first}–{last}"),
        _ => studs
            .iter()
            .map(ToString::to_string)
            .collect::<Vec<_>>()
            .join("·"),
    }
}
