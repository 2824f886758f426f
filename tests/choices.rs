//! Every default, threshold, class and direction of rounding has a case that fails when it is changed, at both sides of
//! each threshold. The tables in `tests/choices` say what comes out and where that comes from.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

#[path = "choices/bounds.rs"]
mod bounds;

use std::collections::BTreeMap;

use serde::Deserialize;
use studbook::calc::labour::Block;
use studbook::calc::{Common, PassKind};
use studbook::joint::{Fact, Joint, LIMITS, needed_engagement};
use studbook::methods::Computed;
use studbook::report::Sources;
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
        "wrench" => match chosen.turning.as_slice() {
            [] => Value::Missing,
            tools => {
                let names: Vec<&str> = tools.iter().map(|tool| tool.name.as_str()).collect();
                Value::Word(names.join(", "))
            }
        },
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
