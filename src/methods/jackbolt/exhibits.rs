//! What a calculation note shows of the plan of a tensioner: the chart of its rounds, what a crew reads off the mean
//! turn, the stiffness behind both, the rounds, the release; and how the driver compares with hands alone.

use crate::calc::labour::{Span, to_print};
use crate::calc::whole;
use crate::job::DriverInput;
use crate::joint::{Lack, Who};
use crate::methods::Case;
use crate::units::{Angle, Dimension, Duration, Quantity, Torque};
use crate::work::{Chart, Exhibit, Shape, Table, Value};

use super::names::named;
use super::{
    CHECKED_TO, FLAT_RULE, JackboltPlan, LONGEST, Prediction, ReleaseBreach, SHORTEST, ids,
};

/// What studs a shift lack where the job gives no shift.
const NO_SHIFT: Lack = Lack {
    key: "pack.work.shift",
    who: Who::Planner,
};

/// What a note shows; nothing where the tensioner has no plan.
pub fn exhibits(case: &Case<'_>) -> Vec<Exhibit> {
    let Some(plan) = case.computed.plan.jackbolts() else {
        return Vec::new();
    };
    vec![
        chart(case, plan),
        lookup(plan),
        prediction(case, plan),
        rounds(plan),
        release(case, plan),
    ]
}

/// An angle as far as it is read off a line of paint, to a tenth of a degree.
fn tenth(angle: f64) -> Value {
    Value::of(read_off(angle))
}

fn read_off(angle: f64) -> Angle {
    let degrees = Angle::from_si(angle).to_degrees();
    Angle::degrees((degrees * 10.0).round() / 10.0)
}

fn number(value: f64) -> Value {
    Value::Si(value, Dimension::Ratio)
}

fn chart(case: &Case<'_>, plan: &JackboltPlan) -> Exhibit {
    // It must hold at every end of what is not known.
    let own = plan
        .predictions
        .map(|prediction| prediction.stop_turn)
        .least();
    let ends = vec![
        ("practice", Angle::degrees(FLAT_RULE)),
        ("own", read_off(own)),
    ];
    let work = super::work::tighten(case);
    Exhibit::new("rounds_chart", Shape::Chart(Chart::new(&work, ends)))
}

/// Mean turn of the last round and the load still missing, at the worst end.
fn lookup(plan: &JackboltPlan) -> Exhibit {
    let rows = plan.deficit.iter().map(|row| {
        // Rounded up: a crew that reads a little too much missing goes round once more.
        let missing = (row.deficit.greatest() * 100.0 - 1e-9).ceil() / 100.0;
        vec![tenth(row.mean_turn), Value::Percent(missing)]
    });
    let table = Table {
        columns: vec!["turn", "missing"],
        rows: rows.collect(),
    };
    let exhibit = Exhibit::new("lookup", Shape::Strip(table)).note("use", Vec::new());
    with_range(exhibit, plan)
}

/// For which studs the prediction holds, and whether this one lies within what has been checked.
fn with_range(exhibit: Exhibit, plan: &JackboltPlan) -> Exhibit {
    let range = vec![
        ("shortest", number(SHORTEST)),
        ("longest", number(LONGEST)),
        ("checked_to", number(CHECKED_TO)),
    ];
    let exhibit = exhibit.note("range", range);
    if plan.checked {
        exhibit
    } else {
        exhibit.note("range_unchecked", vec![("checked_to", number(CHECKED_TO))])
    }
}

fn prediction(case: &Case<'_>, plan: &JackboltPlan) -> Exhibit {
    let row = |id: &'static str, of: fn(&Prediction) -> Value| {
        let values = plan.predictions.map(of);
        let values = values.all().map(Clone::clone);
        [Value::Word(id)].into_iter().chain(values).collect()
    };
    let rows = vec![
        row("ring_ratio", |it| number(it.ring_ratio)),
        row("contraction", |it| {
            number((it.contraction * 1000.0).round() / 1000.0)
        }),
        row("turn_one", |it| tenth(it.turn_one)),
        row("turn_all", |it| tenth(it.turn_all)),
        row("rounds_needed", |it| Value::Count(it.full_rounds)),
        row("stop_turn", |it| tenth(it.stop_turn)),
        row("flat_mean", |it| Value::Percent(it.flat_rule.mean)),
        row("flat_bound", |it| Value::Percent(it.flat_bound.mean)),
    ];
    let table = Table {
        columns: vec!["quantity", "low", "likely", "high"],
        rows,
    };
    let left = plan
        .predictions
        .map(|it| (1.0 - it.flat_rule.mean).max(0.0));
    let allowed = case.computed.ledger.get(ids::WANTED_DEFICIT);
    let flat = vec![
        ("flat", tenth(FLAT_RULE.to_radians())),
        ("likely", Value::Percent(left.likely)),
        ("most", Value::Percent(left.greatest())),
        ("allowed", Value::Percent(allowed.map_or(0.0, Quantity::si))),
    ];
    let mut exhibit = Exhibit::new("prediction", Shape::Table(table)).note("flat_rule", flat);
    if plan.flat_rule_leaves {
        exhibit = exhibit.note("flat_rule_leaves", Vec::new());
    }
    with_range(exhibit.note("ends", Vec::new()), plan)
}

