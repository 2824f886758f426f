//! One sheet: the works on the joints of a crew and a day, as they are told before the first nut.

use crate::document::blocks::{Badge, Head};
use crate::document::build::furniture::{bare_furniture, sealed};
use crate::document::build::pack::itp::members;
use crate::document::build::pack::works::Works;
use crate::document::build::{Context, capital};
use crate::document::desk::BigValue;
use crate::document::pack::WriteIn;
use crate::document::voice::Voice;
use crate::job::{Crew, Emergency};
use crate::joint::Who;
use crate::units::{Date, Printed};
use crate::work::{Kind, Task, Value};
use crate::yaml::{At, entries};

use super::{Talk, Told};

/// Hazards that are told with their line: as many as a crew keeps in mind, common practice.
const GRAVEST: usize = 6;
/// Least number of lines for names, and how many stay empty for those who come later.
const NAMES: usize = 8;
const LATER: usize = 4;

/// The sheet of some joints, by their places.
pub(super) fn talk(
    context: &Context<'_>,
    day: Option<Date>,
    crew: Option<&str>,
    joints: &[usize],
) -> Talk {
    let works = Works::of_joints(context, joints.iter().copied());
    let label = |key: &str| context.label(&format!("talk.{key}"));
    let head = |key: &str| Head {
        title: label(&format!("{key}_head.title")),
        note: label(&format!("{key}_head.note")),
    };
    let write_in = |key: &str, width| WriteIn {
        label: label(&format!("box.{key}")),
        width,
    };
    let (gravest, others) = hazards(context, &works);
    let people = people(context, crew);
    let planner = || context.say1("missing.short", "who", context.who(Who::Planner));
    let values = crate::wording::Values::new()
        .with("crew", crew.map_or_else(planner, str::to_owned))
        .with("day", day.map_or_else(planner, |day| day.to_string()));
    let who = context.say("talk.who", &values);
    let mut talk = Talk {
        furniture: bare_furniture(context, &label("document")),
        bookmark: who.clone(),
        word: Badge {
            word: label("word"),
            outlined: true,
        },
        title: equipment(context, joints),
        joints: tags(context, joints),
        crew: who,
        status: String::new(),
        boxes: vec![
            write_in("time", 40.0),
            write_in("place", 46.0),
            write_in("permit", 40.0),
            write_in("given", 44.0),
        ],
        hazards_head: head("hazards"),
        gravest,
        others_label: label("others"),
        others,
        new_today: label("new_today"),
        numbers_head: head("numbers"),
        numbers: numbers(context, &works),
        stop: label("stop"),
        after_stop: after_stop(context),
        asked_head: head("asked"),
        asked: ["stand", "finished", "call"]
            .map(|key| label(&format!("ask.{key}")))
            .to_vec(),
        heard_head: head("heard"),
        heard: names(people),
    };
    let code = context.code(&talk);
    talk.furniture = sealed(context, talk.furniture, &code);
    talk.status = context.status();
    talk
}

/// Each piece of equipment once.
fn equipment(context: &Context<'_>, joints: &[usize]) -> String {
    let joints = joints.iter().filter_map(|index| context.joints.get(*index));
    let named = joints.map(|joint| joint.identity.equipment.get().unwrap_or(&joint.tag));
    let mut once: Vec<&str> = Vec::new();
    for name in named {
        if !once.contains(&name.as_str()) {
            once.push(name);
        }
    }
    members(context, &once)
}

fn tags(context: &Context<'_>, joints: &[usize]) -> String {
    let joints = joints.iter().filter_map(|index| context.joints.get(*index));
    let tags: Vec<&str> = joints.map(|joint| joint.tag.as_str()).collect();
    members(context, &tags)
}

/// The gravest with their lines, and the names of the rest.
fn hazards(context: &Context<'_>, works: &Works) -> (Vec<Told>, Vec<String>) {
    let voice = Voice::new(context);
    let all = works.hazards();
    let name = |hazard| voice.hazard(hazard, "name").unwrap_or_default();
    let gravest = all.iter().take(GRAVEST).map(|hazard| Told {
        name: name(hazard),
        line: capital(&voice.hazard(hazard, "line").unwrap_or_default()),
    });
    (
        gravest.collect(),
        all.iter().skip(GRAVEST).map(name).collect(),
    )
}

