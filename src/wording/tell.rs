//! A finding in words.

use crate::report::{Finding, Told};

use super::{Values, Wording};

impl Wording {
    /// A finding in words: the entry `<id>` with its `found`, `why` and `fix`. The joint of the
    /// finding is the value `joint`; a value that its texts name and the finding does not have is an empty text.
    /// Who accepted it (`accepted_by`) is said behind it.
    /// A finding without wording is told by its id and its values, so that nothing is lost even then.
    pub fn tell(&self, finding: &Finding) -> Told {
        let named = self.entries.promised(finding.id);
        let named = named.unwrap_or_else(|| self.variables_below(finding.id));
        let mut values = Values::each(named.iter().map(String::as_str), "");
        for (key, value) in finding.values.iter() {
            values = values.with(key, value);
        }
        if let Some(joint) = &finding.joint {
            values = values.with("joint", joint.as_str());
        }
        let part = |name: &str| self.say(&format!("{}.{name}", finding.id), &values);
        let mut title = part("found").map_or_else(|_| bare(finding), as_sentence);
        if finding.values.get("accepted_by").is_some()
            && let Ok(accepted) = self.say("accepted.note", &values)
        {
            title = format!("{title} {accepted}");
        }
        Told {
            title,
            why: part("why").unwrap_or_default(),
            fix: part("fix").unwrap_or_default(),
            labels: finding
                .related
                .iter()
                .map(|(_, key)| self.place_label(key).to_owned())
                .collect(),
        }
    }
}

/// Begins with a capital and ends with a full stop, whoever wrote the text.
fn as_sentence(text: String) -> String {
    let mut sentence = text;
    if sentence.starts_with(char::is_lowercase) {
        let rest = sentence.split_off(sentence.chars().next().map_or(0, char::len_utf8));
        sentence = sentence.to_uppercase() + &rest;
    }
    if !sentence.ends_with(['.', '?', '!']) {
        sentence.push('.');
    }
    sentence
}

/// A finding without wording: nothing but its data.
fn bare(finding: &Finding) -> String {
    let mut text = finding.id.to_owned();
    for (key, value) in finding.values.iter() {
        text.push_str(&format!(" {key}={value}"));
    }
    text
}
