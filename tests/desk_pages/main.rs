//! Desk documents as they are laid out: counts of pages, sizes of type and boxes, mandatory fields.
//!
//! What is asked of the pages comes from outside: writing boxes and least type from common practice
//! for site paper (no source), fields of the title block from ISO 7200:2004, the fields of each document from the
//! specification of this program.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that cannot go on must stop"
)]

#[path = "../built/mod.rs"]
mod built;
mod counts;
mod edges;

use std::collections::BTreeMap;
use std::sync::LazyLock;

use built::flanges::{change, channel, unknown};
use built::packs::{
    is_of_card, isolation_pages, lay_out_parts, note_pages, pack, pack_alone, pages_of,
};
use built::{all_text, lay_out_document, outside, text_of, with_job};
use studbook::document::build::{CardPages, PhotoOf};
use studbook::document::desk::Part;
use studbook::photo;
use studbook::typeset::{Region, Typeset};
use studbook::units::Length;

/// A grey wedge, prepared as a photo of the site would be.
fn picture() -> Vec<u8> {
    let wedge = image::GrayImage::from_fn(400, 300, |x, y| {
        image::Luma([u8::try_from((x + y) % 256).unwrap()])
    });
    let mut bytes = std::io::Cursor::new(Vec::new());
    wedge.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let photo = photo::prepare(&bytes.into_inner(), Length::mm(86.0), Length::mm(104.0));
    photo.expect("a good picture").jpeg
}

/// Names of so many photos, and their files.
fn pictures(count: usize) -> (Vec<PhotoOf>, BTreeMap<String, Vec<u8>>) {
    let names = (1..=count).map(|photo| format!("picture-{photo}.jpg"));
    let jpeg = picture();
    let files = names.clone().map(|name| (name, jpeg.clone())).collect();
    let photos = names.map(|file| PhotoOf { joint: 0, file });
    (photos.collect(), files)
}

/// The pack of the main example with five photos.
fn whole_pack() -> Typeset {
    let (photos, files) = pictures(5);
    let document = with_job("effluent-cooler.yaml", &channel(), |context| {
        pack(context, CardPages::Here, photos)
    });
    lay_out_document(&document, files)
}

static PACK: LazyLock<Typeset> = LazyLock::new(whole_pack);

/// Everything but the cards and photos, which have tests of their own.
fn for_the_desk(part: &Part) -> bool {
    !matches!(part, Part::Cards(_) | Part::Photos(_))
}

/// The boxes of a page, in none of which a word stands.
fn words_clear_of_boxes(pages: &Typeset, page: usize) {
    let boxes: Vec<Region> = ["box", "point"]
        .iter()
        .flat_map(|label| pages.boxes(label))
        .filter(|region| region.page == page)
        .collect();
    for text in pages.texts(page).into_iter().filter(|text| text.upright) {
        let mut boxes = boxes.iter();
        let met = boxes.find(|region| region.overlaps(&text.region, 0.6));
        assert!(met.is_none(), "{:?} stands in {met:?}", text.text);
    }
}

#[test]
fn every_part_of_a_pack_has_its_pages() {
    let pages = &*PACK;
    let titles = [
        ("scope", "Scope and limits"),
        ("index", "Index of joints"),
        ("plan", "Plan"),
        ("cautions", "Cautions"),
        ("itp", "Inspection and test plan"),
    ];
    let page_of = |label: &str| pages.pages_of(label)[0];
    for (label, title) in titles {
        let text = text_of(pages, page_of(label));
        assert!(text.contains(title), "{label}: {text}");
    }
    assert_eq!(pages.pages_of("card").len(), 12, "two cards of six joints");
    assert_eq!(pages.pages_of("register").len(), 1);
    assert_eq!(page_of("photos") - page_of("deviations"), 3);
    assert_eq!(pages.page_count() + 1 - page_of("photos"), 2);
    for sheet in ["isolation-1", "isolation-2"] {
        for own in 1..=3 {
            let text = text_of(pages, page_of(sheet) + own - 1);
            assert!(text.contains(&format!("page {own} of 3")), "{text}");
        }
    }
    assert!(text_of(pages, 1).contains("FOR APPROVAL"));
}

