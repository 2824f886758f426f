//! What a text, a number or a word must be, said as a complaint when it is not.

use super::fault::Complaint;
use crate::report::near_or_list;
use crate::units::{Dimension, QuantityError, parse_number};

/// The longest text whose type names no maximum, in characters.
const LONGEST: usize = 1_000;

/// A text of one line whose type names no maximum.
pub(super) fn plain_text(text: &str) -> Result<(), Complaint> {
    single_line(text)?;
    no_longer_than(text, LONGEST)
}

/// A text of one line, of signs that can be seen.
pub(super) fn single_line(text: &str) -> Result<(), Complaint> {
    if text.contains(is_break) {
        return Err(Complaint::new("text.line_break"));
    }
    several_lines(text)
}

/// A text of signs that can be seen; lines may break.
pub(super) fn several_lines(text: &str) -> Result<(), Complaint> {
    if text.trim().is_empty() {
        return Err(Complaint::new("text.empty"));
    }
    let hidden = |sign: char| turns_direction(sign) || is_hidden(sign);
    let Some((at, sign)) = text.char_indices().find(|&(_, sign)| hidden(sign)) else {
        return Ok(());
    };
    let id = match sign {
        '\t' => "text.tab",
        sign if turns_direction(sign) => "text.direction",
        _ => "text.hidden_character",
    };
    Err(Complaint::new(id)
        .with("code", format!("U+{:04X}", u32::from(sign)))
        .narrow(at, at + sign.len_utf8()))
}

/// Signs at which a line ends, in any convention.
fn is_break(sign: char) -> bool {
    matches!(sign, '\n' | '\r' | '\u{85}' | '\u{2028}' | '\u{2029}')
}

/// Signs that turn the direction of what follows: a text can read otherwise than it is stored.
/// Right-to-left letters themselves are letters like others.
fn turns_direction(sign: char) -> bool {
    matches!(sign, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Control characters, and signs without ink by which two tags could differ unseen.
fn is_hidden(sign: char) -> bool {
    let control = sign.is_control() && !is_break(sign);
    let without_ink = matches!(
        sign,
        '\u{ad}' | '\u{200b}' | '\u{2060}'..='\u{2064}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}'
    );
    let no_character = (u32::from(sign) & 0xfffe) == 0xfffe;
    control || without_ink || no_character
}

/// At most `most` characters.
pub(super) fn no_longer_than(text: &str, most: usize) -> Result<(), Complaint> {
    let length = text.chars().count();
    if length <= most {
        return Ok(());
    }
    let start = text.char_indices().nth(most).map_or(0, |(at, _)| at);
    Err(Complaint::new("text.too_long")
        .with("length", length.to_string())
        .with("most", most.to_string())
        .narrow(start, text.len()))
}

/// `true` or `false` and nothing else: `no` and `on` are words of a text.
pub(super) fn truth(text: &str) -> Result<bool, Complaint> {
    let write = match text.to_lowercase().as_str() {
        _ if text == "true" => return Ok(true),
        _ if text == "false" => return Ok(false),
        "true" | "yes" | "y" | "on" | "1" => "true",
        "false" | "no" | "n" | "off" | "0" => "false",
        _ => "",
    };
    Err(Complaint::new("job.not_true_or_false")
        .with("text", text)
        .with("write", write))
}

/// A whole number, written in digits alone.
pub(super) fn whole_number(text: &str, least: i128, most: i128) -> Result<i128, Complaint> {
    let number = parse_number(text);
    if let Err(error) = &number
        && !digits_only(text)
    {
        if *error == QuantityError::NoNumber && text.starts_with(|sign: char| sign.is_ascii_digit())
        {
            return Err(Complaint::new("job.not_whole").with("text", text));
        }
        return Err(super::leaf::complaint(text, Dimension::Count, error));
    }
    match text.parse::<i128>() {
        Ok(whole) if !digits_only(text) || text.starts_with("-0") => Err(not_whole(text, whole)),
        Ok(whole) if (least..=most).contains(&whole) && number.is_ok() => Ok(whole),
        Ok(_) if number.is_ok() => Err(range(text, least, most)),
        Ok(_) => Err(Complaint::new("quantity.leading_zero").with("text", text)),
        Err(_) if digits_only(text) => Err(range(text, least, most)),
        Err(_) => Err(Complaint::new("job.not_whole").with("text", text)),
    }
}

fn not_whole(text: &str, whole: i128) -> Complaint {
    Complaint::new("job.not_whole")
        .with("text", text)
        .with("write", whole.to_string())
}

fn digits_only(text: &str) -> bool {
    let digits = text.strip_prefix('-').unwrap_or(text);
    !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit())
}

/// A number outside its range.
pub(super) fn range(text: &str, least: i128, most: i128) -> Complaint {
    Complaint::new("job.out_of_range")
        .with("text", text)
        .with("least", least.to_string())
        .with("most", most.to_string())
}

/// A word that is none of a choice.
pub(super) fn unknown_word(text: &str, words: &[&str]) -> Complaint {
    let (near, known) = near_or_list(text, words);
    Complaint::new("job.unknown_word")
        .with("text", text)
        .with("near", near)
        .with("known", known)
}
