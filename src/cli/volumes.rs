//! The volumes of crew cards and of calculation notes: what stands in which file, and on which page.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::calc::labour::Task;
use crate::document::build::{
    CardVolume, CardVolumes, Context, MOST_JOINTS_WITH_CARDS, NoteVolume, Subject,
    cautions_for_card, has_notes_apart, loosening_card, tightening_card,
};
use crate::document::card::Card;
use crate::joint::Joint;
use crate::methods::Calculation;

use super::issue::plain_name;

/// Most joints of a pack that holds its cards itself; their cards make one volume.
pub(super) const MOST_JOINTS: usize = MOST_JOINTS_WITH_CARDS;

/// Most joints of one volume, where there are several: two of them are made at once, and the memory
/// that they take goes with their pages, four a joint.
const JOINTS_OF_A_VOLUME: usize = 12;

/// Most calculation notes of one file, where they do not stand in the pack.
const NOTES_OF_A_VOLUME: usize = 8;

/// One volume of cards: its name and its joints.
pub(super) struct Volume {
    /// Name of its file.
    pub(super) name: String,
    /// Its joints, by their place in the job.
    pub(super) joints: Vec<usize>,
}

/// Up to fifty joints make one file; more are cut into volumes of one equipment, in tag order and
/// as even as they come.
pub(super) fn volumes(joints: &[Joint], stem: &str) -> Vec<Volume> {
    if joints.len() <= MOST_JOINTS {
        let name = format!("{}_cards.pdf", stem);
        return vec![Volume {
            name,
            joints: (0..joints.len()).collect(),
        }];
    }
    let mut by_equipment: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (index, joint) in joints.iter().enumerate() {
        let equipment = joint.identity.equipment.get();
        by_equipment
            .entry(equipment.map_or("", String::as_str))
            .or_default()
            .push(index);
    }
    let mut volumes = Vec::new();
    for (equipment, mut members) in by_equipment {
        members.sort_by(|a, b| joints[*a].tag.cmp(&joints[*b].tag));
        let of_equipment = match equipment {
            "" => String::new(),
            name => format!("_{name}"),
        };
        let parts = even_parts(members.len(), JOINTS_OF_A_VOLUME);
        for (number, part) in (1..).zip(parts) {
            let name = plain_name(&format!("{stem}_cards{of_equipment}_{number}.pdf"));
            volumes.push(Volume {
                name,
                joints: members[part].to_vec(),
            });
        }
    }
    volumes
}

/// The volumes with their pages, for index and register.
pub(super) fn card_volumes(joints: &[Joint], volumes: &[Volume]) -> CardVolumes {
    let mut found = CardVolumes::default();
    for (number, volume) in (1usize..).zip(volumes) {
        let mut page = 1;
        for &index in &volume.joints {
            found.pages.insert(index, format!("{number}/{page}"));
            page += joints.get(index).map_or(0, pages_of_cards);
        }
        let members = || volume.joints.iter().filter_map(|&index| joints.get(index));
        let tag = |joint: Option<&Joint>| joint.map_or_else(String::new, |joint| joint.tag.clone());
        let equipment = members().find_map(|joint| joint.identity.equipment.get().cloned());
        found.volumes.push(CardVolume {
            file: volume.name.clone(),
            equipment: equipment.unwrap_or_default(),
            tags: [tag(members().next()), tag(members().next_back())],
            joints: volume.joints.len(),
            pages: page - 1,
        });
    }
    found
}

/// The files of calculation notes of a job with too many for its pack: the groups of each, as even as they
/// come. Other jobs have none, their notes stand in the pack.
pub(super) fn note_volumes(joints: usize, plan: &Calculation, stem: &str) -> Vec<NoteVolume> {
    if !has_notes_apart(joints, plan) {
        return Vec::new();
    }
    let parts = even_parts(plan.groups.len(), NOTES_OF_A_VOLUME);
    let of_file = |(number, groups): (usize, Range<usize>)| NoteVolume {
        file: format!("{stem}_notes_{number}.pdf"),
        groups,
    };
    (1..).zip(parts).map(of_file).collect()
}

/// So many things in parts of at most `most`, as even as they come.
fn even_parts(count: usize, most: usize) -> impl Iterator<Item = Range<usize>> {
    let parts = count.div_ceil(most);
    (0..parts).map(move |part| part * count / parts..(part + 1) * count / parts)
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
