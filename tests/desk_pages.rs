//! Desk documents as they are laid out: counts of pages, sizes of type and boxes, mandatory fields.

mod desk_sample;

use std::collections::BTreeMap;

use desk_sample as sample;
use studbook::document::desk::Part;
use studbook::typeset::{Typeset, typeset};

fn lay_out(parts: Vec<Part>, files: BTreeMap<String, Vec<u8>>) -> Typeset {
    let overrides = BTreeMap::new();
    typeset(&sample::request(&sample::document(parts), files, &overrides)).unwrap_or_else(|faults| {
        let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
        panic!("{}", faults.join("\n"))
    })
}

fn whole_pack() -> Vec<Part> {
    let register = sample::register(61);
    let mut parts = vec![
        Part::Cover(Box::new(sample::cover(false))),
        Part::Sections(sample::front(30)),
        Part::Sections(sample::inspection(12)),
        Part::Isolation(Box::new(sample::isolation(8))),
        Part::Note(Box::new(sample::note::note())),
    ];
    parts.extend(register.sheets(&sample::furniture("joint register", false), "register").into_iter().map(|sheet| Part::Register(Box::new(sheet))));
    parts.push(Part::Deviations(sample::deviations(3)));
    parts
}

/// Writes the samples where a person can look at them: `cargo test --test desk_pages -- --ignored`.
#[test]
#[ignore = "for the eye"]
#[expect(clippy::disallowed_methods, reason = "a person wants to see the files")]
fn write_samples() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    let write = |name: &str, parts: Vec<Part>| {
        let pdf = lay_out(parts, BTreeMap::new()).write_pdf().expect("a PDF");
        std::fs::write(folder.join(name), pdf).expect("written");
    };
    write("pack.pdf", whole_pack());
    write("draft.pdf", vec![Part::Cover(Box::new(sample::cover(true)))]);
    write("isolation.pdf", vec![Part::Isolation(Box::new(sample::isolation(15)))]);
}
