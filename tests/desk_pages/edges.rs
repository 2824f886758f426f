//! Hostile signs, long texts, a copy in black and white.

use crate::built::bitmap::Bitmap;
use crate::built::flanges::{channel, words};
use crate::built::packs::{isolation_pages, lay_out_parts, pack_of};
use crate::built::texts::with_texts;
use crate::built::{all_text, outside, text_of};

use super::{PACK, for_the_desk, words_clear_of_boxes};

/// A text prints as it was typed, whatever signs stand in it.
#[test]
fn signs_of_the_typesetter_print_as_they_are() {
    let hostile = "#[]{}$\\*_<a>@b~-- // /* `x` 'q'";
    let signs = |_: &str, most| hostile.chars().take(most).collect();
    let job = with_texts(&channel(), signs);
    let pages = lay_out_parts(pack_of("job.yaml", &job), for_the_desk);
    let title = text_of(&pages, 1);
    assert!(title.contains(hostile), "{title}");
    let all = all_text(&pages);
    for words in ["I-04", "E-310-CH-01", "V-312-MW-02"] {
        assert!(all.contains(words), "{words}");
    }
    assert!(all.matches("#[]{}$\\*_<a>@b~--").count() > 60, "{all}");
}

/// The longest texts that a job may hold, and those without a place to break.
#[test]
fn long_texts_wrap_and_stay_on_the_page() {
    for long in [words as fn(usize) -> String, |most| "W".repeat(most)] {
        let job = with_texts(&channel(), |_, most| long(most));
        let pages = lay_out_parts(pack_of("job.yaml", &job), for_the_desk);
        assert_eq!(outside(&pages), [""; 0]);
        assert_eq!(pages.boxes("point").len(), (8 + 4) * 5);
    }
}

/// Boundary, contents, opening and places of an isolation sheet take the lines that they need.
#[test]
fn long_words_of_an_isolation_sheet_push_the_rest_down() {
    let job = with_texts(&channel(), |_, most| words(most));
    let pages = isolation_pages(&job);
    assert_eq!(pages.boxes("point").len(), (8 + 4) * 5);
    for page in 1..=pages.page_count() {
        words_clear_of_boxes(&pages, page);
    }
}

/// After a copier nothing is left of grey: white letters are large, boxes keep their outline.
#[test]
fn a_copy_in_black_and_white_keeps_boxes_and_words() {
    let pages = &*PACK;
    for page in 1..=pages.page_count() {
        for text in pages.texts(page) {
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
    }
    let first = ["itp", "isolation-1", "register"].map(|label| pages.pages_of(label)[0]);
    for page in [1].into_iter().chain(first) {
        let copy = Bitmap::of(pages, page);
        let boxes = ["box", "point", "state", "sign", "stamp"].map(|label| pages.boxes(label));
        for region in boxes.iter().flatten().filter(|region| region.page == page) {
            let along = (0..=40).map(|step| f64::from(step) / 40.0 * region.width + region.x);
            let foot = region.y + region.height;
            let kept = along.filter(|x| copy.is_inked(*x, foot)).count();
            assert!(
                kept >= 37,
                "page {page}: {region:?} keeps {kept} of 41 points"
            );
        }
    }
}