#[test]
fn nothing_stands_outside_the_edges() {
    assert_eq!(outside(&PACK), [""; 0]);
}

#[test]
fn boxes_can_be_written_in() {
    let least = [
        ("box", 9.0, 8.0),
        ("point", 20.0, 10.0),
        ("sign", 55.0, 14.0),
        ("tick", 10.0, 10.0),
        ("state", 5.5, 6.0),
        ("wanted", 30.0, 5.0),
        ("stamp", 60.0, 30.0),
    ];
    let unknown = pages_of("smallest.yaml");
    for (label, width, height) in least {
        let mut seen = 0;
        for pages in [&*PACK, &unknown] {
            // Those of the cards have their own test.
            let boxes = pages.boxes(label).into_iter();
            for region in boxes.filter(|region| !is_of_card(pages, region.page)) {
                seen += 1;
                assert!(
                    region.width > width - 0.01 && region.height > height - 0.01,
                    "<{label}> {region:?}"
                );
            }
        }
        assert!(seen > 0, "<{label}>");
    }
}

#[test]
fn the_same_pack_gives_the_same_bytes() {
    let bytes = |pages: &Typeset| {
        let pdf = pages.write_pdf();
        pdf.expect("every character has its sign in a font")
    };
    assert!(bytes(&PACK) == bytes(&whole_pack()));
}

#[test]
fn a_draft_says_so_across_its_cover_and_every_page_of_an_isolation_sheet() {
    let draft = unknown(&channel());
    let cover = |part: &Part| matches!(part, Part::Cover(_));
    let cover = lay_out_parts(pack_alone(&draft, Vec::new()), cover);
    assert_eq!(cover.page_count(), 1, "a full cover is one page");
    let across = |pages: &Typeset, page| {
        let texts = pages.texts(page);
        let words = texts.iter().filter(|text| text.text == "DRAFT");
        let across = words.clone().filter(|text| !text.upright).count();
        (words.count() - across, across)
    };
    assert_eq!(across(&cover, 1).1, 1);
    let sheets = isolation_pages(&draft);
    for page in 1..=sheets.page_count() {
        assert_eq!(across(&sheets, page), (1, 1), "badge and watermark");
        assert!(text_of(&sheets, page).contains("DRAFT, not for use: "));
    }
}

/// A limit that is broken and one that cannot be judged say so on paper.
#[test]
fn limits_of_a_note_are_judged() {
    let limit =
        "    limits: { L01: { value: 60 %, reason: rule 14 of the owner } }\n    crew: crew 1\n";
    let strict = change(&channel(), "    crew: crew 1\n", limit);
    let broken = all_text(&note_pages(&strict));
    assert!(
        broken.contains("FAIL") && broken.contains("pass"),
        "{broken}"
    );
    let unknown = all_text(&note_pages(&unknown(&channel())));
    assert!(unknown.contains("not known"), "{unknown}");
}

/// The line of a formula reads as symbol, formula, numbers, result from left to right.
/// 345 MPa on 1473 mm² of an M48×5 (ISO 898-1:2013) are 345 × 1473 = 508,185 N.
#[test]
fn a_step_reads_symbol_formula_numbers_result() {
    let text = all_text(&note_pages(&channel()));
    let signs = text.chars().filter(|sign| !sign.is_whitespace());
    let signs: String = signs.collect();
    let numbers = "=345MPa⋅1473mm²=508.2kN";
    let at = signs.find(numbers).unwrap_or_else(|| panic!("{signs}"));
    let before: String = signs[..at].chars().rev().take(10).collect();
    let before: String = before.chars().rev().collect();
    assert!(before.contains("=σ⋅"), "{before}");
}
