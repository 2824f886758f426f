//! The crew cards of a joint: one for tightening, one for loosening.

mod jackbolt;
mod loosen;
mod numbers;
mod parts;
mod picture;
mod record;
mod signatures;
mod tighten;

pub use loosen::loosening_card;
pub use tighten::tightening_card;

use crate::document::card::{Card, Footer, Running};
use crate::document::qr;
use crate::joint::Joint;
use crate::methods::Computed;
use crate::report::{Finding, Severity};
use crate::wording::Values;

use super::context::{Context, Made};

/// A joint with its numbers and the group it is worked out in.
#[derive(Clone, Copy)]
pub struct Subject<'a> {
    /// The joint.
    pub joint: &'a Joint,
    /// Its numbers.
    pub computed: &'a Computed,
    /// The group of equal joints; the calculation note has its name.
    pub group: &'a str,
}

/// Gives a card its code, and with it everything that changes from revision to revision: number,
/// date, draft and the code as a picture. Until then these fields are empty, so that the code
/// hangs on the content alone.
fn seal(context: &Context<'_>, card: Card) -> Made<Card> {
    let mut card = with_fitting_record(context, with_fitting_cautions(card));
    if !context.sealing {
        return Made {
            content: card,
            code: String::new(),
        };
    }
    let code = context.code(&card);
    card.running = Running {
        right: context.identification(),
        ..card.running
    };
    card.draft = context.card_draft();
    card.footer = footer(context, &code);
    Made {
        content: card,
        code,
    }
}

/// The gravest cautions that leave room for the work itself; the others stand in the pack.
fn with_fitting_cautions(mut card: Card) -> Card {
    while !card.cautions.is_empty() && card.free_height()[0] < 0.0 {
        card.cautions.pop();
    }
    card
}

/// A record side that is too full does without the plain signature of an inspector who signs a point of his own
/// with date and time.
fn with_fitting_record(context: &Context<'_>, mut card: Card) -> Card {
    let role = context.label("role.inspector");
    let signs_a_point = card
        .record
        .signatures
        .iter()
        .any(|it| it.hold && it.label.ends_with(&role));
    if signs_a_point && card.free_height()[1] < 0.0 {
        let inspector = context.label("card.sign.inspector");
        let signatures = &mut card.record.signatures;
        signatures.retain(|it| it.hold || it.label != inspector);
    }
    card
}

/// Rule D14 for one card: everything that does not fit its place, at the joint's tag.
pub fn room_findings(card: &Card, subject: &Subject<'_>) -> Vec<Finding> {
    card.over_budget()
        .into_iter()
        .map(|overrun| {
            Finding::rule("D14", Severity::Error, subject.joint.place)
                .on(subject.joint.tag.clone())
                .with("card", card.identity.badge.word.clone())
                .with("field", overrun.field)
                .with("text", overrun.text)
                .with("got", overrun.got.to_string())
                .with("limit", overrun.limit.to_string())
        })
        .collect()
}

fn footer(context: &Context<'_>, code: &str) -> Footer {
    let number = Values::new()
        .with("number", context.number())
        .with("revision", context.revision_name());
    let page = |page: &str| {
        context.say(
            "page.of",
            &Values::new().with("page", page).with("pages", "2"),
        )
    };
    let sign = format!("{} {} {code}", context.number(), context.revision_name()).to_uppercase();
    Footer {
        number: context.say("footer.number", &number),
        code_label: context.label("footer.content"),
        code: code.to_owned(),
        issued: context.say1("footer.issued", "date", context.date()),
        notes: [printed_note(context), context.label("footer.defer")],
        pages: [page("1"), page("2")],
        qr: qr::svg(&sign),
    }
}

/// The note on printed copies, with the last day of validity where the job gives one.
fn printed_note(context: &Context<'_>) -> String {
    let valid = context
        .pack()
        .and_then(|pack| pack.print_valid.as_ref())
        .and_then(crate::yaml::At::get);
    match valid {
        Some(date) => context.say1("footer.valid_until", "date", date.to_string()),
        None => context.say1("footer.printed", "permit_date", ""),
    }
}
