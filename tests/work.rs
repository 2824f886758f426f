//! What is done to joints, over every method, task and example job: nothing is left without words, nothing is accepted
//! that is not there, every hazard is met, and each of them is there exactly when its condition holds.
//!
//! Source of the thresholds, classes and budgets: common practice, no source, where no other stands beside them.

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

#[path = "work/conditions.rs"]
mod conditions;
#[path = "work/points.rs"]
mod points;
#[path = "work/tensioned.rs"]
mod tensioned;
#[path = "work/words.rs"]
mod words;

use std::path::Path;

use studbook::job;
use studbook::methods::{self, Case, calculate};
use studbook::report::Sources;
use studbook::resolve;
use studbook::work::{Kind, Phase, Priority, Task, Work};

/// The example jobs that can be worked out.
const EXAMPLES: [&str; 7] = [
    "effluent-cooler.yaml",
    "inch-units.yaml",
    "smallest.yaml",
    "starter.yaml",
    "tie-rods.yaml",
    "turn-of-nut.yaml",
    "broken-rule.yaml",
];

/// Most boxes that a crew ticks before the first turn.
const MOST_TICKS: usize = 9;

#[allow(clippy::disallowed_methods, reason = "the test reads an example")]
fn example(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("jobs")
        .join(name);
    std::fs::read_to_string(path).expect("the example is there")
}

/// The works of a job, each with the tag of its joint.
fn works_of(text: &str) -> Vec<(String, Work)> {
    let mut sources = Sources::default();
    let (job, findings) = job::open("job.yaml", text.as_bytes(), &mut sources);
    assert!(findings.is_empty(), "{findings:?}");
    let job = job.expect("a job without findings is there");
    let (joints, findings) = resolve::resolve(&job);
    assert!(findings.is_empty(), "{findings:?}");
    let plan = calculate(&joints);
    let mut works = Vec::new();
    for (index, joint) in joints.iter().enumerate() {
        let group = plan.of(index).expect("every joint is in a group");
        let case = Case {
            joint,
            computed: &group.computed,
        };
        for task in Task::ALL {
            let work = methods::work(&case, task);
            works.extend(work.map(|work| (joint.tag.clone(), work)));
        }
    }
    works
}

/// A job of one joint: a hydraulic or hand torque wrench, the lines of the joint, and what its boundary says.
struct Sample<'a> {
    joint: &'a str,
    studs: &'a str,
    boundary: &'a str,
    tools: &'a str,
    tighten: &'a str,
}

const PLAIN: Sample<'static> = Sample {
    joint: "service: { fluid: water, pressure: 6 bar, temperature: 40 °C }",
    studs: "",
    boundary: "",
    tools: "",
    tighten: "method: hand torque wrench, with: TW",
};

const BY_OIL: &str = "with: HW, hydraulics: [P, G], back_up: BS, \
    reaction: { on: flange rim, member: flange rim }";

