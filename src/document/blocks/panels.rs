//! What kills, and the cautions.

use serde::Serialize;

use super::check::room_of;
use super::{Checker, Fits};
use crate::document::geometry::{Geometry, Mm};

/// What kills, what must not happen before, and the boxes that prove it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Danger {
    /// The signal word.
    pub word: String,
    /// What is behind the joint, bold: one line each.
    pub hazards: Vec<String>,
    /// What must not happen before.
    pub stop: String,
    /// The hold point whose signature these boxes are, such as `H2`; may be empty.
    pub point: String,
    /// Labels of the four boxes: certificate, seen at, time, initials.
    pub boxes: [String; 4],
}

impl Fits for Danger {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        let further = self.hazards.len().saturating_sub(1);
        [g.danger.height + g.danger.line.times(further); 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        let d = &g.danger;
        check.line(
            "danger.word",
            &self.word,
            g.sizes.head,
            d.cell - Mm::new(2.0),
        );
        // The outline of the panel keeps as much white inside at its end.
        let room = width - d.cell - d.inset - Mm::new(3.0);
        for line in &self.hazards {
            check.line("danger.hazard", line, g.sizes.step, room);
        }
        let point = match self.point.as_str() {
            "" => Mm::ZERO,
            point => room_of(point, g.sizes.step) + Mm::new(2.0),
        };
        check.line("danger.stop", &self.stop, g.sizes.step, room - point);
        let widths = [d.first, d.second, d.third, d.fourth];
        for (label, box_width) in self.boxes.iter().zip(widths) {
            check.line(
                "danger.box",
                label,
                g.sizes.text,
                box_width + d.between - Mm::new(0.4),
            );
        }
        let boxes = widths.into_iter().sum::<Mm>() + d.between.times(3);
        check.length("danger.boxes", boxes, room);
    }
}

/// Cautions in front of their step, one line each, in one frame: the full text stands in the pack.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cautions {
    /// In the order of harm.
    pub items: Vec<Caution>,
}

/// A caution of one line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Caution {
    /// The signal word.
    pub word: String,
    /// Whether the alert triangle belongs to the word; it does not to a notice of damage only.
    pub triangle: bool,
    /// The sentence.
    pub text: String,
}

impl Fits for Cautions {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        [g.cautions.row.times(self.items.len()); 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.items("cautions", self.items.len(), g.cautions.most);
        let word = g.cautions.word - Mm::new(10.0);
        let room = width - g.cautions.word - g.cautions.end;
        for it in &self.items {
            check.line("cautions.word", &it.word, g.sizes.step, word);
            check.line("cautions.text", &it.text, g.sizes.text, room);
        }
    }
}
