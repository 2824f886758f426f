//! How large a picture may be: what stands outside its edge, what stands inside.

use super::{Arrow, Mark, Picture, Sector, Shape};
use crate::document::blocks::check::room_of;
use crate::document::geometry::{Geometry, Mm};

/// More numbers than this leave no room for a large first one.
const DENSE: usize = 24;
/// From the middle of a letter to the nuts outside it and to the inner edge, in mm.
const LETTER_TO_NUT: f64 = 3.8;
const LETTER_TO_EDGE: f64 = 3.0;

/// Half of a letter with the white around it, and how far below the middle the words in it end, in mm.
const HALF_A_LETTER: f64 = 1.8;
const WORDS_END: f64 = 6.0;

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
    pub(super) fn is_dense(&self) -> bool {
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
    pub(super) fn least_edge(&self, g: &Geometry) -> Mm {
        let size = &g.picture;
        let least = match self.bolts.shape {
            Shape::Nut => size.least_with_words,
            Shape::Screw => size.least,
        };
        let numbers = size.per_number.times(self.numbers.len()) - size.inner_numbers;
        least.max(numbers).max(self.least_edge_of_letters(g))
    }

    /// The edge below which the letters of the moves run into one another on their own circle.
    fn least_edge_of_letters(&self, g: &Geometry) -> Mm {
        let outer = self.outer();
        if self.letters.is_empty() || outer <= 0.0 {
            return Mm::ZERO;
        }
        let circle = g.picture.per_letter.times(self.letters.len()).mm();
        let (inner, nuts) = (
            self.outline.inner / outer,
            (self.bolts.circle - self.bolts.half) / outer,
        );
        let inside_nuts = (circle + LETTER_TO_NUT) / nuts.max(0.1);
        let is_near = (circle - inner * inside_nuts).abs() < LETTER_TO_EDGE;
        Mm::at_least(match is_near {
            true => inside_nuts.max((circle + LETTER_TO_EDGE) / inner),
            false => inside_nuts,
        })
    }

    /// Height above and below the middle of a circle with this edge.
    pub(super) fn extents(&self, edge: Mm, g: &Geometry) -> [Mm; 2] {
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
    pub(super) fn edge_in_width(&self, width: Mm, g: &Geometry) -> Mm {
        let fits = |it: &Reach| width.mm() / 2.0 / sine(it.angle).max(0.01) - it.out;
        let edge = self
            .around(g)
            .iter()
            .map(fits)
            .fold(width.mm() / 2.0, f64::min);
        Mm::new(edge - 0.005)
    }

    /// The largest edge that a height holds.
    pub(super) fn edge_in_height(&self, height: Mm, g: &Geometry) -> Mm {
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
    pub(super) fn top(&self, width: Mm, g: &Geometry) -> Mm {
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
    pub(super) fn least_circle(&self, g: &Geometry) -> Mm {
        let edge = self.least_edge(g).mm() + 0.01;
        let around = self.around(g).into_iter();
        let sides = around.map(|it| 2.0 * (edge + it.out) * sine(it.angle));
        Mm::at_least(sides.fold(2.0 * edge, f64::max))
    }

    pub(super) fn below(&self, g: &Geometry) -> Mm {
        g.picture.legend.times(self.legend.len()) + g.picture.pad
    }

    /// The largest circle of the outline.
    fn outer(&self) -> f64 {
        self.outline.washer.unwrap_or(0.0).max(self.outline.edge)
    }

    /// A radius of the drawing on the page.
    fn scaled(&self, radius: f64) -> f64 {
        let outer = self.outer();
        if outer > 0.0 {
            self.edge.mm() * radius / outer
        } else {
            0.0
        }
    }

    /// Letters, arrow and words inside, now that the edge is known.
    pub(super) fn settle_inside(&mut self, g: &Geometry) {
        let inner = self.scaled(self.outline.inner);
        let (circle, half) = (self.scaled(self.bolts.circle), self.scaled(self.bolts.half));
        let turn = if self.clockwise { 1.0 } else { -1.0 };
        let first = self.bolts.angles.first().copied().unwrap_or(0.0);
        match self.bolts.shape {
            Shape::Nut => {
                // Clear of the nuts, and of the inner edge where that comes near.
                let letters = circle - half - LETTER_TO_NUT;
                let letters = if (letters - inner).abs() < LETTER_TO_EDGE {
                    inner - LETTER_TO_EDGE
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
                // Large nuts push the letters inwards; the arrow then tells the direction alone.
                let words = self.middle.iter().map(|it| room_of(it, g.sizes.text));
                let half_a_word = words.max().unwrap_or_default().mm() / 2.0;
                let reach = libm::hypot(half_a_word, WORDS_END) + HALF_A_LETTER;
                self.has_middle = self.letters.is_empty() || reach <= letters;
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
