//! The rule that ends the work.

use serde::Serialize;

use super::check::joined_width;
use super::{Amount, Checker, Fits};
use crate::document::geometry::{Geometry, Mm};

/// All of its parts must hold.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Stop {
    /// That all of them must hold.
    pub title: String,
    /// At least so many rounds; the largest turn below so much.
    pub parts: Vec<StopPart>,
    /// The word between them.
    pub and: String,
    /// What to do when it does not end: `Not met after C8: stop, call the engineer.`
    pub after: String,
    /// Where each part begins, its baseline counted from the first one; reckoned by the place.
    pub parts_at: Vec<[Mm; 2]>,
}

/// One part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StopPart {
    /// The word in front of the number: `at least`, `below`; may be empty.
    pub before: String,
    /// Number and unit, such as `5` without one and `20` with `deg`; none for a part that is words alone.
    pub value: Option<Amount>,
    /// What it counts.
    pub words: String,
}

impl Stop {
    fn width_of(&self, index: usize, g: &Geometry) -> Mm {
        let Some(part) = self.parts.get(index) else {
            return Mm::ZERO;
        };
        let mut runs = vec![(&*part.before, g.sizes.text), (&*part.words, g.sizes.text)];
        if let Some(Amount::Given { number, unit }) = &part.value {
            runs.extend([(&**number, g.sizes.head), (&**unit, g.sizes.step)]);
        }
        if index > 0 {
            runs.push((&self.and, g.sizes.text));
        }
        // Each run but the last has a gap behind it, as the layout sets it.
        Mm::at_least(joined_width(&runs)) + Mm::new(1.6).times(runs.len().saturating_sub(1))
    }

    fn is_in_one_line(&self, width: Mm, g: &Geometry) -> bool {
        let parts: Mm = (0..self.parts.len()).map(|it| self.width_of(it, g)).sum();
        let gaps = g.stop.and.times(self.parts.len().saturating_sub(1));
        parts + gaps <= width - g.stop.inset.times(2)
    }
}

impl Fits for Stop {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        let further = match self.is_in_one_line(width, g) {
            true => 0,
            false => self.parts.len().saturating_sub(1),
        };
        [g.stop.height + g.stop.part.times(further); 2]
    }

    fn needs(&self, g: &Geometry) -> Mm {
        let parts = (0..self.parts.len()).map(|it| self.width_of(it, g));
        let lines = [&self.title, &self.after].map(|it| super::check::room_of(it, g.sizes.text));
        parts.chain(lines).max().unwrap_or_default() + g.stop.inset.times(2)
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        let room = width - g.stop.inset.times(2);
        check.line("stop.title", &self.title, g.sizes.text, room);
        check.line("stop.after", &self.after, g.sizes.text, room);
        for (index, part) in self.parts.iter().enumerate() {
            if self.width_of(index, g) > room {
                check.line(
                    "stop.part",
                    &format!("{} {}", part.before, part.words),
                    g.sizes.text,
                    room,
                );
                check.length("stop.part", self.width_of(index, g), room);
            }
        }
    }

    fn settle(&mut self, width: Mm, _: Mm, g: &Geometry) {
        let in_one_line = self.is_in_one_line(width, g);
        let mut x = g.stop.inset;
        let mut places = Vec::with_capacity(self.parts.len());
        for index in 0..self.parts.len() {
            if in_one_line {
                places.push([x, Mm::ZERO]);
                x += self.width_of(index, g) + g.stop.and;
            } else {
                places.push([g.stop.inset, g.stop.part.times(index)]);
            }
        }
        self.parts_at = places;
    }
}
