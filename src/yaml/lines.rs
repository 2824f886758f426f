//! Bytes to text, and places in a text.

use std::borrow::Cow;

use super::LARGEST;
use crate::report::{FileId, Finding, Place};

/// The text of a file, whatever its bytes are: without byte-order mark; bytes that are not UTF-8
/// become U+FFFD and are reported once.
pub(super) fn text_of(bytes: &[u8], file: FileId) -> (String, Vec<Finding>) {
    if bytes.len() > LARGEST {
        let finding = Finding::job("yaml.too_large", None)
            .with("megabytes", bytes.len().div_ceil(1 << 20).to_string())
            .with("limit", (LARGEST >> 20).to_string());
        return (String::new(), vec![finding]);
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if let Some(at) = bytes.iter().position(|&byte| byte == 0) {
        // Also UTF-16, whose every second byte is zero in a text like ours.
        let text = String::from_utf8_lossy(bytes).replace('\0', " ");
        let before = String::from_utf8_lossy(&bytes[..at]).len();
        let finding = Finding::job("yaml.nul", place_of(&text, before, 1, file));
        return (text, vec![finding]);
    }
    match String::from_utf8_lossy(bytes) {
        Cow::Borrowed(text) => (one_line_break(text), Vec::new()),
        Cow::Owned(text) => {
            let text = one_line_break(&text);
            let valid = bytes
                .utf8_chunks()
                .next()
                .map_or(0, |chunk| chunk.valid().len());
            let count = bytes
                .utf8_chunks()
                .filter(|chunk| !chunk.invalid().is_empty())
                .count();
            let finding = Finding::job("yaml.not_utf8", place_of(&text, valid, 3, file))
                .with("count", count.to_string());
            (text, vec![finding])
        }
    }
}

/// A lone carriage return also ends a line, for the parser and for people; as a line feed it does so
/// for the counting of lines too.
fn one_line_break(text: &str) -> String {
    if !text.contains('\r') {
        return text.to_owned();
    }
    let mut signs = text.chars().peekable();
    let mut whole = String::with_capacity(text.len());
    while let Some(sign) = signs.next() {
        let lone = sign == '\r' && signs.peek() != Some(&'\n');
        whole.push(if lone { '\n' } else { sign });
    }
    whole
}

/// The place of `length` bytes at byte `at`.
pub(super) fn place_of(text: &str, at: usize, length: usize, file: FileId) -> Place {
    let before = text.get(..at).unwrap_or(text);
    let line_start = before.rfind('\n').map_or(0, |end| end + 1);
    let line = before.bytes().filter(|&byte| byte == b'\n').count() + 1;
    let column = before[line_start..].chars().count() + 1;
    let whole = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let end = (at + length).min(text.len());
    Place {
        file,
        line: whole(line),
        column: whole(column),
        start: whole(at),
        end: whole(if text.is_char_boundary(end) { end } else { at }),
    }
}
