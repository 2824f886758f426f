//! The YAML files of a language as one flat table: id to text.

use std::collections::{BTreeMap, BTreeSet};

use serde_yaml::Value;

/// The embedded languages: code, and its files by name. A test compares this table with the folder.
pub(super) const EMBEDDED: &[(&str, &[(&str, &str)])] = &[("en", ENGLISH)];

macro_rules! files {
    ($folder:literal: $($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../templates/wording/", $folder, "/", $name)))),*]
    };
}

const ENGLISH: &[(&str, &str)] = files!("en":
    "cautions.yaml",
    "cli.yaml",
    "findings.yaml",
    "grammar.yaml",
    "isolation.yaml",
    "labels.yaml",
    "note.yaml",
    "pack.yaml",
    "procedure.yaml",
    "rules.yaml",
    "steps.yaml",
);

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
    texts: BTreeMap<String, Text>,
    /// The keys below each group, as they are written.
    children: BTreeMap<String, Vec<String>>,
    /// The names of the key `values`, by the group in which it stands.
    promised: BTreeMap<String, BTreeSet<String>>,
}

impl Entries {
    /// Reads one file.
    pub(super) fn read(text: &str) -> Result<Self, Vec<Fault>> {
        let value: Value = serde_yaml::from_str(text).map_err(|error| {
            let at = error
                .location()
                .map(|place| (place.index(), place.line(), place.column()));
            let message = error.to_string();
            vec![Fault::Syntax { message, at }]
        })?;
        let mut entries = Self::default();
        let mut faults = Vec::new();
        match value {
            Value::Mapping(_) => entries.take(String::new(), value, &mut faults),
            Value::Null => {}
            _ => faults.push(Fault::NotText(String::new())),
        }
        if faults.is_empty() {
            Ok(entries)
        } else {
            Err(faults)
        }
    }

    fn take(&mut self, id: String, value: Value, faults: &mut Vec<Fault>) {
        match value {
            Value::String(text) => self.set(id, Text::One(text.trim_end().to_owned())),
            Value::Sequence(items) => match strings(items) {
                Some(texts) => self.set(id, Text::Many(texts)),
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

    /// Adds a file of the same language.
    pub(super) fn add(&mut self, other: Self) -> Vec<Fault> {
        let faults = other
            .texts
            .keys()
            .filter(|id| self.texts.contains_key(*id))
            .map(|id| Fault::Twice(id.clone()))
            .collect();
        self.promised.extend(other.promised);
        // Through the groups, not the sorted texts: they keep the order in which the keys are written.
        let mut texts = other.texts;
        for id in written_order(&other.children, "") {
            if let Some(text) = texts.remove(&id) {
                self.set(id, text);
            }
        }
        faults
    }

    /// Replaces texts by those of an override; the names promised stay ours.
    pub(super) fn replace(&mut self, other: Self) {
        for (id, text) in other.texts {
            self.set(id, text);
        }
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
        self.texts
            .range(prefix.to_owned()..)
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

fn written_order(children: &BTreeMap<String, Vec<String>>, group: &str) -> Vec<String> {
    let mut ids = Vec::new();
    for key in children.get(group).map_or(&[][..], Vec::as_slice) {
        let id = below(group, key);
        let inner = written_order(children, &id);
        ids.push(id);
        ids.extend(inner);
    }
    ids
}

fn strings(items: Vec<Value>) -> Option<Vec<String>> {
    items
        .into_iter()
        .map(|item| match item {
            Value::String(text) => Some(text.trim_end().to_owned()),
            _ => None,
        })
        .collect()
}
