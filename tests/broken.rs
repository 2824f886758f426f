//! Bad input: a clear message or a correct page; never a panic, never half a file, never a lost
//! document.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and reads what was written"
)]

mod support;

use support::{Bench, Run};

/// Runs `check` on a job of these bytes and requires a clear refusal.
fn refused(bytes: impl AsRef<[u8]>) -> Run {
    let bench = Bench::new();
    bench.file("job.yaml", bytes);
    let run = bench.run(&["check", "job.yaml"]);
    assert_eq!(run.code, Some(2), "{}\n{}", run.out, run.err);
    assert!(!run.err.contains("panicked"), "{}", run.err);
    let issued = bench.run(&["issue", "job.yaml"]);
    assert_eq!(issued.code, Some(2), "{}", issued.err);
    assert_eq!(bench.names(), ["job.yaml"], "nothing is written");
    run
}

/// A small sound job with one place to be broken.
fn job(with: &[(&str, &str)]) -> String {
    let mut text =
        std::fs::read_to_string(support::repository().join("jobs/starter.yaml")).unwrap();
    for (old, new) in with {
        assert!(text.contains(old), "the starter job lacks `{old}`");
        text = text.replacen(old, new, 1);
    }
    text
}

#[test]
fn the_starter_job_is_sound() {
    let bench = Bench::new();
    bench.file("job.yaml", job(&[]));
    let run = bench.run(&["check", "job.yaml"]);
    assert_eq!(run.code, Some(0), "{}", run.out);
}

#[test]
fn an_empty_file_is_refused() {
    assert!(refused("").out.contains("job.yaml:1:1"));
}

#[test]
fn what_is_not_yaml_is_refused_at_its_place() {
    let run = refused("studbook: 1\npack: { title: [ }\n");
    assert!(run.out.contains("job.yaml:2:"), "{}", run.out);
}

#[test]
fn a_list_where_a_map_is_due_is_refused() {
    refused("- studbook: 1\n- pack: {}\n");
    let run = refused(job(&[(
        "studs: { count: 12, thread: M24, grade: A193 B7, nut_grade: A194 2H, length: 150 mm, grip: 90 mm, washers: hardened }",
        "studs: [12, M24]",
    )]));
    assert!(run.out.contains("job.yaml:"), "{}", run.out);
}

#[test]
fn a_hundred_thousand_levels_are_refused() {
    refused("- ".repeat(100_000));
    refused("[".repeat(100_000));
    refused("{a: ".repeat(100_000));
}

#[test]
fn a_bomb_of_aliases_is_refused() {
    let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for level in 1..12 {
        let previous = format!("*a{}", level - 1);
        let items = vec![previous; 9].join(", ");
        text.push_str(&format!("a{level}: &a{level} [{items}]\n"));
    }
    refused(text);
}

#[test]
fn nul_bytes_and_broken_utf8_are_refused() {
    refused(b"studbook: 1\0\n");
    refused(b"studbook: 1\npack: { title: \xff\xfe }\n");
    refused([0u8; 4096]);
}

#[test]
fn a_tag_of_five_hundred_signs_is_refused() {
    let run = refused(job(&[(
        "tag: D-101-CV-01",
        &format!("tag: {}", "X".repeat(500)),
    )]));
    assert!(run.out.contains("32"), "the limit is named: {}", run.out);
}

#[test]
fn right_to_left_marks_are_refused() {
    let run = refused(job(&[(
        "place: cover, ground floor",
        "place: \"cover \u{202e}reversed\"",
    )]));
    assert!(run.out.contains("202E"), "the sign is named: {}", run.out);
}

#[test]
fn letters_that_the_fonts_lack_are_named() {
    let run = refused(job(&[(
        "place: cover, ground floor",
        "place: \u{5de}\u{5db}\u{5e1}\u{5d4}",
    )]));
    assert!(run.out.contains("U+05DE"), "{}", run.out);
}

#[test]
fn numbers_that_cannot_be_are_refused() {
    let changes = [
        ("count: 12", "count: 0"),
        ("count: 12", "count: 10000"),
        ("count: 12", "count: -4"),
        ("target: { stress: 300 MPa }", "target: { load: -105 kN }"),
        ("target: { stress: 300 MPa }", "target: { stress: .nan }"),
        ("target: { stress: 300 MPa }", "target: { stress: NaN MPa }"),
        (
            "target: { stress: 300 MPa }",
            "target: { stress: 1e999 MPa }",
        ),
        ("target: { stress: 300 MPa }", "target: { stress: 300 }"),
        (
            "target: { stress: 300 MPa }",
            "target: { stress: 300 MPa, load: 105 kN }",
        ),
        ("range: [100 N·m, 500 N·m]", "range: [500 N·m, 100 N·m]"),
    ];
    for (old, new) in changes {
        let run = refused(job(&[(old, new)]));
        assert!(run.out.contains("job.yaml:"), "{new}: {}", run.out);
    }
}

