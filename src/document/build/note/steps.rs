//! The steps of a note: symbol = formula = numbers = result [source].

use std::collections::BTreeMap;

use crate::calc::{Basis, Chosen, Entry, Key, Ledger};
use crate::document::blocks::Head;
use crate::document::desk::Paragraphs;
use crate::document::note::{FormulaStep, FormulaSteps, StepGroup};
use crate::formula::{Formula, Node, Symbol};
use crate::methods::jackbolt::ids;
use crate::standards::{symbols, validity};
use crate::units::{Dimension, Printed};
use crate::wording::Values;

use super::super::context::Context;
use super::notation::{group_of, has_dimension_of, is_of_a_pass, meaning, printed};

/// What the steps are made from.
pub(super) struct Maker<'a> {
    pub(super) context: &'a Context<'a>,
    pub(super) ledger: &'a Ledger,
    pub(super) chosen: &'a Chosen,
}

impl Maker<'_> {
    /// All steps in the order in which they arose; those of the passes stand in their table.
    pub(super) fn steps(&self) -> FormulaSteps {
        let mut groups: Vec<(&str, StepGroup)> = Vec::new();
        for (number, entry) in (1u32..).zip(self.printed_entries()) {
            let Some(step) = self.step(&entry, number) else {
                continue;
            };
            let group = group_of(entry.key);
            match groups.last_mut() {
                Some((last, list)) if *last == group => list.steps.push(step),
                _ => {
                    let title = self.context.label(&format!("note_more.group.{group}"));
                    groups.push((
                        group,
                        StepGroup {
                            title,
                            steps: vec![step],
                        },
                    ));
                }
            }
        }
        let groups: Vec<StepGroup> = groups.into_iter().map(|(_, group)| group).collect();
        // Their steps change between stud and jackbolt all the time.
        let is_of_jackbolts = self.ledger.entry(ids::JACKBOLT_COUNT.key()).is_some();
        FormulaSteps {
            head: Head {
                title: self.context.label("note.steps.title"),
                note: self.context.label("note.steps.note"),
            },
            groups: if is_of_jackbolts {
                joined(groups)
            } else {
                groups
            },
        }
    }

    /// The entries that get a step each. A rounded value stands behind the exact one; the same
    /// formula with the same inputs stands once.
    fn printed_entries(&self) -> impl Iterator<Item = Entry<'_>> {
        self.ledger
            .entries()
            .enumerate()
            .filter(|(at, entry)| match entry.basis {
                _ if is_of_a_pass(entry.key) => false,
                Basis::Formula(formula, keys) => !self.stands_before(*at, formula, keys),
                Basis::Chosen(_) => true,
                Basis::Rounded(from) => !has_dimension_of(self.ledger, entry, from),
                Basis::Input(_) | Basis::Sum | Basis::Simulated(_) => false,
            })
            .map(|(_, entry)| entry)
    }

    fn stands_before(&self, at: usize, formula: &Formula, keys: &[Key]) -> bool {
        let earlier = self.ledger.entries().take(at);
        earlier.filter(|entry| !is_of_a_pass(entry.key)).any(|entry| {
            matches!(entry.basis, Basis::Formula(own, own_keys) if own == formula && own_keys == keys)
        })
    }

    fn step(&self, entry: &Entry<'_>, number: u32) -> Option<FormulaStep> {
        match entry.basis {
            Basis::Formula(formula, keys) => Some(self.formula(entry, formula, keys, number)),
            Basis::Chosen(keys) => Some(self.chosen(entry, keys, number)),
            Basis::Rounded(from) => self.read_off(entry, from, number),
            Basis::Input(_) | Basis::Sum | Basis::Simulated(_) => None,
        }
    }

    fn formula(
        &self,
        entry: &Entry<'_>,
        formula: &'static Formula,
        keys: &[Key],
        number: u32,
    ) -> FormulaStep {
        let numbers: Option<Vec<Printed>> = keys.iter().map(|key| self.printed_of(*key)).collect();
        FormulaStep {
            formula: formula.tree(),
            numbers: numbers.map(|numbers| formula.tree_with_numbers(&numbers)),
            source: self
                .context
                .wording
                .source(formula.source, formula.confirmed),
            alt: format!("{} = {}", formula.symbol.plain(), formula.text()),
            ..self.bare(entry, formula.symbol, number)
        }
    }

    /// The least of some bounds, rounded down.
    fn chosen(&self, entry: &Entry<'_>, keys: &[Key], number: u32) -> FormulaStep {
        let bounds: Vec<Printed> = keys
            .iter()
            .filter_map(|key| self.printed_of(*key))
            .collect();
        let text: Vec<String> = bounds.iter().map(Printed::joined).collect();
        let is_torque = entry.dimension == Dimension::Torque;
        let symbol = if is_torque {
            symbols::LIMIT_TORQUE
        } else {
            symbols::PEAK_LIMIT
        };
        let arguments = bounds.into_iter().map(quantity).collect();
        let bare = self.bare(entry, symbol, number);
        let remark = match &entry.value {
            Ok(_) if is_torque => self.context.label("note_more.rounded_down"),
            _ => bare.remark.clone(),
        };
        FormulaStep {
            formula: Node::Function {
                name: "min",
                arguments,
            },
            remark,
            alt: format!("{} = min({})", symbol.plain(), text.join(", ")),
            ..bare
        }
    }

    /// What the calibration points of a wrench give: the torque of another wrench at the set
    /// pressure, the pressure of the torque that is never exceeded.
    fn read_off(&self, entry: &Entry<'_>, from: Key, number: u32) -> Option<FormulaStep> {
        let at = self.printed_of(from)?;
        let (symbol, name) = match entry.dimension {
            Dimension::Torque => (symbols::TORQUE, "T"),
            _ => (symbols::PUMP_PRESSURE, "p"),
        };
        let index = usize::from(entry.key.number).saturating_sub(1);
        let tools = if entry.key.number > 0 {
            &self.chosen.turning
        } else {
            &self.chosen.loosening
        };
        let tool = tools.get(index).map_or("?", |tool| tool.name.as_str());
        let remark = match &entry.value {
            Ok(_) if entry.key.number == 0 => "note_more.read_down",
            _ => "note_more.read_off",
        };
        let bare = self.bare(entry, symbol, number);
        Some(FormulaStep {
            alt: format!("{} = {name}({})", symbol.plain(), at.joined()),
            formula: Node::Function {
                name,
                arguments: vec![quantity(at)],
            },
            remark: if entry.value.is_ok() {
                self.context.say1(remark, "tool", tool)
            } else {
                bare.remark.clone()
            },
            ..bare
        })
    }

    /// A step without its formula.
    fn bare(&self, entry: &Entry<'_>, symbol: Symbol, number: u32) -> FormulaStep {
        let result = printed(self.context, entry);
        FormulaStep {
            number: number.to_string(),
            name: meaning(self.context, entry.key, Some(&symbol)),
            symbol: symbol.node(),
            formula: Node::Pi,
            numbers: None,
            result: result
                .as_ref()
                .map(|it| it.value.clone())
                .unwrap_or_default(),
            unit: result.map(|it| it.unit).unwrap_or_default(),
            remark: self.remark(entry),
            source: String::new(),
            alt: String::new(),
        }
    }

    /// What is missing and who must give it, or what the value is rounded to.
    fn remark(&self, entry: &Entry<'_>) -> String {
        if let Err(lack) = &entry.value {
            let who = self.context.who(lack.who);
            let values = Values::new().with("key", lack.key).with("who", who);
            return self.context.say("note.steps.waits", &values);
        }
        let rounded = self.ledger.entries().find(|other| {
            matches!(other.basis, Basis::Rounded(from) if from == entry.key)
                && !is_of_a_pass(other.key)
                && other.dimension == entry.dimension
        });
        let Some((rounded, value)) = rounded.and_then(|it| Some((it, printed(self.context, &it)?)))
        else {
            return String::new();
        };
        if rounded.key.path.starts_with("stretch.accept") {
            self.context.say1("note_more.accepted", "value", value)
        } else {
            self.context.say1("note.steps.set_torque", "setting", value)
        }
    }

    fn printed_of(&self, key: Key) -> Option<Printed> {
        self.ledger
            .entry(key)
            .and_then(|entry| printed(self.context, &entry))
    }

    /// Where the printed formulas hold, each condition with its steps. Geometry holds anywhere.
    pub(super) fn holds(&self) -> Paragraphs {
        let mut conditions: BTreeMap<&str, Vec<u32>> = BTreeMap::new();
        for (number, entry) in (1u32..).zip(self.printed_entries()) {
            if let Basis::Formula(formula, _) = entry.basis
                && formula.validity != validity::GEOMETRY
            {
                conditions.entry(formula.validity).or_default().push(number);
            }
        }
        let mut conditions: Vec<(&str, Vec<u32>)> = conditions.into_iter().collect();
        conditions.sort_by_key(|(_, steps)| steps.first().copied());
        let texts = conditions.into_iter().map(|(condition, steps)| {
            let values = Values::new()
                .with(
                    "condition",
                    self.context.label(&format!("validity.{condition}")),
                )
                .with("steps", ranges(&steps));
            self.context.say("note_more.holds.row", &values)
        });
        let texts: Vec<String> = texts.collect();
        Paragraphs {
            head: Head {
                title: self.context.label("note_more.holds.title"),
                note: self.context.label("note_more.holds.note"),
            },
            texts: if texts.is_empty() {
                texts
            } else {
                vec![format!("{}.", texts.join("; "))]
            },
        }
    }
}

