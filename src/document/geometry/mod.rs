//! The measures of placed pages, as `templates/geometry.yaml` gives them to the program and to the layout.
//!
//! That file says what each of them means. A user's own file may hold only what it changes: it is laid over ours
//! and checked before either side sees it.

mod measures;
mod mm;
mod room;

pub use measures::Geometry;
pub use mm::Mm;

use std::sync::LazyLock;

use crate::report::{FileId, Finding, Place, Sources};
use crate::yaml;

/// The embedded file.
pub const TEXT: &str = include_str!("../../../templates/geometry.yaml");

/// Name of the file among the templates.
pub const FILE: &str = "geometry.yaml";

/// Name of what the layout reads.
pub const SERVED: &str = "geometry.json";

static OURS: LazyLock<Geometry> = LazyLock::new(|| {
    let mut geometry = Geometry::default();
    // A test reads the file and finds nothing wrong in it.
    geometry.lay_over(&yaml::read(TEXT.as_bytes(), FileId(0)));
    geometry
});

impl Geometry {
    /// The embedded measures.
    pub fn ours() -> &'static Self {
        &OURS
    }

    /// The embedded measures with a user's over them.
    ///
    /// # Errors
    /// What cannot be read, keys that there are not, measures that no sheet has, and rooms too small for
    /// the type that stands in them.
    pub fn with_user_file(text: &str, sources: &mut Sources) -> Result<Self, Vec<Finding>> {
        let mut geometry = OURS.clone();
        let tree = yaml::open(FILE, text.as_bytes(), sources);
        let (mut findings, places) = geometry.lay_over(&tree);
        if findings.is_empty() {
            findings = geometry.too_small(&places, tree.start());
        }
        if findings.is_empty() {
            Ok(geometry)
        } else {
            Err(findings)
        }
    }

    /// What the layout reads as `/geometry.json`.
    pub fn json(&self) -> Vec<u8> {
        serde_json::to_vec(self).unwrap_or_default()
    }
}

/// Where each measure was typed.
type Places = std::collections::BTreeMap<&'static str, Place>;

#[cfg(test)]
mod tests {
    use super::*;

    /// A measure that our file leaves out would be zero without a word.
    #[test]
    fn our_file_gives_every_measure_and_nothing_else() {
        let mut geometry = Geometry::default();
        let tree = yaml::read(TEXT.as_bytes(), FileId(0));
        let (findings, places) = geometry.lay_over(&tree);
        assert_eq!(findings, []);
        assert_eq!(places.len(), Geometry::MEASURES.len());
        assert_eq!(geometry.too_small(&places, tree.start()), []);
    }
}
