//! The chart of a plan of rounds on a calculation note: complete, inside its page, readable on a copy.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::collections::BTreeMap;

use built::bitmap::Bitmap;
use built::checks::upright;
use built::tensioners::{Anchors, anchors};
use built::{lay_out, text_of, with_job};
use studbook::document::build::note;
use studbook::document::desk::Part;
use studbook::document::note::Note;
use studbook::typeset::Typeset;

/// The note of these anchors and its pages.
fn note_of(anchors: Anchors) -> (Note, Typeset) {
    let note = with_job("job.yaml", &anchors.job(), |context| {
        let made = note(context, &context.plan.groups[0], "note".into());
        made.expect("a note").content
    });
    let pages = lay_out(Part::Note(Box::new(note.clone())), BTreeMap::new());
    (note, pages)
}

#[test]
fn the_chart_names_its_lines_and_keeps_to_its_page() {
    let by_hand = Anchors {
        spindles: None,
        ..anchors(16, 1)
    };
    for anchors in [anchors(4, 1), anchors(12, 1), anchors(32, 1), by_hand] {
        let (note, pages) = note_of(anchors);
        let text = text_of(&pages, 1);
        for words in [
            "Stud load and turn, round by round",
            "predicted, not measured",
            "common practice, 20 deg",
            "whole: stop angle here, ",
            "load still missing",
        ] {
            assert!(text.contains(words), "{anchors:?}: no {words:?} in {text}");
        }
        let plan = note.plan.expect("a plan");
        let last = plan.panels[1].points.last().expect("rounds");
        let texts = pages.texts(1);
        let named = texts.iter().filter(|it| it.text == last.name).count();
        assert_eq!(named, 2, "the last round stands in both drawings");
        // 20 mm for binding, the type area ends at 196 mm.
        let texts = upright(&pages, 1);
        for (index, text) in texts.iter().enumerate() {
            let right = text.region.x + text.region.width;
            assert!(text.region.x > 19.3 && right < 197.0, "{text:?}");
            for other in &texts[index + 1..] {
                assert!(
                    !text.region.overlaps(&other.region, 0.1),
                    "{text:?} {other:?}"
                );
            }
        }
    }
}

/// What must survive a copier: lines across, dots, bars. Each is looked for at its place on a page
/// reduced to black and white, counted down from the title of the drawings.
#[test]
fn lines_dots_and_bars_are_still_there_on_a_copy() {
    let (note, pages) = note_of(anchors(12, 1));
    let plan = note.plan.expect("a plan");
    let bitmap = Bitmap::of(&pages, 1);
    let title = pages
        .texts(1)
        .into_iter()
        .find(|it| it.text.starts_with("stud load after"));
    let title = title.expect("the title of the loads");
    // Its baseline stands 3.4 mm below the upper edge of the drawings, their axes begin at 9 mm; a
    // capital is 0.698 of the size high.
    let top = title.region.y + title.size * 0.698 * 25.4 / 72.0 - 3.4 + 9.0;
    let [load, turn] = &plan.panels;
    for panel in [load, turn] {
        for line in &panel.lines {
            let dots = (0..40).map(|dot| 20.0 + panel.from + panel.length * f64::from(dot) / 40.0);
            let inked = dots.filter(|x| bitmap.is_inked(*x, top + line.at)).count();
            assert!(
                inked > if line.broken { 20 } else { 38 },
                "{inked} of 40: {line:?}"
            );
        }
        for point in &panel.points {
            let x = 20.0 + point.x;
            assert!(bitmap.is_inked(x, top + point.likely), "{point:?}");
            assert!(bitmap.is_inked(x, top + point.ends[1]), "{point:?}");
        }
    }
}
