//! The picture of a work as a block, drawn from the same data as the list of the order.

use crate::calc::{Order, order};
use crate::document::blocks::{
    Block, Bolts, Dial, Head, Mark, Outline, OutlineLine, Picture, Sector, Shape, Studs, ToolMark,
};
use crate::document::width;
use crate::work::{Mark as MarkedBy, Marked, Pictured, Ring, Set, Value};

use super::View;
use super::rows::wrapped;

/// Names of the sets of fasteners, as the head of a driver bears them.
const SETS: [&str; 4] = ["X", "Y", "Z", "W"];
/// An obstacle takes a little less than the place of its fastener.
const INSET: f64 = 0.05;
/// Settings with a dial beyond which a large one explains them.
const DIALS: usize = 4;
/// A smaller stud, as a share of what stands on it, has no room for its words.
const LEAST_FOR_WORDS: f64 = 0.3;

/// Angles of fasteners in degrees clockwise from the top, number 1 first.
#[derive(Clone, Copy)]
struct Circle {
    count: usize,
    is_clockwise: bool,
}

impl Circle {
    fn pitch(self) -> f64 {
        360.0 / real(self.count.max(1))
    }

    /// The angle of a place, counted from 0; halves lie between two fasteners.
    fn at(self, place: f64) -> f64 {
        let turn = if self.is_clockwise { place } else { -place };
        (turn * self.pitch()).rem_euclid(360.0)
    }

    /// From half a step before the first to half a step behind the last, as it lies clockwise.
    fn sector(self, marked: Marked, inset: f64) -> Sector {
        let first = marked.first.max(1);
        let last = match marked.last < first {
            true => marked.last + self.count,
            false => marked.last,
        };
        let (from, to) = (real(first) - 1.5 + inset, real(last) - 0.5 - inset);
        let start = self.at(if self.is_clockwise { from } else { to });
        Sector {
            from: start,
            to: start + (to - from) * self.pitch(),
        }
    }

    fn marks(self, count: usize, text: impl Fn(usize) -> String) -> Vec<Mark> {
        let mark = |index: usize| Mark {
            angle: self.at(real(index)),
            text: text(index),
            first: index == 0,
        };
        (0..count).map(mark).collect()
    }
}

fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

