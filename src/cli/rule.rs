//! `studbook rule`.

use serde::Serialize;

use crate::joint::limit_of;
use crate::report::{Severity, near};
use crate::rules::{self, Rule};
use crate::wording::{Values, Wording};

use super::Exit;
use super::args::Format;
use super::output::{print, print_json, say};
use super::overrides::english;

#[derive(Serialize)]
struct Told {
    id: &'static str,
    name: String,
    severity: Severity,
    condition: String,
    why: String,
    fix: String,
    source: String,
    limit: Option<String>,
}

/// Prints one rule, or all of them as a list.
pub(super) fn run(id: Option<&str>, format: Format) -> Result<Exit, Exit> {
    let wording = english();
    let Some(id) = id else {
        return list(format, &wording);
    };
    let Some(rule) = rules::named(id) else {
        let known: Vec<&str> = rules::all().map(|rule| rule.id).collect();
        let upper = id.to_uppercase();
        let values = Values::new().with("id", id).with(
            "near",
            near(&upper, known.iter().copied()).unwrap_or_default(),
        );
        return Err(Exit::Failed(say(&wording, "cli.no_rule", &values)));
    };
    let told = tell(rule, &wording);
    match format {
        Format::Json => print_json(&told)?,
        Format::Text => {
            let limit = told.limit.as_deref().unwrap_or_default();
            let values = Values::new()
                .with("id", told.id)
                .with("name", &told.name)
                .with("severity", severity(told.severity, &wording))
                .with("condition", &told.condition)
                .with("why", &told.why)
                .with("fix", &told.fix)
                .with("source", &told.source)
                .with("limit", limit);
            print(&say(&wording, "cli.rule_text", &values))?;
        }
    }
    Ok(Exit::Done)
}

fn list(format: Format, wording: &Wording) -> Result<Exit, Exit> {
    let all: Vec<Told> = rules::all().map(|rule| tell(rule, wording)).collect();
    match format {
        Format::Json => print_json(&all)?,
        Format::Text => {
            let lines: Vec<String> = all
                .iter()
                .map(|told| {
                    format!(
                        "{:4} {:6} {}",
                        told.id,
                        severity(told.severity, wording),
                        told.name
                    )
                })
                .collect();
            print(&lines.join("\n"))?;
        }
    }
    Ok(Exit::Done)
}

fn severity(severity: Severity, wording: &Wording) -> String {
    let key = match severity {
        Severity::Error => "severity.error",
        Severity::Accept => "severity.accept",
        Severity::Note => "severity.note",
    };
    wording.label(key).to_owned()
}

fn tell(rule: &Rule, wording: &Wording) -> Told {
    let part = |name: &str| wording.label(&format!("{}.{name}", rule.id)).to_owned();
    let limit = limit_of(rule.id).map(|limit| {
        let units = crate::units::Units::metric();
        let value = match limit.dimension {
            crate::units::Dimension::Ratio => {
                format!("{}\u{a0}%", crate::units::digits(limit.value * 100.0))
            }
            dimension => units.print_si(limit.value, dimension).joined(),
        };
        let source = wording.source(limit.source, limit.confirmed);
        format!("{value} ({source})")
    });
    Told {
        id: rule.id,
        name: part("name"),
        severity: rule.severity,
        condition: part("condition"),
        why: wording.outline(&format!("{}.why", rule.id)),
        fix: wording.outline(&format!("{}.fix", rule.id)),
        source: part("source"),
        limit,
    }
}
