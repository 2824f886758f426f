//! The cover of a sample pack, with its findings.

use studbook::document::card::{Badge, Head};
use studbook::document::desk::{BigValue, Column, Page, Table};
use studbook::document::pack::{
    Approvals, CONTENTS_ON_COVER, COVER_ROW, Contents, ContentsEntry, Cover, Findings,
};

use super::{furniture, head, table, title_block};

fn total(value: &str, unit: &str, label: &str) -> BigValue {
    BigValue {
        label: label.into(),
        value: value.into(),
        unit: unit.into(),
        line: String::new(),
    }
}

pub(super) fn findings(draft: bool) -> Findings {
    let mut rows: Vec<[&str; 4]> = vec![
        [
            "T04",
            "accept",
            "HW-08 calibration ends 2027-08-15, job ends 2027-08-20",
            "tool store",
        ],
        [
            "Q05",
            "accept",
            "E-311-CH-01 needs 3 people from 06:00, crew 2 has 2",
            "planner",
        ],
        [
            "D14",
            "note",
            "bearing diameter of 12 joints is our default",
            "engineer",
        ],
    ];
    if draft {
        rows.truncate(2);
        rows.insert(
            0,
            [
                "L08",
                "error",
                "E-311-CH-02: load left in service 352 kN, needed 381 kN",
                "engineer: target or gasket",
            ],
        );
        rows.insert(
            1,
            [
                "I01",
                "error",
                "V-312-MW-01: no isolation named",
                "planner: key isolation",
            ],
        );
    }
    let widths = if draft {
        [12.0, 16.0, 96.0, 44.0]
    } else {
        [12.0, 16.0, 104.0, 44.0]
    };
    let [id, severity, text, who] = widths;
    let columns = vec![
        Column::new("", id).strong(),
        Column::new("", severity),
        Column::new("", text),
        Column::new("", who).right(),
    ];
    let rows: Vec<&[&str]> = rows.iter().map(|row| row.as_slice()).collect();
    let counts = if draft {
        "2 errors · 2 to accept · 1 note"
    } else {
        "0 errors · 2 to accept · 1 note"
    };
    Findings {
        head: head("Open findings", counts),
        stop: draft.then(|| "2 errors stand. Not for use on site.".to_owned()),
        table: low(table(Head::default(), columns, &rows)),
    }
}

/// The rows of a cover are low.
fn low(mut table: Table) -> Table {
    table.row_height = COVER_ROW;
    table.keep_first(6);
    table
}

pub(crate) fn cover(draft: bool) -> Cover {
    let entry = |title: &str, label: &str| ContentsEntry {
        title: title.into(),
        page: Page::At(label.into()),
    };
    Cover {
        furniture: furniture("work pack", draft),
        document_type: "Work pack".into(),
        title: "Effluent cooler, channel end".into(),
        subtitle: "Break, clean, new gaskets, tighten: from channel cover to pass plate, both channels".into(),
        totals: vec![
            total("14", "", "joints"),
            total("312", "", "studs"),
            total("22", "", "hold points"),
            total("2", "", "crews"),
            total("6", "", "shifts"),
            total("214", "h", "labour, typical"),
        ],
        totals_note: "Counts come from the register; its last row must agree.".into(),
        status: Badge {
            word: if draft { "DRAFT" } else { "FOR APPROVAL" }.into(),
            outlined: draft,
        },
        stamp: "client stamp, copy number".into(),
        equipment: low(table(
            head("Equipment", "joints · studs"),
            vec![
                Column::new("", 18.0).strong(),
                Column::new("", 40.0),
                Column::new("", 12.0).right(),
                Column::new("", 14.0).right(),
            ],
            &[
                &["E-310", "effluent cooler", "4", "96"],
                &["E-311", "feed preheater", "6", "144"],
                &["V-312", "separator, manways", "2", "40"],
                &["PR-02", "press, tie rods", "1", "4"],
                &["P-310", "charge pump, casing", "1", "28"],
            ],
        )),
        contents: Contents {
            head: head("Contents", "page"),
            entries: vec![
                entry("Scope, limits, assumptions", "scope"),
                entry("Index of joints", "index"),
                entry("Plan, permits, people, tools", "plan"),
                entry("Cautions that apply", "cautions"),
                entry("Inspection and test plan", "itp"),
                entry("Isolation sheets", "isolation-1"),
                entry("Calculation notes", "note-1"),
                entry("Register", "register"),
            ][..CONTENTS_ON_COVER].to_vec(),
        },
        findings: findings(draft),
        revisions: low(table(
            head("Revisions", ""),
            vec![
                Column::new("rev", 12.0).strong(),
                Column::new("date", 26.0),
                Column::new("what changed", 68.0),
                Column::new("prepared", 22.0),
                Column::new("checked", 24.0),
                Column::new("approved", 24.0),
            ],
            &[
                &["A", "2027-02-12", "first issue, for comment", "R. Olsen", "M. Tarrant", "–"],
                &["B", "2027-03-08", "paste by trial; 24 cards re-issued", "R. Olsen", "M. Tarrant", "K. Brandvik"],
                &["C", "2027-03-21", "V-312 added", "R. Olsen", "", ""],
            ],
        )),
        approvals: Approvals {
            head: head("Approvals", "name in capitals, signature, date YYYY-MM-DD"),
            labels: vec!["prepared".into(), "checked".into(), "approved".into()],
        },
        notes: vec![
            "Torque N·m · pressure bar · length mm · load kN. Printed copies are uncontrolled unless stamped; check the revision before use. Language en.".into(),
        ],
        title_block: title_block("work pack", "Effluent cooler, channel end", "Break, clean, tighten; 14 joints"),
    }
}
