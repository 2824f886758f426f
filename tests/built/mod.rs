//! Documents built from the example jobs and laid out, for tests of builders.

#![allow(dead_code, reason = "each test file uses a part of it")]
#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

pub(crate) mod bitmap;
pub(crate) mod cards;
pub(crate) mod checks;
pub(crate) mod flanges;
pub(crate) mod packs;
pub(crate) mod tensioners;
pub(crate) mod texts;

use std::collections::BTreeMap;
use std::path::Path;

use studbook::document::build::Context;
use studbook::document::desk::{Document, Part};
use studbook::job;
use studbook::methods::calculate;
use studbook::report::Sources;
use studbook::resolve;
use studbook::rules;
use studbook::typeset::{Date, Printed, Properties, Request, Typeset, typeset};
use studbook::wording::Wording;

/// The text of an example job.
#[allow(clippy::disallowed_methods, reason = "the test reads an example")]
pub(crate) fn example(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("jobs")
        .join(name);
    std::fs::read_to_string(path).expect("the example is there")
}

/// Works a job out and hands it to a test.
pub(crate) fn with_job<T>(name: &str, text: &str, then: impl FnOnce(&Context<'_>) -> T) -> T {
    let mut sources = Sources::default();
    let (job, findings) = job::open(name, text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("{name}: {findings:?}"));
    let (joints, findings) = resolve::resolve(&job);
    assert!(findings.is_empty(), "{name}: {findings:?}");
    let plan = calculate(&joints);
    let findings = rules::check(&rules::Subject::new(&job, &joints, &plan, &[]), Vec::new());
    let wording = Wording::embedded("en").expect("English is embedded");
    let context = Context::new(&job, &joints, &plan, &findings, &wording)
        .with_sources(&sources)
        .with_draft(false);
    let result = then(&context);
    assert_eq!(context.faults(), [], "{name}");
    result
}

/// Lays a part out as a document of its own.
pub(crate) fn lay_out(part: Part, files: BTreeMap<String, Vec<u8>>) -> Typeset {
    lay_out_document(&Document::new("en", vec![part]), files)
}

/// Lays a document out.
pub(crate) fn lay_out_document(document: &Document, files: BTreeMap<String, Vec<u8>>) -> Typeset {
    let data = serde_json::to_vec(document).expect("documents are plain data");
    lay_out_with("pack.typ", data, files)
}

/// Lays out the data of a document by its template.
pub(crate) fn lay_out_data(template: &str, data: Vec<u8>) -> Typeset {
    lay_out_with(template, data, BTreeMap::new())
}

fn lay_out_with(template: &str, data: Vec<u8>, files: BTreeMap<String, Vec<u8>>) -> Typeset {
    let overrides = BTreeMap::new();
    let request = Request {
        template,
        data,
        files,
        overrides: &overrides,
        properties: properties("pack"),
        tagged: true,
    };
    typeset(&request).unwrap_or_else(|faults| {
        let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
        panic!("{}", faults.join("\n"))
    })
}

/// What a file says of itself.
pub(crate) fn properties(part: &str) -> Properties {
    Properties {
        title: "HL-31-WP-007".into(),
        author: vec!["R. Olsen".into()],
        keywords: vec!["HL-31-WP-007".into(), "revision B".into()],
        date: Date {
            year: 2027,
            month: 3,
            day: 8,
        },
        ident: format!("HL-31-WP-007/B/{part}"),
    }
}

/// The words of a page with one plain space between them.
pub(crate) fn text_of(pages: &Typeset, page: usize) -> String {
    let words = pages.text(page).replace('\u{200b}', "");
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The words of all pages.
pub(crate) fn all_text(pages: &Typeset) -> String {
    (1..=pages.page_count())
        .map(|page| text_of(pages, page))
        .collect::<Vec<_>>()
        .join(" ")
}

/// Upright texts that stand in one another. Indices and exponents, which alone are below 8 pt, are
/// meant to stand under the arm of their letter.
pub(crate) fn collisions(pages: &Typeset) -> Vec<String> {
    let mut found = Vec::new();
    for page in 1..=pages.page_count() {
        let texts: Vec<&Printed> = pages
            .texts(page)
            .into_iter()
            .filter(|text| text.upright && text.size > 7.9 && !text.text.trim().is_empty())
            .collect();
        for (index, text) in texts.iter().enumerate() {
            for other in &texts[..index] {
                if text.region.overlaps(&other.region, 0.5) {
                    found.push(format!("page {page}: {:?} in {:?}", text.text, other.text));
                }
            }
        }
    }
    found
}

/// The complaints of [`collisions`] or [`outside`] about some pages only.
pub(crate) fn on_pages(complaints: Vec<String>, pages: impl Fn(usize) -> bool) -> Vec<String> {
    let page = |text: &str| text.strip_prefix("page ")?.split(':').next()?.parse().ok();
    complaints
        .into_iter()
        .filter(|text| page(text).is_none_or(&pages))
        .collect()
}

/// Everything outside the edges: 20 mm for binding at the left, 3 mm that no printer reaches elsewhere.
pub(crate) fn outside(pages: &Typeset) -> Vec<String> {
    let texts = (1..=pages.page_count()).flat_map(|page| pages.texts(page));
    let texts = texts.filter(|text| text.upright);
    let all = texts
        .map(|text| (format!("{:?}", text.text), text.region))
        .chain(pages.shapes().iter().map(|it| ("a shape".to_owned(), *it)));
    all.filter(|(_, it)| {
        let (width, height) = pages.page_size(it.page);
        let right = if width > height { 11.0 } else { 13.0 };
        it.x < 19.3
            || it.x + it.width > width - right
            || it.y < 3.0
            || it.y + it.height > height - 3.0
    })
    .map(|(name, it)| format!("page {}: {name} at {it:?}", it.page))
    .collect()
}

/// Writes pages where a person can look at them: in the folder that `STUDBOOK_LOOK` names, if any.
#[allow(clippy::disallowed_methods, reason = "a person wants to see the files")]
pub(crate) fn show(pages: &Typeset, name: &str) {
    if let Some(folder) = std::env::var_os("STUDBOOK_LOOK") {
        let bytes = pages.write_pdf().expect("a PDF");
        std::fs::write(Path::new(&folder).join(name), bytes).expect("written");
    }
}
