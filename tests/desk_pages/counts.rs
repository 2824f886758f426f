//! How much a page holds, and where a part goes on.

use crate::desk_sample as desk;
use studbook::document::desk::Part;
use studbook::document::pack::{Sections, deviation_sheets, one_page_of_panels};

use super::{isolation, lay_out, lay_out_with, pictures, registers, text_of};

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
