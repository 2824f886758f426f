//! Hostile signs, long texts, a copy in black and white.

use crate::desk_sample as desk;
use serde_json::Value;
use studbook::document::desk::Part;

use super::{
    Files, isolation, lay_out, lay_out_json, note, outside, pack, text_of, texts,
    words_clear_of_boxes,
};

/// Keys whose strings are not words for a reader: names of kinds, labels, files, symbols' parts.
const NOT_WORDS: [&str; 11] = [
    "kind", "label", "at", "file", "signal", "align", "qr", "base", "index", "name", "picture",
];

/// Puts every word of a document through a change.
fn change(value: &mut Value, key: &str, with: &impl Fn(&str) -> String) {
    match value {
        Value::String(text) if !text.is_empty() && !NOT_WORDS.contains(&key) => *text = with(text),
        Value::Array(items) => items.iter_mut().for_each(|item| change(item, key, with)),
        // A label of a box is a word, a label of a part is not: only the latter stands beside a furniture or a title.
        Value::Object(fields) => fields
            .iter_mut()
            .for_each(|(key, item)| change(item, key, with)),
        _ => {}
    }
}

fn changed(parts: Vec<Part>, with: impl Fn(&str) -> String) -> Vec<u8> {
    let mut document = serde_json::to_value(desk::document(parts)).expect("plain data");
    change(&mut document["parts"], "parts", &with);
    serde_json::to_vec(&document).expect("plain data")
}

/// A text prints as it was typed, whatever signs stand in it.
#[test]
fn signs_of_the_typesetter_print_as_they_are() {
    let hostile = "#[]{}$\\*_<a>@b~-- // /* `x` 'q'";
    let parts = || {
        vec![
            Part::Cover(Box::new(desk::cover(true))),
            Part::Sections(desk::front(2)),
            isolation(3),
            note(),
        ]
    };
    let plain = lay_out(parts());
    let pages = lay_out_json(
        changed(parts(), |text| format!("{text} {hostile}")),
        Files::new(),
    );
    assert!(pages.page_count() >= plain.page_count());
    let title = text_of(&pages, 1);
    assert!(title.replace('\u{200b}', "").contains(hostile), "{title}");
}

/// The longest texts that a job may hold, and one without a place to break.
#[test]
fn long_texts_wrap_and_stay_on_the_page() {
    let long =
        |text: &str| format!("{text} and more words of a length that nobody wants to read twice");
    for with in [&long as &dyn Fn(&str) -> String, &|_| "W".repeat(60)] {
        let parts = vec![
            Part::Sections(desk::front(3)),
            Part::Sections(desk::inspection(3)),
            note(),
        ];
        let pages = lay_out_json(
            changed(parts, |text| {
                if text.len() > 14 {
                    with(text)
                } else {
                    text.to_owned()
                }
            }),
            Files::new(),
        );
        let beyond = outside(&pages);
        assert!(beyond.is_empty(), "{}", beyond.join("\n"));
    }
}

/// Boundary, joints, contents, opening and places of an isolation sheet take the lines that they need.
#[test]
fn long_words_of_an_isolation_sheet_push_the_rest_down() {
    let mut sheet = desk::isolation(8);
    let long = "effluent cooler, channel side with both bundles, from the block valves at the reactor to the separator";
    sheet.identity.boundary = long.into();
    sheet.identity.line = format!("{long}; {long}");
    sheet.contents.facts[1][1] = long.into();
    sheet.points.rows[2].place = long.into();
    sheet.points.rows[3].tag = "HV-3107-NORTH-A".into();
    let pages = lay_out(vec![Part::Isolation(Box::new(sheet))]);
    assert!(outside(&pages).is_empty());
    assert_eq!(pages.boxes("point").len(), 8 * 5);
    for page in 1..=pages.page_count() {
        words_clear_of_boxes(&pages, page, &["box", "point"]);
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a place on the page, in dots"
)]
fn dots(mm: f64) -> usize {
    (mm * 150.0 / 25.4) as usize
}

/// After a copier nothing is left of grey: white letters are large, boxes keep their outline.
#[test]
fn a_copy_in_black_and_white_keeps_boxes_and_words() {
    let pages = pack();
    for text in texts(&pages) {
        let white = text.lightness > 0.5;
        assert!(
            !white || text.size >= 14.0 - 0.01,
            "white {:?} in {} pt",
            text.text,
            text.size
        );
        assert!(
            text.lightness < 0.01 || white || !text.upright,
            "grey {:?}",
            text.text
        );
    }
    let options = typst_render::RenderOptions {
        pixel_per_pt: (150.0 / 72.0).into(),
        ..Default::default()
    };
    for page in [
        1,
        7,
        pages.pages_of("isolation-1")[0],
        pages.pages_of("register")[0],
    ] {
        let picture = typst_render::render(&pages.document().pages()[page - 1], &options);
        let width = picture.width() as usize;
        let dark: Vec<bool> = picture
            .pixels()
            .iter()
            .map(|pixel| pixel.green() < 128)
            .collect();
        let inked = |x: f64, y: f64| {
            let at = dots;
            let near = |x: usize, y: usize| dark.get(y * width + x).copied().unwrap_or(false);
            (at(x).saturating_sub(1)..=at(x) + 1)
                .any(|x| (at(y).saturating_sub(1)..=at(y) + 1).any(|y| near(x, y)))
        };
        for region in ["box", "point", "state", "sign", "stamp"]
            .into_iter()
            .flat_map(|label| pages.boxes(label))
            .filter(|region| region.page == page)
        {
            let points = (0..=40).map(|step| f64::from(step) / 40.0 * region.width + region.x);
            let kept = points
                .filter(|x| inked(*x, region.y + region.height))
                .count();
            assert!(
                kept >= 37,
                "page {page}: {region:?} keeps {kept} of 41 points"
            );
        }
    }
}
