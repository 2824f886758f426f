//! What the files of an issue are made from, and what is known of each when it is made.

use std::path::PathBuf;

use crate::document::build::{Context, Subject};
use crate::document::code;
use crate::typeset::Properties;

use super::Exit;
use super::load::Loaded;
use super::output::say_failed;
use super::progress::Progress;
use super::store::{Listed, Making, Manifest};

/// What every file is made from.
pub(super) struct Work<'a> {
    pub(super) loaded: &'a Loaded,
    pub(super) context: &'a Context<'a>,
    /// `NUMBER_REV`, with which every name begins.
    pub(super) stem: &'a str,
    pub(super) properties: Properties,
    /// Folders that were issued before, with their manifests.
    pub(super) earlier: Vec<(PathBuf, Manifest)>,
    /// What the user sees while he waits.
    pub(super) progress: Progress<'a>,
}

/// One file that was made.
pub(super) struct Piece {
    pub(super) name: String,
    pub(super) listed: Listed,
    pub(super) copied: bool,
}

impl Work<'_> {
    /// The same file of an earlier issue, if its whole input was the same and it is undamaged.
    pub(super) fn earlier_copy(&self, name: &str, input: &str) -> Option<(Vec<u8>, Listed)> {
        self.earlier.iter().find_map(|(folder, manifest)| {
            let listed = manifest
                .files
                .get(name)
                .filter(|listed| listed.input == input)?;
            let bytes = super::files::read(&folder.join(name)).ok()?;
            (code::hash(&bytes) == listed.hash).then(|| (bytes, listed.clone()))
        })
    }

    pub(super) fn subject(&self, index: usize) -> Option<Subject<'_>> {
        let group = self.loaded.plan.of(index)?;
        let joint = self.loaded.joints.get(index)?;
        Some(Subject {
            joint,
            computed: &group.computed,
            group: &group.name,
        })
    }

    pub(super) fn properties(&self, name: &str) -> Properties {
        Properties {
            ident: name.to_owned(),
            ..self.properties.clone()
        }
    }

    pub(super) fn write(&self, making: &Making, name: &str, bytes: &[u8]) -> Result<(), Exit> {
        making.write(name, bytes).map_err(|error| {
            say_failed(
                "cli.cannot_write",
                &making.hidden().join(name),
                Some(&error),
            )
        })
    }
}
