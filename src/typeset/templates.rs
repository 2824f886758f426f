//! The layout templates: embedded, and replaced file by file by a user's own.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use crate::document::geometry::{self, Geometry};

/// A user's own files by their name in the layout folder, such as `style.typ` or `logo.svg`.
/// Each replaces the embedded file of that name, or stands beside them.
pub type Overrides = BTreeMap<String, Vec<u8>>;

/// What the name of an override may end with.
pub const ENDINGS: [&str; 4] = [".typ", ".svg", ".png", ".jpg"];

/// The embedded layout templates, name and text, in the order of their names, as `templates/build.rs` lists them.
pub const fn embedded() -> &'static [(&'static str, &'static str)] {
    include!(concat!(env!("OUT_DIR"), "/layout.rs"))
}

/// The measures of placed pages as every template can read them; an override of that name replaces them.
pub(super) static GEOMETRY: LazyLock<Vec<u8>> = LazyLock::new(|| Geometry::ours().json());

/// What the templates are after the overrides have been put in: the input of the content code.
pub fn layout_sources(overrides: &Overrides) -> BTreeMap<&str, &[u8]> {
    let mut sources: BTreeMap<&str, &[u8]> = embedded()
        .iter()
        .map(|(name, text)| (*name, text.as_bytes()))
        .chain([(geometry::SERVED, GEOMETRY.as_slice())])
        .collect();
    sources.extend(
        overrides
            .iter()
            .map(|(name, bytes)| (name.as_str(), bytes.as_slice())),
    );
    sources
}
