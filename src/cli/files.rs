//! Reading files: the one place where bytes come in.

use std::io::{self, Read};
use std::path::{Component, Path, PathBuf};

/// Largest file that is read at all.
const LARGEST: u64 = 64 << 20;

/// Reads a whole file; one that is larger than any job or picture may be is refused before it is
/// in memory, and a device that never ends is cut off.
#[expect(
    clippy::disallowed_methods,
    reason = "the command line is the place where files are read"
)]
pub(super) fn read(path: &Path) -> io::Result<Vec<u8>> {
    let file = std::fs::File::open(path)?;
    let mut bytes = Vec::new();
    file.take(LARGEST + 1).read_to_end(&mut bytes)?;
    if u64::try_from(bytes.len()).is_ok_and(|length| length > LARGEST) {
        return Err(io::Error::new(
            io::ErrorKind::FileTooLarge,
            "larger than 64 MiB",
        ));
    }
    Ok(bytes)
}

/// The path of a file that a job names, if it stays in the job's folder or may leave it.
pub(super) fn inside(base: &Path, named: &str, allow_outside: bool) -> Option<PathBuf> {
    let path = Path::new(named);
    let leaves = path.is_absolute()
        || path
            .components()
            .any(|part| matches!(part, Component::ParentDir | Component::Prefix(_)));
    if leaves && !allow_outside {
        return None;
    }
    let full = base.join(path);
    if allow_outside {
        return Some(full);
    }
    // A link inside the folder may still lead out of it.
    let folder = if base.as_os_str().is_empty() {
        Path::new(".")
    } else {
        base
    };
    match (full.canonicalize(), folder.canonicalize()) {
        (Ok(real), Ok(folder)) if !real.starts_with(&folder) => None,
        _ => Some(full),
    }
}
