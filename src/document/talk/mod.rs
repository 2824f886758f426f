//! The talk before the work: one page for a crew and a day, read aloud at the joint. What can hurt today, three numbers,
//! who may stop, questions asked back, signatures.

mod sheet;

use std::collections::BTreeMap;

use serde::Serialize;

use super::blocks::{Badge, Head};
use super::build::Context;
use super::desk::{BigValue, Furniture};
use super::pack::WriteIn;
use crate::units::Date;

/// The sheets of a job: what `talk.typ` reads.
#[derive(Clone, Debug, Serialize)]
pub struct Talks {
    /// Two letters, after ISO 639.
    pub language: String,
    /// One page each, by day and crew.
    pub sheets: Vec<Talk>,
}

/// One page.
#[derive(Clone, Debug, Serialize)]
pub struct Talk {
    /// Edges of the page.
    pub furniture: Furniture,
    /// Its bookmark: crew and day.
    pub bookmark: String,
    /// The word of the page.
    pub word: Badge,
    /// The equipment.
    pub title: String,
    /// The joints.
    pub joints: String,
    /// Crew with its lead, and the day.
    pub crew: String,
    /// The status of the pack.
    pub status: String,
    /// Boxes that the crew lead fills first.
    pub boxes: Vec<WriteIn>,
    /// What can hurt today, and when to tick.
    pub hazards_head: Head,
    /// The gravest, each with what is done against it.
    pub gravest: Vec<Told>,
    /// What stands over the rest.
    pub others_label: String,
    /// The rest by name, the gravest first.
    pub others: Vec<String>,
    /// What stands before the lines for what is new today.
    pub new_today: String,
    /// What stands over the numbers.
    pub numbers_head: Head,
    /// Three numbers of the day.
    pub numbers: Vec<BigValue>,
    /// Who may stop, in large type.
    pub stop: String,
    /// Who starts again, whom to call, where to meet.
    pub after_stop: String,
    /// What is asked back, and what a wrong answer means.
    pub asked_head: Head,
    /// The questions.
    pub asked: Vec<String>,
    /// Who heard it, and what the signature says.
    pub heard_head: Head,
    /// Names that the job gives, then empty ones.
    pub heard: Vec<String>,
}

/// A hazard as it is told.
#[derive(Clone, Debug, Serialize)]
pub struct Told {
    /// Its name.
    pub name: String,
    /// What it does, and what is done against it.
    pub line: String,
}

/// The JSON of the talk sheets of a job.
pub(super) fn data(context: &Context<'_>) -> serde_json::Result<Vec<u8>> {
    serde_json::to_vec(&talks(context))
}

/// One sheet for each crew and day, in the order of days; joints without either share one.
pub fn talks(context: &Context<'_>) -> Talks {
    let mut together: BTreeMap<(Option<Date>, Option<&str>), Vec<usize>> = BTreeMap::new();
    for (index, joint) in context.joints.iter().enumerate() {
        let crew = joint.work.crew.get().map(String::as_str);
        together
            .entry((joint.work.start, crew))
            .or_default()
            .push(index);
    }
    let sheets = together
        .into_iter()
        .map(|((day, crew), joints)| sheet::talk(context, day, crew, &joints));
    Talks {
        language: context.wording.language().to_owned(),
        sheets: sheets.collect(),
    }
}
