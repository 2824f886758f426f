//! Near names: what somebody probably meant.

/// How many names a finding lists when none is near.
const LISTED: usize = 24;

/// Edit distance in which a swap of two neighbours counts one, and upper or lower case, spaces,
/// `-` and `_` count nothing.
pub fn distance(a: &str, b: &str) -> usize {
    strsim::osa_distance(&folded(a), &folded(b))
}

fn folded(text: &str) -> String {
    text.chars()
        .map(|sign| match sign {
            '-' | '_' => ' ',
            other => other,
        })
        .flat_map(char::to_lowercase)
        .collect()
}

/// The one name of `known` that is nearest to `word`, if it is near enough to be meant: at most one
/// wrong character in three, and always one.
pub fn near<'k>(word: &str, known: impl IntoIterator<Item = &'k str>) -> Option<&'k str> {
    let length = word.chars().count();
    // A word of thousands of characters is nobody's slip of a key, and the distance is quadratic.
    if length > 200 {
        return None;
    }
    let reach = (length / 3).max(1);
    known
        .into_iter()
        .filter(|name| name.chars().count().abs_diff(length) <= reach)
        .map(|name| (distance(word, name), name))
        .filter(|&(away, _)| away <= reach)
        .min_by_key(|&(away, _)| away)
        .map(|(_, name)| name)
}

/// The near name and a short list of what is known, as the values `near` and `known` of a finding.
pub fn near_or_list(word: &str, known: &[&str]) -> (String, String) {
    let near = near(word, known.iter().copied()).unwrap_or_default();
    let list = if known.len() <= LISTED {
        known.join(", ")
    } else {
        String::new()
    };
    (near.to_owned(), list)
}

#[cfg(test)]
mod tests {
    use super::near;

    #[test]
    fn a_slip_of_a_key_is_near_and_another_word_is_not() {
        let known = ["length", "grip", "bearing_friction"];
        assert_eq!(near("lenght", known), Some("length"));
        assert_eq!(near("bearing-friction", known), Some("bearing_friction"));
        assert_eq!(near("Grip", known), Some("grip"));
        assert_eq!(near("colour", known), None);
        assert_eq!(near("", known), None);
    }
}
