//! What is predicted of a stud with jackbolts: the chart of its rounds, the table from which a crew reads what is still
//! missing, the stiffness behind both, and the rounds that let the stud go.

use crate::document::blocks::Head;
use crate::document::desk::{Cell, Column, Table};
use crate::document::note::{EndAngles, Lookup, Plan, PlanWords, RoundTurn, StepLoad, plan};
use crate::methods::Computed;
use crate::methods::jackbolt::ids;
use crate::methods::jackbolt::{
    Bands, CHECKED_TO, FLAT_RULE, JackboltPlan, LONGEST, Prediction, ReleaseBreach, Round,
    RoundKind, SHORTEST,
};
use crate::units::{Quantity, Torque, digits};
use crate::wording::Values;

use super::super::context::{Context, percent};
use super::passes::formula_in_words;
use super::tables::SMALL_ROW;

/// Steps with their loads, full-value rounds with their turns.
type Drawn = (Vec<StepLoad>, Vec<RoundTurn>);

/// Load and turn after each step; none for other methods.
pub(super) fn chart(context: &Context<'_>, computed: &Computed) -> Option<Plan> {
    let made = computed.plan.jackbolts()?;
    let (steps, rounds) = drawn(made);
    let own = stop_angle(made);
    let values = Values::new()
        .with("flat", tenth(FLAT_RULE))
        .with("own", tenth(own));
    let label = |key: &str| context.label(&format!("note_jackbolt.{key}"));
    let words = PlanWords {
        head: head(context, "chart"),
        alt: label("chart.alt"),
        load: label("chart.load"),
        turn: label("chart.turn"),
        load_legend: label("chart.load_legend"),
        turn_legend: context.list("note_jackbolt.chart.turn_legend", &values),
    };
    let practice = FLAT_RULE;
    plan(words, &steps, &rounds, EndAngles { practice, own })
}

fn head(context: &Context<'_>, part: &str) -> Head {
    Head {
        title: context.label(&format!("note_jackbolt.{part}.title")),
        note: context.label("note_jackbolt.predicted"),
    }
}

/// The stop angle that holds at every end of what is not known, in degrees.
fn stop_angle(made: &JackboltPlan) -> f64 {
    made.predictions
        .map(|prediction| prediction.stop_turn.to_degrees())
        .least()
}

/// The rounds with their names as on the card: all positions of a driver at one level are one step.
fn named(made: &JackboltPlan) -> Vec<(String, &Round)> {
    let mut named = Vec::new();
    let (mut raised, mut driven, mut full) = (0, 0, 0);
    for (index, round) in made.rounds.iter().enumerate() {
        let next = made.rounds.get(index + 1);
        if next.is_some_and(|next| is_same_level(round, next)) {
            continue;
        }
        let (letter, number) = match round.kind {
            RoundKind::Seat => ('C', 0),
            RoundKind::Raise => ('U', counted(&mut raised)),
            RoundKind::Bulk { .. } => ('D', counted(&mut driven)),
            RoundKind::Full => ('C', counted(&mut full)),
        };
        named.push((format!("{letter}{number}"), round));
    }
    named
}

fn drawn(made: &JackboltPlan) -> Drawn {
    let step = |(name, round): &(String, &Round)| {
        let load = round.predicted.map(|record| record.mean * 100.0);
        StepLoad {
            name: name.clone(),
            low: load.least(),
            likely: load.likely,
            high: load.greatest(),
        }
    };
    let turn = |(name, round): &(String, &Round)| {
        let turn = round
            .predicted
            .map(|record| record.largest_turn.to_degrees());
        (round.kind == RoundKind::Full).then(|| RoundTurn {
            name: name.clone(),
            likely: turn.likely,
            high: turn.greatest(),
        })
    };
    let rounds = named(made);
    (
        rounds.iter().map(step).collect(),
        rounds.iter().filter_map(turn).collect(),
    )
}

fn counted(count: &mut usize) -> usize {
    *count += 1;
    *count
}

fn is_same_level(one: &Round, other: &Round) -> bool {
    let is_bulk = |round: &Round| matches!(round.kind, RoundKind::Bulk { .. });
    is_bulk(one) && is_bulk(other) && (one.share - other.share).abs() < 1e-9
}

