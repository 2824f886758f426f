//! The command line: one place for each command and option. Help texts are the only English in Rust.

use std::path::PathBuf;

use clap::builder::{PossibleValue, PossibleValuesParser};
use clap::{Parser, Subcommand, ValueEnum};

use crate::document::DOCUMENTS;

/// From one YAML job to work packs, crew cards and calculation notes for industrial bolting.
///
/// The program plans; it does not authorise. Its paper adds to, and never replaces, law, site rules,
/// permits, the equipment maker's instructions and licensed practice.
#[derive(Debug, Parser)]
#[command(name = "studbook", version, max_term_width = 100)]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// How a command prints.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    Text,
    /// For other programs.
    Json,
}

/// The documents that `issue` may be held to, by their names.
fn documents() -> PossibleValuesParser {
    let named = DOCUMENTS.iter().map(|kind| match kind.about {
        Some(about) => PossibleValue::new(kind.name).help(about),
        None => PossibleValue::new(kind.name),
    });
    PossibleValuesParser::new(named)
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Write a commented starter job to fill in.
    ///
    /// Example: studbook new my-job.yaml
    New {
        /// The file to write; an existing file is never overwritten.
        file: PathBuf,
    },
    /// Read a job and say everything that is wrong with it.
    ///
    /// Exit code 0: nothing stands in the way. 1: a rule of severity error speaks, documents would
    /// say DRAFT. 2: the job cannot be read.
    ///
    /// Example: studbook check my-job.yaml
    Check {
        /// The job file.
        job: PathBuf,
        /// How to print.
        #[arg(long, value_enum, default_value = "text")]
        format: Format,
        /// The user's own templates.
        #[command(flatten)]
        overrides: Overrides,
    },
    /// Make the documents: work pack, cards, register, results.
    ///
    /// They appear in a folder NUMBER_REV beside the job, whole or not at all. An issued revision is
    /// never overwritten; with --replace the old folder is moved aside and kept.
    ///
    /// Example: studbook issue my-job.yaml --out packs
    Issue {
        /// The job file.
        job: PathBuf,
        /// The folder in which the folder NUMBER_REV is made; the job's own folder if absent.
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Make only this kind of document, as a draft; may be given more than once.
        #[arg(long, value_parser = documents(), value_name = "DOCUMENT")]
        only: Vec<String>,
        /// Make the documents for this joint only, as a draft; may be given more than once.
        #[arg(long, value_name = "TAG")]
        joint: Vec<String>,
        /// Make this volume of the crew cards alone, with the same bytes as a whole issue; that issue then
        /// takes it over. So several machines or processes can share a large job.
        #[arg(long, value_name = "NUMBER", conflicts_with_all = ["only", "joint"])]
        volume: Option<usize>,
        /// Mark every page as DRAFT, whatever the rules say.
        #[arg(long)]
        draft: bool,
        /// Move an existing issue of the same revision aside and make it again.
        #[arg(long)]
        replace: bool,
        /// The user's own templates.
        #[command(flatten)]
        overrides: Overrides,
    },
    /// Print the numbers of a job, or of one joint.
    ///
    /// Example: studbook show my-job.yaml E-310-CH-01
    Show {
        /// The job file.
        job: PathBuf,
        /// The joint; all joints as a table if absent.
        tag: Option<String>,
        /// How to print.
        #[arg(long, value_enum, default_value = "text")]
        format: Format,
        /// The user's own templates.
        #[command(flatten)]
        overrides: Overrides,
    },
    /// Print the calculation of one joint, formula by formula.
    ///
    /// Example: studbook explain my-job.yaml E-310-CH-01
    Explain {
        /// The job file.
        job: PathBuf,
        /// The joint.
        tag: String,
        /// How to print.
        #[arg(long, value_enum, default_value = "text")]
        format: Format,
        /// The user's own templates.
        #[command(flatten)]
        overrides: Overrides,
    },
    /// Print what a rule checks, why, and where its limit comes from.
    ///
    /// Example: studbook rule L01
    Rule {
        /// The rule; all rules as a list if absent.
        id: Option<String>,
        /// How to print.
        #[arg(long, value_enum, default_value = "text")]
        format: Format,
    },
    /// List the templates and texts, or write them out so that they can be changed.
    ///
    /// Example: studbook templates --write my-templates
    Templates {
        /// The folder to write them to; existing files are never overwritten.
        #[arg(long, value_name = "DIR")]
        write: Option<PathBuf>,
    },
}

/// Where the user's own templates and texts stand.
#[derive(Debug, Default, clap::Args)]
pub struct Overrides {
    /// A folder with layout/ and wording/ as `templates --write` makes them; its files win over ours.
    #[arg(long = "templates", value_name = "DIR")]
    pub folder: Option<PathBuf>,
    /// Let the job name files outside its own folder.
    #[arg(long)]
    pub allow_outside: bool,
}
