//! Lists the templates that the program embeds: what stands in the folders is in the program, without a list by hand.

#![allow(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a build script reads the sources and tells the build tool by printing"
)]

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let templates = Path::new(&variable("CARGO_MANIFEST_DIR")?).join("templates");
    println!("cargo::rerun-if-changed={}", templates.display());
    let out = PathBuf::from(variable("OUT_DIR")?);
    fs::write(out.join("layout.rs"), files(&templates.join("layout"))?)?;
    let mut languages = String::from("&[");
    for folder in sorted(&templates.join("wording"))? {
        let _ = writeln!(languages, "({:?}, {}),", name(&folder), files(&folder)?);
    }
    languages.push(']');
    fs::write(out.join("wording.rs"), languages)
}

/// `&[("name", include_str!("path")), ...]` for the files of a folder, by name.
fn files(folder: &Path) -> io::Result<String> {
    let mut list = String::from("&[");
    for path in sorted(folder)? {
        let _ = writeln!(list, "({:?}, include_str!({:?})),", name(&path), path);
    }
    list.push(']');
    Ok(list)
}

/// What stands in a folder, by name, so that every build embeds the same in the same order.
fn sorted(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let entries = fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path()));
    let mut paths = entries.collect::<io::Result<Vec<_>>>()?;
    paths.retain(|path| !name(path).starts_with('.'));
    paths.sort();
    Ok(paths)
}

fn name(path: &Path) -> String {
    path.file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned()
}

fn variable(name: &str) -> io::Result<String> {
    env::var(name).map_err(io::Error::other)
}
