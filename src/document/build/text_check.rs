//! Every text of the job that reaches paper, held against the signs that the fonts carry.

use crate::job::Job;
use crate::job::table::Field;
use crate::job::values::{Leaf, Visit};
use crate::report::{Finding, Place};

/// Signs that one finding names; the rest of a text in a foreign script says nothing new.
const MOST_NAMED: usize = 5;

/// A finding `job.missing_character` for each text of the job with a sign that no font has.
/// `missing` lists those of a text; the typesetter, which knows the fonts, gives it.
pub fn missing_characters(job: &Job, missing: fn(&str) -> Vec<char>) -> Vec<Finding> {
    let mut texts = Texts {
        missing,
        findings: Vec::new(),
    };
    job.visit(&mut texts);
    texts.findings
}

struct Texts {
    missing: fn(&str) -> Vec<char>,
    findings: Vec<Finding>,
}

impl Visit for Texts {
    fn leaf(&mut self, field: &'static Field, leaf: Leaf<'_>, place: Place) {
        let Leaf::Text(text) = leaf else { return };
        // A name of a list is looked at where it is described, if it must be.
        let described = field.list.is_some() && !field.list_optional;
        if !field.printed || described {
            return;
        }
        let lacking = (self.missing)(text);
        if lacking.is_empty() {
            return;
        }
        let named: Vec<String> = lacking
            .iter()
            .take(MOST_NAMED)
            .map(|sign| named(*sign))
            .collect();
        let more = lacking.len().saturating_sub(MOST_NAMED);
        self.findings.push(
            Finding::job("job.missing_character", place)
                .with("characters", named.join(", "))
                .with(
                    "more",
                    if more > 0 {
                        more.to_string()
                    } else {
                        String::new()
                    },
                )
                .with("text", text),
        );
    }
}

/// `U+6F22 (漢)`; a sign that shows nothing is named by its number alone.
fn named(sign: char) -> String {
    let number = format!("U+{:04X}", u32::from(sign));
    if sign.is_control() || sign.is_whitespace() {
        number
    } else {
        format!("{number} ({sign})")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Sources;

    /// A stand-in for fonts without signs beyond Latin.
    fn beyond_latin(text: &str) -> Vec<char> {
        text.chars()
            .filter(|sign| u32::from(*sign) > 0x24f)
            .collect()
    }

    #[test]
    fn each_text_is_named_with_its_place_and_sign() {
        let text = "studbook: 1\npack: { title: Kühler 漢 }\njoints:\n  - tag: E-1\n    place: \"\u{1F600}\"\n    studs: { grade: B7 }\n";
        let (job, found) = crate::job::open("job.yaml", text.as_bytes(), &mut Sources::default());
        assert!(found.is_empty(), "{found:?}");
        let findings = missing_characters(&job.unwrap(), beyond_latin);
        let told: Vec<(u32, &str)> = findings
            .iter()
            .map(|finding| (finding.place.unwrap().line, &finding.values["characters"]))
            .collect();
        assert_eq!(told, [(2, "U+6F22 (漢)"), (5, "U+1F600 (\u{1F600})")]);
    }
}
