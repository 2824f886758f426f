//! Desk documents as they are laid out: counts of pages, sizes of type and boxes, mandatory fields.
//!
//! What is asked of the pages comes from outside: writing boxes and least type from common practice
//! for site paper (no source), fields of the title block from ISO 7200:2004, the order of the release
//! steps from 29 CFR 1910.147(d), the fields of each document from the specification of this program.

#![allow(
    clippy::panic,
    clippy::too_many_lines,
    reason = "a page that cannot be laid out ends its test; samples are long lists"
)]

mod counts;
#[path = "../desk_sample/mod.rs"]
mod desk_sample;
mod edges;
mod fields;
#[allow(unreachable_pub, reason = "shared with the tests of the cards")]
#[path = "../sample/mod.rs"]
mod sample;

use desk_sample as desk;
use std::collections::BTreeMap;
use studbook::document::desk::{CardsOfJoint, Part};
use studbook::photo;
use studbook::typeset::{Printed, Region, Typeset, typeset};
use studbook::units::Length;

type Files = BTreeMap<String, Vec<u8>>;

fn lay_out_json(data: Vec<u8>, files: Files) -> Typeset {
    let overrides = BTreeMap::new();
    let mut request = desk::request(&desk::document(Vec::new()), files, &overrides);
    request.data = data;
    typeset(&request).unwrap_or_else(|faults| {
        let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
        panic!("{}", faults.join("\n"))
    })
}

fn lay_out_with(parts: Vec<Part>, files: Files) -> Typeset {
    lay_out_json(
        serde_json::to_vec(&desk::document(parts)).expect("plain data"),
        files,
    )
}

fn lay_out(parts: Vec<Part>) -> Typeset {
    lay_out_with(parts, Files::new())
}

fn registers(joints: usize) -> Vec<Part> {
    let sheets =
        desk::register(joints).sheets(&desk::furniture("joint register", false), "register");
    sheets
        .into_iter()
        .map(|sheet| Part::Register(Box::new(sheet)))
        .collect()
}

fn isolation(points: usize) -> Part {
    Part::Isolation(Box::new(desk::isolation(points)))
}

fn note() -> Part {
    Part::Note(Box::new(desk::note::note()))
}

fn cards() -> Part {
    Part::Cards(Box::new(CardsOfJoint {
        bookmark: "E-310-CH-01 north channel".into(),
        label: "joint-1".into(),
        cards: vec![sample::tightening(24), sample::loosening(24)],
    }))
}

fn whole_pack() -> Vec<Part> {
    let mut parts = vec![
        Part::Cover(Box::new(desk::cover(false))),
        Part::Sections(desk::front(30)),
        Part::Sections(desk::inspection(12)),
        cards(),
        isolation(8),
        note(),
    ];
    parts.extend(registers(61));
    parts.push(Part::Deviations(desk::deviations(3)));
    parts.push(Part::Photos(desk::photos(5)));
    parts
}