impl View<'_> {
    /// The picture with what belongs to it.
    pub(super) fn pictures(&self) -> Vec<Block> {
        // Fasteners that stand on no circle have no picture.
        let is_drawn = self.work.picture.count > 0;
        let picture = is_drawn.then(|| Block::Picture(Box::new(self.picture())));
        let ring = self.work.picture.ring.as_ref();
        let studs = ring.map(|ring| Block::Studs(self.studs(ring)));
        [picture, studs, self.dial()]
            .into_iter()
            .flatten()
            .collect()
    }

    fn circle(&self) -> Circle {
        Circle {
            count: self.work.picture.count,
            is_clockwise: self.work.picture.is_clockwise,
        }
    }

    fn picture(&self) -> Picture {
        let drawn = &self.work.picture;
        let circle = self.circle();
        let groups = match drawn.subject {
            Pictured::Joint => order::picture_group(drawn.count),
            Pictured::Stud => 1,
        };
        let sectors = |by: MarkedBy, inset: f64| -> Vec<Sector> {
            let marked = drawn.sectors.iter().filter(|it| it.by == by);
            marked.map(|it| circle.sector(*it, inset)).collect()
        };
        let place = |number: usize| circle.at(real(number.saturating_sub(1)));
        let driven = drawn.sets.first().into_iter().flatten();
        let set_marks = Circle { ..circle }.marks(drawn.sets.len(), |index| {
            SETS.get(index).copied().unwrap_or_default().to_owned()
        });
        Picture {
            head: self.picture_head(),
            outline: self.outline(),
            bolts: Bolts {
                shape: match drawn.subject {
                    Pictured::Joint => Shape::Nut,
                    Pictured::Stud => Shape::Screw,
                },
                circle: drawn.on,
                half: drawn.fastener,
                angles: (0..drawn.count).map(|it| circle.at(real(it))).collect(),
                driven: driven.map(|it| place(*it)).collect(),
            },
            numbers: numbers(circle, groups),
            letters: match (&self.subject.computed.order, drawn.has_letters) {
                (Some(order), true) => letters(circle, order, groups),
                _ => Vec::new(),
            },
            divisions: divisions(circle, groups),
            clockwise: drawn.is_clockwise,
            top: match drawn.subject {
                Pictured::Joint => self.label("top").to_owned(),
                Pictured::Stud => String::new(),
            },
            middle: self.middle(),
            tools: drawn
                .tools
                .iter()
                .map(|(on, leans)| ToolMark {
                    angle: place(*on),
                    reaction: leans.map(place),
                })
                .collect(),
            no_hands: sectors(MarkedBy::NoHands, 0.0),
            obstacles: sectors(MarkedBy::Obstacle, INSET),
            reaction: sectors(MarkedBy::Reaction, 0.0).into_iter().next(),
            positions: set_marks,
            paint: drawn.has_lines,
            legend: self.legend(groups, true),
            least_legend: self.legend(groups, false),
            ..Picture::default()
        }
    }

    fn picture_head(&self) -> Head {
        let joint = &self.subject.joint.work;
        if self.work.picture.subject == Pictured::Stud {
            return Head::new(self.label("stud_seen"), self.label("stud_numbers"));
        }
        let seen = match &joint.seen_from {
            Some(from) => self.context.say1("card.seen_from", "where", from.as_str()),
            None => self.context.label("card.seen_default"),
        };
        let first = match joint.first.get() {
            Some(first) => self.context.say1("card.first_at", "first", first.as_str()),
            None => self.context.label("card.first_unknown"),
        };
        Head::new(seen, first)
    }

    fn outline(&self) -> Outline {
        let circles = &self.work.picture.circles;
        let is_stud = self.work.picture.subject == Pictured::Stud;
        Outline {
            edge: circles.first().copied().unwrap_or(1.0),
            washer: circles.get(1).copied().filter(|_| is_stud),
            inner: circles.last().copied().unwrap_or(0.5),
            line: if is_stud {
                OutlineLine::Stud
            } else {
                OutlineLine::Opening
            },
        }
    }

    /// The way of the numbers, or the size of the stud.
    fn middle(&self) -> Vec<String> {
        let drawn = &self.work.picture;
        if drawn.subject == Pictured::Joint {
            return width::halves(&self.context.label(match drawn.is_clockwise {
                true => "card.turns_clockwise",
                false => "card.turns_anticlockwise",
            }));
        }
        let outline = self.outline();
        if outline.inner < LEAST_FOR_WORDS * outline.edge {
            return Vec::new();
        }
        let thread = self.subject.joint.mechanics.studs.thread.get();
        let size = thread.map(|thread| thread.designation.clone());
        [self.label("stud").to_owned()]
            .into_iter()
            .chain(size)
            .collect()
    }

    /// What the signs mean, one behind the other as far as the least width of the picture holds them.
    /// What is only good to know may be left away.
    fn legend(&self, groups: usize, is_full: bool) -> Vec<String> {
        let g = self.g;
        let drawn = &self.work.picture;
        let ids = drawn.legend.iter().filter(|id| **id != ORDER);
        let ids = ids.filter(|id| is_full || !GOOD_TO_KNOW.contains(id));
        let mut texts: Vec<String> = ids
            .map(|id| self.voice.label(&["work", "picture", id]).to_owned())
            .collect();
        if groups > 1 {
            texts.push(self.voice.label(&["work", "picture", "groups"]).to_owned());
        }
        let circle = self.subject.joint.mechanics.studs.bolt_circle.value();
        if let (Some(circle), Pictured::Joint) = (circle.filter(|_| is_full), drawn.subject) {
            let circle = self.context.text(circle);
            texts.push(self.context.say1("card.bolt_circle", "diameter", circle));
        }
        let room = g.picture.least_width.mm();
        let mut lines = wrapped(&texts, " · ", g.sizes.note, room);
        if drawn.legend.contains(&ORDER) {
            let numbers: Vec<String> = drawn.order.iter().map(ToString::to_string).collect();
            let order = wrapped(&numbers, " ", g.sizes.note, room - 10.0);
            lines.extend(order.into_iter().enumerate().map(|(at, line)| match at {
                0 => {
                    let values = [("order", Value::Text(line))];
                    self.voice.say(&["work", "picture", ORDER], &values)
                }
                _ => line,
            }));
        }
        lines
    }

    /// The studs of the joint in small.
    fn studs(&self, ring: &Ring) -> Studs {
        let circle = Circle {
            count: ring.count,
            is_clockwise: ring.is_clockwise,
        };
        let drawn = if ring.count <= self.g.studs.most {
            ring.count
        } else {
            0
        };
        let words = ["count", "first", "all", "next"].into_iter();
        let words = words.filter(|id| *id != "first" || !matches!(ring.first, Value::Missing(_)));
        Studs {
            studs: circle.marks(drawn, |index| (index + 1).to_string()),
            words: words
                .map(|id| {
                    let values = [
                        ("count", Value::Count(ring.count)),
                        ("first", ring.first.clone()),
                    ];
                    self.voice.say(&["work", "ring", id], &values)
                })
                .collect(),
            spare: Some(3),
            ..Studs::default()
        }
    }

    /// One dial large enough to explain the small ones in the rows.
    fn dial(&self) -> Option<Block> {
        let turns = self
            .work
            .settings()
            .filter_map(|(_, setting)| match setting.set {
                Set::Turn(turn) => Some(turn.to_degrees()),
                _ => None,
            });
        let turns: Vec<f64> = turns.collect();
        let angle = turns.first().copied().filter(|_| turns.len() >= DIALS)?;
        let way = if angle < 0.0 {
            "anticlockwise"
        } else {
            "clockwise"
        };
        let words = ["black", "from_line", way];
        Some(Block::Dial(Dial {
            angle,
            words: words
                .map(|id| self.voice.label(&["work", "dial", id]).to_owned())
                .to_vec(),
        }))
    }
}

