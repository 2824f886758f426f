//! What a note and the plan of a pack show.

use studbook::methods::jackbolt::exhibits::{comparison, exhibits};
use studbook::units::{Angle, Dimension, Duration, Quantity};
use studbook::wording::Wording;
use studbook::work::{Chart, Exhibit, Shape, Table, Task, Value};

use super::tensioned::{all, by_hand, larger_wrench};
use super::{ANCHORS, RODS, plan, with_case, work};

fn shown(text: &str, tag: &str) -> Vec<Exhibit> {
    with_case(text, tag, exhibits)
}

fn named<'a>(all: &'a [Exhibit], id: &str) -> &'a Exhibit {
    let found = all.iter().find(|exhibit| exhibit.id == id);
    found.unwrap_or_else(|| panic!("no {id}"))
}

fn table(exhibit: &Exhibit) -> &Table {
    match &exhibit.shape {
        Shape::Table(table) | Shape::Strip(table) => table,
        Shape::Chart(_) => panic!("{} is drawn", exhibit.id),
    }
}

fn chart(exhibit: &Exhibit) -> &Chart {
    match &exhibit.shape {
        Shape::Chart(chart) => chart,
        _ => panic!("{} is a table", exhibit.id),
    }
}

/// The chart shows what the card says of each setting, and turns of full-value rounds alone.
#[test]
fn the_chart_is_a_view_of_the_settings() {
    let exhibits = shown(&larger_wrench(), RODS);
    let chart = chart(named(&exhibits, "rounds_chart"));
    let rods = work(&larger_wrench(), RODS, Task::Tighten);
    let expected: Vec<_> = rods
        .settings()
        .filter_map(|(_, setting)| Some((setting.name.clone(), setting.expected?.load)))
        .collect();
    let drawn: Vec<_> = chart
        .loads
        .iter()
        .map(|it| (it.name.clone(), it.load))
        .collect();
    assert_eq!(drawn, expected);
    let names: Vec<&str> = drawn.iter().map(|(name, _)| name.as_str()).collect();
    assert!(names.starts_with(&["C0", "D1", "D2", "C1"]), "{names:?}");
    assert_eq!(chart.turns.len(), plan(&larger_wrench(), RODS).full_rounds);
    assert!(
        chart
            .turns
            .iter()
            .all(|it| it.name.starts_with('C') && it.likely.si() <= it.high.si())
    );
    // The common stop angle is 20° (common practice, no source).
    assert_eq!(chart.ends[0], ("practice", Angle::degrees(20.0)));
}

/// A crew that reads a little too much missing goes round once more: per cent are whole and rounded up.
#[test]
fn the_look_up_errs_to_the_safe_side() {
    for tag in [RODS, ANCHORS] {
        let exhibits = shown(&larger_wrench(), tag);
        let exhibit = named(&exhibits, "lookup");
        assert!(matches!(exhibit.shape, Shape::Strip(_)));
        let planned = plan(&larger_wrench(), tag);
        let rows = &table(exhibit).rows;
        assert_eq!(rows.len(), planned.deficit.len());
        for (row, exact) in rows.iter().zip(&planned.deficit) {
            let [Value::Si(turn, Dimension::Angle), Value::Percent(missing)] = row[..] else {
                panic!("{row:?}");
            };
            assert!((turn - exact.mean_turn).abs() < 1e-9);
            let worst = exact.deficit.greatest();
            assert!(missing >= worst - 1e-9 && missing < worst + 0.01);
        }
    }
}

#[test]
fn rounds_and_release_have_a_row_each() {
    let exhibits = shown(&larger_wrench(), RODS);
    let planned = plan(&larger_wrench(), RODS);
    let release = named(&exhibits, "release");
    assert_eq!(table(release).rows.len(), planned.release.rounds.len());
    assert!(release.formula.is_some());
    // Positions at one level are one row: seat, two levels, full rounds.
    let rounds = table(named(&exhibits, "rounds"));
    assert_eq!(rounds.rows.len(), 3 + planned.full_rounds);
    assert_eq!(rounds.rows[0][0], Value::Text("C0".into()));
    let prediction = table(named(&exhibits, "prediction"));
    assert_eq!(prediction.rows.len(), 8);
}

/// Setting a driver up takes 25 min, the range of a stud stands behind what is typical (common practice, no source).
#[test]
fn the_driver_is_compared_with_hands_alone() {
    with_case(&larger_wrench(), ANCHORS, |case| {
        let exhibit =
            comparison(case, Some(Duration::minutes(600.0))).expect("a driver is planned");
        let rows = &table(&exhibit).rows;
        assert_eq!(rows.len(), 1);
        assert_eq!(rows[0][0], Value::of(Duration::minutes(25.0)));
        let Value::List(with_driver) = &rows[0][1] else {
            panic!("{:?}", rows[0][1]);
        };
        let [Value::Si(typical, _), Value::Span(range)] = &with_driver[..] else {
            panic!("{with_driver:?}");
        };
        let [Value::Si(low, _), Value::Si(high, _)] = &**range else {
            panic!("{range:?}");
        };
        assert!(low < typical && typical < high);
        let pays = case
            .computed
            .plan
            .driver_pays()
            .expect("a driver is planned");
        let studs = pays
            .studs_a_shift(Duration::minutes(600.0))
            .map(Value::Count);
        assert_eq!(rows[0][3], Value::List(studs.to_vec()));
        let (note, _) = &exhibit.notes[0];
        assert_eq!(
            *note,
            if pays.from.is_some() {
                "pays"
            } else {
                "never_pays"
            }
        );
        let without = comparison(case, None).expect("a driver is planned");
        assert!(matches!(table(&without).rows[0][3], Value::Missing(_)));
    });
    with_case(&by_hand(), ANCHORS, |case| {
        assert_eq!(comparison(case, None), None)
    });
}

/// Titles, heads, words in cells and notes; each note is given what it asks for, but for the formula.
#[test]
fn every_exhibit_has_its_words() {
    let wording = Wording::embedded("en").expect("English is embedded");
    let mut seen = 0;
    for text in all() {
        for tag in [RODS, ANCHORS] {
            let mut exhibits = shown(&text, tag);
            exhibits.extend(with_case(&text, tag, |case| comparison(case, None)));
            for exhibit in &exhibits {
                seen += 1;
                check_words(&wording, exhibit);
            }
        }
    }
    assert!(seen > 50);
}

fn check_words(wording: &Wording, exhibit: &Exhibit) {
    let id = |part: &str| format!("work.exhibit.{}.{part}", exhibit.id);
    let has = |part: &str| assert!(wording.has(&id(part)), "{}", id(part));
    has("title");
    match &exhibit.shape {
        Shape::Chart(chart) => chart.ends.iter().for_each(|(end, _)| has(end)),
        Shape::Table(table) | Shape::Strip(table) => {
            table.columns.iter().for_each(|column| has(column));
            for row in &table.rows {
                assert_eq!(row.len(), table.columns.len(), "{}", exhibit.id);
                for value in row {
                    match value {
                        Value::Word(word) => has(word),
                        Value::List(values) => values.iter().for_each(|value| {
                            if let Value::Word(word) = value {
                                has(word);
                            }
                        }),
                        _ => {}
                    }
                }
            }
        }
    }
    for (note, values) in &exhibit.notes {
        has(note);
        for name in wording.variables(&id(note)) {
            let is_given = values.iter().any(|(known, _)| *known == name);
            assert!(
                is_given || (name == "formula" && exhibit.formula.is_some()),
                "{}: {name}",
                id(note)
            );
        }
    }
}
