//! Id and values in, a sentence in the reader's language out.
//!
//! A language is a folder `templates/wording/<language>/` of YAML files. The path of keys of an entry is
//! its id (`card.word.tighten`), whatever file it stands in; an entry is one text or a list of texts,
//! and a text may be a template. This module is the only user of `minijinja` and of `serde_yaml`, and the only home of
//! sentences for readers: rules, documents and commands ask here by id. `tests/wording.rs` reads the
//! sources and fails for an id without wording.
//!
//! Reserved key: `values`, beside the texts of a finding, a list of the names that the code gives to
//! each of them. An override may use those names; without such a list, the names that the English
//! text uses, and in rows those of all rows of the group, because they are said together.

mod engine;
mod entries;
mod overrides;
mod plain;
mod tell;
mod values;

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

use crate::report::Finding;
use engine::{Engine, is_template};
use entries::{Entries, Text};
pub use overrides::Override;
pub use values::{Values, Word};

/// Every embedded file: language, name, text.
pub fn embedded_files() -> impl Iterator<Item = (&'static str, &'static str, &'static str)> {
    entries::EMBEDDED
        .iter()
        .flat_map(|(language, files)| files.iter().map(|(name, text)| (*language, *name, *text)))
}

/// All texts of one language, ready to be said.
pub struct Wording {
    language: String,
    entries: Entries,
    engine: Engine,
    notes: Vec<Finding>,
}

/// A text that cannot be said: an id without wording, or a value that the code did not give.
/// Either is a fault of the program, not of the job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WordingError {
    /// The id that was asked for.
    pub id: String,
    /// What the template engine says about it; empty when the id has no wording.
    pub detail: String,
}

impl fmt::Display for WordingError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.detail.is_empty() {
            write!(formatter, "no wording for `{}`", self.id)
        } else {
            write!(formatter, "wording `{}`: {}", self.id, self.detail)
        }
    }
}

impl std::error::Error for WordingError {}

/// One row of a group: its key and its rendered fields.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Row {
    /// The key of the row inside its group.
    pub key: String,
    /// Field name to text.
    pub fields: BTreeMap<String, String>,
}

impl Row {
    /// A field, or an empty text where the row has none of that name.
    pub fn field(&self, name: &str) -> &str {
        self.fields.get(name).map_or("", String::as_str)
    }
}

impl Wording {
    /// The language as it is embedded in the program.
    ///
    /// # Errors
    /// One finding if no such language is embedded.
    pub fn embedded(language: &str) -> Result<Self, Vec<Finding>> {
        Self::with_overrides(language, &[])
    }

    /// The embedded language with texts of the user in place of some of ours. A language that is not embedded may be
    /// given wholly by overrides; what it leaves out is said in English, and [`Wording::notes`] says so.
    ///
    /// # Errors
    /// Every fault of every override in one go: not YAML, unknown ids, templates that do not parse
    /// or ask for values that nobody gives.
    pub fn with_overrides(language: &str, overrides: &[Override]) -> Result<Self, Vec<Finding>> {
        let (entries, notes) = overrides::assemble(language, overrides)?;
        let wording = Self {
            language: language.to_owned(),
            engine: Engine::new(&entries),
            entries,
            notes,
        };
        let faults = overrides::faults(&wording, overrides);
        if faults.is_empty() {
            Ok(wording)
        } else {
            Err(faults)
        }
    }

    /// The language code, `en`.
    pub fn language(&self) -> &str {
        &self.language
    }

    /// What the user should know about the language: texts that fall back to English.
    pub fn notes(&self) -> &[Finding] {
        &self.notes
    }

    /// A text without values, as it stands: a plain look-up. An id without wording comes back
    /// itself, so that it is seen on paper; the tests keep that from happening.
    pub fn label<'a>(&'a self, id: &'a str) -> &'a str {
        match self.entries.text(id) {
            Some(Text::One(text)) => text,
            _ => id,
        }
    }

    /// Every text of a group that needs no values, by the rest of its id: labels for a layout.
    pub fn labels(&self, group: &str) -> BTreeMap<String, String> {
        let prefix = format!("{group}.");
        self.entries
            .texts_under(&prefix)
            .filter_map(|(id, text)| match text {
                Text::One(text) if !is_template(text) => {
                    Some((id[prefix.len()..].to_owned(), text.clone()))
                }
                _ => None,
            })
            .collect()
    }

    /// A text as it stands, by the parts of its id; none where there is none.
    pub fn find(&self, id: &[&str]) -> Option<&str> {
        match self.entries.text(&id.join(".")) {
            Some(Text::One(text)) => Some(text),
            _ => None,
        }
    }

