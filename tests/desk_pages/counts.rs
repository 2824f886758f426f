//! How much a page holds, and where a part goes on.

use studbook::document::build::{CardPages, register, register_parts};
use studbook::document::desk::Part;
use studbook::document::pack::deviation_sheets;

use crate::built::flanges::{change, channel, flange, with_joints};
use crate::built::packs::{isolation_pages, lay_out_parts, pack_alone};
use crate::built::{lay_out, lay_out_document, outside, text_of, with_job};

use super::{pictures, words_clear_of_boxes};

/// The example with as many points of its first boundary.
fn with_points(count: usize) -> String {
    let kinds = [
        "valve shut",
        "valve open",
        "spade",
        "blind",
        "vent",
        "drain",
        "gauge",
        "motor",
        "lock",
    ];
    let point = |(number, kind)| {
        format!("      - {{ tag: P-{number}, kind: {kind}, position: as told, location: inlet, north }}\n")
            .replace("inlet, north", "\"inlet, north\"")
    };
    let points: String = (1..=count).zip(kinds.iter().cycle()).map(point).collect();
    let text = channel();
    let at = text
        .find("    points:\n")
        .expect("points of the first boundary");
    let end = text[at..]
        .find("    proof:")
        .expect("what stands behind them")
        + at;
    let list = if count == 0 { "" } else { "    points:\n" };
    [&text[..at], list, &points, &text[end..]].concat()
}

#[test]
fn more_points_than_a_page_holds_go_on() {
    // The second boundary has four points on three pages.
    for (points, most) in [(1, 3), (8, 3), (9, 4), (20, 5), (40, 7), (60, 8)] {
        let pages = isolation_pages(&with_points(points));
        let found = pages.page_count() - 3;
        assert!(found <= most, "{points} points on {found} pages");
        assert_eq!(pages.boxes("point").len(), (points + 4) * 5);
        assert_eq!(outside(&pages), [""; 0], "{points} points");
        for page in 1..=pages.page_count() {
            words_clear_of_boxes(&pages, page);
        }
    }
    let written = isolation_pages(&with_points(0));
    assert_eq!(outside(&written), [""; 0]);
}

/// As many joints of 24 studs, all alike.
fn joints(count: usize) -> String {
    let joint = |number: usize| flange(24).replace("E-310-CH-24", &format!("E-310-CH-{number:04}"));
    with_joints(&channel(), (1..=count).map(joint))
}

fn registers(job: &str) -> Vec<Part> {
    with_job("job.yaml", job, |context| {
        let register = register(context, CardPages::Here);
        register_parts(context, &register).content
    })
}

#[test]
fn the_register_holds_25_rows_a_page_and_ends_with_its_totals() {
    let [part] = <[Part; 1]>::try_from(registers(&joints(61))).expect("one register");
    let pages = lay_out(part, Default::default());
    assert_eq!(pages.page_count(), 3);
    let (width, height) = pages.page_size(1);
    assert!(
        (width - 297.0).abs() < 0.1 && (height - 210.0).abs() < 0.1,
        "on its side"
    );
    assert_eq!(pages.boxes("state").len(), 61 * 8);
    assert!(text_of(&pages, 1).contains("rows 1 to 25 of 61"));
    assert!(!text_of(&pages, 2).contains("61 joints"));
    // 61 × 24 = 1464.
    let last = text_of(&pages, 3);
    assert!(
        last.contains("61 joints") && last.contains("1464 studs"),
        "{last}"
    );
}

#[test]
fn a_long_register_is_split_at_a_thousand_rows() {
    // A joint of a tag alone is worked out at once.
    let job = "studbook: 1\npack: { title: Many joints }\njoints:\n".to_owned();
    let tags = (1..=2001).map(|number| format!("tag: X-{number}"));
    let sheets: Vec<_> = registers(&with_joints(&job, tags))
        .into_iter()
        .filter_map(|part| match part {
            Part::Register(sheet) => Some(sheet),
            _ => None,
        })
        .collect();
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
    for (count, pages) in [(1, 1), (4, 1), (5, 2)] {
        let (photos, files) = pictures(count);
        let mut document = pack_alone(&channel(), photos);
        document
            .parts
            .retain(|part| matches!(part, Part::Photos(_)));
        let laid_out = lay_out_document(&document, files);
        assert_eq!(laid_out.page_count(), pages, "{count} photos");
        assert!(text_of(&laid_out, pages).contains("E-310-CH-01"));
    }
}

/// Pages of one section of the pack.
fn pages_of_section(job: &str, label: &str) -> usize {
    let mut document = pack_alone(job, Vec::new());
    for part in &mut document.parts {
        if let Part::Sections(part) = part {
            part.sections.retain(|section| section.label == label);
        }
    }
    let wanted = |part: &Part| match part {
        Part::Sections(part) => !part.sections.is_empty(),
        _ => false,
    };
    lay_out_parts(document, wanted).page_count()
}

#[test]
fn cautions_take_one_page() {
    let hazards = "hazards: [hydrogen, toxic, flammable, oxygen, steam, corrosive, pyrophoric, inert gas, \
        hazardous fibre, confined space, height, rotating machine, past leak, hot work]";
    let many = change(&channel(), "hazards: [hydrogen, toxic, flammable]", hazards);
    for job in [channel(), many] {
        assert_eq!(pages_of_section(&job, "cautions"), 1);
    }
}

#[test]
fn the_index_holds_25_joints_a_page() {
    for (count, pages) in [(1, 1), (25, 1), (26, 2)] {
        assert_eq!(
            pages_of_section(&joints(count), "index"),
            pages,
            "{count} joints"
        );
    }
}

#[test]
fn deviation_sheets_are_one_in_twenty_and_at_least_three() {
    assert_eq!([1, 60, 61, 3000].map(deviation_sheets), [3, 3, 4, 150]);
    let pack = pack_alone(&joints(61), Vec::new());
    let sheets = lay_out_parts(pack, |part| matches!(part, Part::Deviations(_)));
    assert_eq!(sheets.page_count(), 4);
}
