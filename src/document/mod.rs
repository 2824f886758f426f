//! What stands on paper, as plain data: strings already worded, numbers already printed.
//!
//! The types of this module become the JSON that a layout template reads. They hold no rule and
//! no arithmetic but that of fitting words into their places.

pub mod blocks;
pub mod build;
pub mod code;
pub mod desk;
pub mod geometry;
pub mod isolation;
pub mod note;
pub mod pack;
pub mod qr;
pub mod register;
pub mod results;
pub mod statement;
mod table;
pub mod talk;
pub mod voice;
pub mod width;

pub use table::{Builder, DOCUMENTS, DocumentKind};
