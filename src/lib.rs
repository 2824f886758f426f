//! Studbook turns one YAML job into typeset work packs for industrial bolting.
//!
//! The modules stand in layer order: each may use only those above it (`tests/layers.rs` checks it).
//! The path of the data is one arrow, one function, one type at a time; DEVELOPERS.md draws it.

// Blank lines keep the order: the formatter would sort neighbours by name.
pub mod parallel;

pub mod units;

pub mod report;

pub mod wording;

pub mod yaml;

pub mod photo;

pub mod job;

pub mod formula;

pub mod standards;

pub mod joint;

pub mod calc;

pub mod work;

pub mod methods;

pub mod resolve;

pub mod rules;

pub mod document;

pub mod typeset;

pub mod cli;
