//! Plain data and a layout template in, laid-out pages and a PDF out: the only module that names Typst.
//!
//! Nothing outside memory can be reached from a template: no disk, no network, no clock. The same
//! [`Request`] gives the same bytes on every machine. A warning of the typesetter (a font that does
//! not exist, a layout that does not settle) means wrong paper, so it is a fault like any error.

mod compile;
mod fonts;
mod pages;
mod templates;
mod world;

pub use compile::{Date, Fault, Pdf, Properties, Request, Typeset, deep_thread, make_pdf, typeset};
pub use fonts::{font_files, missing_characters};
pub use pages::{Outline, Printed, Region};
pub use templates::{ENDINGS, Overrides, embedded, layout_sources};
