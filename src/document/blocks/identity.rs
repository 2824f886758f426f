//! Which joint, and what is done to it.

use serde::Serialize;

use super::{Checker, Fits};
use crate::document::geometry::{Geometry, Mm};
use crate::document::width;

/// The strip at the top of every side.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Identity {
    /// The tag of the joint.
    pub tag: Tag,
    /// The word of the side.
    pub badge: Badge,
    /// Two more lines where there is room for them.
    pub lines: Option<IdentityLines>,
}

/// What stands below the tag.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct IdentityLines {
    /// Equipment and part.
    pub name: String,
    /// Position in words.
    pub place: String,
    /// Class and side, such as `class A · side 1, do`; a point that is signed here stands with it.
    pub class: String,
    /// Drawing and its revision; may be empty.
    pub drawing: String,
}

/// A tag in the largest form that fits.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tag {
    /// One line, or two when it is long.
    pub lines: Vec<String>,
    /// Whether it is set at the size of the one value; else one step smaller.
    pub large: bool,
}

impl Tag {
    /// Chooses the form of a tag: large, else smaller, else in two lines.
    pub fn new(text: &str, g: &Geometry) -> Self {
        let fits = |size: f64| width::of(text, size) <= g.identity.tag.mm();
        let large = fits(g.sizes.value);
        let lines = if large || fits(g.sizes.head) {
            vec![text.to_owned()]
        } else {
            width::halves(text)
        };
        Self { lines, large }
    }
}

/// The word of a side, told apart by shape across a yard.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Badge {
    /// In capitals.
    pub word: String,
    /// Outlined (loosen, isolate, draft) or solid (tighten, record).
    pub outlined: bool,
}

impl Fits for Identity {
    fn heights(&self, _: Mm, g: &Geometry) -> [Mm; 2] {
        let height = if self.lines.is_some() {
            g.identity.full
        } else {
            g.identity.height
        };
        [height; 2]
    }

    fn texts(&self, _: Mm, g: &Geometry, check: &mut Checker) {
        let size = if self.tag.large {
            g.sizes.value
        } else {
            g.sizes.head
        };
        check.items("identity.tag", self.tag.lines.len(), 2);
        for line in &self.tag.lines {
            check.line("identity.tag", line, size, g.identity.tag);
        }
        let inside = g.identity.badge - Mm::new(2.0);
        check.line("identity.badge", &self.badge.word, g.sizes.head, inside);
        if let Some(it) = &self.lines {
            check.line("identity.name", &it.name, g.sizes.step, g.identity.name);
            check.line("identity.place", &it.place, g.sizes.text, g.identity.place);
            check.line("identity.class", &it.class, g.sizes.text, g.identity.class);
            check.line(
                "identity.drawing",
                &it.drawing,
                g.sizes.note,
                g.identity.drawing,
            );
        }
    }
}
