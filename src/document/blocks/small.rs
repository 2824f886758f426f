//! Two small drawings beside a picture: the studs of the joint, and a dial that explains the others.

use serde::Serialize;

use super::{Checker, Fits, Mark};
use crate::document::geometry::{Geometry, Mm};

/// The studs of a joint in small, numbered, with words beside them.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Studs {
    /// The studs at their angles; none where the words alone carry the order.
    pub studs: Vec<Mark>,
    /// How many, where the first one is, in which order: one line each.
    pub words: Vec<String>,
    /// The rank at which the drawing may go, see [`Fits::spare`]; the words go with the rank below it.
    #[serde(skip)]
    pub spare: Option<u8>,
    /// Radius of the circle that the numbers stand on; reckoned by the place.
    pub radius: Mm,
    /// Where the words begin; reckoned by the place.
    pub words_at: Mm,
}

impl Studs {
    fn radius(&self, g: &Geometry) -> Mm {
        g.studs.per_stud.times(self.studs.len()).max(g.studs.least)
    }

    fn drawing(&self, g: &Geometry) -> Mm {
        if self.studs.is_empty() {
            Mm::ZERO
        } else {
            self.radius(g).times(2) + g.studs.around
        }
    }

    fn words_at(&self, g: &Geometry) -> Mm {
        match self.drawing(g) {
            Mm::ZERO => Mm::ZERO,
            wide => wide + g.studs.gap,
        }
    }
}

impl Fits for Studs {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        match self.drawing(g).max(g.sizes.line.times(self.words.len())) {
            Mm::ZERO => [Mm::ZERO; 2],
            height => [height + g.studs.pad; 2],
        }
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.items("studs", self.studs.len(), g.studs.most);
        for line in &self.words {
            check.line("studs.words", line, g.sizes.text, width - self.words_at(g));
        }
    }

    fn spare(&self) -> Option<u8> {
        match (self.studs.is_empty(), self.words.is_empty()) {
            (false, _) => self.spare,
            (true, false) => self.spare.map(|rank| rank.saturating_sub(1)),
            (true, true) => None,
        }
    }

    fn let_go(&mut self, rank: u8) {
        if !self.studs.is_empty() && self.spare == Some(rank) {
            self.studs.clear();
        } else {
            self.words.clear();
        }
    }

    fn settle(&mut self, _: Mm, _: Mm, g: &Geometry) {
        self.radius = self.radius(g);
        self.words_at = self.words_at(g);
    }
}

/// A dial large enough to explain the small ones.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Dial {
    /// The turn that it shows, in degrees; anticlockwise when negative.
    pub angle: f64,
    /// Lines beside it.
    pub words: Vec<String>,
}

impl Fits for Dial {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        let words = g.sizes.line.times(self.words.len()) + g.dial.pad;
        [words.max(g.dial.height); 2]
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        for line in &self.words {
            check.line("dial.words", line, g.sizes.text, width - g.dial.words_at);
        }
    }
}
