//! When each caution speaks: a joint that makes it speak, and one at its threshold that does not.
//!
//! Source of the temperatures: common practice, no source. Masses: the filters of the British guidance on manual
//! handling, from memory.

use studbook::work::{HazardKind, Signal, Task, Value, Work};

use super::{BY_OIL, PLAIN, Sample};
use HazardKind::*;
use Task::{Loosen, Recheck, Tighten};

fn joint(joint: &str, task: Task) -> Work {
    Sample { joint, ..PLAIN }.work(task)
}

#[track_caller]
fn speaks(kind: HazardKind, task: Task, of: &str) {
    assert!(joint(of, task).has(kind), "{kind:?} is silent: {of}");
}

#[track_caller]
fn is_silent(kind: HazardKind, task: Task, of: &str) {
    assert!(!joint(of, task).has(kind), "{kind:?} speaks: {of}");
}

const WATER: &str = "service: { fluid: water, pressure: 6 bar }";
const EMPTY: &str = "service: { pressure: 0 bar }";

#[test]
fn what_can_hold_pressure() {
    for kind in [Pressure, HotBolting] {
        for task in Task::ALL {
            speaks(kind, task, WATER);
            speaks(kind, task, "service: { pressure: 0.1 bar }");
            speaks(kind, task, "service: { fluid: water, pressure: 0 bar }");
            // Of which nothing is said, anything may be true.
            speaks(kind, task, "seat: through bolts");
            is_silent(kind, task, EMPTY);
        }
    }
    speaks(TrappedPocket, Loosen, WATER);
    is_silent(TrappedPocket, Loosen, EMPTY);
    is_silent(TrappedPocket, Tighten, WATER);
    speaks(LeakTest, Tighten, WATER);
    is_silent(LeakTest, Tighten, EMPTY);
    is_silent(LeakTest, Loosen, WATER);
}

fn behind(work: &Work) -> Vec<HazardKind> {
    let behind = work.hazards.iter().filter(|it| it.is_behind);
    behind.map(|it| it.kind).collect()
}

#[test]
fn zero_pressure_is_never_said_to_stand_behind() {
    for of in ["service: { fluid: water, pressure: 0 bar }", EMPTY] {
        for task in Task::ALL {
            let work = joint(of, task);
            for hazard in &work.hazards {
                let contents = hazard.values.iter().filter(|(name, _)| *name == "contents");
                for (_, value) in contents {
                    assert_eq!(*value, Value::List(vec![Value::Text("water".to_owned())]));
                }
            }
        }
    }
}

#[test]
fn a_joint_of_which_no_energy_is_named_says_so() {
    for of in ["seat: through bolts", EMPTY] {
        assert_eq!(behind(&joint(of, Loosen)), [NotKnown], "{of}");
    }
    assert_eq!(behind(&joint(WATER, Loosen)), [Pressure]);
    is_silent(NotKnown, Loosen, "danger: spring of the hanger");
    let turning = "service: { pressure: 0 bar }\n    hazards: [rotating machine]";
    assert_eq!(behind(&joint(turning, Loosen)), [Machine]);
    // Where the job says in words what is there, the load in the studs is the rest.
    let said = "service: { pressure: 0 bar }\n    danger: press on blocks";
    assert_eq!(behind(&joint(said, Loosen)), [StudInLine]);
}

fn with(hazard: &str) -> String {
    format!("{WATER}\n    gasket: sheet\n    hazards: [{hazard}]")
}

#[test]
fn named_hazards_speak_in_their_tasks() {
    let cases: [(&str, HazardKind, &[Task]); 13] = [
        ("toxic", Toxic, &[Loosen, Tighten, Recheck]),
        ("flammable", Flammable, &[Loosen, Tighten, Recheck]),
        ("hydrogen", Flammable, &[Loosen, Tighten, Recheck]),
        ("inert gas", InertGas, &[Loosen, Tighten, Recheck]),
        ("oxygen", Oxygen, &[Loosen, Tighten, Recheck]),
        ("confined space", ConfinedSpace, &[Loosen, Tighten, Recheck]),
        ("rotating machine", Machine, &[Loosen, Tighten, Recheck]),
        ("corrosive", Corrosive, &[Loosen]),
        ("steam", Corrosive, &[Loosen]),
        ("pyrophoric", Pyrophoric, &[Loosen, Tighten]),
        ("hazardous fibre", Fibre, &[Loosen, Tighten]),
        ("hot work", HotWork, &[Loosen, Tighten, Recheck]),
        ("height", Weather, &[Loosen, Tighten, Recheck]),
    ];
    for (word, kind, tasks) in cases {
        for task in Task::ALL {
            let work = joint(&with(word), task);
            assert_eq!(work.has(kind), tasks.contains(&task), "{word}, {task:?}");
            is_silent(kind, task, &with("past leak"));
        }
    }
}

