//! A code that a camera reads, as an SVG of one path: no seams between its modules.

use std::collections::BTreeSet;

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
    let path: String = rectangles(&code)
        .iter()
        .map(|[x, y, width, height]| format!("M{x} {y}h{width}v{height}h-{width}z"))
        .collect();
    format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} {size}"><path d="{path}"/></svg>"#
    )
}

/// Dark rectangles `[x, y, width, height]` that cover the code: each as wide and then as high as
/// it goes from the first module that none before it covers. They may overlap.
fn rectangles(code: &QrCode) -> Vec<[i32; 4]> {
    let size = code.size();
    let mut covered = BTreeSet::new();
    let mut found = Vec::new();
    for (y, x) in (0..size).flat_map(|y| (0..size).map(move |x| (y, x))) {
        if !code.get_module(x, y) || covered.contains(&(x, y)) {
            continue;
        }
        let right = (x..size)
            .find(|column| !code.get_module(*column, y))
            .unwrap_or(size);
        let is_dark = |row: i32| (x..right).all(|column| code.get_module(column, row));
        let bottom = (y..size).find(|row| !is_dark(*row)).unwrap_or(size);
        covered.extend((y..bottom).flat_map(|row| (x..right).map(move |column| (column, row))));
        found.push([x, y, right - x, bottom - y]);
    }
    found
}
