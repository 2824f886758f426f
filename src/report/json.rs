//! A finding for other programs.

use serde::Serialize;

use super::{Finding, Severity, Sources, Told};

/// A finding with its sentences and its place as names and numbers; the form of `--format json`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ToldJson {
    /// Name of the file, if it stands anywhere.
    pub file: Option<String>,
    /// Line, from 1.
    pub line: Option<u32>,
    /// Column in characters, from 1.
    pub column: Option<u32>,
    /// `job.unknown_key`, `L03`.
    pub id: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// Tag of the joint it is about.
    pub joint: Option<String>,
    /// What was found.
    pub message: String,
    /// Why it matters.
    pub why: String,
    /// What to do.
    pub fix: String,
}

impl ToldJson {
    /// Joins a finding and its sentences.
    pub fn new(finding: &Finding, told: &Told, sources: &Sources) -> Self {
        let place = finding.place;
        Self {
            file: place.map(|place| sources.name(place.file).to_owned()),
            line: place.map(|place| place.line),
            column: place.map(|place| place.column),
            id: finding.id,
            severity: finding.severity,
            joint: finding.joint.clone(),
            message: told.title.clone(),
            why: told.why.clone(),
            fix: told.fix.clone(),
        }
    }
}