/// Steps that interrupt a group.
const INTERLUDE: usize = 2;

/// One or two steps between two groups of the same title belong to what they interrupt, so that the
/// title stands once.
fn joined(groups: Vec<StepGroup>) -> Vec<StepGroup> {
    let mut joined: Vec<StepGroup> = Vec::new();
    for group in groups {
        if let [.., before, between] = joined.as_mut_slice()
            && before.title == group.title
            && between.steps.len() <= INTERLUDE
        {
            before.steps.append(&mut between.steps);
            before.steps.extend(group.steps);
            joined.pop();
        } else {
            joined.push(group);
        }
    }
    joined
}

fn quantity(printed: Printed) -> Node {
    Node::Quantity {
        value: printed.value,
        unit: printed.unit,
    }
}

/// `1–3, 7` of rising numbers.
fn ranges(numbers: &[u32]) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for &number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == number => *last = number,
            _ => runs.push((number, number)),
        }
    }
    let text = |(first, last): (u32, u32)| match last - first {
        0 => first.to_string(),
        1 => format!("{first}, {last}"),
        _ => format!("{first}–{last}"),
    };
    runs.into_iter().map(text).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::ranges;

    #[test]
    fn neighbouring_steps_are_named_as_a_range() {
        assert_eq!(ranges(&[]), "");
        assert_eq!(ranges(&[4]), "4");
        assert_eq!(ranges(&[1, 2, 3, 5, 8, 9]), "1–3, 5, 8, 9");
    }
}
