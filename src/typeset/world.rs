//! Everything that a template can see: a map in memory.

use std::collections::HashMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult, PackageError};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

use crate::document::geometry;
use crate::units::keep_together;

use super::fonts::FONTS;
use super::templates;
use super::{Overrides, Request};

static LIBRARY: LazyLock<LazyHash<Library>> =
    LazyLock::new(|| LazyHash::new(<Library as LibraryExt>::default()));

/// The embedded templates are parsed once; a `Source` is a shared handle.
static EMBEDDED: LazyLock<Vec<Source>> = LazyLock::new(|| {
    templates::embedded()
        .iter()
        .filter_map(|(name, text)| Some(Source::new(file_id(name)?, (*text).to_owned())))
        .collect()
});

/// The files of one document. Paths are the same for every document, because Typst keeps each
/// distinct path for the life of the process and has room for 65,535 of them.
pub(super) struct MemoryWorld {
    main: FileId,
    sources: HashMap<FileId, Source>,
    files: HashMap<FileId, Bytes>,
}

impl MemoryWorld {
    /// `None` when the request names a template or a file by something that is not a path.
    pub(super) fn new(request: &Request) -> Option<Self> {
        let mut world = Self {
            main: file_id(request.template)?,
            sources: EMBEDDED
                .iter()
                .map(|source| (source.id(), source.clone()))
                .collect(),
            files: HashMap::new(),
        };
        let measures = Bytes::new(templates::GEOMETRY.as_slice());
        world.files.insert(file_id(geometry::SERVED)?, measures);
        world.replace(request.overrides)?;
        // Every text of every document comes in here: a number keeps its unit on its line.
        let data = match std::str::from_utf8(&request.data) {
            Ok(text) => keep_together(text).into_bytes(),
            Err(_) => request.data.clone(),
        };
        world.files.insert(file_id("data.json")?, Bytes::new(data));
        for (name, bytes) in &request.files {
            world
                .files
                .insert(file_id(name)?, Bytes::new(bytes.clone()));
        }
        Some(world)
    }

    fn replace(&mut self, overrides: &Overrides) -> Option<()> {
        for (name, bytes) in overrides {
            let id = file_id(name)?;
            match std::str::from_utf8(bytes) {
                Ok(text) if name.ends_with(".typ") => {
                    self.sources.insert(id, Source::new(id, text.to_owned()));
                }
                _ => {
                    self.sources.remove(&id);
                    self.files.insert(id, Bytes::new(bytes.clone()));
                }
            }
        }
        Some(())
    }
}

/// The id of a name below the root of the document.
fn file_id(name: &str) -> Option<FileId> {
    let path = VirtualPath::new(format!("/{name}")).ok()?;
    Some(RootedPath::new(VirtualRoot::Project, path).intern())
}

fn refuse_package(id: FileId) -> FileResult<()> {
    match id.root() {
        VirtualRoot::Project => Ok(()),
        VirtualRoot::Package(_) => Err(FileError::Package(PackageError::Other(Some(
            "packages are switched off: a document may use only its own files".into(),
        )))),
    }
}

impl World for MemoryWorld {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FONTS.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        refuse_package(id)?;
        if let Some(source) = self.sources.get(&id) {
            return Ok(source.clone());
        }
        match self.files.get(&id) {
            Some(_) => Err(FileError::NotSource),
            None => Err(FileError::NotFound(id.vpath().get_without_slash().into())),
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        refuse_package(id)?;
        if let Some(bytes) = self.files.get(&id) {
            return Ok(bytes.clone());
        }
        match self.sources.get(&id) {
            Some(source) => Ok(Bytes::from_string(source.clone())),
            None => Err(FileError::NotFound(id.vpath().get_without_slash().into())),
        }
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.list.get(index).cloned()
    }

    /// Always none: the date is the job's and comes as data.
    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}
