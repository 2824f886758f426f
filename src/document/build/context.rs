//! What all builders share: the pack's identity, its units, its words, its draft state.

use std::sync::{Mutex, PoisonError};

use crate::calc::{Id, Key, Ledger};
use crate::document::blocks::{Draft, Running};
use crate::document::code::{self, Stamp};
use crate::document::geometry::Geometry;
use crate::document::voice::Voice;
use crate::job::{IssueStatus, Job, Pack, Revision};
use crate::joint::{Joint, ToolReading, Who};
use crate::methods::{self, Calculation, Case, Computed};
use crate::report::{Finding, Place, Severity, Sources};
use crate::rules;
use crate::units::{Dimension, Printed, Quantity, Units};
use crate::wording::{Values, Wording, WordingError};
use crate::work::{Set, Task};
use crate::yaml::At;

/// Everything a builder reads.
pub struct Context<'a> {
    /// The job.
    pub job: &'a Job,
    /// Its joints.
    pub joints: &'a [Joint],
    /// Their numbers.
    pub plan: &'a Calculation,
    /// What the rules found.
    pub findings: &'a [Finding],
    /// The words.
    pub wording: &'a Wording,
    /// The units of the pack.
    pub units: Units,
    /// The files that were read, to name the places of inputs.
    pub sources: Option<&'a Sources>,
    /// Stamp of layouts, wording and fonts.
    pub stamp: Stamp,
    /// Why every page says DRAFT, if it does.
    pub draft: Option<String>,
    /// The measures of placed pages.
    pub geometry: &'a Geometry,
    /// Whether cards get their code: not where only their room is looked at.
    pub sealing: bool,
    faults: Mutex<Vec<Fault>>,
}

/// A fault of the program: a text without wording, or a value that was not given to it.
pub type Fault = WordingError;

/// A document with its content code.
#[derive(Clone, Debug)]
pub struct Made<T> {
    /// Its data, code and page furniture filled in.
    pub content: T,
    /// Its content code.
    pub code: String,
}

impl<'a> Context<'a> {
    /// Gathers what builders read. `forced_draft` marks every page as DRAFT whatever the rules say.
    pub fn new(
        job: &'a Job,
        joints: &'a [Joint],
        plan: &'a Calculation,
        findings: &'a [Finding],
        wording: &'a Wording,
    ) -> Self {
        Self {
            job,
            joints,
            plan,
            findings,
            wording,
            units: job.units(),
            sources: None,
            stamp: Stamp::new([]),
            draft: None,
            geometry: Geometry::ours(),
            sealing: true,
            faults: Mutex::default(),
        }
    }

    /// Leaves cards without number, code and picture of the code: nothing of that takes other room than
    /// its own, and it is most of the work of a card.
    #[must_use]
    pub fn for_room_alone(mut self) -> Self {
        self.sealing = false;
        self
    }

    /// Places pages by these measures instead of ours.
    #[must_use]
    pub const fn placed_by(mut self, geometry: &'a Geometry) -> Self {
        self.geometry = geometry;
        self
    }

    /// Adds the files that were read.
    #[must_use]
    pub fn with_sources(mut self, sources: &'a Sources) -> Self {
        self.sources = Some(sources);
        self
    }

    /// The name of the file of a place, without its folders: a page must not name a machine's paths.
    pub fn file_name(&self, place: Place) -> &str {
        let name = self.sources.map_or("", |sources| sources.name(place.file));
        name.rsplit(['/', '\\']).next().unwrap_or_default()
    }

    /// The texts of a list with their values; those that render empty are left out.
    pub fn list(&self, id: &str, values: &Values) -> Vec<String> {
        self.wording.list(id, values).unwrap_or_else(|error| {
            self.fault(error);
            Vec::new()
        })
    }