#[test]
fn calibration_points_out_of_order_are_refused() {
    let points = "calibration: { certificate: C-1, due: 2027-12-31, points: [[400 bar, 3660 N·m], [100 bar, 905 N·m]] }";
    let run = refused(job(&[
        (
            "calibration: { certificate: C-1001, due: 2027-12-31 }",
            points,
        ),
        ("kind: hand torque wrench", "kind: hydraulic torque wrench"),
    ]));
    assert!(run.out.contains("job.points_order"), "{}", run.out);
}

#[test]
fn a_bare_factor_is_refused() {
    let point = "calibration: { certificate: C-1, due: 2027-12-31, points: [[400 bar, 3660 N·m]] }";
    let run = refused(job(&[(
        "calibration: { certificate: C-1001, due: 2027-12-31 }",
        point,
    )]));
    assert!(run.out.contains("job.one_point"), "{}", run.out);
}

#[test]
fn two_joints_with_one_tag_are_refused_with_both_places() {
    let text = job(&[]);
    let joint = &text[text.find("  - tag: D-101-CV-01").unwrap()..];
    let run = refused(format!("{text}{joint}"));
    assert!(run.out.contains("D01"), "{}", run.out);
    assert_eq!(
        run.out.matches("tag: D-101-CV-01").count(),
        2,
        "both places are shown: {}",
        run.out
    );
}

#[test]
fn every_error_of_a_job_is_told_in_one_run() {
    let run = refused(job(&[
        ("count: 12", "count: twelve"),
        ("grade: A193 B7", "grade: A193 B77"),
        ("thread: M24", "thread: M24x5"),
        ("isolation: I-01", "isolation: I-02"),
        ("place: cover, ground floor", "plaice: cover"),
        ("due: 2027-12-31", "due: 31.12.2027"),
    ]));
    for id in [
        "D12",
        "L16",
        "job.unknown_name",
        "job.unknown_key",
        "date.form",
    ] {
        assert!(run.out.contains(&format!("[{id}]")), "{id}: {}", run.out);
    }
}

#[test]
fn signs_of_markup_print_literally_in_every_text() {
    let hostile = r##"#[x]{y}$z\*_a_<b>@c~"##;
    let quoted = format!("'{hostile}'");
    let bench = Bench::new();
    let text = job(&[
        ("title: Starter job", &format!("title: {quoted}")),
        ("client: Harrow Lake Works", &format!("client: {quoted}")),
        ("unit: unit 00", &format!("unit: {quoted}")),
        ("text: first issue", &format!("text: {quoted}")),
        ("boundary: drain pot D-101", &format!("boundary: {quoted}")),
        ("at: gauge point on the cover", &format!("at: {quoted}")),
        ("place: cover, ground floor", &format!("place: {quoted}")),
        ("tag: D-101-CV-01", "tag: '#[x]{y}$z*_'"),
        (
            "source: data sheet of the paste, issue 3",
            &format!("source: {quoted}"),
        ),
        ("position: \"shut, locked\"", "position: '#[x]{y}$z'"),
        ("location: inlet", &format!("location: {quoted}")),
    ]);
    bench.file("job.yaml", text);
    let run = bench.run(&["issue", "job.yaml"]);
    assert!(matches!(run.code, Some(0 | 1)), "{}\n{}", run.out, run.err);
    let shown = bench.run(&["show", "job.yaml", "#[x]{y}$z*_"]);
    assert!(shown.out.starts_with("#[x]{y}$z*_ · "), "{}", shown.out);
}