/// Mean turn of the last round and the load still missing, at the worst end; none for other methods.
pub(super) fn lookup(context: &Context<'_>, computed: &Computed) -> Option<Lookup> {
    let made = computed.plan.jackbolts()?;
    let label = |key: &str| context.label(&format!("note_jackbolt.lookup.{key}"));
    let entries = made.deficit.iter().map(|row| {
        // Rounded up: a crew that reads a little too much missing goes round once more.
        let missing = (row.deficit.greatest() * 100.0 - 1e-9).ceil();
        [tenth(row.mean_turn.to_degrees()), digits(missing)]
    });
    Some(Lookup {
        head: Head {
            title: label("title"),
            note: label("note"),
        },
        labels: ["turn", "missing"].map(label),
        entries: entries.collect(),
        notes: vec![label("use"), range(context, made)],
    })
}

/// For which studs the prediction holds, and whether this one lies within what has been checked.
fn range(context: &Context<'_>, made: &JackboltPlan) -> String {
    let values = Values::new()
        .with("shortest", digits(SHORTEST))
        .with("longest", digits(LONGEST))
        .with("checked_to", digits(CHECKED_TO))
        .with("checked", made.checked);
    context.say("note_jackbolt.range", &values)
}

/// The predictions and the release, behind the chart; empty for other methods.
pub(super) fn tables(context: &Context<'_>, computed: &Computed) -> Vec<Table> {
    let Some(made) = computed.plan.jackbolts() else {
        return Vec::new();
    };
    vec![
        predictions(context, computed, made),
        rounds(context, made),
        release(context, computed, made),
    ]
}

fn close_table(context: &Context<'_>, part: &str, columns: Vec<Column>) -> Table {
    Table {
        row_height: SMALL_ROW,
        ..Table::new(head(context, part), columns)
    }
}

/// Low, likely and high ends.
fn bands(context: &Context<'_>, width: f64) -> impl Iterator<Item = Column> {
    ["low", "likely", "high"]
        .map(|key| Column::new(context.label(&format!("note_jackbolt.{key}")), width).right())
        .into_iter()
}

fn predictions(context: &Context<'_>, computed: &Computed, made: &JackboltPlan) -> Table {
    let label = |key: &str| context.label(&format!("note_jackbolt.prediction.{key}"));
    let columns = [Column::new(label("quantity"), 104.0)]
        .into_iter()
        .chain(bands(context, 24.0));
    let mut table = close_table(context, "prediction", columns.collect());
    let of = |turn: fn(&Prediction) -> String| made.predictions.map(turn);
    let rows: [(&str, Bands<String>); 8] = [
        ("ring_ratio", of(|it| digits(it.ring_ratio))),
        ("contraction", of(|it| thousandth(it.contraction))),
        ("turn_one", made.predictions.map(|it| degrees(it.turn_one))),
        ("turn_all", made.predictions.map(|it| degrees(it.turn_all))),
        ("full_rounds", of(|it| it.full_rounds.to_string())),
        (
            "stop_turn",
            made.predictions.map(|it| degrees(it.stop_turn)),
        ),
        ("flat_mean", of(|it| percent(it.flat_rule.mean))),
        ("flat_bound", of(|it| percent(it.flat_bound.mean))),
    ];
    table.rows = rows
        .into_iter()
        .map(|(key, values)| {
            let values = values.all().map(|value| Cell::text(value.clone()));
            [Cell::text(label(key))].into_iter().chain(values).collect()
        })
        .collect();
    table.notes = vec![
        flat_rule(context, computed, made),
        label("ends"),
        range(context, made),
    ];
    table
}

/// What the rule of 20° alone leaves undone, in one sentence.
fn flat_rule(context: &Context<'_>, computed: &Computed, made: &JackboltPlan) -> String {
    let left = made
        .predictions
        .map(|prediction| (1.0 - prediction.flat_rule.mean).max(0.0));
    let allowed = computed.ledger.get(ids::WANTED_DEFICIT);
    let values = Values::new()
        .with("flat", tenth(FLAT_RULE))
        .with("likely", percent(left.likely))
        .with("most", percent(left.greatest()))
        .with(
            "allowed",
            allowed.map(|share| percent(share.si())).unwrap_or_default(),
        )
        .with("leaves", made.flat_rule_leaves);
    context.say("note_jackbolt.flat_rule", &values)
}

