//! Near names for a name that is not known.

/// Up to three known names, the nearest first; none that has little in common.
pub(super) fn near_names<'a>(typed: &str, known: impl Iterator<Item = &'a str>) -> Vec<String> {
    let typed = typed.to_lowercase();
    let mut scored: Vec<(f64, &str)> = known
        .map(|name| (strsim::jaro_winkler(&typed, &name.to_lowercase()), name))
        .filter(|&(score, _)| score > 0.7)
        .collect();
    scored.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(b.1)));
    scored.dedup_by(|a, b| a.1 == b.1);
    scored.truncate(3);
    scored
        .into_iter()
        .map(|(_, name)| name.to_owned())
        .collect()
}