    /// A text with values that are asked for by name. None where it asks for more than values, or for one that is not
    /// there.
    pub fn fill<'a>(
        &self,
        text: &str,
        value: &dyn Fn(&str) -> Option<Cow<'a, str>>,
    ) -> Option<String> {
        plain::filled(text, value)
    }

    /// A text with its values.
    ///
    /// # Errors
    /// An id without wording, or a value that was not given.
    pub fn say(&self, id: &str, values: &Values) -> Result<String, WordingError> {
        match self.entries.text(id) {
            Some(Text::One(text)) => self.say_text(id, text, values),
            _ => Err(unknown(id)),
        }
    }

    fn say_text(&self, name: &str, text: &str, values: &Values) -> Result<String, WordingError> {
        if !is_template(text) {
            return Ok(text.to_owned());
        }
        match plain::filled(text, &|name| values.text(name)) {
            Some(said) => Ok(said),
            None => self.engine.render(name, values),
        }
    }

    /// A text in general: `…` stands where a case would put its value. For showing what a rule says.
    pub fn outline(&self, id: &str) -> String {
        let names = self.variables(id);
        let values = Values::each(names.iter().map(String::as_str), "…");
        self.say(id, &values).unwrap_or_else(|error| error.id)
    }

    /// A list of texts with their values; a text that renders empty is left out, so that a
    /// condition can stand in the wording.
    ///
    /// # Errors
    /// As for [`Wording::say`].
    pub fn list(&self, id: &str, values: &Values) -> Result<Vec<String>, WordingError> {
        let Some(Text::Many(texts)) = self.entries.text(id) else {
            return Err(unknown(id));
        };
        let mut said = Vec::with_capacity(texts.len());
        for (index, text) in texts.iter().enumerate() {
            let text = self.say_text(&engine::item(id, index), text, values)?;
            if !text.is_empty() {
                said.push(text);
            }
        }
        Ok(said)
    }

    /// The rows of a group in the order in which they are written. A row whose field `when`
    /// renders to anything but `true` is left out; the field itself is not part of the row.
    ///
    /// # Errors
    /// As for [`Wording::say`].
    pub fn rows(&self, id: &str, values: &Values) -> Result<Vec<Row>, WordingError> {
        let mut rows = Vec::new();
        for key in self.children(id) {
            if let Some(fields) = self.row(&format!("{id}.{key}"), values)? {
                let key = key.clone();
                rows.push(Row { key, fields });
            }
        }
        if rows.is_empty() && self.children(id).is_empty() {
            return Err(unknown(id));
        }
        Ok(rows)
    }

    fn row(
        &self,
        id: &str,
        values: &Values,
    ) -> Result<Option<BTreeMap<String, String>>, WordingError> {
        let when = format!("{id}.when");
        if self.entries.text(&when).is_some()
            && !self.say(&when, values)?.eq_ignore_ascii_case("true")
        {
            return Ok(None);
        }
        let mut fields = BTreeMap::new();
        for field in self.children(id) {
            if field != "when" {
                let text = self.say(&format!("{id}.{field}"), values)?;
                fields.insert(field.clone(), text);
            }
        }
        Ok(Some(fields))
    }

    /// The short label of a place that belongs to a finding (`Finding::related`).
    pub fn place_label<'a>(&'a self, key: &'a str) -> &'a str {
        let id = format!("labels.{key}");
        match self.entries.key_value(&id) {
            Some((id, _)) => self.label(id),
            None => key,
        }
    }

    /// Where a figure comes from: a document by its name, anything else by its words under `source`, and
    /// whether the document itself was read.
    pub fn source(&self, name: &str, confirmed: bool) -> String {
        let id = format!("source.{name}");
        let source = if self.has(&id) { self.label(&id) } else { name };
        if confirmed {
            source.to_owned()
        } else {
            format!("{source}; {}", self.label("source.not_confirmed"))
        }
    }

    /// Digits in words, as they are read out over the radio: `455` is "four five five".
    /// Characters that have no word are left out.
    pub fn digits(&self, number: &str) -> String {
        engine::digits(&self.entries, number)
    }

    /// "a, b and c".
    pub fn join(&self, words: &[String]) -> String {
        engine::join(&self.entries, words)
    }

    /// Whether the id has wording.
    pub fn has(&self, id: &str) -> bool {
        self.entries.text(id).is_some()
    }

    /// Every id, lists once.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        self.entries.ids()
    }

    /// The keys below an id, in the order in which they are written.
    pub fn children(&self, id: &str) -> &[String] {
        self.entries.children(id)
    }

    /// The templates of an id as they are written: one, or one for each item of a list.
    pub fn sources(&self, id: &str) -> Vec<&str> {
        match self.entries.text(id) {
            Some(Text::One(text)) => vec![text.as_str()],
            Some(Text::Many(texts)) => texts.iter().map(String::as_str).collect(),
            None => Vec::new(),
        }
    }

    /// The names of the values that an id asks for.
    pub fn variables(&self, id: &str) -> BTreeSet<String> {
        self.template_names(id)
            .iter()
            .filter_map(|name| self.engine.variables(name).ok())
            .flatten()
            .collect()
    }

    /// The names under which the engine knows the texts of an id that hold something for it.
    fn template_names(&self, id: &str) -> Vec<String> {
        match self.entries.text(id) {
            Some(Text::One(text)) if is_template(text) => vec![id.to_owned()],
            Some(Text::Many(texts)) => (0..texts.len())
                .filter(|&index| is_template(&texts[index]))
                .map(|index| engine::item(id, index))
                .collect(),
            _ => Vec::new(),
        }
    }

    /// The names of all values that the texts below an id ask for.
    pub fn variables_below(&self, id: &str) -> BTreeSet<String> {
        let prefix = format!("{id}.");
        self.entries
            .texts_under(&prefix)
            .flat_map(|(id, _)| self.variables(id))
            .collect()
    }

    /// The names of the values that the code gives to a text: those that it promises by a key `values`, those of
    /// all rows of a group, or else those that the text asks for.
    pub fn given(&self, id: &str) -> BTreeSet<String> {
        if let Some(promised) = self.entries.promised(id) {
            return promised;
        }
        match id.rfind(".rows.") {
            Some(at) => self.variables_below(&id[..at + ".rows".len()]),
            None => self.variables(id),
        }
    }
}

fn unknown(id: &str) -> WordingError {
    WordingError {
        id: id.to_owned(),
        detail: String::new(),
    }
}

#[cfg(test)]
mod tests;
