//! Every default, threshold, class and direction of rounding has a case that fails when it is changed, at both sides of
//! each threshold. The tables in `tests/choices` say what comes out and where that comes from; what needs a word of Rust
//! stands below.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

use std::collections::BTreeMap;

use serde::Deserialize;
use studbook::calc::labour::Block;
use studbook::calc::order::gap_positions;
use studbook::calc::{Common, PassKind, ids};
use studbook::joint::{Fact, Joint, LIMITS, needed_engagement};
use studbook::methods::Computed;
use studbook::methods::jackbolt::{GREATEST_STEP, LEAST_STEP, positions};
use studbook::report::Sources;
use studbook::standards::jackbolts::greatest_level;
use studbook::standards::vdi_2230::SCATTER_ROWS;
use studbook::units::{Dimension, Quantity, parse_si};
use studbook::{job, methods, resolve};

/// A job and what becomes of it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    job: String,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    source: String,
    /// Texts of the job with what takes their place.
    #[serde(default)]
    change: Vec<(String, String)>,
    /// Further lines of its joint.
    #[serde(default)]
    add: String,
    /// How far a value may be off, as a share of it: published figures are rounded.
    within: Option<f64>,
    /// Ids of results and the choices of [`choice`], each with its value, or `missing`.
    gives: BTreeMap<String, String>,
}

const TABLES: [&str; 7] = [
    include_str!("choices/nuts.yaml"),
    include_str!("choices/loosening.yaml"),
    include_str!("choices/service.yaml"),
    include_str!("choices/inches.yaml"),
    include_str!("choices/tools.yaml"),
    include_str!("choices/pressures.yaml"),
    include_str!("choices/jackbolts.yaml"),
];

/// What stands under a name.
enum Value {
    Number(f64, Dimension),
    Word(String),
    Missing,
}

fn number<Q: Quantity>(fact: &Fact<Q>) -> Value {
    let known = fact.value().map(|value| value.si());
    known.map_or(Value::Missing, |si| Value::Number(si, Q::DIMENSION))
}

fn word(text: Option<impl ToString>) -> Value {
    text.map_or(Value::Missing, |text| Value::Word(text.to_string()))
}

/// A choice that is no result of the ledger.
fn choice(name: &str, joint: &Joint, computed: &Computed) -> Value {
    let mechanics = &joint.mechanics;
    let (studs, checks, plan) = (&mechanics.studs, &mechanics.checks, &mechanics.plan);
    let chosen = &computed.chosen;
    let turning = chosen.turning.first();
    let name_of = |tool: Option<&std::sync::Arc<studbook::joint::Tool>>| {
        word(tool.map(|tool| tool.name.clone()))
    };
    match name {
        "class" => word(mechanics.class.value().map(studbook::job::Class::word)),
        "method" => word(mechanics.method.value()),
        "seat" => word(studs.seat.value().map(studbook::job::Seat::word)),
        "pattern" => word(plan.pattern.value().map(studbook::job::Pattern::word)),
        "staged" => word(mechanics.loosening.staged.value()),
        "opened" => word(mechanics.loosening.opened.value()),
        "gaps" => word(checks.gaps.value()),
        "soft gasket" => word(mechanics.gasket.as_ref().map(|gasket| gasket.is_soft())),
        "gap spread" => number(&checks.gap_spread),
        "free gap" => number(&checks.gap),
        "centreline" => number(&checks.centreline),
        "parallelism" => number(&checks.parallelism),
        "holes" => number(&checks.holes),
        "least protrusion" => number(&checks.least_protrusion),
        "greatest protrusion" => number(&checks.greatest_protrusion),
        "highest temperature" => number(&studs.highest_temperature),
        "engagement needed" => Value::Number(needed_engagement(joint), Dimension::Ratio),
        "wrench" => name_of(turning),
        "socket" => name_of(chosen.socket.as_ref()),
        "back-up" => name_of(chosen.back_up.as_ref()),
        "lowest torque" => turning.map_or(Value::Missing, |tool| number(&tool.lowest)),
        "passes" => word(Some(passes(computed))),
        "planned" => word(Some(computed.plan.jackbolts().is_some())),
        "checked" => word(computed.plan.jackbolts().map(|plan| plan.checked)),
        other => panic!("`{other}` is no result and no choice"),
    }
}

fn passes(computed: &Computed) -> String {
    let words = computed.passes.iter().map(|pass| match pass.kind {
        PassKind::Snug => "snug",
        PassKind::Stepped => "stepped",
        PassKind::Circular => "circular",
        PassKind::Repeat => "repeat",
    });
    words.collect::<Vec<_>>().join(", ")
}