/// What is set in each round, and what it is predicted to leave.
fn rounds(context: &Context<'_>, made: &JackboltPlan) -> Table {
    let label = |key: &str| context.label(&format!("note_jackbolt.rounds.{key}"));
    let columns = [
        Column::new(label("round"), 9.5).strong(),
        Column::new(label("share"), 11.5).right(),
        Column::new(label("torque"), 15.5).right(),
    ]
    .into_iter()
    .chain(bands(context, 12.5))
    .chain([Column::new(label("turn"), 14.5).right()]);
    let mut table = close_table(context, "rounds", columns.collect());
    table.rows = named(made)
        .into_iter()
        .map(|(name, round)| {
            let load = round.predicted.map(|record| percent(record.mean));
            let load = load.all().map(|text| Cell::text(text.clone()));
            let turn = round.predicted.map(|record| record.largest_turn);
            [
                Cell::text(name),
                Cell::text(percent(round.share)),
                Cell::text(context.text(Torque::from_si(round.torque))),
            ]
            .into_iter()
            .chain(load)
            .chain([Cell::text(degrees(turn.likely))])
            .collect()
        })
        .collect();
    table.notes = vec![label("loads")];
    table
}

fn release(context: &Context<'_>, computed: &Computed, made: &JackboltPlan) -> Table {
    let label = |key: &str| context.label(&format!("note_jackbolt.release.{key}"));
    let columns = [
        Column::new(label("round"), 9.5).strong(),
        Column::new(label("angle"), 28.0),
    ]
    .into_iter()
    .chain(bands(context, 11.0))
    .chain([Column::new(label("peak"), 12.5).right()]);
    let mut table = close_table(context, "release", columns.collect());
    let travel = |number: u16| computed.ledger.get(ids::RELEASE_ROUND_TRAVEL.at(number));
    table.rows = (1..)
        .zip(&made.release.rounds)
        .map(|(number, round): (u16, _)| {
            let angle = match (round.angle, travel(number)) {
                (Some(angle), Some(travel)) => {
                    format!("{} · {}", degrees(angle), context.text(travel))
                }
                (Some(angle), None) => degrees(angle),
                (None, _) => label("loose"),
            };
            let left = round.mean_left.map(|share| percent(*share));
            let left = left.all().map(|text| Cell::text(text.clone()));
            [Cell::text(format!("R{number}")), Cell::text(angle)]
                .into_iter()
                .chain(left)
                .chain([Cell::text(percent(round.peak))])
                .collect()
        })
        .collect();
    let breach = match made.release.breach {
        Some(ReleaseBreach::Peak { .. }) => "peak",
        Some(ReleaseBreach::Rounds) => "many",
        None => "",
    };
    let limit = computed.ledger.get(ids::PEAK);
    let values = Values::new()
        .with(
            "limit",
            limit.map(|share| percent(share.si())).unwrap_or_default(),
        )
        .with("all_but_one", percent(made.release.all_but_one))
        .with("breach", breach);
    table.notes = vec![context.say("note_jackbolt.release.limit", &values)];
    let ledger = &computed.ledger;
    let first = ids::RELEASE_ROUND_TRAVEL.at(1).key();
    if let Some(formula) = formula_in_words(context, ledger, first) {
        let length = ledger.get(ids::LOOSENING_LENGTH);
        let values = Values::new().with("formula", formula).with(
            "length",
            length.map(|it| context.text(it)).unwrap_or_default(),
        );
        table
            .notes
            .push(context.say("note_jackbolt.release.travel", &values));
    }
    table
}

/// An angle in rad as it is printed.
fn degrees(angle: f64) -> String {
    format!("{}\u{a0}deg", tenth(angle.to_degrees()))
}

/// To a tenth, as far as an angle is read off a paint line.
fn tenth(value: f64) -> String {
    digits((value * 10.0).round() / 10.0)
}

fn thousandth(value: f64) -> String {
    digits((value * 1000.0).round() / 1000.0)
}
