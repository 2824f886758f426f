//! The chart of a plan of rounds on a calculation note: complete, inside its page, readable on a copy.

#[allow(
    dead_code,
    unreachable_pub,
    clippy::too_many_lines,
    reason = "each test file uses its part of the samples, which are long lists"
)]
mod desk_sample;
#[allow(unreachable_pub, reason = "shared with the tests of the cards")]
mod sample;

use std::collections::BTreeMap;

use desk_sample as desk;
use sample::bitmap::Bitmap;
use studbook::document::desk::Part;
use studbook::typeset::{Overrides, Typeset, typeset};

fn note(rounds: usize) -> Typeset {
    let part = Part::Note(Box::new(desk::note::plan::note(rounds)));
    let overrides = Overrides::new();
    let request = desk::request(&desk::document(vec![part]), BTreeMap::new(), &overrides);
    typeset(&request).expect("the embedded templates have no fault")
}

#[test]
fn the_chart_names_its_lines_and_keeps_to_its_page() {
    for rounds in [1, 5, 14, 36] {
        let pages = note(rounds);
        let text = pages.text(1).replace('\u{a0}', " ");
        for words in [
            "Predicted loads and turns",
            "predicted, not measured",
            "common practice, 20 deg",
            "stop angle of this stud, 5.6 deg",
            "load still missing",
        ] {
            assert!(text.contains(words), "{rounds}: no {words:?} in {text}");
        }
        let last = format!("C{rounds}");
        let named = pages.texts(1).iter().filter(|it| it.text == last).count();
        assert_eq!(named, 2, "the last round stands in both drawings");
        // 20 mm for binding, the type area ends at 196 mm.
        for text in pages.texts(1) {
            let right = text.region.x + text.region.width;
            assert!(text.region.x > 19.3 && right < 197.0, "{text:?}");
        }
        for (index, text) in pages.texts(1).iter().enumerate() {
            for other in &pages.texts(1)[index + 1..] {
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
    let pages = note(5);
    let plan = desk::note::plan::note(5).plan.expect("a plan");
    let bitmap = Bitmap::of(&pages, 1);
    let title = pages
        .texts(1)
        .into_iter()
        .find(|it| it.text.starts_with("Stud load after"));
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
