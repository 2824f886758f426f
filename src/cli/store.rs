//! Issued documents on disk: a folder appears whole or not at all, and an issued one is never lost.
//!
//! An issue is one folder `NUMBER_REV` with a manifest. It is made beside its place under a hidden
//! name and renamed when it is complete. A draft goes to `NUMBER_REV_DRAFT` and is replaced freely.

use std::collections::BTreeMap;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use serde::{Deserialize, Serialize};

use crate::job::Job;
use crate::rules::IssuedRevision;
use crate::yaml::At;

use super::{files, interrupt};

/// The name of the manifest in an issued folder.
pub(super) const MANIFEST: &str = "manifest.json";

/// One file of an issue.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Listed {
    /// BLAKE3 of the file, hexadecimal.
    pub(super) hash: String,
    /// BLAKE3 of everything that went into it, hexadecimal. Equal inputs give equal files, so a
    /// file may be copied instead of made again.
    pub(super) input: String,
    /// Size in bytes.
    pub(super) bytes: u64,
    /// Pages, for PDF files.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) pages: Option<usize>,
}

/// What an issued folder holds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct Manifest {
    /// Number of the document.
    pub(super) number: String,
    /// Its revision.
    pub(super) revision: String,
    /// Its date.
    pub(super) date: String,
    /// Version of the program that made it.
    pub(super) program: String,
    /// Whether every page says DRAFT.
    pub(super) draft: bool,
    /// The volume of cards that stands here alone, waiting for the issue that takes it over.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) volume: Option<usize>,
    /// Files by name.
    pub(super) files: BTreeMap<String, Listed>,
}

/// Reads the manifest of an issued folder; `None` if there is none that can be read.
pub(super) fn manifest(folder: &Path) -> Option<Manifest> {
    let text = files::read(&folder.join(MANIFEST)).ok()?;
    serde_json::from_slice(&text).ok()
}

/// What was issued under the number of a job in a folder, by revision. With `replace` the current
/// revision does not count: it is about to be moved aside.
pub(super) fn issued(folder: &Path, job: &Job, replace: bool) -> Vec<IssuedRevision> {
    let Some(pack) = job.pack.get() else {
        return Vec::new();
    };
    let Some(number) = pack.number.as_ref().and_then(At::get) else {
        return Vec::new();
    };
    let current = pack
        .revisions
        .as_ref()
        .and_then(At::get)
        .and_then(|revisions| {
            revisions
                .last()?
                .get()?
                .revision
                .get()
                .map(|name| name.to_string())
        });
    let mut found: Vec<IssuedRevision> = manifests(folder)
        .into_iter()
        .map(|(_, manifest)| manifest)
        .filter(|manifest| manifest.number == number.as_str())
        .filter(|manifest| !manifest.draft && manifest.volume.is_none())
        .filter(|manifest| !(replace && Some(&manifest.revision) == current.as_ref()))
        .map(|manifest| IssuedRevision {
            revision: manifest.revision,
            date: manifest.date,
            draft: manifest.draft,
        })
        .collect();
    found.sort_by(|a, b| a.revision.cmp(&b.revision));
    found.dedup();
    found
}

/// The issued folders below a folder, those that were moved aside left out.
pub(super) fn manifests(folder: &Path) -> Vec<(PathBuf, Manifest)> {
    let folder = if folder.as_os_str().is_empty() {
        Path::new(".")
    } else {
        folder
    };
    let Ok(entries) = fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut found: Vec<(PathBuf, Manifest)> = entries
        .filter_map(Result::ok)
        .map(|entry| entry.path())
        .filter(|path| path.is_dir() && !is_aside(path))
        .filter_map(|path| manifest(&path).map(|manifest| (path, manifest)))
        .collect();
    found.sort_by(|a, b| a.0.cmp(&b.0));
    found
}

fn is_aside(path: &Path) -> bool {
    let name = path
        .file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned();
    name.starts_with('.') || name.contains("_replaced_")
}

/// A folder in the making. Dropped before it is finished, it leaves nothing behind.
pub(super) struct Making {
    hidden: PathBuf,
    place: PathBuf,
    finished: bool,
}

