//! Everything that a user is told: findings as data, and the carets under the user's own text.
//!
//! A [`Finding`] holds an id, places and values, never a sentence; `wording` renders it in the
//! reader's language. The drawing of carets is the only use of the `annotate-snippets` crate.

mod draw;
mod json;
mod near;
mod values;

use std::sync::Arc;

use serde::Serialize;

pub use draw::{Style, Told, Words, draw};
pub use json::ToldJson;
pub use near::{distance, near, near_or_list};
pub use values::FindingValues;

/// Which of the files that were read; an index into [`Sources`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u16);

/// Where something stands: bytes for the caret, line and column (from 1, in characters) for people.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// First byte.
    pub start: u32,
    /// Byte behind the last one.
    pub end: u32,
}

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Stops the status "for construction"; every page says DRAFT.
    Error,
    /// Prints, but a named person must accept it.
    Accept,
    /// For information.
    Note,
}

/// At which stage a finding arose; the exit code hangs on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Stage {
    /// The job cannot be read as a job: exit 2, nothing is written.
    Job,
    /// The job is read; a rule speaks: exit 1 if it is an error.
    Rule,
}

/// One thing that a user is told, without a sentence in it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Finding {
    /// Where it stands in the job, if it stands anywhere.
    pub place: Option<Place>,
    /// `L03`, or `job.unknown_key`: the key of its wording.
    pub id: &'static str,
    /// Its weight.
    pub severity: Severity,
    /// Its stage.
    pub stage: Stage,
    /// The joint it is about, if one.
    pub joint: Option<String>,
    /// What the wording may name. Numbers are already printed.
    pub values: FindingValues,
    /// Other places that belong to it, each with the key of a short label.
    pub related: Vec<(Place, &'static str)>,
}

impl Finding {
    /// An error of the job itself at `place`.
    pub fn job(id: &'static str, place: impl Into<Option<Place>>) -> Self {
        Self::new(id, Severity::Error, Stage::Job, place.into())
    }

    /// What a rule says.
    pub fn rule(id: &'static str, severity: Severity, place: impl Into<Option<Place>>) -> Self {
        Self::new(id, severity, Stage::Rule, place.into())
    }

    fn new(id: &'static str, severity: Severity, stage: Stage, place: Option<Place>) -> Self {
        Self {
            place,
            id,
            severity,
            stage,
            joint: None,
            values: FindingValues::default(),
            related: Vec::new(),
        }
    }

    /// Adds a value for the wording.
    #[must_use]
    pub fn with(mut self, key: &'static str, value: impl Into<String>) -> Self {
        self.values.insert(key, value.into());
        self
    }

    /// Names the joint.
    #[must_use]
    pub fn on(mut self, tag: impl Into<String>) -> Self {
        self.joint = Some(tag.into());
        self
    }

    /// Adds another place with the key of its label.
    #[must_use]
    pub fn beside(mut self, place: Place, label: &'static str) -> Self {
        self.related.push((place, label));
        self
    }
}

/// The files that were read, so that a place can be shown.
#[derive(Clone, Debug, Default)]
pub struct Sources {
    files: Vec<(String, Arc<str>)>,
}

impl Sources {
    /// Adds a file by the name that users know it by, and its text.
    ///
    /// # Panics
    /// Never: more than 65,535 files share the last id.
    pub fn add(&mut self, name: impl Into<String>, text: impl Into<Arc<str>>) -> FileId {
        let id = FileId(u16::try_from(self.files.len()).unwrap_or(u16::MAX));
        self.files.push((name.into(), text.into()));
        id
    }

    /// Replaces the text of a file, once it is known in the form that places count in.
    pub fn set_text(&mut self, file: FileId, text: impl Into<Arc<str>>) {
        if let Some((_, old)) = self.files.get_mut(usize::from(file.0)) {
            *old = text.into();
        }
    }

    /// The name of a file.
    pub fn name(&self, file: FileId) -> &str {
        self.files
            .get(usize::from(file.0))
            .map_or("", |(name, _)| name)
    }

    /// The text of a file.
    pub fn text(&self, file: FileId) -> &str {
        self.files
            .get(usize::from(file.0))
            .map_or("", |(_, text)| text)
    }

    /// `job.yaml:12:7`.
    pub fn name_place(&self, place: Place) -> String {
        format!("{}:{}:{}", self.name(place.file), place.line, place.column)
    }
}

/// How many findings a person is shown before "and N more".
pub const SHOWN: usize = 100;

/// Sorts by file, line and column, and drops a finding that stands twice (a shared anchor is read
/// once for every place that uses it).
pub fn sort(findings: &mut Vec<Finding>) {
    findings.sort();
    findings.dedup();
}

/// The findings that are shown, and how many more there are.
pub fn cap(findings: &[Finding]) -> (&[Finding], usize) {
    let shown = &findings[..findings.len().min(SHOWN)];
    (shown, findings.len() - shown.len())
}
