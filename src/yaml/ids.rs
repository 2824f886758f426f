//! Every finding that the reader raises, with the values its wording may name.

/// Ids and names of values. A value that has nothing to say is an empty text.
pub const IDS: &[(&str, &[&str])] = &[
    ("date.form", &["key", "text", "write"]),
    ("date.no_such", &["key", "text"]),
    ("job.duplicate_key", &["first", "key"]),
    ("job.invalid", &["detail", "key"]),
    ("job.list_length", &["found", "item", "key", "wanted"]),
    ("job.missing_key", &["item", "key", "within"]),
    ("job.missing_value", &["key"]),
    ("job.not_true_or_false", &["key", "text", "write"]),
    ("job.not_whole", &["key", "text", "write"]),
    ("job.out_of_range", &["key", "least", "most", "text"]),
    (
        "job.unknown_key",
        &["item", "key", "known", "near", "within"],
    ),
    ("job.unknown_word", &["key", "known", "near", "text"]),
    ("job.wrong_shape", &["found", "item", "key", "wanted"]),
    ("quantity.bare_point", QUANTITY),
    ("quantity.comma", QUANTITY),
    ("quantity.fraction", QUANTITY),
    ("quantity.grouping", QUANTITY),
    ("quantity.leading_zero", QUANTITY),
    ("quantity.no_number", QUANTITY),
    ("quantity.no_unit", QUANTITY),
    ("quantity.not_finite", QUANTITY),
    ("quantity.unknown_unit", UNIT),
    ("quantity.wrong_quantity", UNIT),
    ("text.direction", &["code", "key"]),
    ("text.empty", QUANTITY),
    ("text.hidden_character", &["code", "key"]),
    ("text.line_break", &["key"]),
    ("text.tab", &["code", "key"]),
    ("text.too_long", &["key", "length", "most"]),
    ("time.form", &["key", "text", "write"]),
    ("time.no_such", &["key", "text"]),
    ("yaml.after_quote", &[]),
    ("yaml.alias_budget", &[]),
    ("yaml.bracket", &["close", "open"]),
    ("yaml.character", &["character"]),
    ("yaml.colon", &[]),
    ("yaml.empty", &[]),
    ("yaml.escape", &[]),
    ("yaml.gave_up", &["count"]),
    ("yaml.indentation", &[]),
    ("yaml.key_not_text", &[]),
    ("yaml.merge_shape", &[]),
    ("yaml.no_colon", &[]),
    ("yaml.not_a_map", &["found"]),
    ("yaml.not_utf8", &["count"]),
    ("yaml.nul", &[]),
    ("yaml.recursive_alias", &["name"]),
    ("yaml.second_document", &[]),
    ("yaml.separator", &[]),
    ("yaml.syntax", &["detail"]),
    ("yaml.tab", &[]),
    ("yaml.tag", &["tag"]),
    ("yaml.too_deep", &["limit"]),
    ("yaml.too_large", &["limit", "megabytes"]),
    ("yaml.unclosed_quote", &[]),
    ("yaml.unknown_anchor", &["name", "near"]),
];

/// Keys of the short labels at related places.
pub const LABELS: &[&str] = &["first"];

const QUANTITY: &[&str] = &["example", "key", "text", "wanted", "write"];
const UNIT: &[&str] = &[
    "example", "key", "known", "measures", "near", "text", "unit", "wanted",
];

/// The entry of an id.
pub(super) fn lookup(id: &str) -> Option<(&'static str, &'static [&'static str])> {
    IDS.binary_search_by(|(known, _)| (*known).cmp(id))
        .ok()
        .and_then(|index| IDS.get(index))
        .copied()
}

/// Whether the wording of an id may name a value.
pub(super) fn may_name(id: &str, value: &str) -> bool {
    lookup(id).is_some_and(|(_, names)| names.contains(&value))
}
