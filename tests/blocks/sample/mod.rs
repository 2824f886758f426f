//! Sides of a made-up plant, built of blocks: every part can be made short or long.

mod parts;
mod pictures;

use studbook::document::blocks::{
    Badge, Band, Block, BoxWidth, Card, Cell, Dial, Draft, Footer, Front, Head, Heads, Identity,
    IdentityLines, Notes, Rows, Running, Side, Studs, Tag, Volume, flow, interleave, place,
};
use studbook::document::geometry::Geometry;
use studbook::document::qr;
use studbook::typeset::{Date, Overrides, Properties, Request, Typeset, typeset};

pub(crate) use parts::*;
use pictures::{around, flange, marks, tensioner};

pub(crate) fn identity(word: &str, full: bool, g: &Geometry) -> Block {
    let lines = IdentityLines {
        name: "Effluent cooler, channel flange".into(),
        place: "north channel, +6 m platform".into(),
        class: "class A · side 1, do".into(),
        drawing: "drawing HL-31-M-2104 rev 3".into(),
    };
    Block::Identity(Identity {
        tag: Tag::new("E-310-CH-01", g),
        badge: Badge {
            word: word.into(),
            outlined: word == "LOOSEN",
        },
        lines: full.then_some(lines),
    })
}

pub(crate) fn do_heads(word: &str, g: &Geometry) -> Heads {
    Heads {
        first: vec![identity(word, true, g)],
        again: vec![identity(word, false, g)],
    }
}

pub(crate) fn record_heads(g: &Geometry) -> Heads {
    Heads::every(vec![identity("RECORD", false, g)])
}

/// Side one of a flange: cautions before ticks and before the work.
pub(crate) fn flange_front(count: usize, passes: Rows, g: &Geometry) -> Front {
    let work = Band::beside(
        vec![Block::Picture(Box::new(flange(count)))],
        vec![Block::Rows(passes), stop()],
        g,
    );
    let whole = [
        danger(),
        cautions(2),
        Block::Ticks(ticks(9, None)),
        keys(),
        cautions(1),
    ];
    let mut bands: Vec<Band> = whole.into_iter().map(|it| Band::of(it, g)).collect();
    bands.extend(work);
    Front {
        bands,
        foot: Some(order(count.div_ceil(4).min(24))),
    }
}

/// Side one of a tensioner with driver.
pub(crate) fn tensioner_front(count: usize, g: &Geometry) -> Front {
    let studs = Studs {
        studs: marks(&around(6), |it| (it + 1).to_string()),
        words: texts(&["6 studs", "1 at the top", "in the order", "1 4 2 5 3 6"]),
        spare: Some(5),
        ..Studs::default()
    };
    let dial = Dial {
        angle: -40.0,
        words: texts(&["one round:", "40 deg, two thirds", "of a flat"]),
    };
    let left = vec![
        Block::Picture(Box::new(tensioner(count))),
        Block::Studs(studs),
        Block::Dial(dial),
    ];
    let bands = [danger(), Block::Ticks(ticks(6, None)), keys_beside()];
    let mut bands: Vec<Band> = bands.into_iter().map(|it| Band::of(it, g)).collect();
    bands.extend(Band::beside(
        left,
        vec![Block::Rows(rows(3, Some(2))), stop()],
        g,
    ));
    Front { bands, foot: None }
}

/// Side two with every kind of box.
pub(crate) fn record() -> Vec<Block> {
    vec![
        list("Tools used", BoxWidth::Number, 3),
        list("Materials", BoxWidth::Number, 3),
        list("As found", BoxWidth::Number, 3),
        grid(8, 3, Cell::Number),
        grid(16, 1, Cell::Tick),
        list("", BoxWidth::Strokes, 1),
        deviation(),
        signatures(6),
    ]
}

pub(crate) fn card(front: Vec<Side>, back: Vec<Side>, g: &Geometry) -> Card {
    let notes = || {
        let lines = Block::Notes(Notes::new(Head::new("Notes", "")));
        flow(&[lines], &record_heads(g), g).swap_remove(0)
    };
    let sides = interleave(front, back, notes, |it, of| format!("sheet {it} of {of}"));
    let count = sides.len();
    Card {
        tag: "E-310-CH-01".into(),
        running: Running {
            left: "Harrow Lake Works · unit 31 · crew card".into(),
            right: "HL-31-WP-007 revision B".into(),
        },
        draft: Some(Draft {
            word: "DRAFT".into(),
            reason: "DRAFT: the zero has no proof".into(),
        }),
        sides,
        footer: Footer {
            number: "HL-31-WP-007 revision B".into(),
            code_label: "content".into(),
            code: "9F3A-11C2".into(),
            issued: "issued 2027-03-08".into(),
            notes: [
                "Uncontrolled when printed, unless stamped. Check the revision before use.",
                "In doubt, stop and ask.",
            ]
            .map(Into::into),
            pages: (1..=count)
                .map(|it| format!("page {it} of {count}"))
                .collect(),
            qr: qr::svg("HL-31-WP-007/B/9F3A-11C2"),
        },
    }
}

/// Fronts and backs of many sizes.
pub(crate) fn cards(g: &Geometry) -> Vec<Card> {
    let back = || flow(&record(), &record_heads(g), g);
    let flanges = [4, 8, 24, 32, 48].map(|count| {
        card(
            place(
                &flange_front(count, rows(3, None), g),
                &do_heads("TIGHTEN", g),
                g,
            ),
            back(),
            g,
        )
    });
    let tensioners = [6, 12, 24, 32].map(|count| {
        card(
            place(&tensioner_front(count, g), &do_heads("LOOSEN", g), g),
            back(),
            g,
        )
    });
    let long = flange_front(24, rows(14, None), g);
    let long = card(place(&long, &do_heads("TIGHTEN", g), g), back(), g);
    flanges
        .into_iter()
        .chain(tensioners)
        .chain([long])
        .collect()
}

pub(crate) fn lay_out(cards: Vec<Card>, overrides: &Overrides) -> Typeset {
    let volume = Volume {
        language: "en".into(),
        cards,
    };
    let request = Request {
        template: "cards.typ",
        data: serde_json::to_vec(&volume).expect("plain data"),
        files: std::collections::BTreeMap::new(),
        overrides,
        properties: Properties {
            title: "Cards".into(),
            author: vec!["R. Olsen".into()],
            keywords: vec![],
            date: Date {
                year: 2027,
                month: 3,
                day: 8,
            },
            ident: "HL-31-WP-007/B/cards".into(),
        },
        tagged: false,
    };
    typeset(&request).expect("the embedded templates have no fault")
}
