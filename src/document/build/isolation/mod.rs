//! The isolation and pressure-release sheet of one boundary.

mod back;
mod facts;
mod points;
mod steps;

use crate::document::blocks::Head;
use crate::document::blocks::{Badge, Running};
use crate::document::desk::PageWords;
use crate::document::isolation::{
    IsolationFooter, IsolationIdentity, IsolationSheet, Labelled, STEPS_ROOM, Sketch,
};
use crate::document::qr;
use crate::job::Isolation;
use crate::joint::Joint;
use crate::report::{Finding, Place, Severity};
use crate::wording::Values;
use crate::yaml::At;

use super::context::{Context, Made};
use super::furniture::page_words;

/// One boundary of the job and how its sheet is issued.
#[derive(Clone, Debug)]
pub struct Boundary<'a> {
    /// Its number in the job.
    pub name: &'a str,
    /// What the job says of it.
    pub isolation: &'a Isolation,
    /// How other pages of the same PDF refer to it.
    pub label: String,
    /// File name of its picture among the files of the PDF, where the job gives one.
    pub picture: Option<String>,
    /// Whether it is a part of the work pack, whose pages it then counts too.
    pub in_pack: bool,
}

/// The sheet of a boundary, with its content code.
pub fn isolation(context: &Context<'_>, boundary: &Boundary<'_>) -> Made<IsolationSheet> {
    let behind = joints_behind(context.joints, boundary.name);
    let running = context.running(&context.label("document.isolation"));
    let sheet = IsolationSheet {
        label: boundary.label.clone(),
        bookmark: format!("{} {}", boundary.name, boundary_words(boundary)),
        running: Running {
            right: String::new(),
            ..running
        },
        footer: bare_footer(context, boundary),
        draft: None,
        identity: identity(context, boundary, &behind),
        papers: papers(context),
        contents: facts::contents(context, boundary.isolation),
        force: facts::force(context, boundary.isolation),
        sketch: sketch(context, boundary),
        points: points::table(context, boundary.isolation),
        proof: steps::proof(context, boundary.isolation),
        return_to_service: back::page(context, boundary.isolation, &behind),
    };
    seal(context, boundary, sheet)
}

/// All joints that name a boundary, in the order of the job.
pub fn joints_behind<'a>(joints: &'a [Joint], boundary: &str) -> Vec<&'a Joint> {
    let names = |joint: &&Joint| {
        joint
            .work
            .isolation
            .get()
            .is_some_and(|name| name == boundary)
    };
    joints.iter().filter(names).collect()
}

/// Rule D14 for one sheet: steps that are higher than their page.
pub fn isolation_room_findings(sheet: &IsolationSheet, place: Option<Place>) -> Vec<Finding> {
    let height = sheet.proof.height();
    if height <= STEPS_ROOM {
        return Vec::new();
    }
    vec![
        Finding::rule("D14", Severity::Error, place)
            .on(sheet.bookmark.clone())
            .with("card", sheet.identity.number.clone())
            .with("field", sheet.proof.head.title.clone())
            .with("text", String::new())
            .with("got", format!("{height:.0} mm"))
            .with("limit", format!("{STEPS_ROOM:.0} mm")),
    ]
}

/// Gives the sheet its code, and with it everything that changes from revision to revision.
fn seal(
    context: &Context<'_>,
    boundary: &Boundary<'_>,
    mut sheet: IsolationSheet,
) -> Made<IsolationSheet> {
    let code = context.code(&sheet);
    let number = Values::new()
        .with("number", context.number())
        .with("revision", context.revision_name());
    let sign = format!("{} {} {code}", context.number(), context.revision_name()).to_uppercase();
    sheet.running.right = context.identification();
    sheet.draft = context.card_draft();
    sheet.footer = IsolationFooter {
        number: context.say("footer.number", &number),
        code: code.clone(),
        issued: context.say1("footer.issued", "date", context.date()),
        note: printed_note(context, boundary.name),
        qr: qr::svg(&sign),
        ..sheet.footer
    };
    Made {
        content: sheet,
        code,
    }
}

/// The foot without what the seal fills in.
fn bare_footer(context: &Context<'_>, boundary: &Boundary<'_>) -> IsolationFooter {
    let own_pages = page_words(context);
    let of_pack = || PageWords {
        before: format!("{} ", context.label("isolation.pack_page")),
        ..page_words(context)
    };
    IsolationFooter {
        number: String::new(),
        code_label: context.label("footer.content"),
        code: String::new(),
        issued: String::new(),
        note: String::new(),
        own_pages,
        pages: boundary.in_pack.then(of_pack),
        qr: String::new(),
    }
}

