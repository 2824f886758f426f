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

mod desk_sample;
#[allow(unreachable_pub, reason = "shared with the tests of the cards")]
mod sample;

use std::collections::BTreeMap;

use desk_sample as desk;
use serde_json::Value;
use studbook::document::card::Draft;
use studbook::document::desk::{CardsOfJoint, Part};
use studbook::document::isolation::STEPS_ROOM;
use studbook::document::pack::{Sections, deviation_sheets, one_page_of_panels};
use studbook::photo;
use studbook::typeset::{Printed, Typeset, typeset};
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

#[test]
fn boxes_and_words_do_not_meet() {
    let pages = lay_out(vec![isolation(8)]);
    for page in 1..=3 {
        let boxes: Vec<_> = ["box", "point", "tick"]
            .into_iter()
            .flat_map(|label| pages.boxes(label))
            .filter(|region| region.page == page)
            .collect();
        for text in pages.texts(page) {
            let met = boxes
                .iter()
                .find(|region| region.overlaps(&text.region, 0.6));
            assert!(met.is_none(), "{:?} stands in {met:?}", text.text);
        }
        for (index, region) in boxes.iter().enumerate() {
            let met = boxes[..index]
                .iter()
                .find(|other| region.overlaps(other, 0.4));
            assert!(met.is_none(), "{region:?} over {met:?}");
        }
    }
}