/// The first joint of a job that is sound, with its numbers.
fn computed(text: &str) -> (Joint, Computed) {
    let mut sources = Sources::default();
    let (job, mut found) = job::open("job.yaml", text.as_bytes(), &mut sources);
    let job = job.unwrap_or_else(|| panic!("{found:?}\n{text}"));
    let (joints, resolved) = resolve::resolve(&job);
    found.extend(resolved);
    assert!(found.is_empty(), "{found:?}\n{text}");
    let joint = joints.into_iter().next().expect("one joint");
    let computed = methods::compute(&joint, &Common::default());
    (joint, computed)
}

impl Case {
    fn text(&self, job: &str) -> String {
        let mut text = job.to_owned();
        for (old, new) in &self.change {
            assert_eq!(
                text.matches(old.as_str()).count(),
                1,
                "`{old}` must stand once"
            );
            text = text.replace(old.as_str(), new);
        }
        if !self.add.is_empty() {
            text.push_str(&format!("    {}\n", self.add));
        }
        text
    }

    /// What comes out otherwise than it should.
    fn failures(&self, job: &str) -> Vec<String> {
        let (joint, computed) = computed(&self.text(job));
        let differs = |(name, wanted): (&String, &String)| {
            let entry = computed
                .ledger
                .entries()
                .find(|entry| entry.key.to_string() == *name);
            let value = match entry {
                Some(entry) => match entry.value {
                    Ok(si) => Value::Number(si, entry.dimension),
                    Err(_) => Value::Missing,
                },
                None => choice(name, &joint, &computed),
            };
            let (met, got) = match value {
                Value::Missing => (wanted == "missing", "missing".to_owned()),
                Value::Word(word) => (*wanted == word, word),
                Value::Number(si, dimension) => {
                    let wanted = parse_si(wanted, dimension).ok();
                    let off = |wanted: f64| {
                        (si - wanted).abs() <= self.within.unwrap_or(1e-9) * wanted.abs()
                    };
                    (wanted.is_some_and(off), format!("{si} in SI"))
                }
            };
            (!met).then(|| {
                format!(
                    "{:?} {} ({}): {name} is {got}, not {wanted}",
                    self.change, self.add, self.source
                )
            })
        };
        self.gives.iter().filter_map(differs).collect()
    }
}