    /// The status of the document in words, or DRAFT.
    pub fn status(&self) -> String {
        if self.draft.is_some() {
            return self.label("status.draft");
        }
        let status = self
            .pack()
            .and_then(|pack| pack.status.as_ref())
            .and_then(At::get);
        self.label(match status {
            Some(IssueStatus::ForConstruction) => "status.for_construction",
            Some(IssueStatus::ForComment) => "status.for_comment",
            Some(IssueStatus::ForApproval) | None => "status.for_approval",
        })
    }

    /// Sets the stamp of layouts, wording and fonts.
    #[must_use]
    pub fn stamped(mut self, stamp: Stamp) -> Self {
        self.stamp = stamp;
        self
    }

    /// Works out whether pages say DRAFT, and why: the first error in words and how many more.
    #[must_use]
    pub fn with_draft(mut self, forced: bool) -> Self {
        let errors: Vec<&Finding> = self
            .findings
            .iter()
            .filter(|finding| finding.severity == Severity::Error)
            .collect();
        if let Some(first) = errors.first() {
            let told = self.wording.tell(first);
            let title = match &first.joint {
                Some(tag) if !told.title.contains(tag.as_str()) => format!("{tag}: {}", told.title),
                _ => told.title,
            };
            let values = Values::new()
                .with("first", title)
                .with("count", errors.len());
            self.draft = Some(self.say("draft.reason", &values));
        } else if forced || rules::makes_draft(self.findings) {
            self.draft = Some(self.label("draft.asked"));
        }
        self
    }

    /// The draft of a card.
    pub fn card_draft(&self) -> Option<Draft> {
        self.draft.as_ref()?;
        let errors = self
            .findings
            .iter()
            .filter(|it| it.severity == Severity::Error)
            .count();
        let reason = match errors {
            0 => self.label("draft.card_asked"),
            count => self.say1("draft.card", "count", count),
        };
        Some(Draft {
            word: self.label("word.draft"),
            reason,
        })
    }

    /// The faults of the program that came up so far.
    pub fn faults(&self) -> Vec<Fault> {
        self.faults
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Notes a fault of the program.
    pub(in crate::document) fn fault(&self, fault: Fault) {
        self.faults
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(fault);
    }

    /// A sentence with its values. A sentence that cannot be said is a fault of the program.
    pub fn say(&self, id: &str, values: &Values) -> String {
        self.wording.say(id, values).unwrap_or_else(|error| {
            self.fault(error);
            String::new()
        })
    }

    /// A sentence with one value.
    pub fn say1(
        &self,
        id: &str,
        key: &'static str,
        value: impl Into<crate::wording::Word>,
    ) -> String {
        self.say(id, &Values::new().with(key, value))
    }

    /// A text without values.
    pub fn label(&self, id: &str) -> String {
        if !self.wording.has(id) {
            let error = WordingError {
                id: id.to_owned(),
                detail: String::new(),
            };
            self.fault(error);
        }
        self.wording.label(id).to_owned()
    }

    /// The pack.
    pub fn pack(&self) -> Option<&'a Pack> {
        self.job.pack.get()
    }

