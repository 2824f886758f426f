//! A program run in a folder of its own.

#![allow(dead_code, reason = "each test file uses a part of it")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A temporary folder with the program to run in it.
pub struct Bench {
    folder: tempfile::TempDir,
}

/// What a run gave.
pub struct Run {
    /// Exit code; `None` if a signal ended it.
    pub code: Option<i32>,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Bench {
    pub fn new() -> Self {
        Self {
            folder: tempfile::tempdir().unwrap(),
        }
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Writes a file into the folder.
    pub fn file(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, bytes).unwrap();
        path
    }

    /// Copies an example job and what it names.
    pub fn example(&self, name: &str) -> PathBuf {
        let photos = self.path().join("photos");
        std::fs::create_dir_all(&photos).unwrap();
        for photo in std::fs::read_dir(repository().join("jobs/photos")).unwrap() {
            let photo = photo.unwrap();
            std::fs::copy(photo.path(), photos.join(photo.file_name())).unwrap();
        }
        self.file(
            name,
            std::fs::read(repository().join("jobs").join(name)).unwrap(),
        )
    }

    /// A command of the program in this folder.
    pub fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_studbook"));
        command
            .args(args)
            .current_dir(self.path())
            .env("NO_COLOR", "1");
        command
    }

    pub fn run(&self, args: &[&str]) -> Run {
        self.command(args).output().unwrap().into()
    }

    /// Names of everything in the folder, hidden ones too, without the folder of photos.
    pub fn names(&self) -> Vec<String> {
        let mut names: Vec<String> = std::fs::read_dir(self.path())
            .unwrap()
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
            .filter(|name| name != "photos")
            .collect();
        names.sort();
        names
    }
}

impl From<Output> for Run {
    fn from(output: Output) -> Self {
        Self {
            code: output.status.code(),
            out: String::from_utf8_lossy(&output.stdout).into_owned(),
            err: String::from_utf8_lossy(&output.stderr).into_owned(),
        }
    }
}

/// The folder of the project.
pub fn repository() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// All example jobs, by name.
pub fn example_jobs() -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(repository().join("jobs"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .filter(|name| name.ends_with(".yaml"))
        .collect();
    names.sort();
    names
}
