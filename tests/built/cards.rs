//! Crew cards built from jobs, and laid out as in the volumes for the crew.

use std::collections::BTreeMap;

use studbook::calc::labour::Task;
use studbook::document::build::{
    Context, Subject, cautions_for_card, loosening_card, room_findings, tightening_card,
};
use studbook::document::card::{Card, Cards};
use studbook::report::Finding;
use studbook::typeset::{Overrides, Request, Typeset, typeset};

use super::{properties, show, with_job};

/// The place of a joint in the job.
pub(crate) fn index_of(context: &Context<'_>, tag: &str) -> usize {
    let index = context.joints.iter().position(|joint| joint.tag == tag);
    index.unwrap_or_else(|| panic!("no joint {tag}"))
}

/// A joint with its numbers.
pub(crate) fn subject<'a>(context: &Context<'a>, index: usize) -> Subject<'a> {
    let group = context.plan.of(index).expect("a group for each joint");
    Subject {
        joint: &context.joints[index],
        computed: &group.computed,
        group: &group.name,
    }
}

/// Both cards of a joint: tightening, then loosening.
pub(crate) fn cards_of(context: &Context<'_>, index: usize) -> [Card; 2] {
    let subject = subject(context, index);
    let cautions = |task| cautions_for_card(context, subject.joint, subject.computed, task);
    [
        tightening_card(context, &subject, cautions(Task::Tighten)).content,
        loosening_card(context, &subject, cautions(Task::Loosen)).content,
    ]
}

/// What does not fit the cards of a joint.
pub(crate) fn overruns_of(context: &Context<'_>, index: usize) -> Vec<Finding> {
    let cards = cards_of(context, index);
    let subject = subject(context, index);
    cards
        .iter()
        .flat_map(|card| room_findings(card, &subject))
        .collect()
}

/// Field, printed length and room of everything that does not fit the cards of a job.
pub(crate) fn overruns(text: &str) -> Vec<(String, usize, usize)> {
    let number = |text: &str| text.parse().expect("a whole number");
    with_job("job.yaml", text, |context| {
        (0..context.joints.len())
            .flat_map(|index| overruns_of(context, index))
            .map(|it| {
                let value = |name| it.values.get(name).expect("a value");
                let lengths = ["got", "limit"].map(|name| number(value(name)));
                (value("field").to_owned(), lengths[0], lengths[1])
            })
            .collect()
    })
}

/// The cards of all joints of a job, which fit their pages: tightening and loosening of each in turn.
pub(crate) fn cards(text: &str) -> Vec<Card> {
    with_job("job.yaml", text, |context| {
        (0..context.joints.len())
            .flat_map(|index| {
                let overruns = overruns_of(context, index);
                assert!(overruns.is_empty(), "{overruns:?}");
                cards_of(context, index)
            })
            .collect()
    })
}

/// Cards of joints with one card for each task, tightening alone.
pub(crate) fn tightening(text: &str) -> Vec<Card> {
    cards(text).into_iter().step_by(2).collect()
}

/// Cards of joints with one card for each task, loosening alone.
pub(crate) fn loosening(text: &str) -> Vec<Card> {
    cards(text).into_iter().skip(1).step_by(2).collect()
}

/// A request for a volume of cards.
pub(crate) fn request(cards: Vec<Card>, overrides: &Overrides) -> Request<'_> {
    let volume = Cards {
        language: "en".into(),
        cards,
    };
    Request {
        template: "cards.typ",
        data: serde_json::to_vec(&volume).expect("cards are plain data"),
        files: BTreeMap::new(),
        overrides,
        properties: properties("cards"),
        tagged: false,
    }
}

/// Lays cards out.
pub(crate) fn lay_out_cards(cards: Vec<Card>) -> Typeset {
    let overrides = Overrides::new();
    let pages = typeset(&request(cards, &overrides)).expect("the embedded templates have no fault");
    show(&pages, "cards.pdf");
    pages
}

/// The job with most of something that its cards still hold whole.
pub(crate) fn fullest(job: impl Fn(usize) -> String) -> String {
    let full = (1..40).find(|count| !overruns(&job(*count)).is_empty());
    job(full.expect("a card is full at some count") - 1)
}

/// So many points of the job's own at which the client signs, as a value of `hold_points`.
pub(crate) fn points(count: usize) -> String {
    let point = |number| format!("{{ point: H{number}, text: faces seen, by: client }}");
    let points: Vec<String> = (11..11 + count).map(point).collect();
    format!("[{}]", points.join(", "))
}
