//! Printing: a broken pipe is a quiet end, colour only on a terminal, sentences from the wording.

use std::io::{self, IsTerminal, Write};
use std::path::Path;

use crate::report::{Finding, Severity, Sources, Stage, Style, Told, ToldJson, Words, cap, draw};
use crate::wording::{Values, Wording};

use super::Exit;
use super::overrides::english;

/// Prints a text to the standard output. A reader that has gone away is no error.
pub(super) fn print(text: &str) -> Result<(), Exit> {
    let mut out = io::stdout().lock();
    let written = out.write_all(text.as_bytes()).and_then(|()| {
        if text.ends_with('\n') {
            Ok(())
        } else {
            out.write_all(b"\n")
        }
    });
    match written.and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            Err(Exit::Failed(error.to_string()))
        }
        _ => Ok(()),
    }
}

/// Prints a text to the standard error; if even that fails there is nobody left to tell.
pub(super) fn complain(text: &str) {
    let _ = writeln!(io::stderr().lock(), "{text}");
}

/// Prints a value as indented JSON.
pub(super) fn print_json(value: &impl serde::Serialize) -> Result<(), Exit> {
    let text =
        serde_json::to_string_pretty(value).map_err(|error| Exit::Failed(error.to_string()))?;
    print(&text)
}

/// The sentences of a finding, with the labels of its other places.
pub(super) fn tell(finding: &Finding, wording: &Wording) -> Told {
    let told = wording.tell(finding);
    let labels = finding
        .related
        .iter()
        .map(|(_, key)| wording.place_label(key).to_owned())
        .collect();
    Told {
        title: told.title,
        why: told.why,
        fix: told.fix,
        labels,
    }
}

fn words(wording: &Wording) -> Words {
    let word = |name: &str| wording.label(&format!("severity.{name}")).to_owned();
    Words {
        error: word("error"),
        accept: word("accept"),
        note: word("note"),
        why: wording.label("severity.why").to_owned(),
        fix: wording.label("severity.fix").to_owned(),
    }
}

/// Draws findings for a terminal or a pipe, at most a hundred, and says how many more there are.
pub(super) fn draw_all(findings: &[Finding], sources: &Sources, wording: &Wording) -> String {
    let colour = io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none();
    let style = if colour { Style::Styled } else { Style::Plain };
    let words = words(wording);
    let (shown, more) = cap(findings);
    let mut text = String::new();
    for finding in shown {
        text.push_str(&draw(
            finding,
            &tell(finding, wording),
            &words,
            sources,
            style,
        ));
        text.push_str("\n\n");
    }
    if more > 0 {
        text.push_str(&say(
            wording,
            "cli.check.more",
            &Values::new().with("count", more),
        ));
        text.push('\n');
    }
    text
}

/// Findings for other programs.
pub(super) fn findings_json(
    findings: &[Finding],
    sources: &Sources,
    wording: &Wording,
) -> Vec<ToldJson> {
    findings
        .iter()
        .map(|finding| ToldJson::new(finding, &tell(finding, wording), sources))
        .collect()
}

/// A sentence of the wording; a fault of the wording is shown rather than hidden.
pub(super) fn say(wording: &Wording, id: &str, values: &Values) -> String {
    wording
        .say(id, values)
        .unwrap_or_else(|error| error.to_string())
}

/// The exit of a file that cannot be used, in words.
pub(super) fn say_failed(id: &str, path: &Path, error: Option<&io::Error>) -> Exit {
    let values = Values::new()
        .with("file", path.display().to_string())
        .with("reason", error.map(ToString::to_string).unwrap_or_default());
    Exit::Failed(say(&english(), id, &values))
}

/// The exit code that findings ask for.
pub(super) fn exit_of(findings: &[Finding]) -> Exit {
    if findings.iter().any(|finding| finding.stage == Stage::Job) {
        Exit::BadJob
    } else if findings
        .iter()
        .any(|finding| finding.severity == Severity::Error)
    {
        Exit::RuleBroken
    } else {
        Exit::Done
    }
}
