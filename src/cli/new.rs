//! `studbook new`.

use std::fs::File;
use std::io::Write;
use std::path::Path;

use crate::wording::Values;

use super::Exit;
use super::output::{print, say, say_failed};
use super::overrides::english;

/// The starter job: it passes `check` as it stands and says in comments what to change.
const STARTER: &str = include_str!("../../jobs/starter.yaml");

/// Writes the starter job; never over an existing file.
pub(super) fn run(path: &Path) -> Result<Exit, Exit> {
    let made = File::create_new(path).and_then(|mut file| file.write_all(STARTER.as_bytes()));
    match made {
        Ok(()) => {
            let values = Values::new().with("file", path.display().to_string());
            print(&say(&english(), "cli.new.wrote", &values))?;
            Ok(Exit::Done)
        }
        Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {
            Err(say_failed("cli.exists", path, None))
        }
        Err(error) => Err(say_failed("cli.cannot_write", path, Some(&error))),
    }
}
