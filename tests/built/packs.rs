//! Work packs with the real cards, isolation sheets and notes of a job.

use std::collections::BTreeMap;

use studbook::document::build::{
    Boundary, CardPages, Context, Inner, PhotoOf, isolation, isolation_label, joint_label, note,
    note_label, register, work_pack,
};
use studbook::document::desk::{CardsOfJoint, Document, Part};
use studbook::document::isolation::IsolationSheet;
use studbook::document::note::Note;
use studbook::joint::Joint;
use studbook::typeset::Typeset;
use studbook::yaml::At;

use super::cards::cards_of;
use super::{example, lay_out_document, text_of, with_job};

/// Every example job that is issued.
pub(crate) const EXAMPLES: [&str; 4] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "smallest.yaml",
    "broken-rule.yaml",
];

/// The pack of an example, laid out.
pub(crate) fn pages_of(name: &str) -> Typeset {
    lay_out_document(&pack_of(name, &example(name)), BTreeMap::new())
}

/// The pack of a job in words.
pub(crate) fn pack_of(name: &str, text: &str) -> Document {
    with_job(name, text, |context| {
        pack(context, CardPages::Here, Vec::new())
    })
}

/// Whether a page is one of a card, which counts its own pages on one sheet or two.
pub(crate) fn is_of_card(pages: &Typeset, page: usize) -> bool {
    let cards = pages.pages_of("card");
    let Some(first) = cards.iter().rfind(|first| **first <= page) else {
        return false;
    };
    let own = page - first + 1;
    let text = text_of(pages, page);
    let counts = [2, 4].into_iter().filter(|sides| own <= *sides);
    let mut words = counts.map(|sides| format!("page {own} of {sides}"));
    words.any(|words| text.ends_with(&words) || text.contains(&format!("{words} ")))
}

/// The parts of a pack that are wanted, laid out as a document of their own.
pub(crate) fn lay_out_parts(mut pack: Document, wanted: impl Fn(&Part) -> bool) -> Typeset {
    pack.parts.retain(wanted);
    lay_out_document(&pack, BTreeMap::new())
}

/// The isolation sheets of a job, laid out.
pub(crate) fn isolation_pages(text: &str) -> Typeset {
    let sheets = with_job("job.yaml", text, isolations);
    let parts = sheets.into_iter().map(|it| Part::Isolation(Box::new(it)));
    lay_out_document(&Document::new("en", parts.collect()), BTreeMap::new())
}

/// The calculation notes of a job, laid out.
pub(crate) fn note_pages(text: &str) -> Typeset {
    let notes = with_job("job.yaml", text, notes);
    let parts = notes.into_iter().map(|it| Part::Note(Box::new(it)));
    lay_out_document(&Document::new("en", parts.collect()), BTreeMap::new())
}

/// The pack of a job without its cards, isolation sheets and notes.
pub(crate) fn pack_alone(text: &str, photos: Vec<PhotoOf>) -> Document {
    with_job("job.yaml", text, |context| {
        let (pages, inner) = (CardPages::Here, Inner::default());
        let register = register(context, pages);
        work_pack(context, &register, pages, Inner { photos, ..inner })
    })
}

/// A pack with everything in it.
pub(crate) fn pack(context: &Context<'_>, pages: CardPages<'_>, photos: Vec<PhotoOf>) -> Document {
    let register = register(context, pages);
    let inner = Inner {
        cards: cards(context),
        isolations: isolations(context),
        note_volumes: Vec::new(),
        notes: notes(context),
        photos,
    };
    work_pack(context, &register, pages, inner)
}

fn cards(context: &Context<'_>) -> Vec<CardsOfJoint> {
    let joints = context.joints.iter().enumerate();
    let of = |(index, joint): (usize, &Joint)| {
        let [tighten, loosen] = cards_of(context, index);
        CardsOfJoint {
            bookmark: joint.tag.clone(),
            label: joint_label(index),
            cards: vec![loosen, tighten],
        }
    };
    joints.map(of).collect()
}

fn isolations(context: &Context<'_>) -> Vec<IsolationSheet> {
    let all = context.job.isolations.iter().filter_map(At::get);
    all.flat_map(|list| list.iter())
        .filter_map(|(name, isolation)| Some((name.get()?, isolation.get()?)))
        .enumerate()
        .map(|(number, (name, entry))| {
            let boundary = Boundary {
                name,
                isolation: entry,
                label: isolation_label(number),
                picture: None,
                in_pack: true,
            };
            isolation(context, &boundary).content
        })
        .collect()
}

fn notes(context: &Context<'_>) -> Vec<Note> {
    let groups = context.plan.groups.iter().enumerate();
    groups
        .filter_map(|(index, group)| note(context, group, note_label(index)))
        .map(|made| made.content)
        .collect()
}
