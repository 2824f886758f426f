//! What the crew sees from its place: the circle of what is turned.

use super::Value;

/// What is turned seen from its end: circles and what stands on them, in lengths of any one unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// What is drawn.
    pub subject: Pictured,
    /// Radii of the circles that are drawn, the outermost part first.
    pub circles: Vec<f64>,
    /// How many numbered fasteners.
    pub count: usize,
    /// Whether their numbers run clockwise, seen as drawn.
    pub is_clockwise: bool,
    /// The radius on which they stand, and the radius of one of them.
    pub on: f64,
    /// Radius of one fastener, across its corners.
    pub fastener: f64,
    /// Whether the letters of the order stand beside them.
    pub has_letters: bool,
    /// Ids of the lines below it.
    pub legend: Vec<&'static str>,
    /// Parts of the circle that are marked.
    pub sectors: Vec<Marked>,
    /// The tools of the first move: on which fastener each stands, and on which its arm leans.
    pub tools: Vec<(usize, Option<usize>)>,
    /// The order of the fasteners where it stands below the picture, from 1.
    pub order: Vec<usize>,
    /// Sets of fasteners that are gone through in turn, from 1: the first of each bears the letter of its set, and the
    /// members of the first set are ringed. None where all are gone through at once.
    pub sets: Vec<Vec<usize>>,
    /// Whether each fastener bears a line of paint.
    pub has_lines: bool,
    /// The joint in small, where each of its studs carries what is drawn.
    pub ring: Option<Ring>,
}

/// What a picture shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pictured {
    /// The joint with its fasteners.
    Joint,
    /// One stud with what loads it.
    Stud,
}

/// A part of the circle, from half a step before one fastener to half a step behind another, from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// The first fastener of it.
    pub first: usize,
    /// The last fastener of it, in the direction of the numbers.
    pub last: usize,
    /// What it marks.
    pub by: Mark,
}

/// Why a part of a circle is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Something stands in the way.
    Obstacle,
    /// Nobody has a hand there.
    NoHands,
    /// A tool leans there.
    Reaction,
}

/// The studs of a joint in small.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// How many.
    pub count: usize,
    /// Which way they are numbered, seen as drawn.
    pub is_clockwise: bool,
    /// Where stud 1 is.
    pub first: Value,
}

impl Picture {
    /// Nothing drawn yet.
    pub const fn new() -> Self {
        Self {
            subject: Pictured::Joint,
            circles: Vec::new(),
            count: 0,
            is_clockwise: true,
            on: 0.0,
            fastener: 0.0,
            has_letters: false,
            legend: Vec::new(),
            sectors: Vec::new(),
            tools: Vec::new(),
            order: Vec::new(),
            sets: Vec::new(),
            has_lines: false,
            ring: None,
        }
    }
}

impl Default for Picture {
    fn default() -> Self {
        Self::new()
    }
}
