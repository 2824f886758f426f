//! Ctrl-C in the middle of an issue: what was being made is cleared away, then the program ends.

use std::fs;
use std::path::PathBuf;
use std::process;
use std::sync::{Mutex, MutexGuard, Once, PoisonError};

use super::output::complain;
use super::overrides::english;

/// The exit code of a run that was interrupted, as shells count it: 128 and the number of the signal.
const INTERRUPTED: i32 = 130;

/// How often clearing is tried again: a thread may still be writing one of its files into the folder.
const TRIES: usize = 50;

/// The hidden folder of the issue in the making.
static MAKING: Mutex<Option<PathBuf>> = Mutex::new(None);

/// Remembers the hidden folder, and listens from now on.
pub(super) fn watch(hidden: PathBuf) {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        // Where no handler can be set the next run of the same issue clears up.
        let _ = ctrlc::set_handler(end);
    });
    *hold() = Some(hidden);
}

/// Keeps an interruption waiting while folders change their names; put `None` in when there is
/// nothing left to clear.
pub(super) fn hold() -> MutexGuard<'static, Option<PathBuf>> {
    MAKING.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Clears up and ends the program. The lock is kept to the end, so that nothing is renamed any more.
fn end() {
    let making = hold();
    if let Some(hidden) = making.as_ref() {
        for _ in 0..TRIES {
            if fs::remove_dir_all(hidden).is_ok() || !hidden.exists() {
                break;
            }
        }
        complain(english().label("cli.issue.interrupted"));
    }
    process::exit(INTERRUPTED);
}
