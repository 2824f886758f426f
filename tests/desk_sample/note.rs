//! A calculation note with formulas of every shape.

pub(crate) mod plan;

use studbook::document::desk::{BigValue, Column, Paragraphs};
use studbook::document::note::{
    FormulaStep, FormulaSteps, HandCheck, Input, Inputs, LimitRow, Limits, Note, Sign, Span,
    StepGroup, chart,
};
use studbook::formula::{Expression, Formula, Symbol, number, pi, sqrt};
use studbook::units::{Dimension, Printed};

use super::{furniture, head, pages, table, title_block};

const F: Symbol = Symbol::new("F", Dimension::Force, "load");
const P: Symbol = Symbol::new("P", Dimension::Length, "pitch");
const D: Symbol = Symbol::new("d", Dimension::Length, "diameter");
const D2: Symbol = Symbol::new("d2", Dimension::Length, "pitch diameter");
const DB: Symbol = Symbol::new("D_b", Dimension::Length, "bearing diameter");
const AS: Symbol = Symbol::new("A_s", Dimension::Area, "stress area");
const MU_TH: Symbol = Symbol::new("µ_th", Dimension::Ratio, "thread friction");
const MU_B: Symbol = Symbol::new("µ_b", Dimension::Ratio, "bearing friction");
const T: Symbol = Symbol::new("T", Dimension::Torque, "torque");
const S: Symbol = Symbol::new("σ", Dimension::Stress, "stress");
const TAU: Symbol = Symbol::new("τ", Dimension::Stress, "torsion");
const SV: Symbol = Symbol::new("σ_v", Dimension::Stress, "equivalent stress");

fn printed(value: &str, unit: &str) -> Printed {
    Printed {
        value: value.into(),
        unit: unit.into(),
    }
}

fn step(
    at: &str,
    name: &str,
    formula: &Formula,
    numbers: &[Printed],
    result: (&str, &str),
) -> FormulaStep {
    FormulaStep {
        number: at.into(),
        name: name.into(),
        symbol: formula.symbol.node(),
        formula: formula.tree(),
        numbers: (!numbers.is_empty()).then(|| formula.tree_with_numbers(numbers)),
        result: result.0.into(),
        unit: result.1.into(),
        remark: String::new(),
        source: formula.source.into(),
        alt: format!("{} = {}", formula.symbol.plain(), formula.text()),
    }
}

fn formula(
    id: &'static str,
    symbol: Symbol,
    expression: impl Into<Expression>,
    source: &'static str,
) -> Formula {
    Formula::new(id, symbol, expression, source, "validity.none")
}

fn steps() -> Vec<StepGroup> {
    let area = formula(
        "a",
        AS,
        pi() / number(4.0) * (D - 0.9382 * P).square(),
        "ISO 898-1:2013, 9.1.6.1",
    );
    let load = formula("f", F, S * AS, "target of the job");
    let torque = formula(
        "t",
        T,
        F * (P / (number(2.0) * pi()) + 0.577 * MU_TH * D2 + MU_B * DB / 2.0),
        "ISO 16047:2005, 5.2, approximate form",
    );
    let torsion = formula(
        "x",
        TAU,
        16.0 * T / (pi() * D2.square() * D2),
        "torsion of the core",
    );
    let equivalent = formula("v", SV, sqrt(S.square() + 3.0 * TAU.square()), "von Mises");
    let long = formula(
        "l",
        T,
        F * (P / (number(2.0) * pi())
            + 0.577 * MU_TH * D2
            + MU_B * DB / 2.0
            + P / (number(2.0) * pi())
            + 0.577 * MU_TH * D2
            + MU_B * DB / 2.0
            + P / (number(2.0) * pi())),
        "a made-up line that is too long for its column",
    );
    let mm = |value: &str| printed(value, "mm");
    let torque_numbers = [
        printed("508", "kN"),
        mm("5"),
        printed("0.13", ""),
        mm("44.75"),
        printed("0.13", ""),
        mm("61.6"),
    ];
    let mut missing = step("F8", "break-out torque", &torque, &[], ("", ""));
    missing.remark = "break-out ratio: crew lead, after the first stud".into();
    vec![
        StepGroup {
            title: "Stud and load".into(),
            steps: vec![
                step(
                    "F1",
                    "stress area",
                    &area,
                    &[mm("48"), mm("5")],
                    ("1473", "mm²"),
                ),
                step(
                    "F2",
                    "target load",
                    &load,
                    &[printed("345", "MPa"), printed("1473", "mm²")],
                    ("508", "kN"),
                ),
            ],
        },
        StepGroup {
            title: "Tightening".into(),
            steps: vec![
                step(
                    "F3",
                    "torque at the nut",
                    &torque,
                    &torque_numbers,
                    ("4146", "N·m"),
                ),
                step(
                    "F4",
                    "torsion while tightening",
                    &torsion,
                    &[printed("2100", "N·m"), mm("43.31")],
                    ("152", "MPa"),
                ),
                step(
                    "F5",
                    "equivalent stress while tightening",
                    &equivalent,
                    &[printed("396", "MPa"), printed("152", "MPa")],
                    ("476", "MPa"),
                ),
                step("F6", "a long line", &long, &torque_numbers, ("4146", "N·m")),
                missing,
            ],
        },
    ]
}