fn at(temperature: &str) -> String {
    format!("service: {{ fluid: oil, pressure: 6 bar, temperature: {temperature} }}")
}

fn heat(temperature: &str) -> Option<Signal> {
    let work = joint(&at(temperature), Loosen);
    let found = work.hazards.iter().find(|it| it.kind == Heat);
    found.map(|it| it.signal)
}

/// Above 60 °C a surface burns at a touch, above 120 °C through a glove.
#[test]
fn hot_surfaces() {
    assert_eq!(heat("60 °C"), None);
    assert_eq!(heat("60.5 °C"), Some(Signal::Caution));
    assert_eq!(heat("120 °C"), Some(Signal::Caution));
    assert_eq!(heat("120.5 °C"), Some(Signal::Warning));
    is_silent(Heat, Tighten, &at("200 °C"));
    speaks(Heat, Recheck, &at("200 °C"));
}

/// Below -10 °C skin sticks to steel.
#[test]
fn cold_surfaces() {
    for task in Task::ALL {
        is_silent(Cold, task, &at("-10 °C"));
        speaks(Cold, task, &at("-10.5 °C"));
    }
}

#[test]
fn a_surface_is_read_where_it_was_not_usual_or_is_not_known() {
    let read = |of: &str| joint(of, Loosen).step("cool").is_some();
    assert!(read(WATER) && read(&at("61 °C")));
    assert!(!read(&at("60 °C")) && !read(&at("-10 °C")));
    assert!(joint(&at("-11 °C"), Loosen).step("warm").is_some());
}

fn heavy(mass: &str) -> Work {
    let tools = format!("  LB: {{ kind: loosening bar, mass: {mass} }}");
    let sample = Sample {
        tools: &tools,
        tighten: "with: TW }\n    loosen: { with: LB",
        ..PLAIN
    };
    sample.work(Loosen)
}

/// One person lifts 25 kg, two lift 50 kg; above that it hangs on gear.
#[test]
fn weights() {
    assert!(!heavy("25 kg").has(Handling) && heavy("25.1 kg").has(Handling));
    assert!(!heavy("50 kg").has(HungLoad) && heavy("50.1 kg").has(HungLoad));
    speaks(DroppedObject, Tighten, &with("height"));
    is_silent(DroppedObject, Tighten, WATER);
    let no_mass = Sample {
        joint: &with("height"),
        tighten: "method: hand torque wrench",
        ..PLAIN
    };
    let work = works_without_mass(&no_mass);
    assert!(!work.has(DroppedObject) && work.has(Height));
}

fn works_without_mass(sample: &Sample<'_>) -> Work {
    let text = sample.text().replace("mass: 5 kg, ", "");
    let mut works = super::works_of(&text).into_iter();
    let found = works.find(|(_, work)| work.task == Tighten);
    found.expect("the method tightens").1
}

#[test]
fn tools_under_oil() {
    let oil = Sample {
        tighten: BY_OIL,
        ..PLAIN
    };
    for task in Task::ALL {
        let (by_oil, by_hand) = (oil.work(task), PLAIN.work(task));
        for kind in [Oil, Hose, ReactionArm, Noise, Electrical] {
            assert!(by_oil.has(kind) && !by_hand.has(kind), "{kind:?}, {task:?}");
        }
    }
}

#[test]
fn every_joint_has_load_in_its_studs_and_an_order() {
    for task in Task::ALL {
        speaks(StudInLine, task, WATER);
    }
    for kind in [
        LastFasteners,
        LookAlike,
        SuddenRelease,
        Fragments,
        TurnedTwice,
    ] {
        speaks(kind, Loosen, WATER);
        is_silent(kind, Tighten, WATER);
    }
    speaks(AfterBreak, Tighten, WATER);
    is_silent(AfterBreak, Loosen, WATER);
    for kind in [Lubricant, OneLubricant] {
        speaks(kind, Tighten, WATER);
        is_silent(kind, Loosen, WATER);
    }
}

#[test]
fn energies_of_the_boundary_are_held_before_the_first_turn() {
    let boundary = "    points: [{ tag: M-1, kind: motor }]
    energies: [{ kind: gravity, what: counterweight, control: on its pin }]";
    let sample = Sample {
        joint: "service: { pressure: 0 bar }\n    isolation: I-1",
        boundary,
        ..PLAIN
    };
    let work = sample.work(Loosen);
    assert_eq!(behind(&work), [Machine, Drive]);
    for id in ["held", "part", "try", "safe"] {
        assert!(work.step(id).is_some(), "{id}");
    }
    // Without a drive there is no start to be tried.
    let held = joint(
        "hazards: [rotating machine]\n    service: { pressure: 0 bar }",
        Loosen,
    );
    assert!(held.step("try").is_none() && held.step("held").is_some());
}
