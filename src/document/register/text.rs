//! Texts of the register: fitted into two lines, sorted as people sort, safe in a spreadsheet.

use crate::document::width;
use crate::units::keep_together;

/// Size of the type in the table, in pt.
pub(super) const SIZE: f64 = 8.0;

/// A text in at most two lines of a width in mm: broken at a space, hyphen, slash or comma, else
/// where it must; what does not fit ends in an ellipsis. The whole text stands in the CSV file.
pub fn two_lines(text: &str, room: f64) -> Vec<String> {
    let text = &keep_together(text);
    let fits = |text: &str| width::of(text, SIZE) <= room;
    if fits(text) {
        return vec![text.to_owned()];
    }
    let mut end = 0;
    let mut good_break = None;
    for (start, sign) in text.char_indices() {
        let next = start + sign.len_utf8();
        if !fits(text[..next].trim_end()) {
            break;
        }
        end = next;
        if " -/,·×".contains(sign) {
            good_break = Some(next);
        }
    }
    let at = good_break.unwrap_or(end.max(text.chars().next().map_or(0, char::len_utf8)));
    let (first, rest) = text.split_at(at);
    vec![
        first.trim_end().to_owned(),
        width::one_line(rest.trim_start(), SIZE, room),
    ]
}

/// A piece of a name for sorting: digits as a number, before letters.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Piece {
    /// Value, then how it was written, so that 07 and 7 have an order.
    Number(u128, String),
    Letters(String),
}

pub(super) fn natural(text: &str) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    let signs: Vec<char> = text.chars().collect();
    for run in signs.chunk_by(|a, b| a.is_ascii_digit() == b.is_ascii_digit()) {
        let run: String = run.iter().collect();
        pieces.push(match run.parse() {
            Ok(number) => Piece::Number(number, run),
            Err(_) => Piece::Letters(run),
        });
    }
    pieces
}

/// A spreadsheet must not take a text of the job for a formula: such a text gets the apostrophe
/// that marks it as text.
pub(super) fn no_formula(text: &str) -> String {
    let formula = text.starts_with(['=', '@', '\t', '\r'])
        || (text.starts_with(['+', '-']) && text.parse::<f64>().is_err());
    if formula {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_texts_take_two_lines_and_no_more() {
        assert_eq!(two_lines("E-310-CH-01", 30.0), ["E-310-CH-01"]);
        let long = two_lines(
            "north channel, platform +6 m, behind the ladder of the stair tower",
            28.0,
        );
        assert_eq!(long.len(), 2);
        assert!(long[1].ends_with('…'));
        let solid = two_lines(&"W".repeat(500), 20.0);
        assert!(solid.iter().all(|line| width::of(line, SIZE) <= 20.0));
        assert_eq!(solid.len(), 2);
        assert!(two_lines("", 10.0)[0].is_empty());
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        let text = "north channel, +6 m platform";
        let lines = two_lines(text, width::of("north channel, +6", SIZE) + 0.1);
        assert_eq!(lines, ["north channel,", "+6\u{a0}m platform"]);
    }
}