fn input(symbols: &[(&str, &str)], meaning: &str, value: &str, origin: &str) -> Input {
    Input {
        symbols: symbols
            .iter()
            .map(|(base, index)| Sign {
                base: (*base).into(),
                index: (*index).into(),
            })
            .collect(),
        meaning: meaning.into(),
        value: value.into(),
        origin: origin.into(),
    }
}

fn inputs() -> Inputs {
    Inputs {
        head: head(
            "Inputs",
            "a value marked default is ours; the key beside it replaces it",
        ),
        columns: ["symbol", "meaning", "value", "where it comes from"].map(str::to_owned),
        groups: vec![
            vec![
                input(
                    &[("n", "")],
                    "number of studs",
                    "24",
                    "job.yaml:18:14, drawing HL-31-M-2104 rev 3",
                ),
                input(
                    &[("d", ""), ("P", "")],
                    "thread, pitch",
                    "48 mm, 5 mm",
                    "job.yaml:18:29; ISO 261",
                ),
                input(
                    &[("R", "p0.2")],
                    "stud yield at 20 °C",
                    "724 MPa",
                    "A193 B7, table row M48",
                ),
                input(&[("σ", "")], "target stress", "345 MPa", "job.yaml:21:23"),
            ],
            vec![
                input(
                    &[("µ", "th")],
                    "thread friction",
                    "0.13",
                    "site trial 2026-11-04, record 12",
                ),
                input(
                    &[("µ", "b")],
                    "friction under the nut",
                    "0.13",
                    "site trial 2026-11-04, record 12",
                ),
                input(
                    &[("s", "")],
                    "scatter of the load",
                    "15 %",
                    "site trial 2026-11-04, record 12",
                ),
                input(
                    &[("d", "w"), ("d", "h")],
                    "bearing, hole",
                    "71.2 mm, 52 mm",
                    "default, key studs.bearing_diameter",
                ),
            ],
            vec![
                input(
                    &[("q", "")],
                    "gasket stress needed",
                    "",
                    "engineer: gasket.stress_needed",
                ),
                input(
                    &[("v", "")],
                    "loss by settling",
                    "8 %",
                    "default, key tighten.settling_loss",
                ),
            ],
        ],
    }
}

fn limits() -> Limits {
    let row =
        |quantity: &str, value: &str, limit: &str, ratio: &str, verdict: &str, source: &str| {
            LimitRow {
                quantity: quantity.into(),
                value: value.into(),
                limit: limit.into(),
                ratio: ratio.into(),
                verdict: verdict.into(),
                source: source.into(),
                strong: verdict == "FAIL",
                fails: verdict == "FAIL",
            }
        };
    Limits {
        head: head("Limits", "ratio above 1 is a finding of severity error"),
        columns: ["quantity", "value", "limit", "ratio", "", "source"].map(str::to_owned),
        rows: vec![
            row(
                "load left in service, least",
                "352 kN",
                "≥ 381 kN",
                "1.08",
                "FAIL",
                "F7, F9",
            ),
            row(
                "flange, greatest load",
                "584 kN",
                "≤ 690 kN",
                "0.85",
                "pass",
                "flange note 2026-08",
            ),
            row(
                "stud while tightening, 90 % of yield",
                "476 MPa",
                "≤ 652 MPa",
                "0.73",
                "pass",
                "F5",
            ),
            row(
                "pressure under the nut",
                "271 MPa",
                "≤ 420 MPa",
                "0.65",
                "pass",
                "default limit",
            ),
            row(
                "gasket stress, greatest",
                "–",
                "≤ 400 MPa",
                "–",
                "not known",
                "data sheet",
            ),
        ],
    }
}