/// What is set in each round, and what it is predicted to leave.
fn rounds(plan: &JackboltPlan) -> Exhibit {
    let rows = named(plan).into_iter().map(|it| {
        let (name, round) = (it.name, it.last);
        let load = round.predicted.map(|record| Value::Percent(record.mean));
        let turn = round.predicted.map(|record| record.largest_turn);
        let mut row = vec![
            Value::Text(name),
            Value::Percent(round.share),
            Value::of(Torque::from_si(round.torque)),
        ];
        row.extend(load.all().map(Clone::clone));
        row.push(tenth(turn.likely));
        row
    });
    let columns = vec!["round", "share", "torque", "low", "likely", "high", "turn"];
    let table = Table {
        columns,
        rows: rows.collect(),
    };
    Exhibit::new("rounds", Shape::Table(table)).note("loads", Vec::new())
}

fn release(case: &Case<'_>, plan: &JackboltPlan) -> Exhibit {
    let ledger = &case.computed.ledger;
    let rows = (1..)
        .zip(&plan.release.rounds)
        .map(|(number, round): (u16, _)| {
            let travel = ledger.get(ids::RELEASE_ROUND_TRAVEL.at(number));
            let angle = match (round.angle, travel) {
                (Some(angle), Some(travel)) => Value::List(vec![tenth(angle), Value::of(travel)]),
                (Some(angle), None) => tenth(angle),
                (None, _) => Value::Word("loose"),
            };
            let left = round.mean_left.map(|share| Value::Percent(*share));
            let mut row = vec![Value::Text(format!("R{number}")), angle];
            row.extend(left.all().map(Clone::clone));
            row.push(Value::Percent(round.peak));
            row
        });
    let columns = vec!["round", "angle", "low", "likely", "high", "peak"];
    let table = Table {
        columns,
        rows: rows.collect(),
    };
    let limit = vec![
        ("limit", Value::Percent(plan.release.limit)),
        ("all_but_one", Value::Percent(plan.release.all_but_one)),
    ];
    let exhibit = Exhibit::new("release", Shape::Table(table)).note("limit", limit);
    let mut exhibit = match plan.release.breach {
        Some(ReleaseBreach::Peak { .. }) => exhibit.note("passes_limit", Vec::new()),
        Some(ReleaseBreach::Rounds) => exhibit.note("too_many", Vec::new()),
        None => exhibit,
    };
    let first = ids::RELEASE_ROUND_TRAVEL.at(1);
    if let Some(length) = ledger
        .get(ids::LOOSENING_LENGTH)
        .filter(|_| ledger.get(first).is_some())
    {
        exhibit = exhibit.note("travel", vec![("length", Value::of(length))]);
        exhibit.formula = Some(first.key());
    }
    exhibit
}

/// One size of tensioner with its driver and by hand alone, in the plan of a pack; `shift` is the length of a shift.
/// None where no driver is planned.
pub fn comparison(case: &Case<'_>, shift: Option<Duration>) -> Option<Exhibit> {
    let pays = case.computed.plan.driver_pays()?;
    let on_shift = shift.map(|shift| pays.studs_a_shift(shift).map(Value::Count).to_vec());
    let row = vec![
        minutes(pays.set_up.typical),
        with_range_of(pays.with_driver),
        with_range_of(pays.by_hand),
        on_shift.map_or(Value::Missing(NO_SHIFT), Value::List),
        supply(case),
    ];
    let columns = vec!["set_up", "with_driver", "by_hand", "shift", "supply"];
    let table = Table {
        columns,
        rows: vec![row],
    };
    let exhibit = Exhibit::new("driver_pays", Shape::Table(table));
    let Some(by_hand) = case.computed.plan.by_hand_labour() else {
        return Some(exhibit);
    };
    let hours = |time: Duration| Value::of(to_print(time));
    let mut values = vec![
        (
            "with_driver",
            hours(case.computed.tighten_labour.elapsed.typical),
        ),
        ("by_hand", hours(by_hand.elapsed.typical)),
    ];
    if let Some(count) = case.computed.ledger.get(ids::COUNT) {
        values.push(("studs", Value::Count(whole(count.si()))));
    }
    Some(match pays.from {
        Some(from) => {
            values.push(("pays_from", Value::Count(from)));
            exhibit.note("pays", values)
        }
        None => exhibit.note("never_pays", values),
    })
}

fn minutes(time: Duration) -> Value {
    Value::of(Duration::minutes((time.si() / 60.0).round()))
}

/// Typical minutes, then the range.
fn with_range_of(span: Span) -> Value {
    let range = Value::Span(Box::new([minutes(span.low), minutes(span.high)]));
    Value::List(vec![minutes(span.typical), range])
}

/// Batteries or air; what is not known is named.
fn supply(case: &Case<'_>) -> Value {
    let word = Value::Word;
    let ledger = &case.computed.ledger;
    let tool = case.joint.mechanics.tools.driver.as_ref();
    let Some(driver) = tool.and_then(|tool| tool.driver.as_ref()) else {
        return word("supply_unknown");
    };
    match driver.input.value() {
        Some(DriverInput::Battery) => match ledger.get(ids::BATTERIES) {
            Some(count) => Value::List(vec![Value::Count(whole(count.si())), word("batteries")]),
            None => word("batteries_unknown"),
        },
        Some(DriverInput::Pneumatic) => match (driver.flow.value(), ledger.get(ids::AIR)) {
            (Some(flow), Some(volume)) => {
                Value::List(vec![word("air"), Value::of(flow), Value::of(volume)])
            }
            _ => word("air_unknown"),
        },
        Some(DriverInput::Hydraulic) => word("oil"),
        Some(DriverInput::Hand) => word("cranked"),
        None => word("supply_unknown"),
    }
}