/// A grey wedge, prepared as a photo of the site would be.
fn pictures(count: usize) -> Files {
    let wedge = image::GrayImage::from_fn(400, 300, |x, y| {
        image::Luma([u8::try_from((x + y) % 256).unwrap_or(0)])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    wedge
        .write_to(&mut bytes, image::ImageFormat::Png)
        .expect("encodes");
    let photo = photo::prepare(&bytes.into_inner(), Length::mm(86.0), Length::mm(104.0));
    let jpeg = photo.expect("a good picture").jpeg;
    (1..=count)
        .map(|photo| (format!("picture-{photo}.jpg"), jpeg.clone()))
        .collect()
}

fn pack() -> Typeset {
    lay_out_with(whole_pack(), pictures(5))
}

fn texts(pages: &Typeset) -> Vec<Printed> {
    (1..=pages.page_count())
        .flat_map(|page| pages.texts(page).to_vec())
        .cloned()
        .collect()
}

/// The words of a page with one space between them.
fn text_of(pages: &Typeset, page: usize) -> String {
    let words = pages.text(page).replace('\u{200b}', "");
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Everything outside the edges: 20 mm for binding at the left, 3 mm that no printer reaches elsewhere.
fn outside(pages: &Typeset) -> Vec<String> {
    let upright = texts(pages)
        .into_iter()
        .filter(|text| text.upright || text.size < 100.0);
    let words = upright.map(|text| (text.text, text.region));
    let shapes = pages
        .shapes()
        .iter()
        .map(|region| ("a shape".to_owned(), *region));
    let beyond = words.chain(shapes).filter(|(_, region)| {
        let (width, height) = pages.page_size(region.page);
        let right = width - if width > height { 11.0 } else { 13.0 };
        region.x < 19.3
            || region.x + region.width > right
            || region.y < 3.0
            || region.y + region.height > height - 3.0
    });
    beyond
        .map(|(name, region)| format!("{name} at {region:?}"))
        .collect()
}

#[test]
fn every_part_of_a_pack_has_its_pages() {
    let pages = pack();
    let titles = [
        ("Scope, limits, assumptions", 2),
        ("Index of joints", 3),
        ("Plan, permits, people, tools", 5),
        ("Cautions that apply", 6),
        ("Inspection and test plan", 7),
    ];
    for (title, page) in titles {
        assert!(
            text_of(&pages, page).contains(title),
            "{title} on page {page}: {}",
            text_of(&pages, page)
        );
    }
    assert_eq!(pages.pages_of("card").len(), 2, "two cards");
    assert_eq!(pages.pages_of("register").len(), 1);
    // 1 cover, 1 scope, 2 index, 1 plan, 1 cautions, 1 or 2 plan of inspection, 4 cards, 3 isolation,
    // 2 to 4 note, 3 register, 3 deviations, 2 photos.
    assert!(
        (24..=27).contains(&pages.page_count()),
        "{} pages",
        pages.page_count()
    );
}

#[test]
fn pages_count_with_the_pack_and_within_their_part() {
    let pages = pack();
    let all = pages.page_count();
    for page in 1..=all {
        let text = text_of(&pages, page);
        let card = text.contains("page 1 of 2") || text.contains("page 2 of 2");
        let counted = text.contains(&format!("page {page} of {all}"));
        assert!(counted || card, "page {page}: {text}");
    }
    let sheet = pages.pages_of("isolation-1")[0];
    for own in 1..=3 {
        let text = text_of(&pages, sheet + own - 1);
        assert!(text.contains(&format!("page {own} of 3")), "{text}");
    }
}

#[test]
fn the_cover_says_on_which_page_a_part_begins() {
    let pages = pack();
    let sheet = pages.pages_of("isolation-1")[0];
    let cover = text_of(&pages, 1);
    assert!(
        cover.contains(&format!("Isolation sheets {sheet}")),
        "{cover}"
    );
    assert!(cover.contains("Index of joints 3"), "{cover}");
}

#[test]
fn type_is_never_too_small() {
    let pages = pack();
    for text in texts(&pages) {
        // Indices of formulas may be 6 pt; they stand on the note only.
        let note = text_of(&pages, text.region.page).contains("calculation note");
        let least = if note { 6.0 } else { 8.0 };
        assert!(
            text.size >= least - 0.01,
            "{:?} in {} pt",
            text.text,
            text.size
        );
    }
}

/// What a crew reads at the joint is at least 8.5 pt.
#[test]
fn the_isolation_sheet_has_the_type_of_a_card() {
    for text in texts(&lay_out(vec![isolation(8)])) {
        assert!(text.size >= 8.49, "{:?} in {} pt", text.text, text.size);
    }
}

#[test]
fn nothing_stands_outside_the_edges() {
    let beyond = outside(&pack());
    assert!(beyond.is_empty(), "{}", beyond.join("\n"));
    for points in [0, 1, 8, 9, 40] {
        let beyond = outside(&lay_out(vec![isolation(points)]));
        assert!(beyond.is_empty(), "{points} points: {}", beyond.join("\n"));
    }
}

#[test]
fn boxes_can_be_written_in() {
    let pages = pack();
    let least = [
        ("box", 9.0, 8.0),
        ("point", 20.0, 10.0),
        ("sign", 55.0, 14.0),
        ("tick", 10.0, 10.0),
        ("state", 5.5, 6.0),
        ("wanted", 30.0, 5.0),
        ("stamp", 60.0, 30.0),
    ];
    let cards = pages.pages_of("card");
    for (label, width, height) in least {
        let boxes = pages.boxes(label);
        assert!(!boxes.is_empty(), "<{label}>");
        // Those of the cards have their own test.
        let ours = boxes.iter().filter(|region| {
            !cards
                .iter()
                .any(|card| region.page == *card || region.page == card + 1)
        });
        for region in ours {
            assert!(
                region.width > width - 0.01 && region.height > height - 0.01,
                "<{label}> {region:?}"
            );
        }
    }
}

/// The boxes of a page, in none of which a word stands.
fn words_clear_of_boxes(pages: &Typeset, page: usize, labels: &[&str]) -> Vec<Region> {
    let boxes: Vec<Region> = labels
        .iter()
        .flat_map(|label| pages.boxes(label))
        .filter(|region| region.page == page)
        .collect();
    for text in pages.texts(page) {
        let met = boxes
            .iter()
            .find(|region| region.overlaps(&text.region, 0.6));
        assert!(met.is_none(), "{:?} stands in {met:?}", text.text);
    }
    boxes
}

#[test]
fn boxes_and_words_do_not_meet() {
    let pages = lay_out(vec![isolation(8)]);
    for page in 1..=3 {
        let boxes = words_clear_of_boxes(&pages, page, &["box", "point", "tick"]);
        for (index, region) in boxes.iter().enumerate() {
            let met = boxes[..index]
                .iter()
                .find(|other| region.overlaps(other, 0.4));
            assert!(met.is_none(), "{region:?} over {met:?}");
        }
    }
}

#[test]
fn the_same_pack_gives_the_same_bytes() {
    let bytes = || {
        pack()
            .write_pdf()
            .expect("every character has its sign in a font")
    };
    assert_eq!(bytes(), bytes());
}

/// Writes the samples where a person can look at them: `cargo test --test desk_pages -- --ignored`.
#[test]
#[ignore = "for the eye"]
#[expect(clippy::disallowed_methods, reason = "a person wants to see the files")]
fn write_samples() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    let write = |name: &str, pages: Typeset| {
        std::fs::write(folder.join(name), pages.write_pdf().expect("a PDF")).expect("written");
    };
    write("pack.pdf", pack());
    write(
        "draft.pdf",
        lay_out(vec![Part::Cover(Box::new(desk::cover(true)))]),
    );
    write("isolation.pdf", lay_out(vec![isolation(15)]));
}
