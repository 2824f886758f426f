//! Crew cards built from jobs, and laid out as in the volumes for the crew.

use std::collections::BTreeMap;

use studbook::document::blocks::{Block, Card, Keys, Picture, Row, Stop, Tick, Volume};
use studbook::document::build::{Context, Subject, card, room_findings};
use studbook::report::Finding;
use studbook::typeset::{Overrides, Request, Typeset, typeset};
use studbook::work::Task;

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
    [Task::Tighten, Task::Loosen].map(|task| {
        let made = card(context, &subject, task);
        made.unwrap_or_else(|| panic!("no card")).content
    })
}

/// Every block of a card in the order of its sides.
pub(crate) fn blocks(card: &Card) -> impl Iterator<Item = &Block> {
    let placed = card.sides.iter().flat_map(|side| &side.blocks);
    placed.map(|it| &it.block)
}

/// The word of a card.
pub(crate) fn word(card: &Card) -> &str {
    let mut words = blocks(card).filter_map(|block| match block {
        Block::Identity(it) => Some(it.badge.word.as_str()),
        _ => None,
    });
    words.next().expect("a word on each card")
}

/// The values of a card.
pub(crate) fn keys(card: &Card) -> &Keys {
    let mut keys = blocks(card).filter_map(|block| match block {
        Block::Keys(it) => Some(&**it),
        _ => None,
    });
    keys.next().expect("values on each card")
}

/// The picture of a card.
pub(crate) fn picture(card: &Card) -> &Picture {
    let mut pictures = blocks(card).filter_map(|block| match block {
        Block::Picture(it) => Some(&**it),
        _ => None,
    });
    pictures.next().expect("a picture on each card")
}

/// The rule that ends the work of a card.
pub(crate) fn stop(card: &Card) -> &Stop {
    let mut rules = blocks(card).filter_map(|block| match block {
        Block::Stop(it) => Some(it),
        _ => None,
    });
    rules.next().expect("a rule")
}

/// The settings of a card.
pub(crate) fn rows(card: &Card) -> Vec<Row> {
    let rows = blocks(card).filter_map(|block| match block {
        Block::Rows(it) => Some(it.rows.clone()),
        _ => None,
    });
    rows.flatten().collect()
}

/// The lines below the settings of a card.
pub(crate) fn end_lines(card: &Card) -> Vec<String> {
    let lines = blocks(card).filter_map(|block| match block {
        Block::Rows(it) => Some(it.end.clone()),
        _ => None,
    });
    lines.flatten().collect()
}

/// The ticks of both sides.
pub(crate) fn ticks(card: &Card) -> Vec<Tick> {
    let ticks = blocks(card).filter_map(|block| match block {
        Block::Ticks(it) => Some(it.items.clone()),
        _ => None,
    });
    ticks.flatten().collect()
}

/// What does not fit the cards of a joint.
pub(crate) fn overruns_of(context: &Context<'_>, index: usize) -> Vec<Finding> {
    let cards = cards_of(context, index);
    let subject = subject(context, index);
    cards
        .iter()
        .flat_map(|card| room_findings(context, card, &subject))
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
    let volume = Volume {
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

/// So many points of the job's own at which the client signs, as a value of `hold_points`.
pub(crate) fn points(count: usize) -> String {
    let point = |number| format!("{{ point: H{number}, text: faces seen, by: client }}");
    let points: Vec<String> = (11..11 + count).map(point).collect();
    format!("[{}]", points.join(", "))
}
