//! From the numbers of a job to the data of its documents: one builder for each document.
//!
//! Builders choose words and printed numbers; they compute nothing. Every sentence comes from the
//! wording, every number from the ledger through the units of the pack.

mod card;
mod context;
mod furniture;
mod isolation;
mod note;

pub use card::{Subject, loosening_card, room_findings, tightening_card};
pub use context::{Context, Fault, Made};
pub use isolation::{Boundary, isolation, isolation_room_findings, joints_behind};
pub use note::note;
