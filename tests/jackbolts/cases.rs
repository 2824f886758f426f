//! The cases of a separate prototype, each within its own tolerance.

use serde_json::Value;

use studbook::methods::jackbolt::{Record, Springs, State, Step, exact_release, run_all};
use studbook::standards::{jackbolts, symbols as s};

use super::sizes::{Sizes, sized};
use super::springs;

const CASES: &str = include_str!("../cases/jackbolt_rounds.json");

/// One case and what of it did not agree.
struct Case {
    input: Value,
    output: Value,
    tolerance: f64,
    id: String,
    wrong: Vec<String>,
    checked: usize,
}

impl Case {
    fn number(&self, key: &str) -> f64 {
        self.input[key].as_f64().unwrap()
    }

    fn count(&self) -> usize {
        whole(&self.input["n"])
    }

    fn springs(&self) -> Springs {
        springs(
            self.count(),
            self.number("kj"),
            self.number("K"),
            self.number("pitch"),
            self.number("target"),
        )
    }

    /// Figures are printed with nine digits, so one that is nought is held against `size`.
    fn hold(&mut self, what: &str, got: f64, expected: &Value, size: f64) {
        self.checked += 1;
        let expected = expected
            .as_f64()
            .unwrap_or_else(|| panic!("{}: no {what}", self.id));
        if (got - expected).abs() > self.tolerance * expected.abs() + 1e-9 * size {
            self.wrong
                .push(format!("{} {what}: {got} instead of {expected}", self.id));
        }
    }

    fn hold_key(&mut self, key: &str, got: f64) {
        let expected = self.output[key].clone();
        self.hold(key, got, &expected, 0.0);
    }
}

fn whole(value: &Value) -> usize {
    usize::try_from(value.as_u64().unwrap()).unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().unwrap();
    list.iter().map(|value| value.as_f64().unwrap()).collect()
}

