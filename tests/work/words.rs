//! Every step has its words, every word its step, and every value that words ask for is given.

use std::collections::BTreeSet;

use studbook::wording::Wording;
use studbook::work::{
    Bound, HazardKind, Kind, Phase, Priority, Role, Section, Setting, Step, Value, Work,
};

use super::all;

fn english() -> Wording {
    Wording::embedded("en").expect("English is embedded")
}

/// The id of a field of a step: the method's own words, else those that methods share.
fn found(wording: &Wording, method: &str, step: &str, field: &str) -> Option<String> {
    let id = |group: &str| format!("work.step.{group}.{step}.{field}");
    [method, "common"]
        .into_iter()
        .map(id)
        .find(|id| wording.has(id))
}

/// The fields without which a step cannot be printed.
fn needed(step: &Step) -> &'static [&'static str] {
    let is_on_card = step.priority != Priority::PackOnly;
    match &step.kind {
        Kind::Act => &["do"],
        Kind::Tick if is_on_card => &["card", "do"],
        Kind::Tick => &["do"],
        Kind::Setting(_) => &["card", "do"],
        Kind::Reading(reading) if reading.after.is_empty() => &["box"],
        Kind::Reading(_) => &["box", "short"],
        Kind::Point(_) => &["sign"],
        Kind::Decision if is_on_card => &["card", "when", "do"],
        Kind::Decision => &["when", "do"],
    }
}

/// Values that a view adds to those of a step.
fn added(step: &Step) -> &'static [&'static str] {
    match &step.kind {
        Kind::Setting(Setting { share: Some(_), .. }) => &["name", "set", "share"],
        Kind::Setting(_) => &["name", "set"],
        _ => &[],
    }
}

#[test]
fn every_step_has_its_words_and_what_they_ask_for() {
    let wording = english();
    for (tag, work) in all() {
        for step in &work.steps {
            for field in needed(step) {
                let there = found(&wording, work.method, step.id, field).is_some();
                assert!(
                    there,
                    "{tag}: `{}.{}` has no `{field}`",
                    work.method, step.id
                );
            }
            for field in ["card", "do", "when", "box", "short", "sign", "record"] {
                let Some(id) = found(&wording, work.method, step.id, field) else {
                    continue;
                };
                for name in wording.variables(&id) {
                    let is_given = step.values.iter().any(|(known, _)| *known == name);
                    let is_added = added(step).contains(&name.as_str());
                    assert!(is_given || is_added, "{tag}: `{id}` asks for `{name}`");
                }
            }
        }
    }
}

#[test]
fn every_hazard_has_its_words_and_what_they_ask_for() {
    let wording = english();
    for kind in HazardKind::ALL {
        for field in ["line", "risk"] {
            let id = format!("work.hazard.{}.{field}", kind.key());
            assert!(wording.has(&id), "{id}");
        }
    }
    for (tag, work) in all() {
        for hazard in &work.hazards {
            for field in ["danger", "line", "more", "risk"] {
                let id = format!("work.hazard.{}.{field}", hazard.kind.key());
                let is_printed = field != "danger" || hazard.is_behind;
                assert!(
                    !hazard.is_behind || field != "danger" || wording.has(&id),
                    "{id}"
                );
                for name in wording.variables(&id).iter().filter(|_| is_printed) {
                    let is_given = hazard.values.iter().any(|(known, _)| known == name);
                    assert!(is_given, "{tag}: `{id}` asks for `{name}`");
                }
            }
        }
    }
}

/// A line of a caution stands beside its word on a card.
#[test]
fn lines_of_cautions_are_short() {
    let wording = english();
    for kind in HazardKind::ALL {
        let text = wording
            .label(&format!("work.hazard.{}.line", kind.key()))
            .to_owned();
        assert!(text.chars().count() <= 105, "{kind:?}: {text}");
    }
}

const fn bound_key(bound: &Bound) -> &'static str {
    match bound {
        Bound::AtMost(_) => "at_most",
        Bound::AtLeast(_) => "at_least",
        Bound::Below(_) => "below",
        Bound::Between(..) => "between",
        Bound::Zero => "none",
        Bound::Is(_) => "is",
        Bound::Words => "words",
    }
}