/// The first number of the gravest hazard that has one, what is set at most, and the next number of a hazard.
fn numbers(context: &Context<'_>, works: &Works) -> Vec<BigValue> {
    let voice = Voice::new(context);
    let big = |label: String, printed: Printed| BigValue {
        label,
        value: printed.value,
        unit: printed.unit.to_owned(),
        line: String::new(),
    };
    let mut numbers: Vec<BigValue> = works
        .hazards()
        .iter()
        .filter_map(|hazard| {
            let mut values = hazard.values.iter();
            let printed = values.find_map(|(_, value)| number_in(&voice, value))?;
            let label = voice
                .hazard(hazard, "magnitude")
                .or_else(|| voice.hazard(hazard, "name"))?;
            Some(big(label, printed))
        })
        .take(2)
        .collect();
    let set = match highest_setting(&voice, works) {
        Some(printed) => big(context.label("talk.set"), printed),
        None => BigValue {
            label: context.label("talk.set"),
            value: context.label("work.bound.on_card"),
            unit: String::new(),
            line: String::new(),
        },
    };
    numbers.insert(numbers.len().min(1), set);
    numbers
}

/// The number of a value, or the first one of a list.
fn number_in(voice: &Voice<'_>, value: &Value) -> Option<Printed> {
    match value {
        Value::List(values) => values.iter().find_map(|value| number_in(voice, value)),
        Value::Span(ends) => voice.number(&ends[1]),
        value => voice.number(value),
    }
}

/// What the last setting of today's first tightening shows at most.
fn highest_setting(voice: &Voice<'_>, works: &Works) -> Option<Printed> {
    let work = works.merged.iter().find(|it| it.task == Task::Tighten)?;
    let mut from_last = work.steps.iter().rev();
    from_last.find_map(|step| match &step.kind {
        Kind::Setting(setting) if !setting.further => {
            let merged = step.values.iter().find(|(name, _)| *name == "set");
            let value = merged.map_or_else(|| setting.set.value(), |(_, value)| value.clone());
            number_in(voice, &value)
        }
        _ => None,
    })
}

/// Who starts again, whom to call, where to meet; what nobody says is a blank.
fn after_stop(context: &Context<'_>) -> String {
    let emergency = context.job.statement.as_ref().and_then(At::get);
    let emergency = emergency.and_then(|it| it.emergency.as_ref()?.get());
    let roles = context.pack().and_then(|pack| pack.roles.as_ref()?.get());
    let in_charge = roles.and_then(|roles| roles.in_charge.as_ref()?.get());
    let blank = |who: Who| context.say1("talk.blank", "who", context.who(who));
    let of = |pick: fn(&Emergency) -> Option<String>| emergency.and_then(pick);
    let call = of(|it| Some(it.call.as_ref()?.get()?.to_string()));
    let muster = of(|it| Some(it.muster.as_ref()?.get()?.to_string()));
    let values = crate::wording::Values::new()
        .with(
            "who",
            in_charge.map_or_else(|| blank(Who::Planner), |name| name.to_string()),
        )
        .with("call", call.unwrap_or_else(|| blank(Who::Operator)))
        .with("muster", muster.unwrap_or_else(|| blank(Who::Operator)));
    context.say("talk.after_stop", &values)
}

/// Lead and members of a crew.
fn people(context: &Context<'_>, crew: Option<&str>) -> Vec<String> {
    let named = entries(context.job.crews.as_ref()).find_map(|(name, of): (_, &At<Crew>)| {
        (name.get()?.as_str() == crew?).then(|| of.get())?
    });
    let Some(named) = named else {
        return Vec::new();
    };
    let members = named.members.as_ref().and_then(At::get);
    let members = members.into_iter().flatten().filter_map(At::get);
    let lead = named.lead.get();
    lead.into_iter()
        .chain(members)
        .map(ToString::to_string)
        .collect()
}

/// The people and room for those who come later, in pairs of columns.
fn names(mut people: Vec<String>) -> Vec<String> {
    let lines = (people.len() + LATER).max(NAMES);
    people.resize(lines.next_multiple_of(2), String::new());
    people
}
