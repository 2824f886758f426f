//! The table of risks: only what is present at these joints, the gravest first. How likely and how grave people find
//! it comes from the job, or is a box: no number of that kind is ours.

use crate::document::blocks::Head;
use crate::document::build::Context;
use crate::document::build::capital;
use crate::document::build::pack::procedures::Procedures;
use crate::document::build::pack::works::Works;
use crate::document::build::words::NONE;
use crate::document::desk::{Cell, Column, Table};
use crate::document::voice::Voice;
use crate::job::Risk;
use crate::work::{Hazard, Value};
use crate::yaml::entries;

use super::{Risks, own, text};

/// Steps that a row names one by one; of more it names the first and the last.
const MOST_STEPS: usize = 6;

/// The table under its title.
pub(super) fn risks(context: &Context<'_>, works: &Works, procedures: &Procedures) -> Risks {
    let label = |key: &str| context.label(&format!("statement.risks.{key}"));
    let mut table = Table::new(
        Head::default(),
        vec![
            Column::new(label("what"), 36.0).strong(),
            Column::new(label("who"), 21.0),
            Column::new(label("control"), 53.0),
            Column::new(label("steps"), 15.0),
            Column::new(label("owner"), 27.0),
            Column::new(label("before"), 12.0).middle(),
            Column::new(label("after"), 12.0).middle(),
        ],
    );
    table.row_height = 12.0;
    let voice = Voice::new(context);
    table.rows = works
        .hazards()
        .iter()
        .map(|hazard| row(context, &voice, procedures, hazard))
        .collect();
    table.notes = ["boxes", "order", "only"].map(label).to_vec();
    Risks {
        label: "risks".to_owned(),
        title: label("title"),
        line: label("line"),
        table,
    }
}

fn row(
    context: &Context<'_>,
    voice: &Voice<'_>,
    procedures: &Procedures,
    hazard: &Hazard,
) -> Vec<Cell> {
    let risk = said_of(context, hazard);
    let level =
        |given: Option<String>| given.map_or_else(|| Cell::Box(String::new()), Cell::Strong);
    let mut steps: Vec<&str> = Vec::new();
    let mut first = None;
    for (who, number) in procedures.met(hazard.kind) {
        if !steps.contains(&number) {
            steps.push(number);
        }
        first = first.or(Some(who));
    }
    let owner = text(risk.and_then(|it| it.owner.as_ref()));
    // One sees to it: who the job names, else who meets it first.
    let owner = owner.or_else(|| Some(capital(voice.role(first?))));
    vec![
        what(voice, hazard),
        Cell::Text(voice.hazard(hazard, "who").unwrap_or_default()),
        control(voice, hazard, text(risk.and_then(|it| it.control.as_ref()))),
        Cell::Text(match steps.as_slice() {
            [] => NONE.to_owned(),
            [first, .., last] if steps.len() > MOST_STEPS => {
                let ends = [first, last].map(|it| Value::Text((*it).to_owned()));
                voice.value(&Value::Span(Box::new(ends)))
            }
            steps => steps.join(", "),
        }),
        owner.map_or_else(|| Cell::Box(String::new()), Cell::Text),
        level(text(risk.and_then(|it| it.before.as_ref()))),
        level(text(risk.and_then(|it| it.after.as_ref()))),
    ]
}

/// What the job says of a hazard.
fn said_of<'a>(context: &Context<'a>, hazard: &Hazard) -> Option<&'a Risk> {
    let word = hazard.kind.word();
    entries(own(context)?.risks.as_ref())
        .find(|(name, _)| name.get().is_some_and(|name| name.as_str() == word))
        .and_then(|(_, risk)| risk.get())
}

/// Its name over the magnitudes and names that the works give it, and what happens.
fn what(voice: &Voice<'_>, hazard: &Hazard) -> Cell {
    let name = voice.hazard(hazard, "name").unwrap_or_default();
    let harm = voice.hazard(hazard, "risk").unwrap_or_default();
    let given = hazard.values.iter().map(|(_, value)| value.clone());
    let magnitudes = voice.value(&Value::List(given.collect()));
    let below = match magnitudes.is_empty() {
        true => harm,
        false => format!("{magnitudes}: {harm}"),
    };
    Cell::Two([name, capital(&below)])
}

/// What is done against it, and below what holds it and what the job adds.
fn control(voice: &Voice<'_>, hazard: &Hazard, added: Option<String>) -> Cell {
    let line = capital(&voice.hazard(hazard, "line").unwrap_or_default());
    let line = match voice.hazard(hazard, "more") {
        Some(more) => format!("{line} {more}"),
        None => line,
    };
    let held_by = ("held_by", Value::Text(voice.boxed(&hazard.held_by)));
    let held = voice.say(&["statement", "risks", "held_by"], &[held_by]);
    let below = [Some(held), added].into_iter().flatten();
    Cell::Two([line, below.collect::<Vec<_>>().join("; ")])
}
