//! The crew cards of a joint: views of the work that is done to it. What to do stands on the odd sides, what was done
//! on the even ones; a third and fourth side come only where what must stand needs them.

mod cautions;
mod front;
mod numbers;
mod picture;
mod record;
mod rows;
mod signed;
mod top;

use crate::document::blocks::{
    Block, Card, Footer, Head, Heads, Notes, Running, Side, flow, interleave, place,
};
use crate::document::geometry::Geometry;
use crate::document::qr;
use crate::document::voice::Voice;
use crate::job::Class;
use crate::joint::Joint;
use crate::methods::{self, Case, Computed};
use crate::report::{Finding, Severity};
use crate::wording::Values;
use crate::work::{Task, Work};

use super::context::{Context, Made};
use cautions::Told;

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

/// The card for a task; none where its method does not have the task.
pub fn card(context: &Context<'_>, subject: &Subject<'_>, task: Task) -> Option<Made<Card>> {
    let case = Case {
        joint: subject.joint,
        computed: subject.computed,
    };
    let work = methods::work(&case, task)?;
    let view = View {
        context,
        subject,
        work: &work,
        voice: Voice::new(context).brief(),
        g: context.geometry,
        class: subject.joint.mechanics.class.value().unwrap_or(Class::A),
    };
    Some(view.seal(view.card()))
}

/// Rule D14 for one card: everything that does not fit its place, at the joint's tag.
pub fn room_findings(context: &Context<'_>, card: &Card, subject: &Subject<'_>) -> Vec<Finding> {
    card.overruns(context.geometry)
        .into_iter()
        .map(|overrun| {
            Finding::rule("D14", Severity::Error, subject.joint.place)
                .on(subject.joint.tag.clone())
                .with("card", badge_of(card).to_owned())
                .with("field", overrun.field)
                .with("text", overrun.text)
                .with("got", overrun.got.to_string())
                .with("limit", overrun.limit.to_string())
        })
        .collect()
}

/// The word of a card.
fn badge_of(card: &Card) -> &str {
    let blocks = card.sides.iter().flat_map(|side| &side.blocks);
    let mut identities = blocks.filter_map(|it| match &it.block {
        Block::Identity(identity) => Some(identity.badge.word.as_str()),
        _ => None,
    });
    identities.next().unwrap_or_default()
}

/// One work on one joint, as a card shows it.
#[derive(Clone, Copy)]
struct View<'a> {
    context: &'a Context<'a>,
    subject: &'a Subject<'a>,
    work: &'a Work,
    voice: Voice<'a>,
    g: &'a Geometry,
    /// One that is not known is held like the gravest.
    class: Class,
}

impl<'a> View<'a> {
    /// A text of cards.
    fn label(&self, id: &str) -> &'a str {
        self.voice.label(&["work", "card", id])
    }

    /// The card without what changes from revision to revision: its code hangs on the content alone.
    fn card(&self) -> Card {
        let told = self.cautions();
        let side_one = place(&self.front(&told), &self.front_heads(), self.g);
        let side_two = self.records(&told);
        let notes = || self.notes_side();
        let sheet = |number: usize, sheets: usize| {
            let values = Values::new().with("number", number).with("sheets", sheets);
            self.context.say("card.sheet", &values)
        };
        Card {
            tag: self.subject.joint.tag.clone(),
            running: self.running(),
            draft: None,
            sides: interleave(side_one, side_two, notes, sheet),
            footer: Footer::default(),
        }
    }

    /// The record; what may go goes only where that saves a side.
    fn records(&self, told: &Told) -> Vec<Side> {
        let heads = Heads::every(vec![self.record_identity()]);
        let all = flow(&self.record(told, false), &heads, self.g);
        if all.len() < 2 {
            return all;
        }
        let least = flow(&self.record(told, true), &heads, self.g);
        if least.len() < all.len() { least } else { all }
    }

    /// The side that fills a sheet.
    fn notes_side(&self) -> Side {
        let head = Head::new(self.label("notes"), "");
        let heads = Heads::every(vec![self.record_identity()]);
        let sides = flow(&[Block::Notes(Notes::new(head))], &heads, self.g);
        sides.into_iter().next().unwrap_or_default()
    }

    /// The running line without number and revision.
    fn running(&self) -> Running {
        let method = super::words::method_of(self.subject.joint);
        let method = method.map(|key| self.context.label(&format!("method_card.{key}")));
        let document = self
            .context
            .say1("document.card", "method", method.unwrap_or_default());
        Running {
            right: String::new(),
            ..self.context.running(&document)
        }
    }

    /// Gives the card its code, and with it number, date, draft and the code as a picture.
    fn seal(&self, mut card: Card) -> Made<Card> {
        let context = self.context;
        if !context.sealing {
            let code = String::new();
            return Made {
                content: card,
                code,
            };
        }
        let code = context.code(&card);
        card.running.right = context.identification();
        card.draft = context.card_draft();
        card.footer = footer(context, &code, card.sides.len());
        Made {
            content: card,
            code,
        }
    }
}

fn footer(context: &Context<'_>, code: &str, pages: usize) -> Footer {
    let number = Values::new()
        .with("number", context.number())
        .with("revision", context.revision_name());
    let page = |page: usize| {
        let values = Values::new().with("page", page).with("pages", pages);
        context.say("page.of", &values)
    };
    let sign = format!("{} {} {code}", context.number(), context.revision_name()).to_uppercase();
    Footer {
        number: context.say("footer.number", &number),
        code_label: context.label("footer.content"),
        code: code.to_owned(),
        issued: context.say1("footer.issued", "date", context.date()),
        notes: [printed_note(context), context.label("footer.defer")],
        pages: (1..=pages).map(page).collect(),
        qr: qr::svg(&sign),
    }
}

/// The note on printed copies, with the last day of validity where the job gives one.
fn printed_note(context: &Context<'_>) -> String {
    let valid = context.pack().and_then(|pack| pack.print_valid.as_ref());
    match valid.and_then(crate::yaml::At::get) {
        Some(date) => context.say1("footer.valid_until", "date", date.to_string()),
        None => context.say1("footer.printed", "permit_date", ""),
    }
}
