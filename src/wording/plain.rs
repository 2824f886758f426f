//! Texts that only put values in: most of them, said without the engine. A card says a hundred, a job of thousands of
//! joints looks at the room of each.

use std::borrow::Cow;

/// The text with its values in place of `{{ name }}`. None where it asks for more than that, or for a value that is
/// not there: then the engine has its say.
pub(super) fn filled<'a>(
    text: &str,
    value: &dyn Fn(&str) -> Option<Cow<'a, str>>,
) -> Option<String> {
    if text.contains("{%") || text.contains("{#") {
        return None;
    }
    let mut said = String::with_capacity(text.len() + 16);
    let mut rest = text;
    while let Some((before, from)) = rest.split_once("{{") {
        let (name, behind) = from.split_once("}}")?;
        said.push_str(before);
        said.push_str(&value(name.trim())?);
        rest = behind;
    }
    said.push_str(rest);
    Some(said)
}
