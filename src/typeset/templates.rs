//! The layout templates: embedded, and replaced file by file by a user's own.

use std::collections::BTreeMap;

/// A user's own files by their name in the layout folder, such as `style.typ` or `logo.svg`.
/// Each replaces the embedded file of that name, or stands beside them.
pub type Overrides = BTreeMap<String, Vec<u8>>;

/// What the name of an override may end with.
pub const ENDINGS: [&str; 4] = [".typ", ".svg", ".png", ".jpg"];

macro_rules! layout {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../templates/layout/", $name)))),*]
    };
}

/// The embedded layout templates, name and text, in the order of their names.
pub fn embedded() -> &'static [(&'static str, &'static str)] {
    layout![
        "blocks.typ",
        "card.typ",
        "cards.typ",
        "desk.typ",
        "formula.typ",
        "isolation.typ",
        "jackbolts.typ",
        "note.typ",
        "pack.typ",
        "plan.typ",
        "record.typ",
        "register.typ",
        "ring.typ",
        "style.typ",
    ]
}

/// What the templates are after the overrides have been put in: the input of the content code.
pub fn layout_sources(overrides: &Overrides) -> BTreeMap<&str, &[u8]> {
    let mut sources: BTreeMap<&str, &[u8]> = embedded()
        .iter()
        .map(|(name, text)| (*name, text.as_bytes()))
        .collect();
    sources.extend(
        overrides
            .iter()
            .map(|(name, bytes)| (name.as_str(), bytes.as_slice())),
    );
    sources
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A template that is in the folder but not in the table would never be found.
    #[test]
    fn the_table_is_the_folder() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/templates/layout");
        let mut files: Vec<String> = std::fs::read_dir(folder)
            .expect("the folder is part of the project")
            .map(|entry| {
                entry
                    .expect("a readable folder")
                    .file_name()
                    .to_string_lossy()
                    .into_owned()
            })
            .collect();
        files.sort();
        let table: Vec<&str> = embedded().iter().map(|(name, _)| *name).collect();
        assert_eq!(files, table);
    }
}