impl Sample<'_> {
    fn text(&self) -> String {
        let Self {
            joint,
            studs,
            boundary,
            tools,
            tighten,
        } = self;
        format!(
            "studbook: 1
pack: {{ title: Sample }}
lubricants:
  paste: {{ thread_friction: 0.13, bearing_friction: 0.13, source: trial 1 }}
gaskets:
  sheet: {{ kind: graphite sheet, inner: 300 mm, outer: 340 mm, thickness: 2 mm }}
tools:
  TW: {{ kind: hand torque wrench, serial: \"1\", range: [100 N·m, 1000 N·m], mass: 5 kg, calibration: {{ certificate: C-1, due: 2027-12-31 }} }}
  HW:
    kind: hydraulic torque wrench
    serial: \"2\"
    mass: 8 kg
    rating: 700 bar
    calibration: {{ certificate: C-2, due: 2027-12-31, points: [[50 bar, 80 N·m], [700 bar, 1200 N·m]] }}
  P: {{ kind: pump, rating: 700 bar, mass: 20 kg }}
  G: {{ kind: gauge, gauge_top: 1000 bar, calibration: {{ certificate: C-3, due: 2027-12-31 }} }}
  BS: {{ kind: back-up spanner, across_flats: 36 mm }}
{tools}
isolations:
  I-1:
    boundary: a pot
{boundary}
joints:
  - tag: A-1
    studs: {{ count: 12, thread: M24, grade: A193 B7, length: 150 mm, grip: 90 mm{studs} }}
    lubricant: paste
    target: {{ stress: 300 MPa }}
    tighten: {{ {tighten} }}
    {joint}
"
        )
    }

    fn work(&self, task: Task) -> Work {
        let works = works_of(&self.text());
        let found = works.into_iter().find(|(_, work)| work.task == task);
        found.expect("the method has the task").1
    }
}

fn all_examples() -> Vec<(String, Work)> {
    EXAMPLES
        .iter()
        .flat_map(|name| works_of(&example(name)))
        .collect()
}

/// Everything that a joint can have at once, by hand and hydraulic.
fn crowded() -> Vec<(String, Work)> {
    let joint = "service: { fluid: acid gas, pressure: 40 bar, temperature: 200 °C }
    isolation: I-1
    seat: tapped hole
    gasket: sheet
    hazards: [toxic, flammable, oxygen, inert gas, confined space, corrosive, pyrophoric, hazardous fibre, height, rotating machine, hot work]
    checks: { stretch: [1, 4] }
    hold_points: [{ point: H7, text: lift seen, accept: clear, by: supervisor }, { point: W8, text: paint seen }]
    numbering: { first: top, direction: clockwise }";
    let boundary = "    points: [{ tag: V-1, kind: vent }, { tag: M-1, kind: motor }]
    energies: [{ kind: pneumatic, what: a ram, control: on blocks }, { kind: gravity, what: a cover }]
    prove_again_every: 4 h";
    let cold = "service: { fluid: cold gas, pressure: 4 bar, temperature: -40 °C }
    isolation: I-1";
    let heavy = "  LB: { kind: loosening bar, mass: 60 kg }";
    let rising = "with: TW, pattern: circular, repeat_after: 4 h";
    let samples = [
        Sample {
            joint,
            boundary,
            tighten: BY_OIL,
            ..PLAIN
        },
        Sample {
            joint,
            boundary,
            tighten: "with: [HW, HW2], hydraulics: [P, G], repeat_after: 4 h",
            ..PLAIN
        },
        Sample {
            joint,
            boundary,
            tools: heavy,
            tighten: "with: TW, back_up: BS }\n    loosen: { with: LB",
            ..PLAIN
        },
        Sample {
            joint: cold,
            studs: ", washers: none",
            tools: heavy,
            tighten: rising,
            ..PLAIN
        },
        Sample {
            joint: "loosen: { with: TW2 }",
            tools: "  TW2: { kind: hand torque wrench, range: [100 N·m, 1000 N·m] }",
            ..PLAIN
        },
        Sample {
            joint: "service: { pressure: 0 bar }
    numbering: { first: north, direction: anticlockwise }",
            ..PLAIN
        },
        Sample {
            joint: "hazards: [toxic]",
            tighten: "method: hand torque wrench",
            ..PLAIN
        },
    ];
    let second = "  HW2: { kind: hydraulic torque wrench, mass: 8 kg, rating: 700 bar, checks: [Pin in], calibration: { certificate: C-4, due: 2027-12-31, points: [[50 bar, 80 N·m], [700 bar, 1200 N·m]] } }";
    let texts = samples.iter().enumerate().map(|(at, sample)| {
        let text = sample.text();
        if at == 1 {
            text.replace("\nisolations:", &format!("{second}\nisolations:"))
        } else {
            text
        }
    });
    texts.flat_map(|text| works_of(&text)).collect()
}

fn all() -> Vec<(String, Work)> {
    let mut all = all_examples();
    all.extend(crowded());
    all.extend(tensioned::all().iter().flat_map(|text| works_of(text)));
    all
}

#[test]
fn few_boxes_stand_before_the_first_turn() {
    for (tag, work) in all() {
        let before = [Phase::Before, Phase::Prepare];
        let ticks = work.steps.iter().filter(|step| {
            step.kind == Kind::Tick
                && step.priority == Priority::Must
                && before.contains(&step.phase)
        });
        let ids: Vec<&str> = ticks.map(|step| step.id).collect();
        assert!(ids.len() <= MOST_TICKS, "{tag}, {:?}: {ids:?}", work.task);
    }
}

#[test]
fn every_hazard_is_met_or_stands_behind() {
    for (tag, work) in all() {
        for hazard in &work.hazards {
            let is_met = work
                .steps
                .iter()
                .any(|step| step.meets.contains(&hazard.kind));
            let kind = hazard.kind;
            assert!(
                is_met || hazard.is_behind,
                "{tag}, {:?}: {kind:?}",
                work.task
            );
        }
    }
}

#[test]
fn a_kind_of_hazard_stands_once_and_the_gravest_first() {
    for (tag, work) in all() {
        let order: Vec<_> = work.hazards.iter().map(|it| (it.signal, it.kind)).collect();
        assert!(order.is_sorted(), "{tag}: {order:?}");
        let mut once = order.clone();
        once.dedup();
        assert_eq!(once, order, "{tag}");
    }
}

#[test]
fn passes_bear_the_names_of_their_order() {
    let work = PLAIN.work(Task::Tighten);
    let names: Vec<&str> = work.settings().map(|(_, it)| it.name.as_str()).collect();
    assert_eq!(names, ["P0", "P1", "P2", "P3", "P4"]);
    let stop = work.stop.as_ref().expect("the circle ends by a rule");
    assert_eq!((stop.step, stop.last.as_deref()), ("round", Some("6")));
    let work = PLAIN.work(Task::Loosen);
    let names: Vec<&str> = work.settings().map(|(_, it)| it.name.as_str()).collect();
    assert_eq!(names, ["R1", "R2", "R3"]);
}
