//! The cards for multi-jackbolt tensioners: the circle of jackbolts in place of the bolt circle, rounds in
//! place of passes, from what the plan of the tensioner predicts.
//!
//! What the plan lacks prints as an empty box with who must give it, never as a number.

mod case;
mod circle;
mod loosen;
mod record;
mod release_record;
mod room;
mod rounds;
mod ticks;
mod tighten;

use crate::document::card::{Card, Picture, Steps};
use crate::methods::jackbolt;

use super::Subject;

pub(super) use loosen::loosening;
pub(super) use tighten::tightening;

/// Whether the studs of the joint are loaded by jackbolts.
pub(super) fn is_jackbolted(subject: &Subject<'_>) -> bool {
    subject.joint.mechanics.method.value() == Some(jackbolt::WORD)
}

/// The card without the picture and the steps of other methods, which these take the place of.
fn bare(card: Card) -> Card {
    Card {
        picture: Picture::default(),
        steps: Steps::default(),
        ..card
    }
}
