//! Page one: what is done and what not, who answers for what, law and rules, revisions, approval.

use crate::document::blocks::{Badge, Head};
use crate::document::build::pack::cover::{big_values, in_title_block};
use crate::document::build::pack::scope;
use crate::document::build::pack::totals::totals;
use crate::document::build::pack::works::Works;
use crate::document::build::{CardPages, Context, capital, register};
use crate::document::desk::{Cell, Column, Page, Paragraphs, Table};
use crate::document::pack::{COVER_ROW, Contents, ContentsEntry};
use crate::job::{Name, Regime, Roles};
use crate::joint::Who;
use crate::yaml::At;

use super::{Cover, own, regime, text, text_or_box};

/// Revisions that the cover names, the latest ones.
pub(super) const REVISIONS: usize = 3;

/// The parts that the contents name, by the labels of their sections.
const CONTENTS: [&str; 8] = [
    "risks",
    "steps",
    "emergency",
    "values",
    "people",
    "itp",
    "environment",
    "papers",
];

/// The cover without what a revision changes.
pub(super) fn cover(context: &Context<'_>, document: &str, works: &Works) -> Cover {
    let label = |key: &str| context.label(&format!("statement.cover.{key}"));
    let pack = context.pack();
    let title = text(pack.map(|pack| &pack.title)).unwrap_or_default();
    let subtitle = text(pack.and_then(|pack| pack.subtitle.as_ref())).unwrap_or_default();
    let totals = totals(context, &register(context, CardPages::Here), works);
    Cover {
        document_type: capital(document),
        totals: big_values(context, &totals),
        status: Badge {
            word: String::new(),
            outlined: false,
        },
        answers_label: label("answers"),
        answers: answers(context),
        scope: Paragraphs {
            head: Head {
                title: label("scope"),
                note: String::new(),
            },
            ..scope::scope(context)
        },
        excluded: Paragraphs {
            head: Head {
                title: label("excluded"),
                note: String::new(),
            },
            ..scope::excluded(context)
        },
        duties: duties(context),
        contents: contents(context),
        law: law(context),
        revisions: Table::default(),
        approvals: Vec::new(),
        title_block: in_title_block(context, document, &title, &subtitle),
        title,
        subtitle,
    }
}

/// The client's own words for its answer, or the usual four.
fn answers(context: &Context<'_>) -> Vec<String> {
    let given = own(context).and_then(|own| own.answers.as_ref()?.get());
    match given {
        Some(given) => given.iter().filter_map(|it| text(Some(it))).collect(),
        None => context.list("statement.answers", &crate::wording::Values::new()),
    }
}

/// One named person for each duty; a duty without a person is a box.
fn duties(context: &Context<'_>) -> Table {
    let label = |key: &str| context.label(&format!("statement.duties.{key}"));
    let mut table = Table::new(
        Head {
            title: label("title"),
            note: label("note"),
        },
        vec![Column::new("", 58.0), Column::new("", 50.0).strong()],
    );
    let roles = context.pack().and_then(|pack| pack.roles.as_ref()?.get());
    let of = |pick: fn(&Roles) -> &Option<At<Name>>| text(roles.and_then(|it| pick(it).as_ref()));
    let own = own(context);
    let named = [
        ("work", of(|it| &it.in_charge)),
        ("permits", of(|it| &it.permits)),
        ("isolation", of(|it| &it.isolation)),
        ("tools", of(|it| &it.tools)),
        ("calculation", of(|it| &it.calculation)),
        ("inspection", of(|it| &it.inspection)),
        ("first_aid", text(own.and_then(|it| it.first_aid.as_ref()))),
        (
            "concession",
            text(own.and_then(|it| it.concession.as_ref())),
        ),
        ("stop", Some(label("everybody"))),
    ];
    table.rows = named
        .into_iter()
        .map(|(duty, name)| {
            vec![
                Cell::Text(label(duty)),
                text_or_box(context, name, Who::Planner),
            ]
        })
        .collect();
    table.row_height = COVER_ROW;
    table
}

fn contents(context: &Context<'_>) -> Contents {
    Contents {
        head: Head {
            title: context.label("pack.cover.contents"),
            note: context.label("pack.cover.contents_note"),
        },
        entries: CONTENTS
            .iter()
            .map(|part| ContentsEntry {
                title: context.label(&format!("statement.contents.{part}")),
                page: Page::At((*part).to_owned()),
            })
            .collect(),
    }
}

/// The acts of the law, the rules of the job, and what holds where two of them differ.
fn law(context: &Context<'_>) -> Paragraphs {
    let regime = regime(context);
    let rules = text(context.pack().and_then(|pack| pack.regime.as_ref()));
    let is_said = regime == Regime::Site && rules.is_some();
    let acts = (!is_said).then(|| context.label(&format!("statement.law.{}", regime.word())));
    Paragraphs {
        head: Head {
            title: context.label("statement.cover.law"),
            note: String::new(),
        },
        texts: [acts, rules.map(|rules| format!("{}.", capital(&rules)))]
            .into_iter()
            .flatten()
            .chain([context.label("statement.cover.stricter")])
            .collect(),
    }
}

/// Prepared, checked, approved with the names of the revision, and the client.
pub(super) fn approvals(context: &Context<'_>) -> Vec<String> {
    let revision = context.revision();
    let named = [
        ("prepared", revision.and_then(|it| it.prepared.as_ref())),
        ("checked", revision.and_then(|it| it.checked.as_ref())),
        ("approved", revision.and_then(|it| it.approved.as_ref())),
    ];
    let signed = named.map(|(key, name)| {
        let label = context.label(&format!("title_block.{key}"));
        match text(name) {
            Some(name) => format!("{label} · {name}"),
            None => label,
        }
    });
    signed
        .into_iter()
        .chain([context.label("statement.cover.accepted")])
        .collect()
}
