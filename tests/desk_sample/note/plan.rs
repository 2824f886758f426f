//! The chart of a plan of rounds and its table to read off, for a note of a made-up tensioner. The
//! numbers are plausible and only for the look.

#![allow(dead_code, reason = "each test file uses its part of the samples")]

use studbook::document::note::{EndAngles, Lookup, Note, PlanWords, RoundTurn, StepLoad, plan};

use super::super::head;

/// The note with a plan of as many full-value rounds.
pub(crate) fn note(rounds: usize) -> Note {
    Note {
        plan: plan(words(), &loads(rounds), &turns(rounds), ENDS),
        lookup: Some(lookup()),
        ..super::note()
    }
}

const ENDS: EndAngles = EndAngles {
    practice: 20.0,
    own: 5.6,
};

fn words() -> PlanWords {
    PlanWords {
        head: head("Predicted loads and turns", "predicted, not measured"),
        alt: "load of the stud after each step, turn of the jackbolts in each round".into(),
        load: "Stud load after the step, % of full value".into(),
        turn: "Largest turn in the round, deg".into(),
        load_legend: "dot: likely · bar: low to high over the stiffness that is not measured"
            .into(),
        turn_legend: vec![
            "broken: common practice, 20 deg".into(),
            "whole: stop angle of this stud, 5.6 deg".into(),
        ],
    }
}

fn step(name: &str, likely: f64, spread: f64) -> StepLoad {
    StepLoad {
        name: name.into(),
        low: likely - spread,
        likely,
        high: likely + spread * 0.7,
    }
}

fn share(round: usize, contraction: f64) -> f64 {
    (1..=round).map(|_| contraction).product()
}

fn loads(rounds: usize) -> Vec<StepLoad> {
    let full = (1..=rounds).map(|round| {
        let missing = 31.0 * share(round, 0.74);
        step(&format!("C{round}"), 100.0 - missing, 1.0 + missing * 0.25)
    });
    [step("C0", 4.0, 2.0), step("D1", 69.0, 8.0)]
        .into_iter()
        .chain(full)
        .collect()
}

fn turns(rounds: usize) -> Vec<RoundTurn> {
    let turn = |round: usize| {
        let likely = 33.0 * share(round - 1, 0.72);
        RoundTurn {
            name: format!("C{round}"),
            likely,
            high: likely * 1.3,
        }
    };
    (1..=rounds).map(turn).collect()
}

fn lookup() -> Lookup {
    let entries = [
        ("2", "2"),
        ("4", "3"),
        ("6", "5"),
        ("8", "7"),
        ("10", "9"),
        ("12", "10"),
        ("15", "13"),
        ("20", "17"),
    ];
    Lookup {
        head: head(
            "What the mean turn of the last round says",
            "valid from the second round on",
        ),
        labels: [
            "mean turn in the last round, deg".into(),
            "load still missing, %".into(),
        ],
        entries: entries
            .map(|(turn, missing)| [turn.into(), missing.into()])
            .to_vec(),
        notes: vec![
            "Predicted from stiffness, not measured. A stretch reading outranks it.".into(),
        ],
    }
}