#[test]
fn every_choice_is_the_one_of_its_source() {
    let mut failures = Vec::new();
    for table in TABLES {
        let table: Table =
            serde_yaml::from_str(table).unwrap_or_else(|error| panic!("{error}\n{table}"));
        for case in &table.cases {
            assert!(!case.source.is_empty() && !case.gives.is_empty());
            failures.extend(case.failures(&table.job));
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn every_limit_has_the_value_of_its_source() {
    let wanted: BTreeMap<String, (String, String)> =
        serde_yaml::from_str(include_str!("choices/limits.yaml")).expect("limits by rule");
    assert_eq!(wanted.len(), LIMITS.len());
    for limit in LIMITS {
        let (value, source) = &wanted[limit.rule];
        let value = parse_si(value, limit.dimension).expect("a value of its dimension");
        assert!(
            (limit.value - value).abs() <= 1e-12 * value,
            "{}: {} ({source})",
            limit.rule,
            limit.value
        );
        let from_memory = source.ends_with("(from memory)");
        assert_eq!(limit.confirmed, !from_memory, "{}: {source}", limit.rule);
    }
}

/// A block that is not listed is made up of others: a stud complete in so many rounds.
#[test]
fn every_block_of_work_takes_its_minutes() {
    let wanted: BTreeMap<String, [f64; 3]> =
        serde_yaml::from_str(include_str!("choices/hours.yaml")).expect("minutes by block");
    let blocks = [
        Block::PermitAndBrief,
        Block::SetUpPump,
        Block::SetUpDriver,
        Block::CleanFaces,
        Block::LubricateStud,
        Block::GasketIn,
        Block::Snug,
        Block::RunBodyDown,
        Block::TorqueByHand,
        Block::TorqueByMultiplier,
        Block::TorqueByHydraulicWrench,
        Block::CheckRound,
        Block::LoosenByHand,
        Block::LoosenByHydraulicWrench,
        Block::DriverOnStud,
        Block::LoosenJackbolt,
        Block::Gaps,
        Block::Stretch,
        Block::Hold,
        Block::Record,
        Block::ClearArea,
    ];
    assert_eq!(wanted.len(), blocks.len());
    for block in blocks {
        let span = block.span();
        let got = [span.low, span.typical, span.high].map(|time| time.si() / 60.0);
        let wanted = wanted[&format!("{block:?}")];
        for (got, wanted) in got.into_iter().zip(wanted) {
            assert!(
                (got - wanted).abs() < 1e-9,
                "{block:?}: {got} for {wanted} min"
            );
        }
    }
}

/// VDI 2230:1986, read in a table that quotes it: ± per cent of the load, with good control and otherwise.
#[test]
fn scatter_is_that_of_the_guideline() {
    let rows = SCATTER_ROWS
        .iter()
        .map(|row| (row.method, row.least, row.greatest));
    let wanted = [
        ("yield_controlled", 0.05, 0.12),
        ("angle_controlled", 0.05, 0.12),
        ("hydraulic_tensioning", 0.09, 0.23),
        ("torque_set_by_test", 0.17, 0.23),
        ("torque_friction_estimated", 0.23, 0.28),
        ("powered_driver", 0.26, 0.43),
    ];
    assert_eq!(rows.collect::<Vec<_>>(), wanted);
}

/// A joint whose stud has this clamped length.
fn with_grip(grip: f64) -> Computed {
    let table: Table = serde_yaml::from_str(TABLES[0]).expect("the table of nuts");
    computed(
        &table
            .job
            .replace("grip: 90 mm", &format!("grip: {grip} mm")),
    )
    .1
}

fn si<Q: Quantity>(computed: &Computed, id: studbook::calc::Id<Q>) -> f64 {
    computed
        .ledger
        .get(id)
        .unwrap_or_else(|| panic!("{} is missing", id.key()))
        .si()
}

/// Half of the computed turn (common practice, no source), down to whole degrees: never farther than that.
#[test]
fn the_first_release_round_is_half_the_turn_and_never_more() {
    let mut inside = 0;
    for step in 0..30 {
        let computed = with_grip(60.0 + 7.0 * f64::from(step));
        let half = si(&computed, ids::TURN).to_degrees() / 2.0;
        let set = si(&computed, ids::RELEASE_SET).to_degrees();
        if (5.0..=45.0).contains(&half) {
            inside += 1;
            assert!((set - set.round()).abs() < 1e-9, "{set}");
            assert!(set <= half + 1e-9 && half < set + 1.0, "{set} of {half}");
        }
    }
    assert!(inside > 10, "{inside}");
}

/// A reading inside the band that is accepted is inside the computed one: its ends are rounded inward to 0.01 mm.
#[test]
fn the_accepted_stretch_is_never_wider_than_the_computed_one() {
    for step in 0..30 {
        let computed = with_grip(60.0 + 7.0 * f64::from(step));
        let mm = |id| si(&computed, id) * 1e3;
        let (least, most) = (mm(ids::LEAST_STRETCH), mm(ids::GREATEST_STRETCH));
        let (from, to) = (mm(ids::ACCEPT_STRETCH_LEAST), mm(ids::ACCEPT_STRETCH_MOST));
        assert!(
            from > least - 1e-6 && from < least + 0.01,
            "{from} of {least}"
        );
        assert!(to < most + 1e-6 && to > most - 0.01, "{to} of {most}");
        assert!((from * 100.0 - (from * 100.0).round()).abs() < 1e-6);
    }
}

/// Four readings up to eight studs, eight above; PCC-1 (from memory).
#[test]
fn gaps_are_read_at_four_or_eight_places() {
    for (studs, places) in [(3, 3), (4, 4), (8, 4), (9, 8), (12, 8), (24, 8), (400, 8)] {
        assert_eq!(gap_positions(studs).len(), places, "{studs} studs");
    }
}

/// No spindle may pass the full value: 1 / (1 + scatter), down to whole per cent; the hand finds something left to turn
/// at 90 % at most (common practice, no source).
#[test]
fn the_level_of_a_driver_is_bounded_by_its_scatter() {
    for (scatter, level) in [
        (0.0, 0.90),
        (0.11, 0.90),
        (0.12, 0.89),
        (0.15, 0.86),
        (0.25, 0.80),
        (0.30, 0.76),
    ] {
        let got = greatest_level(scatter);
        assert!((got - level).abs() < 1e-12, "{scatter}: {got} for {level}");
    }
}

/// A head fits whose spindles divide the jackbolts, in four positions at most; a single spindle is no head (ours).
#[test]
fn a_head_fits_in_four_positions_at_most() {
    let fits = [
        (12, 12, Some(1)),
        (12, 6, Some(2)),
        (12, 4, Some(3)),
        (12, 3, Some(4)),
        (12, 2, None),
        (12, 5, None),
        (4, 1, None),
        (4, 2, Some(2)),
        (12, 0, None),
        (12, 24, None),
    ];
    for (jackbolts, spindles, wanted) in fits {
        assert_eq!(
            positions(jackbolts, spindles),
            wanted,
            "{spindles} on {jackbolts}"
        );
    }
}

/// Common practice, no source: 5° is the least that a crew reads off a paint line, 45° the most of one round.
#[test]
fn a_round_of_release_is_between_what_can_be_read_and_what_is_gentle() {
    assert!((LEAST_STEP - 5.0).abs() < 1e-12 && (GREATEST_STEP - 45.0).abs() < 1e-12);
}
