//! The findings: all of them behind the cover, the gravest on it.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::pack::{Block, COVER_ROW, Findings, Section};
use crate::document::width::one_line;
use crate::report::{Finding, Severity};
use crate::wording::Values;

use super::super::context::Context;
use super::itp::members;

/// Rows of the table of findings; a job with more is told so, and `check` lists them all.
const MOST_ROWS: usize = 1000;

/// Findings that say the same of several joints.
struct Said<'a> {
    first: &'a Finding,
    title: String,
    fix: String,
    joints: Vec<&'a str>,
}

impl Said<'_> {
    fn accepted_by(&self) -> Option<&str> {
        self.first.values.get("accepted_by")
    }
}

/// All findings in words, the gravest first, those that read the same once.
fn said<'a>(context: &Context<'a>) -> Vec<Said<'a>> {
    let mut findings: Vec<&Finding> = context.findings.iter().collect();
    findings.sort_by(|a, b| (a.severity, a.id).cmp(&(b.severity, b.id)));
    let mut said: Vec<Said<'a>> = Vec::new();
    for finding in findings {
        let mut bare = finding.clone();
        bare.values.remove("accepted_by");
        let told = context.wording.tell(&bare);
        let alike = said
            .iter_mut()
            .rev()
            .take_while(|known| known.first.id == finding.id)
            .find(|known| {
                known.title == told.title
                    && known.fix == told.fix
                    && known.first.severity == finding.severity
                    && known.first.values.get("accepted_by") == finding.values.get("accepted_by")
            });
        match alike {
            Some(known) => known.joints.extend(finding.joint.as_deref()),
            None => said.push(Said {
                first: finding,
                title: told.title,
                fix: told.fix,
                joints: finding.joint.as_deref().into_iter().collect(),
            }),
        }
    }
    said
}

fn severity(context: &Context<'_>, severity: Severity) -> String {
    context.label(match severity {
        Severity::Error => "severity.error",
        Severity::Accept => "severity.accept",
        Severity::Note => "severity.note",
    })
}

fn count(context: &Context<'_>, severity: Severity) -> usize {
    context
        .findings
        .iter()
        .filter(|finding| finding.severity == severity)
        .count()
}

fn counts(context: &Context<'_>) -> String {
    let values = Values::new()
        .with("errors", count(context, Severity::Error))
        .with("accepts", count(context, Severity::Accept))
        .with("notes", count(context, Severity::Note));
    context.say("pack.cover.findings_count", &values)
}

/// The section with all findings in full.
pub(super) fn section(context: &Context<'_>) -> Section {
    let label = |key: &str| context.label(&format!("pack.findings.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("id"), 11.0).strong(),
            Column::new(label("severity"), 14.0),
            Column::new(label("joint"), 31.0),
            Column::new(label("text"), 52.0),
            Column::new(label("fix"), 44.0),
            Column::new(label("accepted"), 24.0),
        ],
    );
    table.none = label("none");
    let said = said(context);
    table.rows = said.iter().map(|said| row(context, said)).collect();
    let left_out = table.keep_first(MOST_ROWS);
    if left_out > 0 {
        table
            .notes
            .push(context.say1("pack.findings.more", "count", left_out));
    }
    Section {
        label: "findings".to_owned(),
        title: label("title"),
        line: format!("{} · {}", counts(context), label("note")),
        new_page: false,
        blocks: vec![Block::Table(table)],
    }
}

fn row(context: &Context<'_>, said: &Said<'_>) -> Vec<Cell> {
    let who = format!("{}.who", said.first.id);
    let accepted = match (said.first.severity, said.accepted_by()) {
        (_, Some(by)) => Cell::text(by),
        (Severity::Accept, None) => Cell::Box(String::new()),
        _ => Cell::text(""),
    };
    vec![
        Cell::text(said.first.id),
        Cell::text(severity(context, said.first.severity)),
        Cell::text(members(context, &said.joints)),
        Cell::text(said.title.clone()),
        if context.wording.has(&who) {
            Cell::Two([said.fix.clone(), context.label(&who)])
        } else {
            Cell::text(said.fix.clone())
        },
        accepted,
    ]
}

/// The findings as the cover has them. While the content gets its code the sentence that stops the
/// work is left out (`sealed` is false). At most `most` findings are named.
pub(super) fn on_cover(context: &Context<'_>, sealed: bool, most: usize) -> Findings {
    let errors = count(context, Severity::Error);
    let stops = sealed && errors > 0;
    let text = if stops { 110.0 } else { 118.0 };
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new("", 14.0).strong(),
            Column::new("", 16.0),
            Column::new("", text),
            Column::new("", 28.0).right(),
        ],
    );
    table.row_height = COVER_ROW;
    table.none = context.label("pack.cover.findings_none");
    let said = said(context);
    table.rows = said
        .iter()
        .map(|said| {
            let who = format!("{}.who", said.first.id);
            let tag = members(context, &said.joints);
            let title = match said.joints.first() {
                Some(first) if !said.title.contains(first) => format!("{tag}: {}", said.title),
                _ => said.title.clone(),
            };
            vec![
                Cell::text(said.first.id),
                Cell::text(severity(context, said.first.severity)),
                Cell::text(one_line(&title, 9.5, text - 2.4)),
                Cell::text(if context.wording.has(&who) {
                    context.label(&who)
                } else {
                    String::new()
                }),
            ]
        })
        .collect();
    let left_out = table.keep_first(most);
    let more = context.say1("pack.cover.findings_more", "count", left_out);
    let note = if left_out > 0 {
        format!("{} · {more}", counts(context))
    } else {
        counts(context)
    };
    Findings {
        head: Head {
            title: context.label("pack.cover.findings"),
            note,
        },
        stop: stops.then(|| context.say1("pack.cover.stop", "errors", errors)),
        table,
    }
}
