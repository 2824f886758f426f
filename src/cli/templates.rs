//! `studbook templates`.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;

use crate::document::geometry;
use crate::typeset;
use crate::wording::{self, Values};

use super::Exit;
use super::output::{print, say, say_failed};
use super::overrides::english;

/// Lists the embedded templates and texts, or writes them out; never over an existing file.
pub(super) fn run(folder: Option<&Path>) -> Result<Exit, Exit> {
    let layouts = typeset::embedded()
        .iter()
        .map(|(name, text)| (format!("layout/{name}"), *text));
    let texts = wording::embedded_files()
        .map(|(language, name, text)| (format!("wording/{language}/{name}"), text));
    let measures = (geometry::FILE.to_owned(), geometry::TEXT);
    let all: Vec<(String, &str)> = layouts.chain(texts).chain([measures]).collect();
    let Some(folder) = folder else {
        let names: Vec<&str> = all.iter().map(|(name, _)| name.as_str()).collect();
        print(&names.join("\n"))?;
        return Ok(Exit::Done);
    };
    if let Some((name, _)) = all.iter().find(|(name, _)| folder.join(name).exists()) {
        return Err(say_failed("cli.exists", &folder.join(name), None));
    }
    for (name, text) in &all {
        let path = folder.join(name);
        let parent = path.parent().unwrap_or(folder);
        let written = fs::create_dir_all(parent)
            .and_then(|()| File::create_new(&path))
            .and_then(|mut file| file.write_all(text.as_bytes()));
        written.map_err(|error| say_failed("cli.cannot_write", &path, Some(&error)))?;
    }
    let values = Values::new()
        .with("count", all.len())
        .with("folder", folder.display().to_string());
    print(&say(&english(), "cli.templates.wrote", &values))?;
    Ok(Exit::Done)
}
