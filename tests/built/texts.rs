//! Jobs with every text of the planner changed.

use serde_yaml::Value;

/// Keys whose values are words for a reader alone, and the fewest signs that one of them may have.
const TEXTS: [(&str, usize); 24] = [
    ("title", 60),
    ("subtitle", 90),
    ("client", 40),
    ("owner", 40),
    ("site", 40),
    ("department", 30),
    ("scope", 600),
    ("excluded", 90),
    ("regime", 120),
    ("distribution", 60),
    ("text", 40),
    ("material", 40),
    ("source", 90),
    ("company", 32),
    ("boundary", 60),
    ("reason", 60),
    ("fluid", 40),
    ("hazard", 40),
    ("what", 20),
    ("control", 60),
    ("location", 30),
    ("procedure", 32),
    ("equipment_name", 40),
    ("place", 60),
];

/// The job with each text changed; the change is told how many signs there may be. A text that names a person of the job
/// refers to them and stays.
pub(crate) fn with_texts(job: &str, change: impl Fn(&str, usize) -> String) -> String {
    let mut job: Value = serde_yaml::from_str(job).expect("an example is YAML");
    let people = job.get("people").and_then(Value::as_mapping).cloned();
    let people = people.unwrap_or_default();
    walk(
        &mut job,
        None,
        &|text: &str, most| match people.contains_key(text) {
            true => text.to_owned(),
            false => change(text, most),
        },
    );
    serde_yaml::to_string(&job).expect("it is YAML still")
}

fn walk(value: &mut Value, most: Option<usize>, change: &impl Fn(&str, usize) -> String) {
    match value {
        Value::String(text) => {
            if let Some(most) = most {
                *text = change(text, most);
            }
        }
        Value::Sequence(items) => items.iter_mut().for_each(|item| walk(item, most, change)),
        Value::Mapping(fields) => {
            for (key, field) in fields {
                let text = TEXTS.iter().find(|(text, _)| key.as_str() == Some(text));
                walk(field, text.map(|(_, most)| *most), change);
            }
        }
        _ => {}
    }
}