/// Lines of a legend that explain no danger and no order.
const GOOD_TO_KNOW: [&str; 2] = ["wrench", "predicted"];
/// The line of a legend that gives the order of the fasteners.
const ORDER: &str = "order";

/// One number for each fastener, or one for the middle of each group.
fn numbers(circle: Circle, groups: usize) -> Vec<Mark> {
    if groups <= 1 {
        return circle.marks(circle.count, |index| (index + 1).to_string());
    }
    let groups = order::picture_groups(circle.count);
    let mark = |(index, group): (usize, &Vec<usize>)| {
        let (first, last) = (group.first()?, group.last()?);
        Some(Mark {
            angle: circle.at((real(*first) + real(*last)) / 2.0 - 1.0),
            text: (index + 1).to_string(),
            first: index == 0,
        })
    };
    groups.iter().enumerate().filter_map(mark).collect()
}

fn divisions(circle: Circle, groups: usize) -> Vec<f64> {
    if groups <= 1 {
        return Vec::new();
    }
    let groups = order::picture_groups(circle.count);
    let firsts = groups.iter().filter_map(|group| group.first());
    firsts.map(|first| circle.at(real(*first) - 1.5)).collect()
}

/// The letter of the move at each of its fasteners; where these are numbered in groups, at the middle of each group.
fn letters(circle: Circle, order: &Order, groups: usize) -> Vec<Mark> {
    let is_by_group = groups > 1
        && order.within == order::Move::OneByOne
        && order.moves.iter().all(|studs| studs.len() <= groups);
    if groups > 1 && !is_by_group {
        return Vec::new();
    }
    let mut marks = Vec::new();
    for (letter, studs) in order.lettered() {
        let places: Vec<f64> = match is_by_group {
            true => {
                let sum: f64 = studs.iter().map(|stud| real(*stud) - 1.0).sum();
                vec![sum / real(studs.len())]
            }
            false => studs.iter().map(|stud| real(*stud) - 1.0).collect(),
        };
        marks.extend(places.into_iter().map(|place| Mark {
            angle: circle.at(place),
            text: letter.clone(),
            first: false,
        }));
    }
    marks
}