#[test]
fn every_limit_key_and_fact_has_its_words() {
    let wording = english();
    for (tag, work) in all() {
        let stop = work.stop.iter().flat_map(|stop| &stop.parts);
        for limit in work.steps.iter().flat_map(|step| &step.accept).chain(stop) {
            let whole = format!("work.limit.{}.{}", limit.id, bound_key(&limit.bound));
            let plain = format!("work.limit.{}", limit.id);
            assert!(wording.has(&whole) || wording.has(&plain), "{tag}: {whole}");
        }
        for key in &work.keys {
            let has = |field: &str| wording.has(&format!("work.key.{}.{field}", key.id));
            // What stands below it, or what it is where it stands as the second value of another.
            let is_said = has("label") && (has("words") || has("second"));
            assert!(is_said, "{tag}: work.key.{}", key.id);
        }
        for (fact, _) in &work.facts {
            assert!(wording.has(&format!("work.fact.{fact}")), "{tag}: {fact}");
        }
    }
}

/// Every word that a value names, in lists too.
fn words_of(value: &Value, found: &mut BTreeSet<&'static str>) {
    match value {
        Value::Word(word) => {
            found.insert(word);
        }
        Value::List(values) => values.iter().for_each(|value| words_of(value, found)),
        _ => {}
    }
}

fn words_in(work: &Work, found: &mut BTreeSet<&'static str>) {
    for step in &work.steps {
        for (_, value) in &step.values {
            words_of(value, found);
        }
        for limit in &step.accept {
            if let Bound::Is(value) = &limit.bound {
                words_of(value, found);
            }
        }
        match &step.kind {
            Kind::Reading(reading) => {
                for value in reading.rows.iter().chain(&reading.columns) {
                    words_of(value, found);
                }
            }
            Kind::Setting(setting) => words_of(&setting.set.value(), found),
            _ => {}
        }
    }
    for hazard in &work.hazards {
        words_of(&hazard.held_by, found);
        for (_, value) in &hazard.values {
            words_of(value, found);
        }
    }
}

#[test]
fn every_word_that_a_value_names_is_there() {
    let wording = english();
    let mut found = BTreeSet::new();
    for (_, work) in all() {
        words_in(&work, &mut found);
    }
    for word in &found {
        assert!(wording.has(&format!("work.word.{word}")), "{word}");
    }
    for word in wording.children("work.word") {
        assert!(
            found.contains(word.as_str()),
            "nobody says `work.word.{word}`"
        );
    }
}

#[test]
fn no_step_of_the_wording_is_unused() {
    let wording = english();
    let works = all();
    for group in wording.children("work.step") {
        for id in wording.children(&format!("work.step.{group}")) {
            let is_used = works.iter().any(|(_, work)| {
                let is_of = group == "common" || group == work.method;
                is_of && work.steps.iter().any(|step| step.id == id)
            });
            assert!(is_used, "no method has the step `{group}.{id}`");
        }
    }
}

#[test]
fn no_limit_of_the_wording_is_unused() {
    let wording = english();
    let works = all();
    for id in wording.children("work.limit") {
        let is_used = works.iter().any(|(_, work)| {
            let stop = work.stop.iter().flat_map(|stop| &stop.parts);
            let mut limits = work.steps.iter().flat_map(|step| &step.accept).chain(stop);
            limits.any(|limit| limit.id == id)
        });
        assert!(is_used, "nothing is limited by `work.limit.{id}`");
    }
}

#[test]
fn every_role_phase_and_section_has_a_word() {
    let wording = english();
    let mut ids = Vec::new();
    for (_, work) in all() {
        for step in &work.steps {
            ids.push(format!("work.role.{}", step.who.key()));
            ids.push(format!("work.phase.{}", step.phase.key()));
            if let Kind::Point(point) = &step.kind {
                ids.push(format!("work.role.{}", point.signs.key()));
                for attendance in point.attendance {
                    ids.push(format!("work.attendance.{}.letter", attendance.key()));
                }
            }
        }
        for (_, reading) in work.readings() {
            ids.push(format!("work.section.{}", reading.section.key()));
        }
    }
    ids.push(format!("work.role.{}", Role::ThirdParty.key()));
    ids.push(format!("work.phase.{}", Phase::Stop.key()));
    ids.push(format!("work.section.{}", Section::Tools.key()));
    for id in ids {
        assert!(wording.has(&id), "{id}");
    }
}
