//! The joint or one of its tensioners seen from the end, to proportion: angles in degrees clockwise from its top.
//!
//! A flange with its nuts and a body with its jackbolts are the same drawing: an edge, a circle of bolts with numbers
//! outside it, and what stands round them. It shrinks to the least size in which its numbers keep clear of one another.

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
    /// Middle and radius of the edge on the page; reckoned by the place.
    pub middle_at: [Mm; 2],
    /// See `middle_at`.
    pub edge: Mm,
    /// Where the letters stand; reckoned by the place.
    pub letters_at: Mm,
    /// The arrow of the direction; reckoned by the place.
    pub arrow: Arrow,
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

/// More numbers than this leave no room for a large first one.
const DENSE: usize = 24;
/// Most bolts that one picture numbers one by one, and most numbers it holds.
const MOST_NUMBERS: usize = 64;

/// How far outside the edge something ends, in mm, and at which angle.
struct Reach {
    out: f64,
    angle: f64,
}

/// The angles at which a sector reaches furthest: its ends, and where it crosses an axis.
fn furthest(sector: &Sector) -> impl Iterator<Item = f64> {
    let (from, to) = (sector.from, sector.to);
    let axes = (-4..=8).map(|quarter| f64::from(quarter) * 90.0);
    axes.filter(move |angle| (from..=to).contains(angle))
        .chain([from, to])
}

impl Picture {
    /// Whether the first number is as small as the others.
    pub fn is_dense(&self) -> bool {
        self.numbers.len() > DENSE
    }

    /// Whether a mark stands outside the large first number.
    fn is_at_first(&self, mark: &Mark) -> bool {
        let mut firsts = self.numbers.iter().filter(|it| it.first);
        !self.is_dense() && firsts.any(|it| (it.angle - mark.angle).abs() < 1.0)
    }

    /// What stands outside the edge.
    fn around(&self, g: &Geometry) -> Vec<Reach> {
        let size = &g.picture;
        let signs = self.numbers.iter().map(|it| it.text.chars().count()).max();
        let sideways = size
            .further_sign
            .times(signs.unwrap_or(0).saturating_sub(2));
        let mut found = Vec::new();
        for (angle, more) in [
            (0.0, Mm::ZERO),
            (90.0, sideways),
            (180.0, Mm::ZERO),
            (270.0, sideways),
        ] {
            found.push((size.number_reach + more, angle));
        }
        let first = if self.is_dense() {
            size.number_reach
        } else {
            size.first_reach
        };
        found.extend(
            self.numbers
                .iter()
                .filter(|it| it.first)
                .map(|it| (first, it.angle)),
        );
        let obstacles = self
            .obstacles
            .iter()
            .chain(&self.reaction)
            .flat_map(furthest);
        found.extend(obstacles.map(|angle| (size.obstacle_reach, angle)));
        let marks = self.positions.iter().map(|it| {
            let at = if self.is_at_first(it) {
                size.first_mark
            } else {
                size.mark
            };
            (at + size.mark_reach, it.angle)
        });
        found.extend(marks);
        let reach = |(out, angle): (Mm, f64)| Reach {
            out: out.mm(),
            angle,
        };
        found.into_iter().map(reach).collect()
    }

    /// The radius below which numbers or letters run into one another.
    fn least_edge(&self, g: &Geometry) -> Mm {
        let size = &g.picture;
        let least = match self.bolts.shape {
            Shape::Nut => size.least_with_words,
            Shape::Screw => size.least,
        };
        let numbers = size.per_number.times(self.numbers.len()) - size.inner_numbers;
        least
            .max(numbers)
            .max(size.per_letter.times(self.letters.len()))
    }

    /// Height above and below the middle of a circle with this edge.
    fn extents(&self, edge: Mm, g: &Geometry) -> [Mm; 2] {
        let around = self.around(g);
        let extent = |sign: f64| {
            let ends = around
                .iter()
                .map(|it| (edge.mm() + it.out) * sign * cosine(it.angle));
            Mm::at_least(ends.fold(0.0, f64::max))
        };
        [extent(1.0), extent(-1.0)]
    }

    /// The largest edge that a width holds.
    fn edge_in_width(&self, width: Mm, g: &Geometry) -> Mm {
        let fits = |it: &Reach| width.mm() / 2.0 / sine(it.angle).max(0.01) - it.out;
        let edge = self
            .around(g)
            .iter()
            .map(fits)
            .fold(width.mm() / 2.0, f64::min);
        Mm::new(edge - 0.005)
    }

