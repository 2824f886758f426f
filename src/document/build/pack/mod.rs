//! The work pack: cover and sections in front, then what each joint, boundary and group brings,
//! then register, deviation sheets and photos. Other documents show parts of it, which they reach as modules.

mod assumptions;
mod back;
pub(in crate::document) mod cover;
mod driver_pays;
mod findings;
mod index;
pub(in crate::document) mod itp;
pub(in crate::document) mod permits;
mod plan;
pub(in crate::document) mod procedures;
mod recorder;
pub(in crate::document) mod resources;
pub(in crate::document) mod scope;
pub(in crate::document) mod step_rows;
pub(in crate::document) mod tools;
pub(in crate::document) mod totals;
pub(in crate::document) mod works;

pub use back::PhotoOf;

use std::ops::Range;

use crate::document::desk::{CardsOfJoint, Document, Part};
use crate::document::isolation::IsolationSheet;
use crate::document::note::Note;
use crate::document::pack::{Section, Sections};
use crate::document::register::Register;
use crate::methods::Calculation;

use super::context::Context;
use super::furniture::{bare_furniture, sealed};
use super::register::{CardPages, register_parts};
use procedures::Procedures;
use works::Works;

/// Joints up to which a pack holds its cards; above, the cards stand in volumes of their own.
pub const MOST_JOINTS_WITH_CARDS: usize = 50;

/// Calculation notes up to which a pack holds them; above, they stand in files of their own. A note takes as much
/// of the typesetter's memory as ten pages of cards.
const MOST_NOTES_IN_PACK: usize = 12;

/// Whether the calculation notes stand in files of their own, beside a pack of so many joints.
pub fn has_notes_apart(joints: usize, plan: &Calculation) -> bool {
    let notes = plan.groups.len();
    notes > MOST_NOTES_IN_PACK || (notes > 0 && joints > MOST_JOINTS_WITH_CARDS)
}

/// By which the first isolation sheet, note... of a pack are referred to.
pub fn isolation_label(isolation: usize) -> String {
    format!("isolation-{}", isolation + 1)
}

/// By which the calculation note of a group is referred to; `group` is its index in the plan.
pub fn note_label(group: usize) -> String {
    format!("note-{}", group + 1)
}

/// What other builders made for the pack.
#[derive(Debug, Default)]
pub struct Inner {
    /// The cards, joint by joint, labelled by [`super::joint_label`]; left out above
    /// [`MOST_JOINTS_WITH_CARDS`] joints.
    pub cards: Vec<CardsOfJoint>,
    /// The isolation sheets.
    pub isolations: Vec<IsolationSheet>,
    /// The calculation notes; none where they stand in files of their own.
    pub notes: Vec<Note>,
    /// Those files.
    pub note_volumes: Vec<NoteVolume>,
    /// Pictures from the site.
    pub photos: Vec<PhotoOf>,
}

/// A file of calculation notes.
#[derive(Clone, Debug)]
pub struct NoteVolume {
    /// Its name.
    pub file: String,
    /// The groups whose notes it holds, by their places in the plan.
    pub groups: Range<usize>,
}

/// What the pages in front refer to.
#[derive(Clone, Copy)]
struct Subject<'a> {
    register: &'a Register,
    pages: CardPages<'a>,
    inner: &'a Inner,
    works: &'a Works,
}

/// The whole work pack.
pub fn work_pack(
    context: &Context<'_>,
    register: &Register,
    pages: CardPages<'_>,
    mut inner: Inner,
) -> Document {
    if context.joints.len() > MOST_JOINTS_WITH_CARDS {
        inner.cards.clear();
    }
    let mut parts = front(context, register, pages, &inner);
    let Inner {
        cards,
        isolations,
        notes,
        note_volumes: _,
        photos,
    } = inner;
    parts.extend(cards.into_iter().map(|cards| Part::Cards(Box::new(cards))));
    parts.extend(
        isolations
            .into_iter()
            .map(|sheet| Part::Isolation(Box::new(sheet))),
    );
    parts.extend(notes.into_iter().map(|note| Part::Note(Box::new(note))));
    parts.extend(register_parts(context, register).content);
    parts.push(Part::Deviations(back::deviations(context)));
    parts.extend(back::photos(context, photos).map(Part::Photos));
    Document::new(context.wording.language(), parts)
}

/// Cover, scope, assumptions, findings, index, plan, permits, cautions, people, tools, inspection
/// and test plan, procedures.
pub fn front(
    context: &Context<'_>,
    register: &Register,
    pages: CardPages<'_>,
    inner: &Inner,
) -> Vec<Part> {
    let works = Works::of(context);
    let procedures = Procedures::of(context, &works);
    let subject = Subject {
        register,
        pages,
        inner,
        works: &works,
    };
    let mut desk = vec![
        scope::section(context),
        assumptions::section(context),
        findings::section(context),
    ];
    desk.extend(index::volumes(context, &subject));
    desk.extend([
        index::section(context, &subject),
        plan::section(context),
        permits::section(context, &works),
        resources::cautions(context, &works),
        resources::people(context),
        tools::tools(context),
    ]);
    vec![
        Part::Cover(Box::new(cover::cover(context, &subject))),
        Part::Sections(sections(context, false, desk)),
        Part::Sections(sections(
            context,
            true,
            vec![itp::section(context, &works, &procedures)],
        )),
        Part::Sections(sections(
            context,
            false,
            vec![procedures.section(context, &works)],
        )),
    ]
}

/// Sections with their edges and content code.
fn sections(context: &Context<'_>, landscape: bool, sections: Vec<Section>) -> Sections {
    let mut part = Sections {
        furniture: bare_furniture(context, &context.label("document.pack")),
        landscape,
        sections,
    };
    let code = context.code(&part);
    part.furniture = sealed(context, part.furniture, &code);
    part
}
