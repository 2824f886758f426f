//! The YAML files of a language as one flat table: id to text.

use std::collections::{BTreeMap, BTreeSet};

use indexmap::IndexMap;
use serde_yaml::Value;

use super::engine::{is_template, item};

/// The embedded languages: code, and its files by name, as `templates/build.rs` lists them.
pub(super) const EMBEDDED: &[(&str, &[(&str, &str)])] =
    include!(concat!(env!("OUT_DIR"), "/wording.rs"));

/// The key whose list names the values that the code gives to the texts beside it.
const VALUES: &str = "values";

/// One entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Text {
    /// A text or template.
    One(String),
    /// A list of them.
    Many(Vec<String>),
}

/// Why a file of wording cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Fault {
    /// Not YAML; byte, line and column from 1 if known.
    Syntax {
        /// What the reader of YAML says.
        message: String,
        /// Byte, line, column.
        at: Option<(usize, usize, usize)>,
    },
    /// This id holds something else than text: a number, a list of maps, nothing.
    NotText(String),
    /// This id stands twice.
    Twice(String),
}

/// All entries of a language.
#[derive(Clone, Debug, Default)]
pub(super) struct Entries {
    /// In the order of their ids; found by hash, because a card alone asks two hundred times.
    texts: IndexMap<String, Text>,
    /// The keys below each group, as they are written.
    children: BTreeMap<String, Vec<String>>,
    /// The names of the key `values`, by the group in which it stands.
    promised: BTreeMap<String, BTreeSet<String>>,
}

impl Entries {
    /// Reads one file.
    pub(super) fn read(text: &str) -> Result<Self, Vec<Fault>> {
        let mut entries = Self::default();
        let faults = entries.add(text);
        if faults.is_empty() {
            Ok(entries)
        } else {
            Err(faults)
        }
    }

    /// Reads one more file of the same language. What can be read is added whatever else is wrong.
    pub(super) fn add(&mut self, text: &str) -> Vec<Fault> {
        let mut faults = Vec::new();
        match serde_yaml::from_str(text) {
            Ok(Value::Null) => {}
            Ok(value @ Value::Mapping(_)) => self.take(String::new(), value, &mut faults),
            Ok(_) => faults.push(Fault::NotText(String::new())),
            Err(error) => {
                let at = error
                    .location()
                    .map(|place| (place.index(), place.line(), place.column()));
                let message = error.to_string();
                faults.push(Fault::Syntax { message, at });
            }
        }
        self.texts.sort_unstable_keys();
        faults
    }

    fn take(&mut self, id: String, value: Value, faults: &mut Vec<Fault>) {
        match value {
            Value::String(text) => self.set_once(id, Text::One(trimmed(text)), faults),
            Value::Sequence(items) => match strings(items) {
                Some(texts) => self.set_once(id, Text::Many(texts), faults),
                None => faults.push(Fault::NotText(id)),
            },
            Value::Mapping(map) => {
                for (key, value) in map {
                    match (key.as_str(), value) {
                        (Some(VALUES), Value::Sequence(names)) => match strings(names) {
                            Some(names) => self.promise(&id, names),
                            None => faults.push(Fault::NotText(below(&id, VALUES))),
                        },
                        (Some(key), value) => self.take(below(&id, key), value, faults),
                        (None, _) => faults.push(Fault::NotText(id.clone())),
                    }
                }
            }
            _ => faults.push(Fault::NotText(id)),
        }
    }

    fn promise(&mut self, group: &str, names: Vec<String>) {
        self.promised
            .insert(group.to_owned(), names.into_iter().collect());
    }

    fn set_once(&mut self, id: String, text: Text, faults: &mut Vec<Fault>) {
        if self.texts.contains_key(&id) {
            faults.push(Fault::Twice(id));
        } else {
            self.set(id, text);
        }
    }

    fn set(&mut self, id: String, text: Text) {
        self.enlist(&id);
        self.texts.insert(id, text);
    }

    /// Notes the id below its parent, and the parent below its own.
    fn enlist(&mut self, id: &str) {
        if id.is_empty() {
            return;
        }
        let (parent, key) = id.rsplit_once('.').unwrap_or(("", id));
        let known = self.children.contains_key(parent);
        let keys = self.children.entry(parent.to_owned()).or_default();
        if !keys.iter().any(|other| other == key) {
            keys.push(key.to_owned());
        }
        if !known {
            self.enlist(parent);
        }
    }

    /// Replaces texts by those of an override; the names promised stay ours.
    pub(super) fn replace(&mut self, other: Self) {
        for (id, text) in other.texts {
            self.set(id, text);
        }
        self.texts.sort_unstable_keys();
    }

    /// Every text that holds something for the engine, by its name there.
    pub(super) fn templates(&self) -> BTreeMap<String, String> {
        let mut templates = BTreeMap::new();
        for (id, text) in &self.texts {
            match text {
                Text::One(text) if is_template(text) => {
                    templates.insert(id.clone(), text.clone());
                }
                Text::One(_) => {}
                Text::Many(texts) => {
                    let items = texts
                        .iter()
                        .enumerate()
                        .filter(|(_, text)| is_template(text));
                    templates.extend(items.map(|(index, text)| (item(id, index), text.clone())));
                }
            }
        }
        templates
    }

    /// The entries whose id begins so, as a table of their own.
    pub(super) fn clone_under(&self, prefix: &str) -> Self {
        let mut some = Self::default();
        for (id, text) in self.texts_under(prefix) {
            some.set(id.to_owned(), text.clone());
        }
        some
    }

    pub(super) fn text(&self, id: &str) -> Option<&Text> {
        self.texts.get(id)
    }

    pub(super) fn key_value(&self, id: &str) -> Option<(&str, &Text)> {
        self.texts
            .get_key_value(id)
            .map(|(id, text)| (id.as_str(), text))
    }

    pub(super) fn texts(&self) -> impl Iterator<Item = (&str, &Text)> {
        self.texts.iter().map(|(id, text)| (id.as_str(), text))
    }

    pub(super) fn texts_under<'a>(
        &'a self,
        prefix: &'a str,
    ) -> impl Iterator<Item = (&'a str, &'a Text)> {
        let first = self.texts.partition_point(|id, _| id.as_str() < prefix);
        self.texts[first..]
            .iter()
            .take_while(move |(id, _)| id.starts_with(prefix))
            .map(|(id, text)| (id.as_str(), text))
    }

    pub(super) fn ids(&self) -> impl Iterator<Item = &str> {
        self.texts.keys().map(String::as_str)
    }

    pub(super) fn children(&self, id: &str) -> &[String] {
        self.children.get(id).map_or(&[], Vec::as_slice)
    }

    /// The names of the nearest group above the id that names any.
    pub(super) fn promised(&self, id: &str) -> Option<BTreeSet<String>> {
        let mut group = id;
        loop {
            if let Some(names) = self.promised.get(group) {
                return Some(names.clone());
            }
            group = group.rsplit_once('.')?.0;
        }
    }
}

fn below(group: &str, key: &str) -> String {
    if group.is_empty() {
        key.to_owned()
    } else {
        format!("{group}.{key}")
    }
}

fn trimmed(mut text: String) -> String {
    text.truncate(text.trim_end().len());
    text
}

fn strings(items: Vec<Value>) -> Option<Vec<String>> {
    items
        .into_iter()
        .map(|item| match item {
            Value::String(text) => Some(trimmed(text)),
            _ => None,
        })
        .collect()
}