    /// The largest edge that a height holds.
    fn edge_in_height(&self, height: Mm, g: &Geometry) -> Mm {
        let around = self.around(g);
        let mut edge = height.mm() / 2.0;
        for (up, down) in around
            .iter()
            .flat_map(|up| around.iter().map(move |down| (up, down)))
        {
            let (upper, lower) = (cosine(up.angle), -cosine(down.angle));
            if upper > 0.1 && lower > 0.1 {
                let both = height.mm() - up.out * upper - down.out * lower;
                edge = edge.min(both / (upper + lower));
            }
        }
        Mm::new(edge - 0.005)
    }

    /// Where the drawing begins: the large first number stands between title and remark where these leave it room
    /// and nothing else reaches as high.
    fn top(&self, width: Mm, g: &Geometry) -> Mm {
        let size = &g.picture;
        let room = width.over(2) - Mm::new(3.5);
        let title = room_of(&self.head.title, g.sizes.text);
        let note = room_of(&self.head.note, g.sizes.note);
        let is_first_on_top = self
            .numbers
            .iter()
            .any(|it| it.first && it.angle.abs() < 1.0);
        let edge = self.least_edge(g);
        let below_words = edge + size.first_reach + size.top - g.head.height;
        let mut high = self
            .obstacles
            .iter()
            .chain(&self.reaction)
            .flat_map(furthest);
        let is_free = self.positions.is_empty()
            && high
                .all(|angle| (edge + size.obstacle_reach).mm() * cosine(angle) <= below_words.mm());
        if title <= room && note <= room && is_first_on_top && !self.is_dense() && is_free {
            size.top
        } else {
            g.head.height
        }
    }

    /// The width of the least circle with what stands at its sides.
    fn least_circle(&self, g: &Geometry) -> Mm {
        let edge = self.least_edge(g).mm() + 0.01;
        let around = self.around(g).into_iter();
        let sides = around.map(|it| 2.0 * (edge + it.out) * sine(it.angle));
        Mm::at_least(sides.fold(2.0 * edge, f64::max))
    }

    fn below(&self, g: &Geometry) -> Mm {
        g.picture.legend.times(self.legend.len()) + g.picture.pad
    }

    /// A radius of the drawing on the page.
    fn scaled(&self, radius: f64) -> f64 {
        let outer = self.outline.washer.unwrap_or(0.0).max(self.outline.edge);
        if outer > 0.0 {
            self.edge.mm() * radius / outer
        } else {
            0.0
        }
    }

    /// Letters, arrow and words inside, now that the edge is known.
    fn settle_inside(&mut self, g: &Geometry) {
        let inner = self.scaled(self.outline.inner);
        let (circle, half) = (self.scaled(self.bolts.circle), self.scaled(self.bolts.half));
        let turn = if self.clockwise { 1.0 } else { -1.0 };
        let first = self.bolts.angles.first().copied().unwrap_or(0.0);
        match self.bolts.shape {
            Shape::Nut => {
                // Clear of the nuts, and of the inner edge where that comes near.
                let letters = circle - half - 3.8;
                let letters = if (letters - inner).abs() < 3.0 {
                    inner - 3.0
                } else {
                    letters
                };
                let room = if self.letters.is_empty() {
                    letters + 1.0
                } else {
                    letters - 4.0
                };
                self.letters_at = Mm::new(letters);
                self.arrow = Arrow {
                    radius: Mm::new(room.min(17.0)),
                    from: 14.0 * turn,
                    span: 66.0 * turn,
                };
                self.has_middle = true;
            }
            Shape::Screw => {
                let radius = Mm::new((inner + circle - half) / 2.0);
                self.arrow = Arrow {
                    radius,
                    from: first + 24.0 * turn,
                    span: 62.0 * turn,
                };
                let room = Mm::new(2.0 * inner - 1.0);
                self.has_middle = self
                    .middle
                    .iter()
                    .all(|it| room_of(it, g.sizes.text) <= room);
            }
        }
    }
}

fn cosine(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

fn sine(degrees: f64) -> f64 {
    libm::sin(degrees.to_radians()).abs()
}

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

    fn settle(&mut self, width: Mm, height: Mm, g: &Geometry) {
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
