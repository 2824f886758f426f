//! `studbook check`.

use std::path::Path;

use serde::Serialize;

use crate::report::{Severity, ToldJson};
use crate::wording::Values;

use super::Exit;
use super::args::{Format, Overrides};
use super::load::load;
use super::output::{draw_all, exit_of, findings_json, print, print_json, say};

#[derive(Serialize)]
struct Checked {
    joints: usize,
    errors: usize,
    to_accept: usize,
    notes: usize,
    findings: Vec<ToldJson>,
}

/// Reads a job and says everything that is wrong with it.
pub(super) fn run(job: &Path, format: Format, overrides: &Overrides) -> Result<Exit, Exit> {
    let loaded = load(job, overrides)?;
    let count = |severity| {
        loaded
            .findings
            .iter()
            .filter(|finding| finding.severity == severity)
            .count()
    };
    let checked = Checked {
        joints: loaded.joints.len(),
        errors: count(Severity::Error),
        to_accept: count(Severity::Accept),
        notes: count(Severity::Note),
        findings: Vec::new(),
    };
    match format {
        Format::Json => print_json(&Checked {
            findings: findings_json(&loaded.findings, &loaded.sources, &loaded.wording),
            ..checked
        })?,
        Format::Text => {
            let mut text = draw_all(&loaded.findings, &loaded.sources, &loaded.wording);
            let values = Values::new()
                .with("joints", checked.joints)
                .with("errors", checked.errors)
                .with("accepts", checked.to_accept)
                .with("notes", checked.notes);
            text.push_str(&say(&loaded.wording, "cli.check_total", &values));
            print(&text)?;
        }
    }
    Ok(exit_of(&loaded.findings))
}
