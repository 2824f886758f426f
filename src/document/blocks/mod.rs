//! What a side of a placed page is made of.
//!
//! A block is data (an enum: serialised, compared, coded like any data); what it can do stands behind the trait
//! [`Fits`], joined to it by one macro. [`place`] and [`flow`] reckon where each block stands and how high it is;
//! the layout draws it there. Every measure comes from the [`Geometry`], every text is measured against its room by
//! [`overruns`], so that a check of the job speaks without typesetting and agrees with the page.

mod check;
mod flow;
mod grid;
mod identity;
mod keys;
mod list;
mod order;
mod panels;
mod picture;
mod place;
mod rows;
mod sheets;
mod signatures;
mod small;
mod stop;
mod ticks;

pub use check::{Checker, Measure, Overrun, overruns};
pub use flow::flow;
pub use grid::{Cell, Grid};
pub use identity::{Badge, Identity, IdentityLines, Tag};
pub use keys::{Fact, Keys, MainValue, Second, SideValue};
pub use list::{BoxWidth, Line, List};
pub use order::{Order, OrderEntry};
pub use panels::{Caution, Cautions, Danger};
pub use picture::{Arrow, Bolts, Mark, Outline, OutlineLine, Picture, Sector, Shape, ToolMark};
pub use place::{Band, Column, Front, Heads, place};
pub use rows::{BoxColumn, Expected, Row, Rows};
pub use sheets::{Card, Draft, Footer, Running, Volume, interleave};
pub use signatures::{Deviation, Notes, Signature, Signatures};
pub use small::{Dial, Studs};
pub use stop::{Stop, StopPart};
pub use ticks::{Tick, Ticks};

use serde::Serialize;

use super::geometry::{Geometry, Mm};

/// A part of a page.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "block", rename_all = "snake_case")]
#[allow(missing_docs, reason = "each kind is described at its own type")]
pub enum Block {
    Identity(Identity),
    Danger(Danger),
    Cautions(Cautions),
    Ticks(Ticks),
    Keys(Box<Keys>),
    Picture(Box<Picture>),
    Studs(Studs),
    Dial(Dial),
    Rows(Rows),
    Stop(Stop),
    Order(Order),
    List(List),
    Grid(Grid),
    Deviation(Deviation),
    Signatures(Signatures),
    Notes(Notes),
}

/// What [`place`] and [`flow`] ask of a block.
pub trait Fits {
    /// Least and greatest height in a width; zero when there is nothing to draw.
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2];

    /// The least width in which every text has its room.
    fn needs(&self, g: &Geometry) -> Mm {
        g.page.width
    }

    /// Holds every text against its room in a width.
    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker);

    /// The rank of what goes first where the sheet is full, the highest first; none when all must stand.
    fn spare(&self) -> Option<u8> {
        None
    }

    /// Lets one thing of that rank go.
    fn let_go(&mut self, _rank: u8) {}

    /// Keeps what a height holds and gives the rest for the next side; none if it cannot be parted there.
    fn part(&mut self, _width: Mm, _height: Mm, _g: &Geometry) -> Option<Block> {
        None
    }

    /// Takes the place that it got, so that the layout has nothing to reckon.
    fn settle(&mut self, _width: Mm, _height: Mm, _g: &Geometry) {}
}

macro_rules! kinds {
    ($($kind:ident)*) => {
        impl Block {
            /// What the block can do.
            pub fn fits(&self) -> &dyn Fits {
                match self { $(Self::$kind(it) => fits(it)),* }
            }

            fn fits_mut(&mut self) -> &mut dyn Fits {
                match self { $(Self::$kind(it) => fits_mut(it)),* }
            }
        }
    };
}
kinds! { Identity Danger Cautions Ticks Keys Picture Studs Dial Rows Stop Order List Grid Deviation Signatures Notes }

/// Sees through the box of a large kind.
fn fits<T: Fits>(it: &T) -> &dyn Fits {
    it
}

fn fits_mut<T: Fits>(it: &mut T) -> &mut dyn Fits {
    it
}

impl<T: Fits> Fits for Box<T> {
    fn heights(&self, width: Mm, g: &Geometry) -> [Mm; 2] {
        (**self).heights(width, g)
    }

    fn needs(&self, g: &Geometry) -> Mm {
        (**self).needs(g)
    }

    fn texts(&self, width: Mm, g: &Geometry, check: &mut Checker) {
        (**self).texts(width, g, check);
    }

    fn spare(&self) -> Option<u8> {
        (**self).spare()
    }

    fn let_go(&mut self, rank: u8) {
        (**self).let_go(rank);
    }

    fn part(&mut self, width: Mm, height: Mm, g: &Geometry) -> Option<Block> {
        (**self).part(width, height, g)
    }

    fn settle(&mut self, width: Mm, height: Mm, g: &Geometry) {
        (**self).settle(width, height, g);
    }
}

/// A block in its place: from the left edge of the text and the upper edge of the paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "four lengths and what stands there")]
pub struct Placed {
    pub x: Mm,
    pub y: Mm,
    pub width: Mm,
    pub height: Mm,
    #[serde(flatten)]
    pub block: Block,
}

/// One side of a sheet.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Side {
    /// `sheet 1 of 2` where there are more; may be empty.
    pub sheet: String,
    /// The blocks, each in its place.
    pub blocks: Vec<Placed>,
}

/// Title and remark of a block.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Head {
    /// At the left, bold.
    pub title: String,
    /// At the right, small; may be empty.
    pub note: String,
}

impl Head {
    /// From both texts.
    pub fn new(title: impl Into<String>, note: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            note: note.into(),
        }
    }
}

/// A number with its unit, or who must give it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Amount {
    /// Known; a word has an empty unit.
    Given {
        /// The number.
        number: String,
        /// Its unit.
        unit: String,
    },
    /// An empty box.
    Missing {
        /// To be given by whom.
        by: String,
    },
}

impl Amount {
    /// A number with its unit.
    pub fn given(number: impl Into<String>, unit: impl Into<String>) -> Self {
        Self::Given {
            number: number.into(),
            unit: unit.into(),
        }
    }

    /// An empty box with the words that say who must fill it.
    pub fn missing(by: impl Into<String>) -> Self {
        Self::Missing { by: by.into() }
    }
}
