//! Errors on their way through serde, which knows only one kind of error and only sentences.

use std::fmt::{self, Display};

use serde::de;

use super::ids::lookup;
use crate::report::{Finding, Place};

/// What is wrong with one value, without its place: what a `Deserialize` of a leaf hands to
/// `D::Error::custom`. Our reader adds the place and the key. Ids stand in `IDS`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Complaint {
    id: &'static str,
    values: Vec<(&'static str, String)>,
    part: Option<(usize, usize)>,
}

impl Complaint {
    /// A complaint by its id.
    pub fn new(id: &'static str) -> Self {
        Self {
            id,
            values: Vec::new(),
            part: None,
        }
    }

    /// Adds a value for the wording.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.values.push((name, value.into()));
        self
    }

    /// Narrows the place to bytes `start..end` of the text that was read.
    #[must_use]
    pub fn narrow(mut self, start: usize, end: usize) -> Self {
        self.part = Some((start, end));
        self
    }

    /// Which bytes of the text it is about, if not all.
    pub fn part(&self) -> Option<(usize, usize)> {
        self.part
    }

    /// The id.
    pub fn id(&self) -> &'static str {
        self.id
    }

    /// The finding at its place.
    pub fn at(self, place: Option<Place>) -> Finding {
        self.values
            .into_iter()
            .fold(Finding::job(self.id, place), |finding, (name, value)| {
                finding.with(name, value)
            })
    }
}

// serde hands errors on as anything that can be displayed, so the parts travel as one string
// between signs that no value may contain.
const START: char = '\u{1}';
const NAME: char = '\u{2}';
const VALUE: char = '\u{3}';
const PART: char = '\u{4}';

impl Display for Complaint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{START}{}", self.id)?;
        for (name, value) in &self.values {
            let value = value.replace([START, NAME, VALUE, PART], "\u{fffd}");
            write!(f, "{NAME}{name}{VALUE}{value}")?;
        }
        match self.part {
            Some((start, end)) => write!(f, "{PART}{start} {end}"),
            None => Ok(()),
        }
    }
}

/// Undoes `Display`.
fn received(text: &str) -> Option<Complaint> {
    let text = text.strip_prefix(START)?;
    let (text, part) = match text.split_once(PART) {
        Some((text, part)) => (text, Some(part)),
        None => (text, None),
    };
    let mut fields = text.split(NAME);
    let (id, names) = lookup(fields.next()?)?;
    let mut complaint = Complaint::new(id);
    for field in fields {
        let (name, value) = field.split_once(VALUE)?;
        let name = names.iter().find(|known| **known == name)?;
        complaint = complaint.with(name, value);
    }
    complaint.part = part
        .and_then(|part| part.split_once(' '))
        .and_then(|(start, end)| Some((start.parse().ok()?, end.parse().ok()?)));
    Some(complaint)
}

/// The error type of our reader.
#[derive(Debug)]
pub(super) enum Fault {
    /// Something to tell, without a place yet.
    Complaint(Box<Complaint>),
    /// Something to tell with its place.
    Placed(Box<Finding>),
    /// Reported already.
    Silent,
}

impl Fault {
    pub(super) fn new(complaint: Complaint) -> Self {
        Self::Complaint(Box::new(complaint))
    }
}

impl Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Complaint(complaint) => f.write_str(complaint.id),
            Self::Placed(finding) => f.write_str(finding.id),
            Self::Silent => Ok(()),
        }
    }
}

impl std::error::Error for Fault {}

impl de::Error for Fault {
    fn custom<T: Display>(message: T) -> Self {
        let text = message.to_string();
        Self::new(
            received(&text).unwrap_or_else(|| Complaint::new("job.invalid").with("detail", text)),
        )
    }

    fn invalid_type(found: de::Unexpected<'_>, wanted: &dyn de::Expected) -> Self {
        let found = match found {
            de::Unexpected::Seq => "list",
            de::Unexpected::Map => "map",
            _ => "text",
        };
        Self::new(
            Complaint::new("job.wrong_shape")
                .with("found", found)
                .with("wanted", wanted.to_string()),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_complaint_survives_the_way_through_serde() {
        let sent = Complaint::new("quantity.comma")
            .with("text", "12,5 mm \u{2}")
            .with("write", "12.5 mm")
            .narrow(0, 4);
        let arrived = received(&sent.to_string()).unwrap();
        assert_eq!(arrived.id(), "quantity.comma");
        assert_eq!(arrived.part(), Some((0, 4)));
        assert_eq!(arrived.values[1], ("write", "12.5 mm".to_owned()));
    }
}
