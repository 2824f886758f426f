//! Properties of all formulas and tables at once. Figures from outside stand in `tests/cases`.

use std::collections::BTreeSet;

use super::*;
use crate::units::{Length, Quantity};

#[test]
fn every_formula_yields_what_it_says() {
    let wrong: Vec<String> = all_formulas()
        .into_iter()
        .filter_map(|formula| formula.check_dimensions().err())
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn every_formula_is_named_once_and_knows_where_it_holds() {
    let mut ids = BTreeSet::new();
    for formula in all_formulas() {
        assert!(ids.insert(formula.id), "{} twice", formula.id);
        assert!(!formula.source.is_empty(), "{} has no source", formula.id);
        assert!(validity::ALL.contains(&formula.validity), "{}", formula.id);
        assert!(symbols::ALL.contains(&formula.symbol), "{}", formula.id);
        for input in &formula.inputs {
            assert!(
                symbols::ALL.contains(input),
                "{} in {}",
                input.name,
                formula.id
            );
            assert_ne!(*input, formula.symbol, "{} is made from itself", formula.id);
        }
    }
}

#[test]
fn every_symbol_and_meaning_is_there_once() {
    let mut names = BTreeSet::new();
    let mut meanings = BTreeSet::new();
    for symbol in symbols::ALL {
        assert!(names.insert(symbol.name), "{} twice", symbol.name);
        assert!(meanings.insert(symbol.meaning), "{} twice", symbol.meaning);
    }
}

#[test]
fn torque_and_load_are_each_other_backwards() {
    let thread = Thread::parse("M48x5").unwrap();
    for form in TorqueFormula::ALL {
        let mut inputs = vec![
            (symbols::THREAD_FRICTION, 0.13),
            (symbols::BEARING_FRICTION, 0.11),
            (symbols::BEARING_DIAMETER, 0.0635),
            (symbols::NUT_FACTOR, 0.17),
        ];
        inputs.extend(thread.inputs());
        let load = 508e3;
        inputs.push((symbols::LOAD, load));
        let torque = form.torque().value_with(&inputs);
        let thread_torque = form
            .thread_torque()
            .map(|formula| formula.value_with(&inputs));
        let back = form.loosening_torque().value_with(&inputs);
        inputs.push((symbols::TORQUE, torque));
        let again = form.load().value_with(&inputs);
        assert!((again / load - 1.0).abs() < 1e-12, "{}", form.name());
        assert!(back < torque && back > 0.0, "{}", form.name());
        assert!(
            thread_torque.is_none_or(|part| part > 0.0 && part < torque),
            "{}",
            form.name()
        );
    }
}

#[test]
fn a_torque_formula_is_chosen_by_its_name() {
    for form in TorqueFormula::ALL {
        assert_eq!(TorqueFormula::parse(form.name()), Ok(form));
    }
    assert_eq!(
        TorqueFormula::parse("iso16047"),
        Ok(TorqueFormula::Iso16047)
    );
    assert_eq!(
        TorqueFormula::parse("VDI 2232"),
        Err(vec!["VDI 2230".to_owned()])
    );
}

#[test]
fn designations_have_one_printed_spelling() {
    for (typed, printed) in [
        ("M48x5", "M48×5"),
        ("M48", "M48×5"),
        (" m48 X 5 ", "M48×5"),
        ("M64×4", "M64×4"),
        ("M20*2.5-6g", "M20×2.5"),
        ("M160x6", "M160×6"),
        ("1 1/8-8UN", "1 1/8-8UN"),
        ("1-1/8-8 UN", "1 1/8-8UN"),
        ("1 1/8 8UN", "1 1/8-8UN"),
        ("1 1/8-8", "1 1/8-8UN"),
        ("1.125-8 UN-2A", "1 1/8-8UN"),
        ("1 1/8 in-7 UNC", "1 1/8-7 UNC"),
        ("3/4-10 UNC", "3/4-10 UNC"),
        ("3/4-10UNC-2A", "3/4-10 UNC"),
        ("3/4-16", "3/4-16 UNF"),
        ("3/4 UNF", "3/4-16 UNF"),
        ("2 1/2-8UN", "2 1/2-8UN"),
        ("2-4 1/2", "2-4 1/2 UNC"),
        ("2-4.5 UNC", "2-4 1/2 UNC"),
        ("1-8", "1-8 UNC"),
        ("1-8UN", "1-8UN"),
    ] {
        let read = Thread::parse(typed).map(|thread| thread.designation);
        assert_eq!(read.as_deref(), Ok(printed), "{typed}");
    }
}

#[test]
fn every_known_thread_reads_its_own_designation() {
    for thread in Thread::all() {
        assert_eq!(Thread::parse(&thread.designation), Ok(thread));
    }
}

#[test]
fn an_unknown_thread_is_told_what_there_is() {
    assert_eq!(
        Thread::parse("M48x2.5"),
        Err(ThreadError::UnknownPitch {
            text: "M48x2.5".to_owned(),
            known: ["M48×5", "M48×4", "M48×3", "M48×2", "M48×1.5"]
                .map(str::to_owned)
                .to_vec(),
        })
    );
    assert_eq!(
        Thread::parse("M47x5"),
        Err(ThreadError::UnknownSize {
            text: "M47x5".to_owned(),
            near: ["M45×4.5", "M48×5", "M50×3"].map(str::to_owned).to_vec(),
        })
    );
    assert!(
        matches!(Thread::parse("M72"), Err(ThreadError::PitchMissing { known, .. }) if known[0] == "M72×6")
    );
    assert_eq!(
        Thread::parse("1 1/8 in"),
        Err(ThreadError::PitchMissing {
            text: "1 1/8 in".to_owned(),
            known: ["1 1/8-7 UNC", "1 1/8-12 UNF", "1 1/8-8UN"]
                .map(str::to_owned)
                .to_vec(),
        })
    );
    assert!(matches!(
        Thread::parse("1 1/8-9"),
        Err(ThreadError::UnknownPitch { .. })
    ));
    assert!(matches!(
        Thread::parse("2 5/16-8UN"),
        Err(ThreadError::UnknownSize { .. })
    ));
    for text in [
        "",
        "M",
        "Mx5",
        "M48x",
        "M48x5x430",
        "M-48",
        "M48x5 left",
        "Minf",
        "MNaNx1",
        "bolt",
        "/",
        "1/0-8",
        "9/8-8",
        "1 1/8-8UN left",
        "3/4-10-UNX",
        "M1e2x6",
        "1 2 3 4",
        "M\u{663}x1",
    ] {
        assert!(
            matches!(Thread::parse(text), Err(ThreadError::Unreadable { .. })),
            "{text:?}"
        );
    }
}

#[test]
fn the_inch_and_the_metric_area_are_never_swapped() {
    // The wrong constant is 1.9 % off at 1-8; published: 0.606 in² (Shigley, Table 8-2).
    let inch = Thread::parse("1-8 UNC").unwrap().stress_area().si() / (0.0254 * 0.0254);
    assert!((inch - 0.606).abs() < 0.0005, "{inch}");
    let metric = Thread::parse("M24").unwrap().stress_area().si() * 1e6;
    assert!((metric - 353.0).abs() < 0.5, "{metric}");
}

fn mpa(grade: &str, thread: &str) -> Result<(f64, f64), MaterialError> {
    let strength = strength(grade, &Thread::parse(thread).unwrap())?;
    Ok((
        (strength.tensile.si() / 1e6).round(),
        (strength.yield_strength.si() / 1e6).round(),
    ))
}

#[test]
fn a_band_edge_belongs_to_the_smaller_diameters() {
    // API 6A prints 2 1/2 in at 52.5 ksi and 2 5/8 in at 47.5 ksi, half of yield: the edge has the higher strength.
    assert_eq!(mpa("A193 B7", "2 1/2-8UN"), Ok((862.0, 724.0)));
    assert_eq!(mpa("A193 B7", "2 5/8-8UN"), Ok((793.0, 655.0)));
    assert_eq!(mpa("A193 B7", "M64"), Ok((860.0, 720.0)));
    assert_eq!(mpa("A193 B7", "M68"), Ok((795.0, 655.0)));
    assert_eq!(mpa("A193 B7", "M110x6"), Ok((690.0, 515.0)));
    // ISO 898-1, Table 3: 8.8 at 16 mm and above it are two rows.
    assert_eq!(mpa("8.8", "M16"), Ok((800.0, 640.0)));
    assert_eq!(mpa("8.8", "M18"), Ok((830.0, 660.0)));
    assert!(
        matches!(mpa("8.8", "M42"), Err(MaterialError::OutsideBands { bands, .. }) if bands.len() == 2)
    );
    assert!(matches!(
        mpa("L7", "3-8UN"),
        Err(MaterialError::OutsideBands { .. })
    ));
}

#[test]
fn a_grade_is_known_by_its_usual_spellings() {
    for typed in [
        "A193 B7",
        "ASTM A193 B7",
        "A193-B7",
        "B7",
        "a193m b7",
        "SA-193 B7",
        "ASTM A193M Grade B7",
    ] {
        assert_eq!(mpa(typed, "1-8"), Ok((862.0, 724.0)), "{typed}");
    }
    for typed in ["8.8", "ISO 898-1 8.8"] {
        assert_eq!(mpa(typed, "M20"), Ok((830.0, 660.0)), "{typed}");
    }
    for typed in ["A193 B8 Class 2", "B8 cl. 2", "B8 Cl.2", "A193 B8 class2"] {
        assert_eq!(mpa(typed, "3/4-10"), Ok((862.0, 689.0)), "{typed}");
    }
    assert_eq!(mpa("A2-70", "M20"), Ok((700.0, 450.0)));
}

#[test]
fn an_unknown_grade_is_told_its_neighbours() {
    let near = |typed| match mpa(typed, "M20") {
        Err(MaterialError::UnknownGrade { near, .. }) => near,
        other => panic!("{other:?}"),
    };
    assert!(near("A193 B77").contains(&"A193 B7".to_owned()));
    assert!(near("8.9").iter().any(|name| name == "8.8"));
    assert!(near("").is_empty());
    assert!(
        matches!(mpa("B8", "M20"), Err(MaterialError::Ambiguous { choices, .. }) if choices == ["A193 B8 Class 1", "A193 B8 Class 2"])
    );
}

#[test]
fn what_is_converted_or_from_memory_is_never_confirmed() {
    let found = |grade, thread| strength(grade, &Thread::parse(thread).unwrap()).unwrap();
    assert!(found("A193 B7", "M48").confirmed);
    assert!(!found("A193 B7", "M48").converted);
    let converted = found("A193 B16", "M64");
    assert!(converted.converted && !converted.confirmed);
    assert_eq!(
        converted.band, "d ≤ 2.5 in",
        "M64 stands for the edge of 2 1/2 in"
    );
    assert!(!found("A320 L43", "2-8UN").confirmed);
    let open = found("A540 B24 Class 3", "4-8UN");
    assert!(open.limits_unknown && !open.confirmed);
}

#[test]
fn nuts_and_holes_are_found_by_diameter() {
    // ISO 4032: M14 has 21 mm across flats, not the 22 mm of the older DIN series.
    let nut = iso_4032::nut(Length::mm(14.0)).unwrap();
    assert!((nut.across_flats.to_mm() - 21.0).abs() < 1e-9);
    assert!(iso_4032::nut(Length::mm(70.0)).is_none());
    assert!(astm_f436::washer(Length::inch(1.625)).is_none());
    assert!(
        (astm_f436::washer(Length::inch(1.0))
            .unwrap()
            .inner
            .to_inch()
            - 1.125)
            .abs()
            < 1e-12
    );
    assert!(!iso_273::medium_hole(Length::mm(48.0)).unwrap().1);
    assert!(iso_273::medium_hole(Length::mm(16.0)).unwrap().1);
}

#[test]
fn bands_of_a_grade_never_overlap() {
    for thread in Thread::all() {
        for grade in materials::grades() {
            let holding = |metric| materials::rows_holding(&grade, &thread, metric);
            assert!(holding(true) <= 1, "{grade} {}", thread.designation);
            assert!(holding(false) <= 1, "{grade} {}", thread.designation);
        }
    }
}