impl Making {
    /// Opens a hidden folder beside `place`, so that a bad path fails before the long work, and
    /// clears away what an interrupted run of the same issue has left.
    pub(super) fn begin(place: &Path) -> io::Result<Self> {
        let parent = match place.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        let name = place
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        fs::create_dir_all(parent)?;
        clear_leftovers(parent, &name);
        static COUNTER: AtomicU32 = AtomicU32::new(0);
        let count = COUNTER.fetch_add(1, Ordering::Relaxed);
        let hidden = parent.join(format!(".{name}.{}-{count}.part", std::process::id()));
        // From here on the drop clears up, and an interruption does.
        let making = Self {
            hidden: hidden.clone(),
            place: place.to_owned(),
            finished: false,
        };
        interrupt::watch(hidden);
        fs::create_dir(&making.hidden)?;
        Ok(making)
    }

    /// The hidden folder.
    pub(super) fn hidden(&self) -> &Path {
        &self.hidden
    }

    /// Writes one file and makes sure that it is on the disk.
    pub(super) fn write(&self, name: &str, bytes: &[u8]) -> io::Result<()> {
        let mut file = fs::File::create_new(self.hidden.join(name))?;
        file.write_all(bytes)?;
        file.sync_all()
    }

    /// Puts the folder in its place. What stood there is moved aside first and stays under the name
    /// that is returned; a draft that is replaced is removed.
    pub(super) fn finish(mut self, keep_old: bool) -> io::Result<Option<PathBuf>> {
        let mut kept = None;
        let mut making = interrupt::hold();
        if self.place.exists() {
            let aside = free_name(&self.place);
            fs::rename(&self.place, &aside)?;
            if let Err(error) = fs::rename(&self.hidden, &self.place) {
                fs::rename(&aside, &self.place)?;
                return Err(error);
            }
            if keep_old {
                kept = Some(aside);
            } else {
                fs::remove_dir_all(&aside)?;
            }
        } else {
            fs::rename(&self.hidden, &self.place)?;
        }
        *making = None;
        self.finished = true;
        Ok(kept)
    }
}

impl Drop for Making {
    fn drop(&mut self) {
        if !self.finished {
            // Nothing can be told from here; what is left is cleared by the next run.
            let _ = fs::remove_dir_all(&self.hidden);
            *interrupt::hold() = None;
        }
    }
}

/// Hidden folders of this issue whose process is gone.
fn clear_leftovers(parent: &Path, name: &str) {
    let Ok(entries) = fs::read_dir(parent) else {
        return;
    };
    let prefix = format!(".{name}.");
    for entry in entries.filter_map(Result::ok) {
        let found = entry.file_name().to_string_lossy().into_owned();
        let Some(rest) = found.strip_prefix(&prefix) else {
            continue;
        };
        let Some(process) = rest
            .strip_suffix(".part")
            .and_then(|rest| rest.split('-').next())
        else {
            continue;
        };
        // Without a list of processes a folder is taken to be in use.
        let processes = Path::new("/proc");
        let alive = !processes.exists() || processes.join(process).exists();
        if !alive || process == std::process::id().to_string() {
            let _ = fs::remove_dir_all(entry.path());
        }
    }
}

/// `NAME_replaced_1`, or the next number that is free.
fn free_name(place: &Path) -> PathBuf {
    let name = place
        .file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned();
    (1u32..)
        .map(|number| place.with_file_name(format!("{name}_replaced_{number}")))
        .find(|candidate| !candidate.exists())
        .unwrap_or_else(|| place.to_owned())
}

#[cfg(test)]
#[expect(clippy::disallowed_methods, reason = "a test reads what was written")]
mod tests {
    use super::*;

    #[test]
    fn a_dropped_folder_leaves_nothing_and_a_finished_one_is_whole() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("N_A");
        let making = Making::begin(&place).unwrap();
        making.write("a.txt", b"one").unwrap();
        drop(making);
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
        let making = Making::begin(&place).unwrap();
        making.write("a.txt", b"one").unwrap();
        assert!(!place.exists());
        assert_eq!(making.finish(true).unwrap(), None);
        assert_eq!(fs::read_to_string(place.join("a.txt")).unwrap(), "one");
    }

    #[test]
    fn a_replaced_issue_is_moved_aside_and_kept() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("N_A");
        for text in ["one", "two", "three"] {
            let making = Making::begin(&place).unwrap();
            making.write("a.txt", text.as_bytes()).unwrap();
            making.finish(true).unwrap();
        }
        let read = |name: &str| fs::read_to_string(folder.path().join(name).join("a.txt")).unwrap();
        assert_eq!(read("N_A"), "three");
        assert_eq!(read("N_A_replaced_1"), "one");
        assert_eq!(read("N_A_replaced_2"), "two");
    }
}
