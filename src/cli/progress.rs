//! A line on the terminal while an issue takes longer than a second; nothing in a pipe.

use std::sync::Mutex;
use std::sync::PoisonError;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use crate::wording::{Values, Wording};

use super::output::say;

/// An issue that is quicker than this shows no bar.
const QUIET: Duration = Duration::from_secs(1);

/// What is drawn: a bar, then the words.
const LOOK: &str = "[{bar:30}] {msg}";

/// The bar of one issue.
pub(super) struct Progress<'a> {
    wording: &'a Wording,
    begun: Instant,
    total: usize,
    state: Mutex<State>,
}

/// How far the issue is.
struct State {
    done: usize,
    bar: Option<ProgressBar>,
}

impl<'a> Progress<'a> {
    /// Begins to count `total` files.
    #[expect(
        clippy::disallowed_methods,
        reason = "the command line may look at a clock: how long somebody waits is not of the job"
    )]
    pub(super) fn new(wording: &'a Wording, total: usize) -> Self {
        Self {
            wording,
            begun: Instant::now(),
            total,
            state: Mutex::new(State { done: 0, bar: None }),
        }
    }

    /// One more file is about to be made.
    pub(super) fn begin(&self, name: &str) {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        if self.begun.elapsed() < QUIET {
            return;
        }
        let (done, words) = (state.done, self.words(state.done, name));
        let bar = state.bar.get_or_insert_with(|| bar(self.total));
        bar.set_position(u64::try_from(done).unwrap_or(u64::MAX));
        bar.set_message(words);
    }

    /// One file is made.
    pub(super) fn done(&self) {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        state.done += 1;
        let done = u64::try_from(state.done).unwrap_or(u64::MAX);
        if let Some(bar) = &state.bar {
            bar.set_position(done);
        }
    }

    fn words(&self, done: usize, name: &str) -> String {
        let values = Values::new()
            .with("done", done + 1)
            .with("total", self.total)
            .with("name", name);
        say(self.wording, "cli.progress.making", &values)
    }
}

impl Drop for Progress<'_> {
    fn drop(&mut self) {
        let state = self.state.get_mut().unwrap_or_else(PoisonError::into_inner);
        if let Some(bar) = &state.bar {
            bar.finish_and_clear();
        }
    }
}

/// Draws on the standard error, if that is a terminal.
fn bar(total: usize) -> ProgressBar {
    let total = u64::try_from(total).unwrap_or(u64::MAX);
    let bar = ProgressBar::with_draw_target(Some(total), ProgressDrawTarget::stderr());
    match ProgressStyle::with_template(LOOK) {
        Ok(style) => bar.with_style(style.progress_chars("#> ")),
        Err(_) => bar,
    }
}
