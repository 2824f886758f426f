//! A code that a camera reads, as an SVG of one path: no seams between its modules.

use qrcodegen::{QrCode, QrCodeEcc};

/// The text as an SVG without quiet zone, one unit per module.
///
/// Numbers, capitals and `-/.: $%*+` take the least room: 38 of them fit the smallest code
/// that the footer of a card expects (25 modules, ISO/IEC 18004 version 2 at level M).
/// A text too long for any code (more than 4,000 capitals) gives an empty picture.
pub fn svg(text: &str) -> String {
    let Ok(code) = QrCode::encode_text(text, QrCodeEcc::Medium) else {
        return String::from(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>"#);
    };
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let run = (x..size)
                .take_while(|column| code.get_module(*column, y))
                .count();
            if run > 0 {
                path.push_str(&format!("M{x} {y}h{run}v1h-{run}z"));
            }
            x += i32::try_from(run).unwrap_or(size).max(1);
        }
    }
    format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} {size}"><path d="{path}"/></svg>"#
    )
}
