//! The command line: the only module that touches files, terminal, environment and clock.

mod args;
mod check;
mod data;
mod explain;
mod files;
mod interrupt;
mod issue;
mod load;
mod new;
mod output;
mod overrides;
mod pictures;
mod piece;
mod pieces;
mod progress;
mod rule;
mod show;
mod store;
mod templates;
mod volumes;

use std::panic::resume_unwind;
use std::thread;

use clap::Parser;

use crate::typeset::deep_thread;

pub use args::{Args, Command, Format};

/// How a run ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Exit {
    /// Done; nothing stands in the way.
    Done,
    /// Done, but a rule of severity error speaks; documents say DRAFT, and why.
    RuleBroken,
    /// The job cannot be read as a job; nothing was written. The findings have been printed.
    BadJob,
    /// Usage or I/O; nothing was written. The text says what happened and what to do.
    Failed(String),
}

impl Exit {
    /// 0, 1 or 2.
    pub fn code(&self) -> u8 {
        match self {
            Self::Done => 0,
            Self::RuleBroken => 1,
            Self::BadJob | Self::Failed(_) => 2,
        }
    }
}

/// Runs the program with the arguments of its process and returns its exit code.
pub fn main() -> u8 {
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(error) => {
            // Help and version are no errors; a mistyped command is.
            let code = if error.use_stderr() { 2 } else { 0 };
            let _ = error.print();
            return code;
        }
    };
    let exit = on_deep_thread(|| run(args.command));
    if let Exit::Failed(text) = &exit {
        output::complain(text);
    }
    exit.code()
}

/// Works on one thread from reading to the last volume of cards, with the stack that the typesetter needs: what one
/// stage gives back of its memory the next one can use. Threads keep theirs apart.
fn on_deep_thread(work: impl FnOnce() -> Exit + Send) -> Exit {
    thread::scope(|scope| match deep_thread(scope, work) {
        Ok(thread) => thread.join().unwrap_or_else(|panic| resume_unwind(panic)),
        Err(error) => Exit::Failed(error.to_string()),
    })
}

/// Runs one command.
fn run(command: Command) -> Exit {
    let result = match command {
        Command::New { file } => new::run(&file),
        Command::Check {
            job,
            format,
            overrides,
        } => check::run(&job, format, &overrides),
        Command::Issue {
            job,
            out,
            only,
            joint,
            volume,
            draft,
            replace,
            overrides,
        } => {
            let wish = issue::Wish {
                out,
                only,
                joints: joint,
                volume,
                draft,
                replace,
            };
            issue::run(&job, &wish, &overrides)
        }
        Command::Show {
            job,
            tag,
            format,
            overrides,
        } => show::run(&job, tag.as_deref(), format, &overrides),
        Command::Explain {
            job,
            tag,
            format,
            overrides,
        } => explain::run(&job, &tag, format, &overrides),
        Command::Rule { id, format } => rule::run(id.as_deref(), format),
        Command::Templates { write } => templates::run(write.as_deref()),
    };
    result.unwrap_or_else(|exit| exit)
}
