//! Content codes: eight signs that change exactly when the content changes.
//!
//! A code is BLAKE3 over the canonical JSON of a card, sheet, note or list without revision, dates,
//! status, page numbers and the code itself, together with the stamp of layouts, wording and fonts.
//! So a new revision keeps the code of every card that did not change. Thirty-five bits are printed
//! as seven signs of an alphabet without I, L, O and U, and one check sign after ISO 7064 (hybrid
//! system MOD 33,32), which finds every single wrong sign.

use serde::Serialize;

/// Digits and capitals that cannot be mistaken for one another.
const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// What all codes of one program, language and layout share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stamp([u8; 32]);

impl Stamp {
    /// From everything that shapes a page beside its data: layouts, texts, fonts, in a fixed order.
    pub fn new<'a>(parts: impl IntoIterator<Item = (&'a str, &'a [u8])>) -> Self {
        let mut hasher = blake3::Hasher::new();
        for (name, bytes) in parts {
            hasher.update(name.as_bytes());
            hasher.update(&[0]);
            hasher.update(blake3::hash(bytes).as_bytes());
        }
        Self(*hasher.finalize().as_bytes())
    }
}

/// The code of a content, such as `XA7H-CFDY`.
///
/// # Errors
/// Content that is not JSON, which no type of this module is.
pub fn of(content: &impl Serialize, stamp: &Stamp) -> Result<String, serde_json::Error> {
    // A JSON value holds its maps sorted by key, so that the order of fields does not count.
    let canonical = serde_json::to_vec(&serde_json::to_value(content)?)?;
    let mut hasher = blake3::Hasher::new();
    hasher.update(&stamp.0);
    hasher.update(&canonical);
    Ok(print(hasher.finalize().as_bytes()))
}

/// The hash of some bytes, hexadecimal, as a manifest lists it.
pub fn hash(bytes: &[u8]) -> String {
    blake3::hash(bytes).to_hex().to_string()
}

/// The hash of several parts in their order, hexadecimal; a part cannot run into the next one.
pub fn hash_of_parts<'a>(parts: impl IntoIterator<Item = &'a [u8]>) -> String {
    let mut hasher = blake3::Hasher::new();
    for part in parts {
        hasher.update(blake3::hash(part).as_bytes());
    }
    hasher.finalize().to_hex().to_string()
}

fn print(hash: &[u8; 32]) -> String {
    let mut bits = hash
        .iter()
        .take(5)
        .fold(0u64, |bits, byte| (bits << 8) | u64::from(*byte))
        >> 5;
    let mut values = [0u8; 7];
    for value in values.iter_mut().rev() {
        *value = u8::try_from(bits & 31).unwrap_or(0);
        bits >>= 5;
    }
    let sign = |value: u8| char::from(ALPHABET[usize::from(value & 31)]);
    let mut code: String = values.iter().take(4).map(|value| sign(*value)).collect();
    code.push('-');
    code.extend(values.iter().skip(4).map(|value| sign(*value)));
    code.push(sign(check(&values)));
    code
}

/// The check value of ISO 7064, hybrid system MOD 33,32.
fn check(values: &[u8]) -> u8 {
    let product = values.iter().fold(32u32, |product, value| {
        let sum = (product + u32::from(*value)) % 32;
        2 * if sum == 0 { 32 } else { sum } % 33
    });
    u8::try_from((33 - product) % 32).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is_valid(code: &str) -> bool {
        let values: Option<Vec<u8>> = code
            .bytes()
            .filter(|sign| *sign != b'-')
            .map(|sign| ALPHABET.iter().position(|known| *known == sign))
            .map(|position| position.and_then(|at| u8::try_from(at).ok()))
            .collect();
        values.is_some_and(|values| values.len() == 8 && check(&values[..7]) == values[7])
    }

    #[test]
    fn every_single_wrong_sign_is_found() {
        let stamp = Stamp::new([("layout", b"x".as_slice())]);
        for number in 0..50u32 {
            let code = of(&number, &stamp).unwrap();
            assert_eq!(code.len(), 9);
            assert!(is_valid(&code), "{code}");
            for at in (0..9).filter(|at| *at != 4) {
                for wrong in ALPHABET {
                    let mut bytes = code.clone().into_bytes();
                    if bytes[at] != *wrong {
                        bytes[at] = *wrong;
                        assert!(!is_valid(&String::from_utf8(bytes).unwrap()));
                    }
                }
            }
        }
    }

    #[test]
    fn the_code_hangs_on_content_and_stamp_and_on_nothing_else() {
        let (a, b) = (
            Stamp::new([("l", b"1".as_slice())]),
            Stamp::new([("l", b"2".as_slice())]),
        );
        let content = [("x", 1), ("y", 2)];
        assert_eq!(of(&content, &a).unwrap(), of(&content, &a).unwrap());
        assert_ne!(of(&content, &a).unwrap(), of(&content, &b).unwrap());
        assert_ne!(
            of(&content, &a).unwrap(),
            of(&[("x", 1), ("y", 3)], &a).unwrap()
        );
    }
}
