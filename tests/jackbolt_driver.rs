//! What the cards of jackbolts say of a multi-spindle driver: its own checks, its direction and supply, the side on
//! which it leans; and what else must stay on a full card.
//!
//! Fields are those of the trade's practice for such drivers (common practice, no open source).

#![allow(clippy::panic, reason = "a test that cannot go on must stop")]

mod built;

use std::collections::BTreeMap;

use built::cards::{self, index_of, overruns_of};
use built::packs::pages_of;
use built::tensioners::{by_hand_alone, tie_rods, tie_rods_with_a_larger_wrench};
use built::{all_text, collisions, lay_out, outside, text_of, with_job};
use studbook::document::blocks::Card;
use studbook::document::build::{Context, joint_label};
use studbook::document::desk::{CardsOfJoint, Part};
use studbook::job;
use studbook::report::Sources;
use studbook::resolve;
use studbook::typeset::Typeset;

const RODS: &str = "PR-120-TR-01";
const ANCHORS: &str = "PR-120-AN-01";

/// Hands a test both cards of a joint, tightening first, and the findings about their room.
fn with_cards<T>(text: &str, tag: &str, then: impl FnOnce([Card; 2], Vec<String>) -> T) -> T {
    with_job("tie-rods.yaml", text, |context| {
        let (cards, findings) = cards_of(context, tag);
        then(cards, findings)
    })
}

fn cards_of(context: &Context<'_>, tag: &str) -> ([Card; 2], Vec<String>) {
    let index = index_of(context, tag);
    let findings = overruns_of(context, index).into_iter().map(|finding| {
        let told = context.wording.tell(&finding);
        format!("{} {told:?}", finding.id)
    });
    (cards::cards_of(context, index), findings.collect())
}

fn pages(cards: &[Card]) -> Typeset {
    let part = CardsOfJoint {
        bookmark: RODS.into(),
        label: joint_label(0),
        cards: cards.to_vec(),
    };
    let pages = lay_out(Part::Cards(Box::new(part)), BTreeMap::new());
    built::show(&pages, "driver.pdf");
    let sides: usize = cards.iter().map(|card| card.sides.len()).sum();
    assert_eq!(pages.page_count(), sides);
    assert_eq!(collisions(&pages), Vec::<String>::new());
    assert_eq!(outside(&pages), Vec::<String>::new());
    pages
}

/// The example with more checks of both drivers.
fn with_checks(text: &str, checks: &[String]) -> String {
    let list = format!("checks: [{}]", checks.join(", "));
    text.replace(
        "checks: [All spindles turn freely, Direction lever on the side that is printed]",
        &list,
    )
    .replace(
        "checks: [All spindles turn freely, Index pin in the printed position]",
        &list,
    )
}

fn several() -> Vec<String> {
    [
        "All spindles turn freely",
        "Head parallel to the body",
        "Direction lever where it is printed",
        "Both hands on their handles",
        "Stop button tried once",
    ]
    .map(String::from)
    .to_vec()
}

/// All ticks of a card, of both sides.
fn ticks(card: &Card) -> Vec<String> {
    let ticks = cards::ticks(card).into_iter();
    ticks.map(|tick| tick.text).collect()
}

#[test]
fn every_check_of_the_driver_is_a_tick_with_its_stop_rule() {
    let text = with_checks(&tie_rods_with_a_larger_wrench(), &several());
    for tag in [RODS, ANCHORS] {
        with_cards(&text, tag, |cards, findings| {
            assert_eq!(findings, Vec::<String>::new(), "{tag}");
            for card in &cards {
                let ticks = ticks(card);
                let word = cards::word(card);
                for check in several() {
                    assert!(ticks.contains(&check), "{tag} {word}: no {check:?}");
                }
            }
            for card in cards {
                let all = all_text(&pages(&[card]));
                assert!(all.contains("one missing: stop, call"), "{tag}: {all}");
                assert!(all.contains("Stop button tried once"), "{tag}: {all}");
            }
        });
    }
}

/// A card takes further sheets for its checks, so none is left out; one that is longer than its tick is named.
#[test]
fn no_check_is_left_out_and_one_without_room_is_named_by_a_finding() {
    let checks: Vec<String> = (1..=40).map(|it| format!("Check no {it} done")).collect();
    with_cards(
        &with_checks(&tie_rods(), &checks),
        RODS,
        |cards, findings| {
            assert_eq!(findings, Vec::<String>::new());
            for card in &cards {
                let ticks = ticks(card);
                assert!(checks.iter().all(|it| ticks.contains(it)), "{ticks:?}");
            }
            pages(&cards);
        },
    );
    // As many characters as a check may have, in the widest letters.
    let long = "WMWM WMWM WMWM WMWM WMWM WMWM WMWM WMWM WMWMWM";
    with_cards(
        &with_checks(&tie_rods(), &[long.to_owned()]),
        RODS,
        |_, findings| {
            let named = |it: &&String| it.starts_with("D14") && it.contains(long);
            // Once for each card.
            assert_eq!(findings.iter().filter(named).count(), 2, "{findings:?}");
        },
    );
}