pub(crate) fn note() -> Note {
    let mut edges = furniture("calculation note", false);
    edges.own_pages = Some(pages("page ", ""));
    edges.pages = pages("pack page ", "");
    let big = |label: &str, value: &str, unit: &str, line: &str| BigValue {
        label: label.into(),
        value: value.into(),
        unit: unit.into(),
        line: line.into(),
    };
    let band = |label: &str, least, target, greatest| Span {
        label: label.into(),
        least,
        target,
        greatest,
    };
    let lines = [
        ("needed in service", 381.0),
        ("flange", 690.0),
        ("gasket", 723.0),
        ("stud", 790.0),
    ];
    Note {
        label: "note-1".into(),
        furniture: edges,
        title: "Channel flange, effluent cooler".into(),
        subtitle: "Group channel flange/a, 4 joints: 24 studs M48×5, hydraulic torque wrench".into(),
        summary: vec![
            big("Target load", "508", "kN", "345 MPa on 1473 mm²"),
            big("Torque", "4150", "N·m", "K 0.170 at 0.13 and 0.13"),
            big("Pressure", "455", "bar", "HW-07; HW-08 within 1 %"),
            big("Governs", "0.96", "", "load left against need"),
        ],
        valid: vec!["Valid only for: stud A193 B7, 430 mm long, grip 310 mm; grey paste (trial of 2026-11-04); wrenches HW-07 and HW-08; joint at 5 to 35 °C.".into()],
        chart: chart(
            head("Load in one stud, kN", "least, target, greatest against the limits; scatter 15 %"),
            "bands of load against limits".into(),
            &[band("while tightening", 432.0, 508.0, 584.0), band("after settling", 397.0, 467.0, 537.0)],
            &lines.map(|(label, value)| (label.to_owned(), value)),
        ),
        plan: None,
        lookup: None,
        inputs: inputs(),
        hand_check: HandCheck {
            head: head("Check by hand in five lines", ""),
            lines: [
                "1473 mm² × 345 MPa / 1000 = 508 kN",
                "508 kN × 48 mm × 0.170 = 4150 N·m",
                "400 bar + (4150 − 3660) / 9.24 = 453 bar, set 455 bar",
                "508 kN × 0.85 × 0.92 = 397 kN left at least",
                "381 kN / 397 kN = 0.96, so 4 % is left",
            ]
            .map(str::to_owned)
            .to_vec(),
        },
        title_block: title_block("calculation note", "Channel flange, effluent cooler", "Assembly load, torque, pressure, limits"),
        steps: FormulaSteps {
            head: head("Steps", "symbol = formula = numbers = result · source at the right"),
            groups: steps(),
        },
        holds: Paragraphs {
            head: head("Where the formulas hold", ""),
            texts: vec!["threads with 60° flanks (1–3); stud below its yield (12, 13).".into()],
        },
        limits: limits(),
        tables: vec![table(
            head("Members of the group", "equal in every computed input"),
            vec![Column::new("tag", 50.0).strong(), Column::new("place", 76.0), Column::new("card page", 50.0)],
            &[&["E-310-CH-01", "north channel, +6 m platform", "9"], &["E-310-CH-02", "south channel, +6 m platform", "11"]],
        )],
        not_checked: Paragraphs {
            head: head("Not checked here", ""),
            texts: vec!["Flange rotation, creep of the gasket above 310 °C, piping loads, fatigue of the studs. The responsible engineer decides whether they matter.".into()],
        },
    }
}
