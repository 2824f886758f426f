//! A part of a job, and what does not fit its sheet: both through the program.

#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    unreachable_pub,
    reason = "a test stops at the first thing that is not as it should be, and reads what was written"
)]

mod support;

use support::Bench;

/// One joint alone is a draft: register, results and files hold that joint and nothing of the others.
#[test]
fn an_issue_of_one_joint_holds_that_joint_alone() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let one = ["issue", "effluent-cooler.yaml", "--joint", "V-312-MW-02"];
    let run = bench.run(&one);
    assert_eq!(run.code, Some(0), "{}", run.err);
    let folder = bench.path().join("HL-31-WP-007_B_DRAFT");
    let read = |name: &str| std::fs::read_to_string(folder.join(name)).unwrap();
    let register = read("HL-31-WP-007_B_register.csv");
    assert_eq!(register.lines().count(), 2, "{register}");
    assert!(register.contains("V-312-MW-02") && !register.contains("E-310"));
    let results: serde_json::Value =
        serde_json::from_str(&read("HL-31-WP-007_B_results.json")).unwrap();
    let tags: Vec<&str> = results
        .as_array()
        .unwrap()
        .iter()
        .map(|joint| joint["tag"].as_str().unwrap())
        .collect();
    assert_eq!(tags, ["V-312-MW-02"]);
    let manifest: serde_json::Value = serde_json::from_str(&read("manifest.json")).unwrap();
    // Two cards of two pages each.
    assert_eq!(manifest["files"]["HL-31-WP-007_B_cards.pdf"]["pages"], 4);
    assert_eq!(manifest["draft"], true);
}

/// A tag that is not in the job is refused, and the near one is named.
#[test]
fn an_issue_of_an_unknown_joint_names_the_near_one() {
    let bench = Bench::new();
    bench.example("effluent-cooler.yaml");
    let run = bench.run(&["issue", "effluent-cooler.yaml", "--joint", "V-312-MW-20"]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("V-312-MW-02"), "{}", run.err);
    assert!(!bench.path().join("HL-31-WP-007_B_DRAFT").exists());
}

/// A class A joint with gaps and a point of the client still has two pages (the design of the project): the
/// inspector, who signs a point of his own with date and time, signs no second time.
#[test]
fn a_record_with_a_point_of_the_client_fits_its_page() {
    let bench = Bench::new();
    let path = bench.example("reference.yaml");
    let text = std::fs::read_to_string(&path).unwrap();
    let stretch = "      stretch: [1, 13]\n";
    assert!(text.contains(stretch));
    std::fs::write(&path, text.replace(stretch, "")).unwrap();
    let run = bench.run(&["check", "reference.yaml"]);
    assert!(!run.out.contains("D14"), "{}", run.out);
    assert!(run.out.contains("T01"), "the job was checked: {}", run.out);
}

/// The sheet has three pages (the design of the project): more points than fit are told by `check`,
/// at the isolation, and by `issue` with the same words.
#[test]
fn more_isolation_points_than_fit_are_told_without_typesetting() {
    let bench = Bench::new();
    let path = bench.example("effluent-cooler.yaml");
    let text = std::fs::read_to_string(&path).unwrap();
    let last = "      - { tag: P-310, kind: motor";
    let drains: String = (1..=60)
        .map(|number| format!("      - {{ tag: HV-9{number:03}, kind: drain, position: open, location: low point {number} }}\n"))
        .collect();
    std::fs::write(&path, text.replace(last, &format!("{drains}{last}"))).unwrap();
    let check = bench.run(&["check", "effluent-cooler.yaml"]);
    assert_eq!(check.code, Some(1), "{}{}", check.out, check.err);
    assert!(
        check.out.contains("D14") && check.out.contains("I-04"),
        "{}",
        check.out
    );
    let issue = bench.run(&["issue", "effluent-cooler.yaml", "--only", "register"]);
    assert_eq!(issue.code, Some(1));
    assert!(issue.err.contains("D14"), "{}", issue.err);
}
