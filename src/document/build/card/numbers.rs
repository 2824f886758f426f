//! Values as they stand on a card: numbers with their units, or who must give them; the numbers of the boxes.

use crate::document::blocks::{Amount, Fact, Keys, MainValue, Second, SideValue};
use crate::work::{KeyValue, Set, Value};

use super::View;

/// Numbers the boxes in the order in which they are made, for the radio and the deviation sheet.
#[derive(Default)]
pub(super) struct Numbers(u32);

impl Numbers {
    pub(super) fn next(&mut self) -> String {
        self.0 += 1;
        self.0.to_string()
    }
}

impl View<'_> {
    /// A value large enough to be set by.
    pub(super) fn amount(&self, value: &Value) -> Amount {
        match value {
            Value::Missing(lack) => Amount::missing(self.context.to_be_given(lack.who)),
            Value::Span(ends) => match (self.voice.number(&ends[0]), self.voice.number(&ends[1])) {
                (Some(low), Some(high)) if low.unit == high.unit => {
                    Amount::given(self.span(low.value, high.value), high.unit)
                }
                _ => Amount::given(self.voice.value(value), ""),
            },
            value => match self.voice.number(value) {
                Some(printed) => Amount::given(printed.value, printed.unit),
                None => Amount::given(self.voice.value(value), ""),
            },
        }
    }

    fn span(&self, least: String, most: String) -> String {
        if least == most {
            return most;
        }
        let ends = [("least", Value::Text(least)), ("most", Value::Text(most))];
        self.voice.say(&["work", "bound", "span"], &ends)
    }

    /// The one number, what stands below and beside it, and the facts.
    pub(super) fn keys(&self) -> Option<Keys> {
        let mut keys = self.work.keys.iter();
        let main = keys.next()?;
        let (below, beside): (Vec<_>, Vec<_>) =
            keys.partition(|key| self.key_words(key, "second").is_some());
        let second = below.first().and_then(|key| self.second_of(key));
        let side = |key: &KeyValue| SideValue {
            label: self.key_words(key, "label").unwrap_or_default(),
            value: self.amount(&key.set.value()),
            words: self.key_words(key, "words").unwrap_or_default(),
        };
        Some(Keys {
            main: MainValue {
                label: self.key_words(main, "label").unwrap_or_default(),
                value: self.amount(&main.set.value()),
                words: match main.set {
                    Set::Missing(_) => String::new(),
                    _ => self.key_words(main, "words").unwrap_or_default(),
                },
                second: second.or_else(|| self.other_unit(main)),
            },
            others: beside.into_iter().map(side).collect(),
            facts: self.work.facts.iter().map(|it| self.fact(it)).collect(),
        })
    }

    /// Words of a key; they may name what is set and its digits.
    fn key_words(&self, key: &KeyValue, field: &str) -> Option<String> {
        let id = ["work", "key", key.id, field];
        self.voice.find(&id)?;
        let set = key.set.value();
        let number = self.voice.number(&set);
        let digits = number.map(|it| self.context.wording.digits(&it.value));
        let mut values = key.values.clone();
        values.push(("digits", Value::Text(digits.unwrap_or_default())));
        values.push(("set", set));
        Some(self.voice.say(&id, &values))
    }

    fn second_of(&self, key: &KeyValue) -> Option<Second> {
        match self.amount(&key.set.value()) {
            Amount::Given { number, unit } => Some(Second {
                number,
                unit,
                words: self.key_words(key, "second").unwrap_or_default(),
            }),
            Amount::Missing { .. } => None,
        }
    }

    /// What the nut gets where the dial shows something else, or the same in another unit.
    fn other_unit(&self, key: &KeyValue) -> Option<Second> {
        let Set::Tools(readings) = &key.set else {
            return None;
        };
        let reading = readings.first()?;
        let (printed, field) = match reading.at_nut() {
            Some(at_nut) => (at_nut, "at_nut"),
            None => (self.context.in_other_unit(reading)?, "other_unit"),
        };
        Some(Second {
            number: printed.value,
            unit: printed.unit,
            words: self.key_words(key, field)?,
        })
    }

    fn fact(&self, (id, value): &(&'static str, Value)) -> Fact {
        let label = self.voice.label(&["work", "fact", id]).to_owned();
        let value = match value {
            Value::Missing(lack) => Amount::missing(self.context.to_be_given(lack.who)),
            value => {
                let said = Value::Text(self.joined(value));
                let id = ["work", "fact_value", id];
                Amount::given(
                    match self.voice.find(&id) {
                        Some(_) => self.voice.say(&id, &[("value", said)]),
                        None => self.joined(value),
                    },
                    "",
                )
            }
        };
        Fact { label, value }
    }

    /// Names side by side.
    fn joined(&self, value: &Value) -> String {
        match value {
            Value::List(values) => {
                let names: Vec<String> = values.iter().map(|it| self.voice.value(it)).collect();
                names.join(" · ")
            }
            value => self.voice.value(value),
        }
    }
}
