//! What the code hands to a template.

use std::borrow::Cow;
use std::collections::BTreeMap;

use minijinja::Value;

use crate::units::Printed;

/// The values of one text, by name.
#[derive(Clone, Debug, Default)]
pub struct Values(BTreeMap<Cow<'static, str>, Value>);

impl Values {
    /// None yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a value, in place of one of the same name.
    #[must_use]
    pub fn with(mut self, key: &'static str, value: impl Into<Word>) -> Self {
        self.0.insert(Cow::Borrowed(key), value.into().0);
        self
    }

    /// Adds all values of another set.
    #[must_use]
    pub fn and(mut self, others: &Self) -> Self {
        for (key, value) in &others.0 {
            self.0.insert(key.clone(), value.clone());
        }
        self
    }

    /// The same text for each of some names.
    pub(super) fn each<'a>(names: impl Iterator<Item = &'a str>, text: &str) -> Self {
        let pair = |name: &str| (Cow::Owned(name.to_owned()), Value::from(text));
        Self(names.map(pair).collect())
    }

    /// A text or a count as it is printed.
    pub(super) fn text(&self, name: &str) -> Option<Cow<'_, str>> {
        let value = self.0.get(name)?;
        match (value.as_str(), value.as_usize()) {
            (Some(text), _) => Some(Cow::Borrowed(text)),
            (None, Some(count)) if value.is_integer() => Some(Cow::Owned(count.to_string())),
            _ => None,
        }
    }

    /// The context of a template.
    pub(super) fn context(&self) -> Value {
        Value::from_pairs(self.0.iter().map(|(key, value)| (&**key, value.clone())))
    }
}

/// One value: a text, a count, a yes or no, or a list of texts. Numbers with a unit are texts;
/// `units` has already printed them.
#[derive(Clone, Debug)]
pub struct Word(Value);

impl From<&str> for Word {
    fn from(text: &str) -> Self {
        Self(Value::from(text))
    }
}

impl From<String> for Word {
    fn from(text: String) -> Self {
        Self(Value::from(text))
    }
}

impl From<&String> for Word {
    fn from(text: &String) -> Self {
        Self(Value::from(text.as_str()))
    }
}

impl From<&Printed> for Word {
    fn from(printed: &Printed) -> Self {
        Self(Value::from(printed.joined()))
    }
}

impl From<Printed> for Word {
    fn from(printed: Printed) -> Self {
        Self::from(&printed)
    }
}

impl From<usize> for Word {
    fn from(count: usize) -> Self {
        Self(Value::from(count))
    }
}

impl From<u32> for Word {
    fn from(count: u32) -> Self {
        Self(Value::from(count))
    }
}

impl From<bool> for Word {
    fn from(flag: bool) -> Self {
        Self(Value::from(flag))
    }
}

impl From<Vec<String>> for Word {
    fn from(texts: Vec<String>) -> Self {
        Self(Value::from(texts))
    }
}

impl From<&[String]> for Word {
    fn from(texts: &[String]) -> Self {
        Self(Value::from(texts.to_vec()))
    }
}