#[test]
fn cover_fields_are_there() {
    let text = text_of(&lay_out(vec![Part::Cover(Box::new(desk::cover(false)))]), 1);
    for field in [
        "responsible department",
        "technical reference",
        "document type",
        "title, supplementary title",
        "owner",
        "identification number",
        "rev",
        "date of issue",
        "prepared",
        "checked",
        "approved",
        "Equipment",
        "Contents",
        "Open findings",
        "Revisions",
        "Approvals",
        "client stamp",
        "FOR APPROVAL",
        "joints",
        "studs",
        "content 3A99-14D0",
        "page 1 of 1",
        "uncontrolled",
        "Language",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
}

#[test]
fn a_draft_says_why_on_its_cover() {
    let pages = lay_out(vec![Part::Cover(Box::new(desk::cover(true)))]);
    assert_eq!(pages.page_count(), 1, "a full cover is one page");
    let text = text_of(&pages, 1);
    for field in [
        "DRAFT",
        "2 errors stand. Not for use on site.",
        "L08",
        "load left in service 352 kN",
        "I01",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
    assert!(
        pages
            .texts(1)
            .iter()
            .any(|text| text.text == "DRAFT" && !text.upright)
    );
}

#[test]
fn a_draft_of_an_isolation_sheet_says_so_on_every_page() {
    let mut sheet = desk::isolation(8);
    sheet.draft = Some(Draft {
        word: "DRAFT".into(),
        reason: "DRAFT, not for use on site: 2 errors stand".into(),
    });
    let pages = lay_out(vec![Part::Isolation(Box::new(sheet))]);
    for page in 1..=3 {
        let texts = pages.texts(page);
        let words = texts.iter().filter(|text| text.text == "DRAFT").count();
        assert_eq!(words, 2, "badge and watermark of page {page}");
        assert!(text_of(&pages, page).contains("not for use on site: 2 errors stand"));
    }
}

#[test]
fn fields_of_the_isolation_sheet_are_there() {
    let pages = lay_out(vec![isolation(8)]);
    assert_eq!(pages.page_count(), 3);
    let fields: [&[&str]; 3] = [
        &[
            "I-04",
            "ISOLATE",
            "class A",
            "permit no.",
            "isolation certificate no.",
            "lock box no.",
            "flow diagram",
            "Contents and energy",
            "310 °C",
            "14 m³",
            "66 kN per bar",
            "0.1 bar = 680 kg",
            "0.665 m²",
            "Boundary",
            "Points",
            "lock no.",
            "tag no.",
            "fitted",
            "verified",
            "removed",
            "HV-3101",
            "gate valve",
            "shut, locked",
        ],
        &[
            "PROVE",
            "Tell everybody",
            "Shut down",
            "vent",
            "drain",
            "Purge",
            "surface",
            "joint side",
            "Hold test",
            "Other energy",
            "Try to start",
            "gas",
            "HOLD",
            "First crack",
            "Prove again",
        ],
        &[
            "RETURN",
            "Spades out",
            "Locks and tags removed",
            "Leak test",
            "E-310-CH-04",
            "Lock box",
            "never replaces",
        ],
    ];
    for (index, fields) in fields.iter().enumerate() {
        let text = text_of(&pages, index + 1);
        for field in *fields {
            assert!(text.contains(field), "page {}: {field}: {text}", index + 1);
        }
    }
    assert_eq!(pages.boxes("point").len(), 8 * 5);
    // Boxes of a hold: name, signature, date, time.
    assert!(
        text_of(&pages, 2).contains("name signature date time"),
        "{}",
        text_of(&pages, 2)
    );
}

#[test]
fn steps_are_never_higher_than_was_counted() {
    let sheet = desk::isolation(8);
    assert!(
        sheet.proof.height() <= STEPS_ROOM,
        "{} mm",
        sheet.proof.height()
    );
    let pages = lay_out(vec![isolation(8)]);
    let boxes = pages
        .boxes("box")
        .into_iter()
        .filter(|region| region.page == 2);
    let foot = boxes
        .map(|region| region.y + region.height)
        .fold(0.0, f64::max);
    assert!(foot <= 272.1, "the last box ends at {foot} mm");
}

#[test]
fn more_points_than_a_page_holds_go_on() {
    for (points, pages) in [(8, 3), (20, 5), (60, 8)] {
        let pages_found = lay_out(vec![isolation(points)]);
        assert!(
            pages_found.page_count() <= pages,
            "{points} points on {} pages",
            pages_found.page_count()
        );
        assert_eq!(pages_found.boxes("point").len(), points * 5);
    }
}

#[test]
fn a_missing_opening_is_a_box_with_a_name() {
    let mut sheet = desk::isolation(3);
    sheet.force.per_pressure = String::new();
    sheet.force.opening = "TO BE GIVEN BY THE ENGINEER: opening".into();
    let pages = lay_out(vec![Part::Isolation(Box::new(sheet))]);
    assert_eq!(pages.boxes("wanted").len(), 1);
    assert!(text_of(&pages, 1).contains("TO BE GIVEN BY THE ENGINEER"));
    assert!(
        !text_of(&pages, 1).contains("per bar"),
        "no number stands in for the missing one"
    );
}

#[test]
fn fields_of_the_note_are_there() {
    let pages = lay_out(vec![note()]);
    let all: Vec<String> = (1..=pages.page_count())
        .map(|page| text_of(&pages, page))
        .collect();
    let text = all.join(" ");
    for field in [
        "Target load",
        "508",
        "Valid only for",
        "Load in one stud, kN",
        "needed in service",
        "where it comes from",
        "default, key studs.bearing_diameter",
        "Check by hand in five lines",
        "Steps",
        "ISO 898-1:2013",
        "1473",
        "4146",
        "Limits",
        "FAIL",
        "pass",
        "not known",
        "Not checked here",
        "Members of the group",
        "E-310-CH-02",
    ] {
        assert!(text.contains(field), "{field}: {text}");
    }
    assert!(pages.page_count() <= 4, "a note is at most four pages");
    assert_eq!(pages.boxes("wanted").len(), 2, "one input, one result");
}

/// The line of a formula reads as symbol, formula, numbers, result from left to right.
#[test]
fn a_step_reads_symbol_formula_numbers_result() {
    let pages = lay_out(vec![note()]);
    let text = (1..=pages.page_count())
        .map(|page| text_of(&pages, page))
        .collect::<Vec<_>>()
        .join(" ");
    let at = text.find("F2 ").expect("the second step");
    let step: String = text[at..]
        .chars()
        .filter(|sign| !sign.is_whitespace())
        .take(60)
        .collect();
    assert!(step.contains("=σ⋅"), "{step}");
    assert!(step.contains("=345MPa⋅1473mm²=508kN"), "{step}");
}

#[test]
fn the_register_holds_25_rows_a_page_and_ends_with_its_totals() {
    let pages = lay_out(registers(61));
    assert_eq!(pages.page_count(), 3);
    let (width, height) = pages.page_size(1);
    assert!(
        (width - 297.0).abs() < 0.1 && (height - 210.0).abs() < 0.1,
        "on its side"
    );
    assert_eq!(pages.boxes("state").len(), 61 * 8);
    assert!(text_of(&pages, 1).contains("rows 1 to 25 of 61"));
    assert!(!text_of(&pages, 2).contains("61 joints"));
    assert!(
        text_of(&pages, 3).contains("61 joints") && text_of(&pages, 3).contains("1464 studs"),
        "{}",
        text_of(&pages, 3)
    );
}

#[test]
fn a_long_register_is_split_at_a_thousand_rows() {
    let sheets = desk::register(2001).sheets(&desk::furniture("joint register", false), "register");
    let rows: Vec<usize> = sheets
        .iter()
        .map(|sheet| sheet.pages.iter().map(|page| page.rows.len()).sum())
        .collect();
    assert_eq!(rows, [1000, 1000, 1]);
    assert!(sheets[0].totals.is_none() && sheets[2].totals.is_some());
    let labels: Vec<&str> = sheets.iter().map(|sheet| sheet.label.as_str()).collect();
    assert_eq!(labels, ["register", "register-2", "register-3"]);
    assert!(sheets[1].pages[0].range.contains("1001 to 1025 of 2001"));
}

#[test]
fn photos_stand_four_a_page() {
    for (photos, pages) in [(1, 1), (4, 1), (5, 2)] {
        let laid_out = lay_out_with(vec![Part::Photos(desk::photos(photos))], pictures(photos));
        assert_eq!(laid_out.page_count(), pages, "{photos} photos");
        assert!(
            laid_out
                .text(pages)
                .contains(&format!("E-310-CH-{photos:02}"))
        );
    }
}

#[test]
fn cautions_take_one_page_the_gravest_first() {
    let (shown, left_out) = one_page_of_panels(desk::panels(40));
    assert_eq!(shown.len() + left_out, 40);
    assert!(left_out > 0);
    assert!(
        shown
            .windows(2)
            .all(|pair| pair[0].signal <= pair[1].signal)
    );
    for count in [1, 9, 12, 40] {
        let mut front = desk::front(1);
        front.sections = vec![desk::cautions(count)];
        assert_eq!(
            lay_out(vec![Part::Sections(front)]).page_count(),
            1,
            "{count} cautions"
        );
    }
}

#[test]
fn the_index_holds_25_joints_a_page() {
    for (joints, pages) in [(1, 1), (25, 1), (26, 2), (60, 3)] {
        let front = Sections {
            sections: vec![desk::index(joints)],
            ..desk::front(1)
        };
        assert_eq!(
            lay_out(vec![Part::Sections(front)]).page_count(),
            pages,
            "{joints} joints"
        );
    }
}

#[test]
fn deviation_sheets_are_one_in_twenty_and_at_least_three() {
    assert_eq!([1, 60, 61, 3000].map(deviation_sheets), [3, 3, 4, 150]);
    assert_eq!(
        lay_out(vec![Part::Deviations(desk::deviations(4))]).page_count(),
        4
    );
}

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
        let boxes: Vec<_> = ["box", "point"]
            .into_iter()
            .flat_map(|label| pages.boxes(label))
            .filter(|region| region.page == page)
            .collect();
        for text in pages.texts(page) {
            let met = boxes
                .iter()
                .find(|region| region.overlaps(&text.region, 0.6));
            assert!(met.is_none(), "{:?} stands in {met:?}", text.text);
        }
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
