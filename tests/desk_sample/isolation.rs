//! A sample sheet of isolation and pressure release.

use studbook::document::card::Badge;
use studbook::document::isolation::{
    ContentsAndEnergy, Force, Grid, IsolationFooter, IsolationIdentity, IsolationSheet, Labelled,
    Point, PointKind, Points, ProofStep, Return, SignList, Sketch, Steps,
};
use studbook::document::qr;

use super::{furniture, head, pages};

fn labelled(number: &str, label: &str, width: f64, unit: &str) -> Labelled {
    Labelled {
        number: number.into(),
        label: label.into(),
        width,
        unit: unit.into(),
    }
}

fn proof(number: &str, text: &str, accept: &str, boxes: &[(&str, f64, &str)]) -> ProofStep {
    ProofStep {
        number: number.into(),
        text: text.into(),
        accept: accept.into(),
        boxes: boxes
            .iter()
            .map(|(label, width, unit)| labelled("", label, *width, unit))
            .collect(),
        hold: false,
        again: 0,
    }
}

fn proof_steps() -> Vec<ProofStep> {
    let time: &[(&str, f64, &str)] = &[("", 20.0, "")];
    let mut steps = vec![
        proof("1", "Tell everybody whom the shutdown touches.", "", time),
        proof("2", "Shut down by procedure HL-31-OP-044.", "", time),
        proof(
            "3",
            "Shut, lock and tag every point of page 1.",
            "all boxes of page 1 filled",
            time,
        ),
        proof(
            "4",
            "Open the vent HV-3111, DN 25, to the flare header.",
            "free flow felt or heard, not plugged",
            time,
        ),
        proof(
            "5",
            "Open the drain HV-3114 at the low point, closed system.",
            "free flow seen, not plugged",
            time,
        ),
        proof(
            "6",
            "Purge with nitrogen, 3 cycles.",
            "≤ 10 % LEL, ≤ 10 ppm",
            &[("LEL %", 20.0, ""), ("ppm", 20.0, "")],
        ),
        proof(
            "7",
            "Measure the surface at the joint.",
            "≤ 60 °C to work",
            &[("°C", 20.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "8",
            "Read the pressure at the joint side; gauge proved live before, zero after, last reading on a low range.",
            "0.0 bar and free flow at the open vent",
            &[("gauge", 25.0, ""), ("bar", 25.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "9",
            "Hold test: vents and drains shut 15 min; then open again, leave open, tag open.",
            "no rise",
            &[("rise bar", 25.0, ""), ("open again at", 22.0, "")],
        ),
        proof(
            "10",
            "Other energy: bled, blocked, locked, landed.",
            "before any try-start",
            time,
        ),
        proof(
            "11",
            "Try to start P-310, people clear; control back to off.",
            "does not move",
            &[("result", 30.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "12",
            "Test the gas at the joint. No head into the opening.",
            "O₂ 20.9 %, LEL 0 %, H₂S 0 ppm",
            &[("O₂ %", 20.0, ""), ("LEL %", 20.0, ""), ("ppm", 20.0, "")],
        ),
        proof(
            "13",
            "HOLD: zero accepted by the crew lead at the joint.",
            "",
            &[
                ("name", 38.0, ""),
                ("signature", 36.0, ""),
                ("date", 28.0, ""),
                ("time", 20.0, ""),
            ],
        ),
        proof(
            "14",
            "First crack of the joint.",
            "dry, drip, gas, smell",
            &[("seen", 38.0, ""), ("time", 20.0, "")],
        ),
        proof(
            "15",
            "Prove again after a break of 2 h, at a shift change, after any change of the line-up.",
            "as step 8",
            &[
                ("date, time", 40.0, ""),
                ("bar", 25.0, ""),
                ("initials", 22.0, ""),
            ],
        ),
    ];
    steps[12].hold = true;
    steps[14].again = 2;
    steps
}

fn returning() -> Return {
    let signed: &[(&str, f64, &str)] = &[("initials", 22.0, ""), ("time", 20.0, "")];
    Return {
        head: head("Give it back, in this order", "the person who fitted a lock removes it"),
        steps: vec![
            proof("1", "Work complete, tools counted, people clear, covers on.", "", signed),
            proof("2", "Spades out: each is a joint with its own card.", "2 spades: SP-31, SP-32", &[("spades out", 20.0, ""), ("initials", 22.0, "")]),
            proof("3", "Vents and drains shut, caps on.", "", signed),
            proof("4", "Locks and tags removed, each by the person who fitted it.", "all boxes of page 1 filled", signed),
            proof("5", "Everybody told whom the start touches.", "", signed),
            proof("6", "Leak test in steps, nobody near.", "no leak", &[("bar", 25.0, ""), ("time", 20.0, "")]),
            proof("7", "Line-up restored.", "", signed),
        ],
        joints: SignList {
            head: head("Joints signed at load", "all of them, before the first lock"),
            names: ["E-310-CH-01", "E-310-CH-02", "E-310-CH-03", "E-310-CH-04"].map(str::to_owned).to_vec(),
            more: String::new(),
        },
        handover: Grid {
            head: head("Lock box at shift change", "the key goes from hand to hand"),
            columns: vec![
                labelled("", "date, time", 40.0, ""),
                labelled("", "out: name, signature", 57.0, ""),
                labelled("", "in: name, signature", 57.0, ""),
                labelled("", "key", 22.0, ""),
            ],
            rows: 3,
        },
        closing: "This sheet supports the site's own isolation certificate and never replaces it. Where they differ, the stricter applies; if in doubt stop and ask.".into(),
    }
}

/// A sheet with `count` points.
pub(crate) fn isolation(count: usize) -> IsolationSheet {
    let kinds = [
        (
            PointKind::ValveShut,
            "HV-3101",
            "gate valve DN 200, from R-301",
            "shut, locked",
        ),
        (
            PointKind::Vent,
            "HV-3102",
            "bleed between the valves",
            "open",
        ),
        (PointKind::Spade, "SP-31", "inlet flange, north", "spade in"),
        (
            PointKind::ValveShut,
            "HV-3107",
            "gate valve DN 200, to V-312",
            "shut, locked",
        ),
        (
            PointKind::Gauge,
            "PI-3110",
            "gauge at the joint, 0 to 4 bar",
            "proved live",
        ),
        (
            PointKind::ValveOpen,
            "HV-3111",
            "equalising line",
            "open, locked",
        ),
        (
            PointKind::Drain,
            "HV-3114",
            "low point, closed system",
            "open, proved",
        ),
        (
            PointKind::Motor,
            "P-310",
            "charge pump, switch room 2",
            "off, locked",
        ),
        (
            PointKind::Gap,
            "SP-33",
            "spool taken out, level bridle",
            "apart",
        ),
        (PointKind::Lock, "ZS-31", "tilting gear, pin", "pin in"),
    ];
    let rows = kinds.iter().cycle().take(count).enumerate();
    let badge = |word: &str| Badge {
        word: word.into(),
        outlined: true,
    };
    IsolationSheet {
        label: "isolation-1".into(),
        bookmark: "I-04 Effluent cooler E-310, channel side".into(),
        running: furniture("isolation and pressure release", false).running,
        footer: IsolationFooter {
            number: "HL-31-WP-007   revision B".into(),
            code_label: "content".into(),
            code: "6B1E-07F3".into(),
            issued: "issued 2027-03-08".into(),
            note: "Uncontrolled when printed, unless stamped. Check the revision before use. Valid for the permit dated . . . . . . . . . . . .".into(),
            own_pages: pages("page ", ""),
            pages: Some(pages("pack page ", "")),
            qr: qr::svg("HL-31-WP-007 B 6B1E-07F3"),
        },
        draft: None,
        identity: IsolationIdentity {
            number: "I-04".into(),
            boundary: "Effluent cooler E-310, channel side".into(),
            line: "joints E-310-CH-01 to CH-04 · flow diagram HL-31-P-0107 rev 6".into(),
            badges: [badge("ISOLATE"), badge("PROVE"), badge("RETURN")],
            class: "class A".into(),
            pages: ["make it safe".into(), "release, prove zero".into(), "give it back".into()],
            continued: "make it safe, more points".into(),
        },
        papers: vec![
            labelled("1", "permit no.", 40.0, ""),
            labelled("2", "isolation certificate no.", 48.0, ""),
            labelled("3", "lock box no.", 40.0, ""),
            labelled("4", "date YYYY-MM-DD", 36.0, ""),
        ],
        contents: ContentsAndEnergy {
            head: head("Contents and energy", ""),
            facts: [
                ["gas", "hydrogen-rich, 92 bar", "310 °C"],
                ["volume", "14 m³ between points", "two phase"],
                ["toxic", "hydrogen sulphide 400 ppm", ""],
                ["heat", "shell 180 °C for 6 h", "work below 60 °C"],
                ["moving", "pump P-310 can start", "point 8"],
                ["wanted", "positive: spade or gap", "contents"],
            ]
            .map(|fact| fact.map(str::to_owned))
            .to_vec(),
        },
        force: Force {
            head: head("Force on the channel cover", ""),
            per_pressure: "66".into(),
            unit: "kN per bar".into(),
            little: "0.1 bar = 680 kg".into(),
            opening: "Opening 920 mm across, 0.665 m².".into(),
            warning: "Nearly zero is not zero.".into(),
        },
        sketch: Sketch {
            head: head("Boundary", "points in the order of the table; black is shut, white is open"),
            picture: None,
            alt: "line of the isolation points".into(),
            ends: ["from R-301".into(), "to V-312".into()],
        },
        points: Points {
            head: head("Points", "initials and time in each box; the person who fits a lock removes it"),
            columns: ["no.".into(), "tag".into(), "make it".into()],
            boxes: ["lock no.", "tag no.", "fitted", "verified", "removed"].map(str::to_owned),
            rows: rows
                .map(|(at, (kind, tag, place, make))| Point {
                    number: (at + 1).to_string(),
                    kind: *kind,
                    tag: (*tag).into(),
                    place: (*place).into(),
                    make: (*make).into(),
                })
                .collect(),
            continued: "continued from page 1".into(),
        },
        proof: Steps {
            head: head("Release and proof of zero, in this order", "a box without a label: time, 24 h"),
            steps: proof_steps(),
        },
        return_to_service: returning(),
    }
}
