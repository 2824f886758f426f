//! Number and unit that stay on one line, in texts that others wrote.

use super::table::UNITS;

/// What keeps two words on one line.
const NO_BREAK: char = '\u{a0}';

/// The text with a space that does not break between each number and the unit behind it: `below 60 °C` in a narrow
/// column never ends a line with `60`. Units are those of the table in the spelling that is printed; every other
/// space stays.
pub fn keep_together(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut before = None;
    for (at, sign) in text.char_indices() {
        let is_number = before.is_some_and(|it: char| it.is_ascii_digit());
        if sign == ' ' && is_number && begins_with_unit(&text[at + 1..]) {
            kept.push(NO_BREAK);
        } else {
            kept.push(sign);
        }
        before = Some(sign);
    }
    kept
}

/// Whether a unit stands at the beginning, whole: `m` does not stand in `more`.
fn begins_with_unit(text: &str) -> bool {
    UNITS
        .iter()
        .filter_map(|unit| text.strip_prefix(unit.name))
        .any(|rest| !rest.starts_with(|next: char| next.is_alphanumeric() || "²³·/".contains(next)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_their_units() {
        let cases = [
            ("work only below 60 °C", "work only below 60\u{a0}°C"),
            ("6 bar, 1100 l/min", "6\u{a0}bar, 1100\u{a0}l/min"),
            ("12.5 N·m or 9 ft·lb.", "12.5\u{a0}N·m or 9\u{a0}ft·lb."),
            ("80 % of 3 mm²", "80\u{a0}% of 3\u{a0}mm²"),
        ];
        for (text, kept) in cases {
            assert_eq!(keep_together(text), kept);
        }
    }

    #[test]
    fn other_spaces_break() {
        for text in ["4 more studs", "C 310 north", "bar 6", "studs 1 to 4", ""] {
            assert_eq!(keep_together(text), text);
        }
    }
}