#[test]
fn loosening_has_direction_and_supply_only_where_the_driver_is_used() {
    let zoned = tie_rods_with_a_larger_wrench().replace("zone: none", "zone: Ex II 2 G");
    with_cards(&zoned, RODS, |cards, findings| {
        assert_eq!(findings, Vec::<String>::new());
        let ticks = ticks(&cards[1]).join("|").replace('\u{a0}', " ");
        for wanted in [
            "set to loosen, 110 N·m or less",
            "air 6 bar running",
            "marked for the zone: Ex II 2 G",
            "Surface 60 °C or less",
        ] {
            assert!(ticks.contains(wanted), "no {wanted:?} in {ticks}");
        }
    });
    with_cards(&zoned, ANCHORS, |cards, _| {
        let side_one = ticks(&cards[1]).join("|").replace('\u{a0}', " ");
        assert!(side_one.contains("Surface 60 °C or less"), "{side_one}");
        let ticks = ticks(&cards[1]).join("|");
        assert!(ticks.contains("battery full, a spare here"), "{ticks}");
    });
    with_cards(&by_hand_alone(), RODS, |cards, _| {
        let ticks = ticks(&cards[1]).join("|");
        for unwanted in ["on loosen", "Air", "Driver"] {
            assert!(!ticks.contains(unwanted), "{ticks}");
        }
    });
}

#[test]
fn client_and_stretch_stand_on_one_record() {
    for class in ["class: B", "class: A"] {
        let text = tie_rods().replace("class: B", class);
        for tag in [RODS, ANCHORS] {
            with_cards(&text, tag, |cards, findings| {
                assert_eq!(findings, Vec::<String>::new(), "{class} {tag}");
                let pages = pages(&cards[..1]);
                let sides = (2..=pages.page_count()).step_by(2);
                let record: Vec<String> = sides.map(|side| text_of(&pages, side)).collect();
                let record = record.join(" ");
                for wanted in ["client", "supervisor", "inspector", "stretch", "mean"] {
                    assert!(
                        record.contains(wanted),
                        "{class} {tag}: {wanted} in {record}"
                    );
                }
                let boxes = pages.boxes("sign");
                assert!(boxes.iter().all(|it| it.height > 9.99), "{class} {tag}");
            });
        }
    }
}

fn leaning(jackbolts: &str) -> String {
    tie_rods().replace(
        "reversal: 60 N·m,",
        &format!("reversal: 60 N·m, reaction: {{ on: frame pad, jackbolts: {jackbolts} }},"),
    )
}

/// Twelve jackbolts stand 30 degrees apart, the first at the top: from half a step before number 5 (105 degrees) to
/// half a step behind number 6 (165 degrees); from 11 over the top to 2, 285 to 405.
#[test]
fn the_side_on_which_the_driver_leans_is_drawn() {
    for (jackbolts, ends) in [("[5, 6]", (105.0, 165.0)), ("[11, 2]", (285.0, 405.0))] {
        with_cards(&leaning(jackbolts), ANCHORS, |cards, findings| {
            assert_eq!(findings, Vec::<String>::new());
            let sector = cards::picture(&cards[0]).reaction.as_ref().expect("a side");
            assert!((sector.from - ends.0).abs() < 1e-9 && (sector.to - ends.1).abs() < 1e-9);
            let text = all_text(&pages(&cards[..1]));
            assert!(text.contains("Hatched: driver leans here"), "{text}");
            assert!(text.contains("Leans on frame pad"), "{text}");
        });
    }
    with_cards(&tie_rods(), ANCHORS, |cards, _| {
        assert!(cards::picture(&cards[0]).reaction.is_none());
    });
}

#[test]
fn a_jackbolt_that_is_not_there_is_found() {
    let mut sources = Sources::default();
    let (job, _) = job::open("job.yaml", leaning("[5, 13]").as_bytes(), &mut sources);
    let (_, findings) = resolve::resolve(&job.expect("a job"));
    assert!(
        findings.iter().any(|it| it.id == "job.out_of_range"),
        "{findings:?}"
    );
}

#[test]
fn the_running_line_says_how_the_jackbolts_are_turned() {
    with_cards(&tie_rods(), RODS, |cards, _| {
        assert!(cards[0].running.left.ends_with("jackbolts with driver"));
    });
    with_cards(&by_hand_alone(), RODS, |cards, _| {
        assert!(cards[0].running.left.ends_with("jackbolts by hand"));
    });
}

/// The planner's text of the example says `work only below 60 °C`; it stands in a narrow column of its sheet.
#[test]
fn a_number_keeps_its_unit_in_a_planners_text() {
    let pages = pages_of("effluent-cooler.yaml");
    assert!(all_text(&pages).contains("below 60 °C"));
    let raw: Vec<String> = (1..=pages.page_count()).map(|it| pages.text(it)).collect();
    let raw = raw.join("\n");
    assert!(raw.contains("60\u{a0}°C") && !raw.contains("60 °C") && !raw.contains("60\n°C"));
}
