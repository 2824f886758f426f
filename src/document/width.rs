//! How wide words are on paper, so that they are measured against their room before the layout.
//!
//! The house face is IBM Plex Sans; the widths are those of its bold, or of its medium where that is wider.
//! They are never smaller than the real ones (a test sets every character and compares), so a text
//! that fits here fits on the page.

use unicode_normalization::UnicodeNormalization;

/// Millimetres of one point.
const POINT: f64 = 25.4 / 72.0;

/// Advance widths of U+0020 to U+007E in thousandths of the size (table `hmtx` of the font, the wider of weights 500 and 700).
#[rustfmt::skip]
const ASCII: [u16; 95] = [
    236, 320, 493, 678, 601, 974, 721, 268, 338, 338, 601, 600, 310, 403, 310, 460,
    600, 600, 600, 600, 600, 600, 600, 600, 600, 600, 330, 330, 600, 600, 600, 500,
    903, 685, 667, 651, 697, 607, 585, 719, 724, 432, 559, 696, 530, 819, 724, 714,
    656, 714, 674, 624, 584, 694, 650, 973, 673, 649, 607, 334, 460, 334, 600, 561,
    600, 569, 608, 517, 608, 562, 361, 552, 596, 286, 286, 577, 303, 894, 596, 564,
    608, 608, 404, 504, 383, 596, 538, 841, 560, 534, 518, 372, 402, 372, 600,
];

/// Width of a line of text at a size in pt, in mm.
pub fn of(text: &str, size: f64) -> f64 {
    let thousandths: u32 = text
        .chars()
        .map(|character| u32::from(advance(character)))
        .sum();
    f64::from(thousandths) / 1000.0 * size * POINT
}

fn advance(character: char) -> u16 {
    if let Some(width) = ascii(character) {
        return width;
    }
    match character {
        '\u{a0}' => 236,
        '\u{202f}' | '\u{2009}' => 120,
        '·' | '’' | '‘' | '²' | '³' | '′' => 360,
        '°' | '″' => 500,
        '×' | '–' | '−' | '±' | '≤' | '≥' | 'µ' | '“' | '”' => 610,
        _ => letter(character),
    }
}

/// A letter with a mark is at most a little wider than the letter; of others the widest counts.
fn letter(character: char) -> u16 {
    let base = std::iter::once(character).nfd().next().and_then(ascii);
    match base {
        Some(width) => width + 90,
        None if character.is_lowercase() => 930,
        None => 1400,
    }
}

fn ascii(character: char) -> Option<u16> {
    let index = u32::from(character).checked_sub(0x20)?;
    ASCII.get(usize::try_from(index).ok()?).copied()
}

/// Number of lines that the text takes in a column, first fit; none when a word is wider than the column.
pub fn lines(text: &str, size: f64, column: f64) -> Option<usize> {
    // Nearly every text stands in one line; then it need not be taken apart.
    if of(text, size) <= column {
        return Some(1);
    }
    let space = of(" ", size);
    let (mut count, mut used) = (1, 0.0);
    // As the typesetter sets it.
    let text = crate::units::keep_together(text);
    for word in text.split(' ') {
        let width = of(word, size);
        if width > column {
            return None;
        }
        if used > 0.0 && used + space + width > column {
            count += 1;
            used = width;
        } else {
            used += if used > 0.0 { space + width } else { width };
        }
    }
    Some(count)
}

/// How many characters of the text fit into a number of lines.
pub fn characters_that_fit(text: &str, size: f64, column: f64, most: usize) -> usize {
    let fits = |end: usize| lines(&text[..end], size, column).is_some_and(|count| count <= most);
    let ends = text
        .char_indices()
        .map(|(start, character)| start + character.len_utf8());
    ends.take_while(|end| fits(*end)).count()
}

/// A text in one line of `room` mm at `size` pt; what does not fit ends in an ellipsis. The whole
/// text stands elsewhere: behind the cover, on the card, in the CSV file.
pub fn one_line(text: &str, size: f64, room: f64) -> String {
    let fits = |text: &str| of(text, size) <= room;
    if fits(text) {
        return text.to_owned();
    }
    let mut kept = String::new();
    for sign in text.chars() {
        if !fits(&format!("{kept}{sign}…")) {
            break;
        }
        kept.push(sign);
    }
    format!("{}…", kept.trim_end())
}

/// A long name in two lines, broken behind the hyphen, slash, point or space nearest to its middle.
pub fn halves(text: &str) -> Vec<String> {
    let middle = text.len() / 2;
    let breaks = text
        .char_indices()
        .filter(|(_, character)| "-/._ ".contains(*character));
    let at = breaks
        .map(|(start, _)| start + 1)
        .filter(|end| *end < text.len())
        .min_by_key(|end| end.abs_diff(middle))
        .or_else(|| {
            text.char_indices()
                .map(|(start, _)| start)
                .find(|start| *start >= middle)
        });
    let (first, second) = text.split_at(at.unwrap_or(text.len()));
    vec![first.trim_end().to_owned(), second.to_owned()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_keeps_its_room() {
        assert_eq!(one_line("north channel", 9.5, 60.0), "north channel");
        let cut = one_line(&"W".repeat(60), 9.5, 40.0);
        assert!(cut.ends_with('…') && of(&cut, 9.5) <= 40.0);
    }
}
