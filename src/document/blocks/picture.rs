//! The joint or one of its tensioners seen from the end, to proportion: angles in degrees clockwise from its top.
//!
//! A flange with its nuts and a body with its jackbolts are the same drawing: an edge, a circle of bolts with numbers
//! outside it, and what stands round them. It shrinks to the least size in which its numbers keep clear of one another.

mod reach;

use serde::Serialize;

use super::check::room_of;
use super::{Checker, Fits, Head};
use crate::document::geometry::{Geometry, Mm};

/// A circle of bolts as the crew sees it.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Picture {
    /// From which side it is seen, and where one looks.
    pub head: Head,
    /// The circles that are drawn. Their radii and those of the bolts only scale one another.
    pub outline: Outline,
    /// What is turned.
    pub bolts: Bolts,
    /// Numbers outside: of bolts, or of groups at their middle.
    pub numbers: Vec<Mark>,
    /// Letters of the moves inside.
    pub letters: Vec<Mark>,
    /// Angles at which one group ends and the next begins; empty when bolts are numbered one by one.
    pub divisions: Vec<f64>,
    /// Whether the numbers run clockwise.
    pub clockwise: bool,
    /// The word at the top mark; empty without one.
    pub top: String,
    /// Words in the middle, two short lines at most: the direction, or the size of the stud.
    pub middle: Vec<String>,
    /// The tools of the first move.
    pub tools: Vec<ToolMark>,
    /// Where nobody has a hand.
    pub no_hands: Vec<Sector>,
    /// What stands in the way.
    pub obstacles: Vec<Sector>,
    /// What a driver leans on; it stands outside the numbers.
    pub reaction: Option<Sector>,
    /// Where the mark of a driver points in each of its positions; empty when it has only one.
    pub positions: Vec<Mark>,
    /// Whether a paint line runs from each bolt over the body, as it is drawn before loosening.
    pub paint: bool,
    /// The signs explained, one line each.
    pub legend: Vec<String>,
    /// The lines of the legend that stay on a full side, see [`Fits::spare`].
    #[serde(skip)]
    pub least_legend: Vec<String>,
    /// Middle and radius of the edge on the page; reckoned by the place.
    pub middle_at: [Mm; 2],
    /// See `middle_at`.
    pub edge: Mm,
    /// Where the letters stand; reckoned by the place.
    pub letters_at: Mm,
    /// The arrow of the direction; reckoned by the place.
    pub arrow: Arrow,
    /// Whether the first number is as small as the others; reckoned by the place.
    pub dense: bool,
    /// Whether the words in the middle have room; reckoned by the place.
    pub has_middle: bool,
}

/// The circles of a picture, as radii.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Outline {
    /// Outside of the flange or of the body.
    pub edge: f64,
    /// Outside of a washer below the body; drawn broken where the body hides it.
    pub washer: Option<f64>,
    /// Inside of the face, or the stud.
    pub inner: f64,
    /// How the inner circle looks.
    pub line: OutlineLine,
}

/// An opening, or a stud that fills it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "both are described above")]
pub enum OutlineLine {
    #[default]
    Opening,
    Stud,
}

/// The bolts of a picture.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Bolts {
    /// What is drawn of each.
    pub shape: Shape,
    /// Radius of their circle.
    pub circle: f64,
    /// Half of one across its corners.
    pub half: f64,
    /// Angle of each, the first one first.
    pub angles: Vec<f64>,
    /// Angles at which a driver has a spindle in its first position; empty when it has one at each.
    pub driven: Vec<f64>,
}

/// What is seen of a bolt.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// A nut with the end of its stud.
    #[default]
    Nut,
    /// A round head with a hexagon in it.
    Screw,
}

/// A word at an angle.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Mark {
    /// Degrees clockwise from the top.
    pub angle: f64,
    /// Number or letter.
    pub text: String,
    /// The first of all, which is set large.
    pub first: bool,
}

/// A tool on its nut.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ToolMark {
    /// The nut that it turns.
    pub angle: f64,
    /// The point on the bolt circle that its arm leans on; none for a tool held by hand.
    pub reaction: Option<f64>,
}

/// A part of the circle, clockwise; at most a full turn.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "where it begins and where it ends")]
pub struct Sector {
    pub from: f64,
    pub to: f64,
}

/// An arrow along a circle; the span is negative when it runs anticlockwise.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[allow(missing_docs, reason = "radius, beginning and length in degrees")]
pub struct Arrow {
    pub radius: Mm,
    pub from: f64,
    pub span: f64,
}

/// Most bolts that one picture numbers one by one, and most numbers it holds.
const MOST_NUMBERS: usize = 64;

impl Fits for Picture {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        let height = |edge: Mm| {
            let [up, down] = self.extents(edge, g);
            self.top(width, g) + up + down + self.below(g)
        };
        let least = self.least_edge(g);
        [
            height(least),
            height(self.edge_in_width(width, g).max(least)),
        ]
    }

    fn needs(&self, g: &Geometry) -> Mm {
        let legend = self.legend.iter().map(|it| room_of(it, g.sizes.note));
        legend.max().unwrap_or_default().max(self.least_circle(g))
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        check.head("picture.head", &self.head, width, g);
        check.items("picture.numbers", self.numbers.len(), MOST_NUMBERS);
        check.items("picture.middle", self.middle.len(), 2);
        check.length("picture", self.least_circle(g), width);
        check.line("picture.top", &self.top, g.sizes.text, Mm::new(16.0));
        if self.bolts.shape == Shape::Nut {
            for line in &self.middle {
                check.line("picture.middle", line, g.sizes.text, Mm::new(24.0));
            }
        }
        for line in &self.legend {
            check.line("picture.legend", line, g.sizes.note, width);
        }
    }

    fn spare(&self) -> Option<u8> {
        (self.least_legend.len() < self.legend.len()).then_some(1)
    }

    fn let_go(&mut self, _: u8) {
        self.legend.clone_from(&self.least_legend);
    }

    fn settle(&mut self, width: Mm, height: Mm, g: &Geometry) {
        self.dense = self.is_dense();
        let top = self.top(width, g);
        let room = height - top - self.below(g);
        self.edge = self
            .edge_in_width(width, g)
            .min(self.edge_in_height(room, g));
        let [up, down] = self.extents(self.edge, g);
        let free = (room - up - down).max(Mm::ZERO);
        self.middle_at = [width.over(2), top + up + free.over(2)];
        self.settle_inside(g);
    }
}
