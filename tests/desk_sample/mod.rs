//! Desk documents of a made-up plant, for tests of the layout: every part can be made short or long.

use std::collections::BTreeMap;
use studbook::document::card::{Head, Running};
use studbook::document::desk::{
    Cell, Column, Document, Field, Furniture, PageWords, Part, Table, TitleBlock,
};
use studbook::typeset::{Date, Overrides, Properties, Request};

mod cover;
mod front;
mod isolation;
pub(crate) mod note;
mod sheets;

#[allow(unused_imports, reason = "not every test wants every part")]
pub(crate) use cover::cover;
#[allow(unused_imports, reason = "not every test wants every part")]
pub(crate) use front::{cautions, front, index, inspection, panels};
#[allow(unused_imports, reason = "not every test wants every part")]
pub(crate) use isolation::isolation;
#[allow(unused_imports, reason = "not every test wants every part")]
pub(crate) use sheets::{deviations, photos, register};

pub(crate) fn head(title: &str, note: &str) -> Head {
    Head {
        title: title.into(),
        note: note.into(),
    }
}

pub(crate) fn pages(before: &str, after: &str) -> PageWords {
    PageWords {
        before: before.into(),
        between: " of ".into(),
        after: after.into(),
    }
}

pub(crate) fn furniture(kind: &str, draft: bool) -> Furniture {
    let status = if draft { "DRAFT" } else { "for approval" };
    Furniture {
        running: Running {
            left: format!("Harrow Lake Works · unit 31 · {kind}"),
            right: "HL-31-WP-007 revision B".into(),
        },
        number: format!("HL-31-WP-007 · revision B · {status}"),
        code_label: "content".into(),
        code: "3A99-14D0".into(),
        own_pages: None,
        pages: pages("page ", ""),
        draft: draft.then(|| "DRAFT".to_owned()),
    }
}

pub(crate) fn title_block(kind: &str, title: &str, subtitle: &str) -> TitleBlock {
    TitleBlock {
        department: Field::new("responsible department", "Bolting, unit 31"),
        reference: Field::new("technical reference", "K. Brandvik"),
        document_type: Field::new("document type", kind),
        prepared: Field::new("prepared", "R. Olsen"),
        checked: Field::new("checked", "M. Tarrant"),
        approved: Field::new("approved", ""),
        title: Field::new("title, supplementary title", title),
        subtitle: subtitle.into(),
        owner: Field::new("owner", "Harrow Lake Works"),
        number: Field::new("identification number", "HL-31-WP-007"),
        revision: Field::new("rev", "B"),
        date: Field::new("date of issue", "2027-03-08"),
    }
}

pub(crate) fn table(head: Head, columns: Vec<Column>, rows: &[&[&str]]) -> Table {
    let mut table = Table::new(head, columns);
    let cells = rows
        .iter()
        .map(|row| row.iter().map(|text| Cell::text(*text)).collect());
    table.rows = cells.collect();
    table
}

pub(crate) fn document(parts: Vec<Part>) -> Document {
    Document::new("en", parts)
}

pub(crate) fn request<'a>(
    document: &Document,
    files: BTreeMap<String, Vec<u8>>,
    overrides: &'a Overrides,
) -> Request<'a> {
    Request {
        template: "pack.typ",
        data: serde_json::to_vec(document).expect("documents are plain data"),
        files,
        overrides,
        properties: Properties {
            title: "HL-31-WP-007 Effluent cooler, channel end".into(),
            author: vec!["R. Olsen".into()],
            keywords: vec!["HL-31-WP-007".into(), "revision B".into()],
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: "HL-31-WP-007/B/pack".into(),
        },
        tagged: true,
    }
}
