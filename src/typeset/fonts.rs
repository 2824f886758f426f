//! The fonts of the house, embedded: the only ones that any page can use.

use std::sync::LazyLock;

use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// The files of `fonts/`, in the order in which Typst falls back on them.
const FILES: [&[u8]; 5] = [
    include_bytes!("../../fonts/IBMPlexSans-Variable.ttf"),
    include_bytes!("../../fonts/IBMPlexMono-Regular.ttf"),
    include_bytes!("../../fonts/IBMPlexMono-Bold.ttf"),
    include_bytes!("../../fonts/IBMPlexMath-Regular.ttf"),
    include_bytes!("../../fonts/NotoSansSymbols2-Regular.ttf"),
];

/// The fonts and their book, read once for all documents of a run.
pub(super) struct Fonts {
    pub(super) list: Vec<Font>,
    pub(super) book: LazyHash<FontBook>,
}

pub(super) static FONTS: LazyLock<Fonts> = LazyLock::new(|| {
    let list: Vec<Font> = FILES
        .iter()
        .flat_map(|file| Font::iter(Bytes::new(*file)))
        .collect();
    let book = LazyHash::new(FontBook::from_fonts(&list));
    Fonts { list, book }
});

/// The characters of `text` that no embedded font can print, each once, in order of appearance.
///
/// Line breaks and tabs are spacing and never listed; every other control character is, and so are
/// the characters that turn the direction of writing, because they would alter what stands beside them.
pub fn missing_characters(text: &str) -> Vec<char> {
    let mut missing = Vec::new();
    for character in text.chars() {
        if !is_printable(character) && !missing.contains(&character) {
            missing.push(character);
        }
    }
    missing
}

fn is_printable(character: char) -> bool {
    match character {
        '\n' | '\r' | '\t' | ' '..='~' => true,
        character if character.is_control() => false,
        // Marks and overrides of direction, Unicode Standard Annex 9, section 2.
        '\u{200e}'
        | '\u{200f}'
        | '\u{061c}'
        | '\u{202a}'..='\u{202e}'
        | '\u{2066}'..='\u{2069}' => false,
        character => FONTS
            .list
            .iter()
            .any(|font| font.info().coverage.contains(u32::from(character))),
    }
}

/// The BLAKE3 input of the content code: every font file, in a fixed order.
pub fn font_files() -> &'static [&'static [u8]] {
    &FILES
}