#[test]
fn every_case_of_the_prototype() {
    let file: Value = serde_json::from_str(CASES).unwrap();
    assert!(!file["source"].as_str().unwrap().is_empty());
    let cases = file["cases"].as_array().unwrap();
    assert_eq!(cases.len(), 13);
    let mut wrong = Vec::new();
    for case in cases {
        let mut case = Case {
            input: case["input"].clone(),
            output: case["output"].clone(),
            tolerance: case["tol_rel"].as_f64().unwrap(),
            id: case["id"].as_str().unwrap().to_owned(),
            wrong: Vec::new(),
            checked: 0,
        };
        match case.id.rsplit_once('-').unwrap().0 {
            "A-derived" => derived(&mut case),
            "A-geometry" => geometry(&mut case),
            "A-hand" | "A-bulk" => plan(&mut case),
            "A-finish" => finish(&mut case),
            "B-plan" => release_plan(&mut case),
            "B-release" => release(&mut case),
            other => panic!("nobody works cases of kind {other}"),
        }
        assert!(case.checked > 0, "{}", case.id);
        wrong.append(&mut case.wrong);
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn derived(case: &mut Case) {
    let set = case.springs();
    let twenty = 20.0_f64.to_radians();
    let (bound, expected) = (set.deficit_bound(twenty), set.deficit_expected(twenty));
    let own = set.load / (set.turn_one / std::f64::consts::TAU * set.pitch) / 1e3;
    for (key, got) in [
        ("R", set.ring_ratio),
        ("rho", set.load_loss),
        ("S_ii", own),
        ("theta_tot_deg", set.turn_all.to_degrees()),
        ("theta_one_deg", set.turn_one.to_degrees()),
        ("gamma", set.contraction().of_round),
        ("bound20_mean", bound.mean),
        ("bound20_worst", bound.worst),
        ("est20_mean", expected.mean),
        ("est20_worst", expected.worst),
        ("theta_stop_5pct_deg", set.stop_turn(0.05).to_degrees()),
        ("release_free_level_115", set.run_loose_level(1.15)),
        ("release_passes_bound_115", set.release_rounds(1.15) as f64),
    ] {
        case.hold_key(key, got);
    }
}

fn geometry(case: &mut Case) {
    let set = sized(&Sizes {
        stud: case.number("d"),
        length: case.number("L"),
        count: case.count(),
        jackbolt: case.number("dj"),
        free_length: jackbolts::FREE_LENGTHS[1],
        tapped: case.input["end"] == "tapped",
    });
    for (key, got) in [
        ("kj", set.jackbolt / 1e3),
        ("K", set.joint / 1e3),
        ("target_per_jackbolt", set.load),
        ("R", set.ring_ratio),
        ("theta_tot_deg", set.turn_all.to_degrees()),
        ("theta_one_deg", set.turn_one.to_degrees()),
    ] {
        case.hold_key(key, got);
    }
}

fn plan(case: &mut Case) {
    let set = case.springs();
    let steps: Vec<Step> = case.input["plan"]
        .as_array()
        .unwrap()
        .iter()
        .map(|step| {
            let level = step["level"].as_f64().unwrap();
            match step["order"].as_array() {
                Some(order) => Step::one_by_one(order.iter().map(whole).collect(), level),
                None => Step::at_once(super::circle(set.count), level, numbers(&step["spindle"])),
            }
        })
        .collect();
    let passes = case.output["passes"].as_array().unwrap().clone();
    assert_eq!(passes.len(), steps.len());
    for (pass, record) in passes.iter().zip(run_all(&set, &steps)) {
        let name = pass["name"].as_str().unwrap().to_owned();
        hold_record(case, &name, pass, &record, set.load);
    }
}

fn hold_record(case: &mut Case, name: &str, pass: &Value, record: &Record, full: f64) {
    for (key, got) in [
        ("total_pct", record.mean * 100.0),
        ("min_pct", record.least * 100.0),
        ("max_pct", record.greatest * 100.0),
        ("max_turn", record.largest_turn.to_degrees()),
        ("mean_turn", record.mean_turn.to_degrees()),
    ] {
        case.hold(&format!("{name} {key}"), got, &pass[key], 100.0);
    }
    for (index, (turn, load)) in record.turns.iter().zip(&record.loads).enumerate() {
        let turn_of = &pass["turn"][index];
        case.hold(
            &format!("{name} turn {index}"),
            turn.to_degrees(),
            turn_of,
            100.0,
        );
        let load_of = &pass["load"][index];
        case.hold(&format!("{name} load {index}"), load * full, load_of, full);
    }
}

fn finish(case: &mut Case) {
    let set = case.springs();
    let level = case.number("start_fraction");
    let (rounds, turn) = set.angle_finish(level, case.number("limit"));
    case.hold_key("passes", rounds as f64);
    case.hold_key("turn_per_pass_deg", turn.to_degrees());
    let expected = case.output["compensated_single_pass"].clone();
    for (index, share) in set.compensated_round(level).into_iter().enumerate() {
        case.hold("compensated", share, &expected[index], 1.0);
    }
    case.hold_key("passes_to_2pct", set.full_rounds(level, 0.02) as f64);
}

fn release_plan(case: &mut Case) {
    let set = case.springs();
    let limit = case.number("limit");
    let passes = case.output["passes"].as_array().unwrap().clone();
    let rounds = exact_release(&set, limit, 400);
    assert_eq!(rounds.len(), passes.len());
    for (round, pass) in rounds.iter().zip(&passes) {
        match round.angle {
            Some(angle) => case.hold("turn", angle.to_degrees(), &pass["turn"], 1.0),
            None => assert_eq!(pass["turn"], "loose"),
        }
        case.hold("peak", round.peak, &pass["peak"], 1.0);
        case.hold("mean", round.level, &pass["mean"], 1.0);
    }
    case.hold_key("passes_bound", set.release_rounds(limit) as f64);
    let known = [(s::PEAK_LIMIT, limit)];
    let first = set.closed(&jackbolts::RELEASE_TURN_OF, &known);
    case.hold_key("first_turn_closed_deg", first.to_degrees());
}

/// `full` runs each jackbolt loose in turn; `fraction` turns each that still carries back by the angle that takes a
/// share of the full load off it while the others stay.
fn release(case: &mut Case) {
    let set = case.springs();
    let value = case.number("value");
    let passes = case.output["passes"].as_array().unwrap().clone();
    let mut state = State::even(&set, 1.0);
    for pass in &passes {
        let mut peak: f64 = 0.0;
        for index in 0..set.count {
            let loads = state.loads();
            peak = loads.iter().copied().fold(peak, f64::max);
            match case.input["mode"].as_str().unwrap() {
                "full" => state.run_loose(index),
                "fraction" if loads[index] > 0.0 => state.turn(index, -value * set.turn_one),
                "fraction" => {}
                other => panic!("nobody releases by {other}"),
            }
        }
        let loads = state.loads();
        let share = |load: f64| 100.0 * load / set.load;
        let mean = loads.iter().sum::<f64>() / set.count as f64;
        let peak = loads.iter().copied().fold(peak, f64::max);
        let least = loads.iter().copied().fold(f64::INFINITY, f64::min);
        for (key, got) in [("peak_pct", peak), ("mean_pct", mean), ("min_pct", least)] {
            case.hold(key, share(got), &pass[key], 100.0);
        }
    }
}
