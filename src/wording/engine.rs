//! Templates: compiled once, strict about missing values, bounded in time and depth.

use std::collections::BTreeSet;

use minijinja::syntax::SyntaxConfig;
use minijinja::{AutoEscape, Environment, Error, ErrorKind, UndefinedBehavior, Value};

use super::entries::{Entries, Text};
use super::{Values, WordingError};

/// Steps that one text may take: a text of a hundred lines needs a few thousand.
const FUEL: u64 = 50_000;
/// Depth of nested blocks that a text may have.
const RECURSION: usize = 64;

/// The templates of a language. Each is compiled when it is first said, because one command says
/// few of them, and then kept.
pub(super) struct Engine {
    environment: Environment<'static>,
}

impl Engine {
    /// An engine for these texts.
    pub(super) fn new(entries: &Entries) -> Self {
        Self {
            environment: environment(entries),
        }
    }

    /// Whether the text parses and what names it asks for. The name is that of a text with something for the engine.
    pub(super) fn variables(&self, name: &str) -> Result<BTreeSet<String>, WordingError> {
        let template = self.environment.get_template(name);
        template
            .map(|template| template.undeclared_variables(false).into_iter().collect())
            .map_err(|error| fault(name, &error))
    }

    pub(super) fn render(&self, name: &str, values: &Values) -> Result<String, WordingError> {
        self.environment
            .get_template(name)
            .and_then(|template| template.render(values.context()))
            .map_err(|error| fault(name, &error))
    }
}

/// The name of one text of a list.
pub(super) fn item(id: &str, index: usize) -> String {
    format!("{id}#{index}")
}

/// Whether the text holds anything for the engine.
pub(super) fn is_template(text: &str) -> bool {
    text.contains("{{") || text.contains("{%") || text.contains("{#")
}

fn fault(name: &str, error: &Error) -> WordingError {
    // An unknown name has no detail, but the engine knows where it stands.
    let name_in_text = error
        .range()
        .and_then(|range| error.template_source()?.get(range))
        .map(|text| format!(" (`{text}`)"));
    WordingError {
        id: name.split('#').next().unwrap_or(name).to_owned(),
        detail: format!("{error}{}", name_in_text.unwrap_or_default()),
    }
}

fn environment(entries: &Entries) -> Environment<'static> {
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::Strict);
    environment.set_auto_escape_callback(|_| AutoEscape::None);
    environment.set_fuel(Some(FUEL));
    environment.set_recursion_limit(RECURSION);
    environment.set_debug(true);
    if let Ok(syntax) = SyntaxConfig::builder()
        .trim_blocks(true)
        .lstrip_blocks(true)
        .build()
    {
        environment.set_syntax(syntax);
    }
    let sources = entries.templates();
    environment.set_loader(move |name| Ok(sources.get(name).cloned()));
    environment.add_filter("plural", plural);
    let grammar = entries.clone_under("grammar.");
    let joiners = grammar.clone();
    environment.add_filter("list", move |words: Vec<String>| join(&joiners, &words));
    environment.add_filter("digits", move |number: &str| digits(&grammar, number));
    environment
}

/// `{{ count | plural("joint", "joints") }}`: the word alone. A count may be a number or its text.
fn plural(count: &Value, one: String, other: String) -> Result<String, Error> {
    let is_one = match (count.as_i64(), count.as_str()) {
        (Some(number), _) => number == 1,
        (None, Some(text)) => text == "1",
        (None, None) => {
            return Err(Error::new(
                ErrorKind::InvalidOperation,
                "plural counts numbers",
            ));
        }
    };
    Ok(if is_one { one } else { other })
}

/// "a, b and c" with the joiners of the language.
pub(super) fn join(entries: &Entries, words: &[String]) -> String {
    let joiner = |key: &str| match entries.text(key) {
        Some(Text::One(text)) => format!("{text} "),
        _ => String::from(", "),
    };
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!(
            "{} {}{last}",
            first.join(&joiner("grammar.list.between")),
            joiner("grammar.list.last"),
        ),
    }
}

/// Digits as words; characters without a word are left out.
pub(super) fn digits(entries: &Entries, number: &str) -> String {
    let words: Vec<&str> = number
        .chars()
        .filter_map(|character| {
            let key = match character {
                '.' => "point".to_owned(),
                digit => digit.to_string(),
            };
            match entries.text(&format!("grammar.digits.{key}")) {
                Some(Text::One(word)) => Some(word.as_str()),
                _ => None,
            }
        })
        .collect();
    words.join(" ")
}