/// The note on printed copies: with the last day of validity where the job gives one, else with the
/// day from which the permit of this boundary holds.
fn printed_note(context: &Context<'_>, name: &str) -> String {
    let valid = context
        .pack()
        .and_then(|pack| pack.print_valid.as_ref())
        .and_then(At::get);
    if let Some(date) = valid {
        return context.say1("footer.valid_until", "date", date.to_string());
    }
    let mut permits = context.job.permits_of(name);
    let from = permits.find_map(|permit| permit.from.as_ref()?.get());
    let date = from.map(ToString::to_string).unwrap_or_default();
    context.say1("footer.printed", "permit_date", date)
}

fn boundary_words<'a>(boundary: &Boundary<'a>) -> &'a str {
    boundary
        .isolation
        .boundary
        .get()
        .map_or("", |words| words.as_str())
}

fn identity(
    context: &Context<'_>,
    boundary: &Boundary<'_>,
    behind: &[&Joint],
) -> IsolationIdentity {
    let badge = |id: &str| Badge {
        word: context.label(id),
        outlined: true,
    };
    let tags: Vec<&str> = behind.iter().map(|joint| joint.tag.as_str()).collect();
    let tags = match tags.as_slice() {
        [first, .., last] if tags.len() > 3 => format!("{first} … {last}"),
        tags => tags.join(", "),
    };
    let given = |text: Option<&At<_>>| -> String {
        let text: Option<&crate::yaml::Text<24>> = text.and_then(At::get);
        text.map(|text| text.as_str().to_owned())
            .unwrap_or_default()
    };
    let line = Values::new()
        .with("count", behind.len())
        .with("joints", tags)
        .with("drawing", drawing(context, boundary.isolation))
        .with("permit", given(boundary.isolation.permit.as_ref()))
        .with(
            "certificate",
            given(boundary.isolation.certificate.as_ref()),
        );
    let class = behind
        .iter()
        .filter_map(|joint| joint.mechanics.class.value())
        .min();
    IsolationIdentity {
        number: boundary.name.to_owned(),
        boundary: boundary_words(boundary).to_owned(),
        line: context.say("isolation.joints_line", &line),
        badges: [
            badge("word.isolate"),
            badge("word.prove"),
            badge("word.return"),
        ],
        class: match class {
            Some(class) => context.say1("card.class", "class", class.word()),
            None => context.label("card.class_unknown"),
        },
        pages: ["isolation.page_1", "isolation.page_2", "isolation.page_3"]
            .map(|id| context.label(id)),
        continued: context.label("isolation.points_go_on"),
    }
}

fn drawing(context: &Context<'_>, isolation: &Isolation) -> String {
    let Some(drawing) = isolation.drawing.as_ref().and_then(At::get) else {
        return String::new();
    };
    let number = drawing.number.get().map_or("", |number| number.as_str());
    let revision = drawing
        .revision
        .as_ref()
        .and_then(At::get)
        .map_or("", |it| it.as_str());
    let values = Values::new()
        .with("number", number)
        .with("revision", revision);
    context.say("isolation.drawing", &values)
}

/// A box with its label and its number, for the radio.
fn numbered(context: &Context<'_>, number: usize, key: &str, width: f64) -> Labelled {
    Labelled {
        number: number.to_string(),
        label: context.label(&format!("isolation.box.{key}")),
        width,
        unit: String::new(),
    }
}

/// Together 176 mm with the white between them.
fn papers(context: &Context<'_>) -> Vec<Labelled> {
    let boxes = [
        ("permit", 40.0),
        ("certificate", 48.0),
        ("lock_box", 40.0),
        ("date", 36.0),
    ];
    (1..)
        .zip(boxes)
        .map(|(number, (key, width))| numbered(context, number, key, width))
        .collect()
}

fn sketch(context: &Context<'_>, boundary: &Boundary<'_>) -> Sketch {
    let label = |key: &str| context.label(&format!("isolation.boundary.{key}"));
    let values = Values::new()
        .with("points", points::listed(boundary.isolation).count())
        .with("boundary", boundary_words(boundary));
    let note = if boundary.picture.is_some() {
        String::new()
    } else {
        label("legend")
    };
    Sketch {
        head: Head {
            title: label("title"),
            note,
        },
        picture: boundary.picture.clone(),
        alt: context.say("isolation.boundary.alt", &values),
        ends: [label("from"), label("to")],
    }
}
