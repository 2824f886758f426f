//! Jobs with multi-jackbolt tensioners: the example as it is, and with one thing changed that a step hangs on.

#![allow(dead_code, reason = "each test file uses a part of it")]

use std::path::Path;

/// The tie rods and anchors of the example.
#[allow(clippy::disallowed_methods, reason = "the test reads an example")]
pub(crate) fn tie_rods() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("jobs/tie-rods.yaml");
    std::fs::read_to_string(path).expect("the example is there")
}

/// With other words in some places; each place must be there.
pub(crate) fn with(text: &str, changes: &[(&str, &str)]) -> String {
    changes.iter().fold(text.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replace(from, to)
    })
}

/// With a wrench that bears the break-out of the highest load: then the release has a plan.
pub(crate) fn larger_wrench() -> String {
    with(
        &tie_rods(),
        &[
            ("range: [110 N·m, 600 N·m]", "range: [110 N·m, 1000 N·m]"),
            ("loosen: { with: TW-33", "loosen: { with: TW-32"),
        ],
    )
}

/// All studs without their drivers, and without a stretch check.
pub(crate) fn by_hand() -> String {
    with(
        &larger_wrench(),
        &[
            ("driver: MD-3, driver_level: 80 %, reversal: 60 N·m, ", ""),
            ("driver: MD-4, driver_level: 80 %, reversal: 110 N·m, ", ""),
            ("checks: { stretch: [1, 2, 3, 4], ", "checks: { "),
            ("    checks: { stretch: [1, 9] }\n", ""),
        ],
    )
}

/// Anchors so long that letting them go takes very many rounds.
pub(crate) fn long_anchors() -> String {
    with(
        &larger_wrench(),
        &[(
            "length: 1010 mm, grip: 800 mm",
            "length: 1410 mm, grip: 1200 mm",
        )],
    )
}

/// Every job that a step, a word or a limit hangs on.
pub(crate) fn all() -> Vec<String> {
    let larger = larger_wrench();
    let changed = |changes: &[(&str, &str)]| with(&larger, changes);
    vec![
        tie_rods(),
        by_hand(),
        // Long rods on short jackbolts overload the last one.
        with(
            &tie_rods(),
            &[
                ("range: [110 N·m, 600 N·m]", "range: [110 N·m, 500 N·m]"),
                ("    free_length: 90 mm\n", ""),
                (
                    "length: 1480 mm, grip: 1130 mm",
                    "length: 2310 mm, grip: 1960 mm",
                ),
            ],
        ),
        long_anchors(),
        // Nobody knows the stiffness, the gap or the height of the body.
        changed(&[
            ("length: 1480 mm, grip: 1130 mm, ", "length: 1480 mm, "),
            ("    start_gap: 4 mm\n", ""),
            ("    stud_above_body: 4 mm\n", ""),
        ]),
        // What drives the driver, where it hangs, how it is reversed, where it works.
        changed(&[
            ("input: battery", "input: hand"),
            ("input: pneumatic", "input: hydraulic"),
            ("zone: none", "zone: II 2G"),
            ("      lift: hoist above the crosshead\n", ""),
            ("reversal: 110 N·m", "reversal: 200 N·m"),
        ]),
        changed(&[
            ("      studs_per_battery: 6\n", ""),
            ("      input: pneumatic\n", ""),
            ("      reverse_torque: 110 N·m\n", ""),
            (", length: 760 mm", ""),
        ]),
        changed(&[(
            "range: [110 N·m, 1000 N·m]",
            "range: [110 N·m, 1000 N·m], adapter: { wrench_length: 760 mm, extension: 40 mm }",
        )]),
        // A head for all jackbolts leaves the stud even: then the end may go by angle.
        changed(&[("spindles: 8", "spindles: 16")]),
    ]
}