    /// The revision that is issued: the last one of the list.
    pub fn revision(&self) -> Option<&'a Revision> {
        let revisions = self.pack()?.revisions.as_ref()?.get()?;
        revisions.last()?.get()
    }

    /// Number of the pack; empty if it has none.
    pub fn number(&self) -> &'a str {
        let number = self
            .pack()
            .and_then(|pack| pack.number.as_ref())
            .and_then(At::get);
        number.map_or("", |number| number.as_str())
    }

    /// Revision of the pack; empty if it has none.
    pub fn revision_name(&self) -> &'a str {
        let name = self.revision().and_then(|revision| revision.revision.get());
        name.map_or("", |name| name.as_str())
    }

    /// Date of issue; empty if it has none.
    pub fn date(&self) -> String {
        let date = self.revision().and_then(|revision| revision.date.get());
        date.map(ToString::to_string).unwrap_or_default()
    }

    /// Client, else owner: the plant of the running line.
    pub fn plant(&self) -> &'a str {
        let pack = self.pack();
        let name = pack
            .and_then(|pack| pack.client.as_ref().or(pack.owner.as_ref()))
            .and_then(At::get);
        name.map_or("", |name| name.as_str())
    }

    /// The unit of the pack.
    pub fn unit(&self) -> &'a str {
        let unit = self
            .pack()
            .and_then(|pack| pack.unit.as_ref())
            .and_then(At::get);
        unit.map_or("", |unit| unit.as_str())
    }

    /// The running line of a document whose kind is worded already.
    pub fn running(&self, document: &str) -> Running {
        let left = Values::new()
            .with("plant", self.plant())
            .with("unit", self.unit())
            .with("document", document);
        Running {
            left: self.say("running.left", &left),
            right: self.identification(),
        }
    }

    /// Number and revision in words.
    pub fn identification(&self) -> String {
        self.identification_of(self.number())
    }

    /// A number with the revision in words.
    pub fn identification_of(&self, number: &str) -> String {
        let values = Values::new()
            .with("number", number)
            .with("revision", self.revision_name());
        self.say("running.right", &values)
    }

    /// Who must give something, in words.
    pub fn who(&self, who: Who) -> String {
        self.label(&format!("role.{}", who.key()))
    }

    /// The words of an empty box.
    pub fn to_be_given(&self, who: Who) -> String {
        self.say1("missing.by", "who", self.who(who))
    }

    /// A quantity as it is printed.
    pub fn print<Q: Quantity>(&self, quantity: Q) -> Printed {
        self.units.print(quantity)
    }

    /// A quantity with its unit in one text.
    pub fn text<Q: Quantity>(&self, quantity: Q) -> String {
        self.print(quantity).joined()
    }

    /// The printed value of an id of the ledger, if it is known.
    pub fn of<Q: Quantity>(&self, ledger: &Ledger, id: Id<Q>) -> Option<Printed> {
        ledger.get(id).map(|value| self.print(value))
    }

    /// The printed value of any entry, if it is known.
    pub fn of_key(&self, ledger: &Ledger, key: Key) -> Option<Printed> {
        let entry = ledger.entry(key)?;
        let value = entry.value.as_ref().ok()?;
        Some(self.units.print_si(*value, entry.dimension))
    }

    /// What a dial shows.
    pub fn reading(&self, reading: &ToolReading) -> Printed {
        reading.printed(&self.units)
    }

    /// The one number of a joint: what its tightening card sets at the end.
    pub fn setting(&self, joint: &Joint, computed: &Computed) -> Option<Printed> {
        let work = methods::work(&Case { joint, computed }, Task::Tighten);
        let set = work.and_then(|work| work.keys.into_iter().next());
        // Without a method nobody says what is done, but its torque is known.
        let set = set.map_or_else(|| Set::by(computed.readings(joint).full()), |key| key.set);
        Voice::new(self).number(&set.value())
    }

    /// The torque of a reading in the pack's unit, else in its second one, where that is not the unit of the tool.
    pub fn in_other_unit(&self, reading: &ToolReading) -> Option<Printed> {
        let lead = self.units.of(Dimension::Torque);
        let bracket = self.units.bracket(Dimension::Torque);
        let mut others = lead.into_iter().chain(bracket);
        let other = others.find(|unit| unit.name != reading.scale().name)?;
        Some(other.print_si(reading.gives().si()))
    }

    /// The content code of some data.
    pub fn code(&self, content: &impl serde::Serialize) -> String {
        // The types of this module are plain data; JSON can always hold them.
        code::of(content, &self.stamp).unwrap_or_default()
    }
}

/// A percentage for the words of a pass: `30 %`, `7.5 %`.
pub(in crate::document) fn percent(ratio: f64) -> String {
    let tenths = (ratio * 1000.0 * (1.0 + 1e-12)).round() / 10.0;
    format!("{}\u{a0}%", crate::units::digits(tenths))
}
