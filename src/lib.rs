//! Studbook turns one YAML job into typeset work packs for industrial bolting.
//!
//! The modules stand in layer order: each may use only those above it (`tests/layers.rs` checks it).
//! The path of the data is one arrow, one function, one type at a time; DEVELOPERS.md draws it.

pub mod report;
pub mod units;

pub mod photo;

pub mod formula;
pub mod standards;

pub mod calc;

pub mod document;

pub mod typeset;
