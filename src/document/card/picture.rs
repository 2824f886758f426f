//! The picture of a bolted joint, to proportion: angles in degrees clockwise from its top.

use serde::Serialize;

use super::Head;

/// A bolt circle as the crew sees it.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Picture {
    /// From which side it is seen, and where one looks.
    pub head: Head,
    /// Outside diameter, any unit: the four lengths only scale one another.
    pub outer: f64,
    /// Inside diameter of the face.
    pub inner: f64,
    /// Diameter of the bolt circle.
    pub circle: f64,
    /// Across the corners of a nut.
    pub nut: f64,
    /// Angle of each fastener, the first one first.
    pub fasteners: Vec<f64>,
    /// Numbers outside: of fasteners, or of groups at their middle.
    pub numbers: Vec<Mark>,
    /// Letters of the moves inside.
    pub letters: Vec<Mark>,
    /// Angles at which one group ends and the next begins; empty when fasteners are numbered one by one.
    pub divisions: Vec<f64>,
    /// Whether the numbers run clockwise.
    pub clockwise: bool,
    /// That in words, two short lines at most.
    pub direction: Vec<String>,
    /// The word at the top mark; empty without one.
    pub top: String,
    /// The tools of the first move.
    pub tools: Vec<ToolMark>,
    /// Where nobody has a hand.
    pub no_hands: Vec<Sector>,
    /// What stands in the way.
    pub obstacles: Vec<Sector>,
    /// The signs explained and the bolt circle named: at most two lines.
    pub legend: Vec<String>,
}

/// A word at an angle.
#[derive(Clone, Debug, Serialize)]
pub struct Mark {
    /// Degrees clockwise from the top.
    pub angle: f64,
    /// Number or letter.
    pub text: String,
    /// The first of all, which is set large.
    pub first: bool,
}

/// A tool on its nut.
#[derive(Clone, Debug, Serialize)]
pub struct ToolMark {
    /// The nut that it turns.
    pub angle: f64,
    /// The point on the bolt circle that its arm leans on; none for a tool held by hand.
    pub reaction: Option<f64>,
}

/// A part of the circle, clockwise.
#[derive(Clone, Debug, Serialize)]
pub struct Sector {
    /// Where it begins.
    pub from: f64,
    /// Where it ends; at most a full turn after `from`.
    pub to: f64,
}
