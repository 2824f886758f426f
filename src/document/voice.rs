//! What a piece of [`Work`] says, in the words of the wording and the units of the pack.
//!
//! Words only name values; nothing here depends on what they say. Ids are looked up by their parts, because a job of
//! thousands of joints asks for the words of every step of every card.

use std::borrow::Cow;

use crate::units::{Dimension, Printed, unit_named};
use crate::wording::WordingError;
use crate::work::{Bound, Hazard, Limit, Role, Step, Value, Values, Work};

use super::build::{Context, capital, percent};

/// The group whose words hold for every method that has none of its own.
const COMMON: &str = "common";

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

/// Says works in the words and units of a pack.
#[derive(Clone, Copy)]
pub struct Voice<'a> {
    context: &'a Context<'a>,
    is_brief: bool,
}

impl<'a> Voice<'a> {
    /// A voice for the documents of a context.
    pub const fn new(context: &'a Context<'a>) -> Self {
        Self {
            context,
            is_brief: false,
        }
    }

    /// The same for a card: numbers and letters behind one another without a word between them, and what is gone
    /// through several times said once with how often.
    #[must_use]
    pub const fn brief(self) -> Self {
        Self {
            is_brief: true,
            ..self
        }
    }

    /// A text by the parts of its id, which must be there: one that is not is a fault of the program.
    pub fn label(&self, id: &[&str]) -> &'a str {
        self.find(id).unwrap_or_else(|| {
            self.fault(id, String::new());
            ""
        })
    }

    /// A text by the parts of its id, where there is one.
    pub fn find(&self, id: &[&str]) -> Option<&'a str> {
        self.context.wording.find(id)
    }

    /// A text with its values.
    pub fn say(&self, id: &[&str], values: &[(&'static str, Value)]) -> String {
        self.find(id).map_or_else(
            || {
                self.fault(id, String::new());
                String::new()
            },
            |text| self.filled(id, text, [values, &[]]),
        )
    }

    /// Notes words that are missing, or a value that they ask for and nobody gave.
    fn fault(&self, id: &[&str], detail: String) {
        let id = id.join(".");
        self.context.fault(WordingError { id, detail });
    }

    fn filled(&self, id: &[&str], text: &str, values: [&[(&'static str, Value)]; 2]) -> String {
        let named = |name: &str| {
            values
                .iter()
                .copied()
                .flatten()
                .find(|(known, _)| *known == name)
        };
        let printed = |name: &str| Some(Cow::Owned(self.in_line(named(name)?)));
        if let Some(said) = self.context.wording.fill(text, &printed) {
            return said;
        }
        // A user's own words may ask for more than a value in its place.
        let given = values.iter().copied().flatten();
        let given = given.fold(crate::wording::Values::new(), |all, named| {
            all.with(named.0, self.in_line(named))
        });
        self.context.say(&id.join("."), &given)
    }

    /// A value in the middle of a line. One that is missing is a blank there; who gives it stands in a box.
    fn in_line(&self, (name, value): &(&'static str, Value)) -> String {
        match value {
            Value::OnCard => self
                .find(&["work", "on_card", name])
                .map_or_else(|| self.value(value), str::to_owned),
            value => self.value(value),
        }
    }

    /// A value as it stands in a line: a missing one is a blank.
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Text(text) => text.clone(),
            Value::Count(count) => count.to_string(),
            Value::Percent(share) => percent(*share),
            Value::Word(id) => self.label(&["work", "word", id]).to_owned(),
            Value::Missing(_) => self.label(&["work", "line", "blank"]).to_owned(),
            Value::OnCard => self.label(&["work", "bound", "on_card"]).to_owned(),
            Value::List(values) => self.list(values),
            Value::Span(ends) => self.span(&ends[0], &ends[1]),
            Value::Si(..) | Value::Reading(_) => {
                self.number(value).map(|it| it.joined()).unwrap_or_default()
            }
        }
    }

    /// A value as it stands in a box: a missing one says who gives it.
    pub fn boxed(&self, value: &Value) -> String {
        match value {
            Value::Missing(lack) => self.context.to_be_given(lack.who),
            value => self.value(value),
        }
    }

    /// The number and unit of a value that has them.
    pub fn number(&self, value: &Value) -> Option<Printed> {
        match value {
            // A wait of minutes is no fraction of an hour.
            Value::Si(si, Dimension::Duration) if *si < HOUR => Some(print_minutes(*si)?),
            Value::Si(si, dimension) => Some(self.context.units.print_si(*si, *dimension)),
            Value::Reading(reading) => Some(reading.printed(&self.context.units)),
            _ => None,
        }
    }

    /// Each of some values once, behind one another.
    fn list(&self, values: &[Value]) -> String {
        let is_sign = |value: &Value| match value {
            Value::Count(_) => true,
            Value::Text(text) => text.chars().count() == 1,
            _ => false,
        };
        if self.is_brief && values.iter().all(is_sign) {
            return self.signs(values);
        }
        let mut said: Vec<String> = Vec::with_capacity(values.len());
        for value in values {
            let text = self.value(value);
            if !said.contains(&text) {
                said.push(text);
            }
        }
        self.context.wording.join(&said)
    }

    /// `1 5 9 13`, `3 × X Y`.
    fn signs(&self, values: &[Value]) -> String {
        let is_cycle = |length: &usize| {
            values
                .chunks(*length)
                .all(|part| part == &values[..*length])
        };
        let lengths = (1..values.len()).filter(|length| values.len().is_multiple_of(*length));
        let cycle = lengths.into_iter().find(is_cycle).unwrap_or(values.len());
        let once: Vec<String> = values[..cycle].iter().map(|it| self.value(it)).collect();
        let once = once.join(" ");
        match values.len() / cycle.max(1) {
            0 | 1 => once,
            times => {
                let values = [("times", Value::Count(times)), ("what", Value::Text(once))];
                self.say(&["work", "card", "times"], &values)
            }
        }
    }

    /// What prints alike is one value; a unit that both ends share stands once.
    fn span(&self, least: &Value, most: &Value) -> String {
        let low = self.low_end(least, most);
        let high = self.value(most);
        if low == high {
            return high;
        }
        let ends = [("least", Value::Text(low)), ("most", Value::Text(high))];
        self.say(&["work", "bound", "span"], &ends)
    }

    /// A field of the words of a step with its values; those of its method, else those that methods share.
    pub fn step(&self, work: &Work, step: &Step, field: &str) -> Option<String> {
        self.words(work.method, step, &[field], &[])
    }

    /// The first of some fields that a step has, with values of the view beside those of the step.
    pub fn words(
        &self,
        method: &str,
        step: &Step,
        fields: &[&str],
        more: &[(&'static str, Value)],
    ) -> Option<String> {
        let (id, text) = fields
            .iter()
            .find_map(|field| self.found(method, step.id, field))?;
        Some(self.filled(&id, text, [&step.values, more]))
    }

    fn found<'b>(
        &self,
        method: &'b str,
        step: &'b str,
        field: &'b str,
    ) -> Option<([&'b str; 5], &'a str)> {
        [method, COMMON].into_iter().find_map(|group| {
            let id = ["work", "step", group, step, field];
            Some((id, self.find(&id)?))
        })
    }

    /// Whether a method has words of its own for a step.
    pub fn has_own_words(&self, method: &str, step: &Step) -> bool {
        ["do", "card"].iter().any(|field| {
            self.find(&["work", "step", method, step.id, field])
                .is_some()
        })
    }

    /// Words behind who acts, where that is nobody but a technician the words alone.
    pub fn by(&self, who: Role, what: String) -> String {
        if who == Role::Technician {
            return what;
        }
        let values = [
            ("who", Value::Text(capital(self.role(who)))),
            ("what", Value::Text(what)),
        ];
        self.say(&["work", "line", "by"], &values)
    }

    /// Who acts or signs.
    pub fn role(&self, role: Role) -> &'a str {
        self.label(&["work", "role", role.key()])
    }

    /// `gap spread 0.25 mm or less`: the words of the limit for this kind of bound, else what is limited and the bound.
    pub fn limit(&self, limit: &Limit) -> String {
        let values = self.bound_values(&limit.bound);
        let key = bound_key(&limit.bound);
        let own = ["work", "limit", limit.id, key];
        if let Some(text) = self.find(&own) {
            return self.filled(&own, text, [&values, &[]]);
        }
        let what = self.label(&["work", "limit", limit.id]).to_owned();
        if limit.bound == Bound::Words {
            return what;
        }
        let values = [
            ("what", Value::Text(what)),
            ("bound", Value::Text(self.bound(&limit.bound))),
        ];
        self.say(&["work", "line", "limit"], &values)
    }

    /// `0.25 mm or less`, without what is limited. From one end to the other needs one value for each end; joints that
    /// differ there are sent to their cards.
    pub fn bound(&self, bound: &Bound) -> String {
        match bound {
            Bound::Between(least, most)
                if [least, most].into_iter().any(|it| self.has_two_ends(it)) =>
            {
                self.value(&Value::OnCard)
            }
            Bound::Is(value) => self.value(value),
            Bound::Words => String::new(),
            bound => self.say(
                &["work", "bound", bound_key(bound)],
                &self.bound_values(bound),
            ),
        }
    }

    fn bound_values(&self, bound: &Bound) -> Values {
        match bound {
            Bound::AtMost(value)
            | Bound::AtLeast(value)
            | Bound::Below(value)
            | Bound::Is(value) => {
                vec![("value", value.clone())]
            }
            Bound::Between(least, most) => {
                let low = self.low_end(least, most);
                vec![("least", Value::Text(low)), ("most", most.clone())]
            }
            Bound::Zero | Bound::Words => Vec::new(),
        }
    }

    /// The lower of two ends; a unit that both share stands behind the higher.
    fn low_end(&self, least: &Value, most: &Value) -> String {
        match (self.number(least), self.number(most)) {
            (Some(low), Some(high)) if low.unit == high.unit && low.value != high.value => {
                low.value
            }
            _ => self.value(least),
        }
    }

    fn has_two_ends(&self, value: &Value) -> bool {
        matches!(value, Value::Span(ends) if self.value(&ends[0]) != self.value(&ends[1]))
    }

    /// Several limits in one cell.
    pub fn limits<'b>(&self, limits: impl IntoIterator<Item = &'b Limit>) -> String {
        let said: Vec<String> = limits.into_iter().map(|limit| self.limit(limit)).collect();
        said.join("; ")
    }

    /// A field of the words of a hazard with its values.
    pub fn hazard(&self, hazard: &Hazard, field: &str) -> Option<String> {
        let id = ["work", "hazard", hazard.kind.key(), field];
        let held_by = [("held_by", hazard.held_by.clone())];
        Some(self.filled(&id, self.find(&id)?, [&hazard.values, &held_by]))
    }
}

fn print_minutes(si: f64) -> Option<Printed> {
    Some(unit_named(Dimension::Duration, "min")?.print_si(si))
}

const fn bound_key(bound: &Bound) -> &'static str {
    match bound {
        Bound::AtMost(_) => "at_most",
        Bound::AtLeast(_) => "at_least",
        Bound::Below(_) => "below",
        Bound::Between(..) => "between",
        Bound::Zero => "none",
        Bound::Is(_) => "is",
        Bound::Words => "words",
    }
}
