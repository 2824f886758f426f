//! The volumes of crew cards and of calculation notes: what stands in which file, and on which page.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::document::blocks::Card;
use crate::document::build::{
    CardVolume, CardVolumes, Context, MOST_JOINTS_WITH_CARDS, NoteVolume, Subject, card,
    has_notes_apart,
};
use crate::joint::Joint;
use crate::methods::{self, Calculation};

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

/// The sheets of the cards of a joint, in the order of its tasks; 0 for a card that it does not have.
pub(super) type Sheets = [u8; 3];

/// How many sheets some cards have.
pub(super) fn sheets_of(cards: &[Card]) -> Sheets {
    let mut sheets = Sheets::default();
    for (count, card) in sheets.iter_mut().zip(cards) {
        *count = u8::try_from(card.sides.len() / 2).unwrap_or(u8::MAX);
    }
    sheets
}

/// The volumes with their pages, for index and register; `sheets` are those of each joint.
pub(super) fn card_volumes(joints: &[Joint], volumes: &[Volume], sheets: &[Sheets]) -> CardVolumes {
    let mut found = CardVolumes::default();
    for (number, volume) in (1usize..).zip(volumes) {
        let mut page = 1;
        for &index in &volume.joints {
            found.pages.insert(index, format!("{number}/{page}"));
            let sheets = sheets.get(index).into_iter().flatten();
            page += 2 * sheets.map(|count| usize::from(*count)).sum::<usize>();
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

/// The cards of a joint in the order of its tasks.
pub(super) fn cards_of(context: &Context<'_>, subject: &Subject<'_>) -> Vec<Card> {
    methods::tasks(subject.joint)
        .filter_map(|task| card(context, subject, task))
        .map(|made| made.content)
        .collect()
}
