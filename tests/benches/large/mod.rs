//! Large jobs for benches: made from the demo job, with as many joints as wanted.

#![allow(dead_code, reason = "each bench uses a part of it")]

use std::fmt::Write;
use std::path::Path;

/// What the joints of a large job have in common.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Kind {
    /// Little: tags, sizes, counts, lengths, targets and texts all vary.
    Varied,
    /// Thirty families; a joint has its tag and its place.
    Families,
}

impl Kind {
    pub(crate) const ALL: [Self; 2] = [Self::Varied, Self::Families];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Varied => "varied",
            Self::Families => "30 families",
        }
    }
}

/// Threads with the flats of their nuts in mm; sockets of these flats are added to the tools.
const THREADS: [(&str, u32); 4] = [
    ("M36x4", 55),
    ("M42x4.5", 65),
    ("M48x5", 75),
    ("M56x5.5", 85),
];

const PLACES: [&str; 5] = [
    "north side, +6 m platform",
    "under the pipe bridge, west",
    "top of the vessel, +21 m",
    "behind pump bay 4",
    "east ladder, second landing",
];

/// The text of a job of so many joints. Equipment changes every 40 joints.
pub(crate) fn job(kind: Kind, joints: usize) -> String {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("jobs/effluent-cooler.yaml");
    let demo = std::fs::read_to_string(demo).expect("the demo job is there");
    let (front, rest) = demo.split_once("\nfamilies:\n").expect("families");
    let (families, _) = rest.split_once("\njoints:\n").expect("joints");
    let (tools, after) = front.split_once("\npeople:\n").expect("people");
    let mut text = tools.to_owned();
    for (thread, flats) in THREADS {
        let _ = write!(
            text,
            "  SK-{flats}-L: {{ kind: socket, serial: {thread}, across_flats: {flats} mm, square: 1 1/2 in, outer_diameter: {} mm, torque_rating: 9000 N·m, mass: 2.6 kg }}\n  BS-{flats}-L: {{ kind: back-up spanner, across_flats: {flats} mm, mass: 4.1 kg }}\n",
            flats + 30
        );
    }
    let _ = write!(text, "\npeople:\n{after}\nfamilies:\n");
    let families = families
        .replace("      socket: SK-75\n      back_up: BS-75\n", "")
        .replace("stretch: [1, 7, 13, 19]", "stretch: [1, 7]")
        .replace("    equipment: E-310\n", "")
        .replace("    equipment: V-312\n", "");
    match kind {
        Kind::Varied => text.push_str(&families),
        Kind::Families => thirty(&mut text, &families),
    }
    text.push_str("\njoints:\n");
    for number in 0..joints {
        joint(&mut text, kind, number);
    }
    text
}

/// The channel flange of the demo job in thirty sizes.
fn thirty(text: &mut String, families: &str) {
    let (channel, _) = families.split_once("  manway:\n").expect("the manway");
    for number in 0..30 {
        let family = channel
            .replace("channel flange:", &format!("flange {number:02}:"))
            .replace("M48x5", THREADS[number % 4].0)
            .replace("count: 24", &format!("count: {}", 16 + 4 * (number % 5)))
            .replace("345 MPa", &format!("{} MPa", 240 + 3 * number));
        text.push_str(&family);
    }
}

fn joint(text: &mut String, kind: Kind, number: usize) {
    let place = PLACES[number % PLACES.len()];
    let tag = format!("E-{}-CH-{:04}", 100 + number / 40, number);
    let family = match kind {
        Kind::Families => format!("flange {:02}", number % 30),
        Kind::Varied => "channel flange".to_owned(),
    };
    let _ = write!(
        text,
        "  - {{ tag: {tag}, family: {family}, equipment: E-{}, place: \"{place}, bay {number}\", start: 2027-04-12",
        100 + number / 40
    );
    if matches!(kind, Kind::Varied) {
        let _ = write!(
            text,
            ", studs: {{ thread: {}, count: {}, length: {} mm, grip: {} mm, bolt_circle: {} mm }}, target: {{ stress: {}.{} MPa }}",
            THREADS[number % 4].0,
            12 + 4 * (number % 7),
            430 + number % 37,
            315 + number % 29,
            1000 + number % 97,
            220 + number % 83,
            number % 10,
        );
    }
    text.push_str(" }\n");
}