#[test]
fn an_issued_revision_is_never_overwritten_without_being_asked() {
    let bench = Bench::new();
    bench.file("job.yaml", job(&[]));
    assert_eq!(bench.run(&["issue", "job.yaml"]).code, Some(0));
    let folder = bench.path().join("HL-00-WP-001_A");
    let before = std::fs::read(folder.join("manifest.json")).unwrap();
    let again = bench.run(&["issue", "job.yaml"]);
    assert_eq!(again.code, Some(2), "{}", again.out);
    assert!(again.err.contains("--replace"), "{}", again.err);
    assert_eq!(std::fs::read(folder.join("manifest.json")).unwrap(), before);
    let replaced = bench.run(&["issue", "job.yaml", "--replace"]);
    assert_eq!(replaced.code, Some(0), "{}", replaced.err);
    let aside = bench.path().join("HL-00-WP-001_A_replaced_1");
    assert_eq!(
        std::fs::read(aside.join("manifest.json")).unwrap(),
        before,
        "the old issue is kept"
    );
    assert!(
        replaced.out.contains("unchanged"),
        "equal files are taken over: {}",
        replaced.out
    );
}

#[test]
fn a_folder_that_cannot_be_written_is_said_before_the_work() {
    let bench = Bench::new();
    bench.file("job.yaml", job(&[]));
    bench.file("taken", "a file where a folder is due");
    let run = bench.run(&["issue", "job.yaml", "--out", "taken/packs"]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("taken"), "{}", run.err);
    assert_eq!(bench.names(), ["job.yaml", "taken"]);
}

#[cfg(unix)]
#[test]
fn a_full_disk_leaves_nothing_behind() {
    let bench = Bench::new();
    bench.file("job.yaml", job(&[]));
    // A limit on the size of files is what a full disk looks like to a program: a write fails.
    let script = format!(
        "trap '' XFSZ; ulimit -f 16; exec '{}' issue job.yaml",
        env!("CARGO_BIN_EXE_studbook")
    );
    let output = std::process::Command::new("sh")
        .args(["-c", &script])
        .current_dir(bench.path())
        .output()
        .unwrap();
    let run = Run::from(output);
    assert_eq!(run.code, Some(2), "{}\n{}", run.out, run.err);
    assert_eq!(bench.names(), ["job.yaml"]);
}

/// Starts an issue of the example and sends it a signal as soon as its hidden folder stands.
#[cfg(unix)]
fn issue_with_signal(bench: &Bench, signal: &str) -> Option<i32> {
    let mut child = bench
        .command(&["issue", "effluent-cooler.yaml"])
        .spawn()
        .unwrap();
    // A run that is too quick for us is whole.
    while !is_hidden(bench) && child.try_wait().unwrap().is_none() {
        std::thread::yield_now();
    }
    let pid = child.id().to_string();
    std::process::Command::new("kill")
        .args([signal, &pid])
        .status()
        .unwrap();
    child.wait().unwrap().code()
}

fn is_hidden(bench: &Bench) -> bool {
    bench.names().iter().any(|name| name.ends_with(".part"))
}

#[cfg(unix)]
#[test]
fn an_interrupted_run_clears_up_and_says_so_by_its_exit_code() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let before = bench.names();
    match issue_with_signal(&bench, "-INT") {
        Some(130) => assert_eq!(bench.names(), before),
        code => {
            assert_eq!(code, Some(0));
            assert!(bench.path().join("HL-31-WP-007_B/manifest.json").exists());
        }
    }
}

#[cfg(unix)]
#[test]
fn a_run_that_was_killed_leaves_no_half_issue_and_the_next_one_clears_up() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    issue_with_signal(&bench, "-KILL");
    let folder = bench.path().join("HL-31-WP-007_B");
    if folder.exists() {
        assert!(
            folder.join("manifest.json").exists(),
            "what is in its place is whole"
        );
        return;
    }
    let run = bench.run(&["issue", "effluent-cooler.yaml"]);
    assert_eq!(run.code, Some(0), "{}", run.err);
    assert!(!is_hidden(&bench), "{:?}", bench.names());
    assert!(folder.join("manifest.json").exists());
}

#[test]
fn a_picture_that_is_cut_short_or_outside_the_folder_is_refused() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let photo = bench.path().join("photos/e-310-north.jpg");
    let whole = std::fs::read(&photo).unwrap();
    std::fs::write(&photo, &whole[..whole.len() / 2]).unwrap();
    let run = bench.run(&["check", "effluent-cooler.yaml"]);
    assert_eq!(run.code, Some(2));
    assert!(run.out.contains("photo.incomplete"), "{}", run.out);
    let text = std::fs::read_to_string(bench.path().join("effluent-cooler.yaml")).unwrap();
    bench.file(
        "outside.yaml",
        text.replace("photos/e-310-north.jpg", "../e-310-north.jpg"),
    );
    let run = bench.run(&["check", "outside.yaml"]);
    assert_eq!(run.code, Some(2));
    assert!(run.out.contains("--allow-outside"), "{}", run.out);
}
