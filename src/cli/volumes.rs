//! The volumes of crew cards: which joints stand in which file, and on which page.

use std::collections::BTreeMap;

use crate::calc::labour::Task;
use crate::document::build::{
    Context, MOST_JOINTS_WITH_CARDS, Subject, cautions_for_card, loosening_card, tightening_card,
};
use crate::document::card::Card;
use crate::joint::Joint;

use super::issue::plain_name;

/// Most joints of a volume, and of a pack that holds its cards itself.
pub(super) const MOST_JOINTS: usize = MOST_JOINTS_WITH_CARDS;

/// One volume of cards: its name and its joints.
pub(super) struct Volume {
    /// Name of its file.
    pub(super) name: String,
    /// Its joints, by their place in the job.
    pub(super) joints: Vec<usize>,
}

/// Up to fifty joints make one file; more are cut into volumes of one equipment, in tag order.
pub(super) fn volumes(joints: &[Joint], stem: &str, chosen: &[usize]) -> Vec<Volume> {
    if chosen.len() <= MOST_JOINTS {
        let name = format!("{}_cards.pdf", stem);
        return vec![Volume {
            name,
            joints: chosen.to_vec(),
        }];
    }
    let mut by_equipment: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for &index in chosen {
        let equipment = joints[index].identity.equipment.get();
        by_equipment
            .entry(equipment.map_or("", String::as_str))
            .or_default()
            .push(index);
    }
    let mut volumes = Vec::new();
    for (equipment, mut members) in by_equipment {
        members.sort_by(|a, b| joints[*a].tag.cmp(&joints[*b].tag));
        for (number, part) in members.chunks(MOST_JOINTS).enumerate() {
            let name = plain_name(&format!("{}_cards_{equipment}_{}.pdf", stem, number + 1));
            volumes.push(Volume {
                name,
                joints: part.to_vec(),
            });
        }
    }
    volumes
}

/// In which volume and on which page the cards of each joint stand.
pub(super) fn card_pages(joints: &[Joint], volumes: &[Volume]) -> BTreeMap<usize, String> {
    let mut found = BTreeMap::new();
    for (number, volume) in (1usize..).zip(volumes) {
        let mut page = 1;
        for &index in &volume.joints {
            found.insert(index, format!("{number}/{page}"));
            page += joints.get(index).map_or(0, pages_of_cards);
        }
    }
    found
}

/// A card has two pages; the cards are those of [`cards_of`].
fn pages_of_cards(joint: &Joint) -> usize {
    if is_opened(joint) { 4 } else { 2 }
}

/// Whether the joint is loosened too, and so has a card for it.
fn is_opened(joint: &Joint) -> bool {
    joint.mechanics.loosening.opened.value() == Some(true)
}

/// Both cards of a joint; one that is not opened has no card for loosening.
pub(super) fn cards_of(context: &Context<'_>, subject: &Subject<'_>) -> Vec<Card> {
    let mut cards = Vec::new();
    if is_opened(subject.joint) {
        let cautions = cautions_for_card(context, subject.joint, subject.computed, Task::Loosen);
        cards.push(loosening_card(context, subject, cautions).content);
    }
    let cautions = cautions_for_card(context, subject.joint, subject.computed, Task::Tighten);
    cards.push(tightening_card(context, subject, cautions).content);
    cards
}
