//! The user's own templates, texts and measures: a folder with `layout/`, `wording/<language>/` and `geometry.yaml`.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use crate::document::geometry::{self, Geometry};
use crate::report::{Finding, Sources};
use crate::typeset::{self, ENDINGS};
use crate::wording::{Override, Wording};

use super::Exit;
use super::output::say_failed;

/// Largest file that is taken.
const LARGEST: u64 = 8 << 20;

/// The user's own files.
#[derive(Debug, Default)]
pub(super) struct UserFiles {
    /// Layout templates and pictures by name.
    pub(super) layout: typeset::Overrides,
    /// Wording files: language, name, text.
    wording: Vec<(String, String, String)>,
    /// Measures of placed pages, as far as the user changes them.
    geometry: Option<String>,
}

impl UserFiles {
    /// The user's texts by name, for the stamp of contents.
    pub(super) fn wording_bytes(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.wording
            .iter()
            .map(|(_, name, text)| (name.as_str(), text.as_bytes()))
    }
}

/// Reads the folder. A file that is there but cannot be read is an error, never skipped in silence.
pub(super) fn read(folder: Option<&Path>) -> Result<UserFiles, Exit> {
    let mut files = UserFiles::default();
    let Some(folder) = folder else {
        return Ok(files);
    };
    if !folder.is_dir() {
        return Err(say_failed("cli.no_such_folder", folder, None));
    }
    let layout = folder.join("layout");
    for (name, bytes) in plain_files(&layout)? {
        if ENDINGS.iter().any(|ending| name.ends_with(ending)) {
            files.layout.insert(name, bytes);
        }
    }
    if let Some(bytes) = plain_files(folder)?.remove(geometry::FILE) {
        files.geometry = Some(String::from_utf8_lossy(&bytes).into_owned());
    }
    let wording = folder.join("wording");
    for language in folders(&wording)? {
        for (name, bytes) in plain_files(&wording.join(&language))? {
            if name.ends_with(".yaml") {
                let text = String::from_utf8_lossy(&bytes).into_owned();
                files.wording.push((language.clone(), name, text));
            }
        }
    }
    Ok(files)
}

/// The words of a language with the user's texts over them. A language that cannot be had falls
/// back to English and says so.
pub(super) fn wording(
    language: &str,
    user: &UserFiles,
    sources: &mut Sources,
) -> (Wording, Vec<Finding>) {
    let overrides: Vec<Override> = user
        .wording
        .iter()
        .filter(|(of, _, _)| of == language)
        .map(|(_, name, text)| {
            let file = sources.add(name.clone(), text.as_str());
            Override {
                file,
                text: text.clone(),
            }
        })
        .collect();
    match Wording::with_overrides(language, &overrides) {
        Ok(wording) => {
            let notes = wording.notes().to_vec();
            (wording, notes)
        }
        Err(findings) => (english(), findings),
    }
}

/// The measures of placed pages with the user's over them; templates then read these too.
pub(super) fn geometry(user: &mut UserFiles, sources: &mut Sources) -> (Geometry, Vec<Finding>) {
    let ours = || Geometry::ours().clone();
    match user
        .geometry
        .as_deref()
        .map(|text| Geometry::with_user_file(text, sources))
    {
        None => (ours(), Vec::new()),
        Some(Err(findings)) => (ours(), findings),
        Some(Ok(merged)) => {
            // A copy that nobody changed shapes nothing.
            if merged != *Geometry::ours() {
                user.layout
                    .insert(geometry::SERVED.to_owned(), merged.json());
            }
            (merged, Vec::new())
        }
    }
}

/// The embedded English, by which the program speaks when nothing else can be had.
pub(super) fn english() -> Wording {
    Wording::embedded("en").expect("the embedded English is complete; its tests read it")
}

fn folders(parent: &Path) -> Result<Vec<String>, Exit> {
    let mut names = Vec::new();
    if !parent.is_dir() {
        return Ok(names);
    }
    let entries = fs::read_dir(parent)
        .map_err(|error| say_failed("cli.cannot_read", parent, Some(&error)))?;
    for entry in entries.filter_map(Result::ok) {
        if entry.file_type().is_ok_and(|kind| kind.is_dir()) {
            names.push(entry.file_name().to_string_lossy().into_owned());
        }
    }
    names.sort();
    Ok(names)
}

/// The plain files of a folder by name. Links are not followed: they could lead out of it.
fn plain_files(folder: &Path) -> Result<BTreeMap<String, Vec<u8>>, Exit> {
    let mut files = BTreeMap::new();
    if !folder.is_dir() {
        return Ok(files);
    }
    let failed =
        |path: &Path, error: &std::io::Error| say_failed("cli.cannot_read", path, Some(error));
    let entries = fs::read_dir(folder).map_err(|error| failed(folder, &error))?;
    for entry in entries.filter_map(Result::ok) {
        let path = entry.path();
        let kind = entry.file_type().map_err(|error| failed(&path, &error))?;
        if !kind.is_file() {
            continue;
        }
        let size = entry
            .metadata()
            .map_err(|error| failed(&path, &error))?
            .len();
        if size > LARGEST {
            return Err(say_failed("cli.too_large", &path, None));
        }
        let bytes = super::files::read(&path).map_err(|error| failed(&path, &error))?;
        files.insert(entry.file_name().to_string_lossy().into_owned(), bytes);
    }
    Ok(files)
}
