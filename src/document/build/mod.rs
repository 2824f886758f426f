//! From the numbers of a job to the data of its documents: one builder for each document.
//!
//! Builders choose words and printed numbers; they compute nothing. Every sentence comes from the
//! wording, every number from the ledger through the units of the pack.

mod card;
mod context;
pub(in crate::document) mod furniture;
mod isolation;
mod note;
pub(in crate::document) mod pack;
mod register;
mod text_check;
pub(in crate::document) mod words;

pub use card::{Subject, card, room_findings};
pub(in crate::document) use context::percent;
pub use context::{Context, Fault, Made};
pub use isolation::{Boundary, isolation, isolation_room_findings, joints_behind};
pub use note::note;
pub use pack::{
    Inner, MOST_JOINTS_WITH_CARDS, NoteVolume, PhotoOf, front, has_notes_apart, isolation_label,
    note_label, work_pack,
};
pub use register::{
    CardPages, CardVolume, CardVolumes, REGISTER_LABEL, joint_label, register, register_parts,
};
pub use text_check::missing_characters;
pub(in crate::document) use words::capital;
