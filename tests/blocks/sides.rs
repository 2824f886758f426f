//! Second sheets, giving way, a user's own measures.

use studbook::document::blocks::{Band, Block, Cell, Front, Side, flow, overruns, place};
use studbook::document::geometry::Geometry;
use studbook::report::Sources;
use studbook::typeset::Overrides;

use crate::sample::{self, do_heads, record_heads};

fn names(sides: &[Side]) -> Vec<&str> {
    let blocks = sides.iter().flat_map(|side| &side.blocks);
    let rows = blocks.filter_map(|it| match &it.block {
        Block::Rows(rows) => Some(rows.rows.iter().map(|row| row.name.as_str())),
        _ => None,
    });
    rows.flatten().collect()
}

fn identities(side: &Side) -> usize {
    side.blocks
        .iter()
        .filter(|it| matches!(it.block, Block::Identity(_)))
        .count()
}

/// The strip of moves and everything that must stand is there on the first sheet or on the next.
#[test]
fn what_a_side_does_not_hold_stands_on_the_next_sheet() {
    let g = Geometry::ours();
    let sides = place(
        &sample::flange_front(24, sample::rows(14, None), g),
        &do_heads("TIGHTEN", g),
        g,
    );
    assert_eq!(sides.len(), 2);
    let expected: Vec<String> = (1..=14).map(|it| format!("P{it}")).collect();
    assert_eq!(names(&sides), expected);
    for side in &sides {
        assert_eq!(identities(side), 1, "the head is repeated");
        assert_eq!(overruns(side, g), []);
    }
    let stops = sides
        .iter()
        .flat_map(|it| &it.blocks)
        .filter(|it| matches!(it.block, Block::Stop(_)));
    assert_eq!(stops.count(), 1);
    let card = sample::card(sides, flow(&sample::record(), &record_heads(g), g), g);
    let sheets: Vec<&str> = card.sides.iter().map(|it| it.sheet.as_str()).collect();
    assert_eq!(
        sheets,
        [
            "sheet 1 of 2",
            "sheet 1 of 2",
            "sheet 2 of 2",
            "sheet 2 of 2"
        ]
    );
    let notes = card.sides[3]
        .blocks
        .iter()
        .filter(|it| matches!(it.block, Block::Notes(_)));
    assert_eq!(notes.count(), 1, "the last side is for notes");
}

#[test]
fn one_sheet_says_nothing_of_sheets() {
    let g = Geometry::ours();
    let sides = place(
        &sample::flange_front(24, sample::rows(3, None), g),
        &do_heads("TIGHTEN", g),
        g,
    );
    let card = sample::card(sides, flow(&sample::record(), &record_heads(g), g), g);
    assert_eq!(card.sides.len(), 2);
    assert!(card.sides.iter().all(|it| it.sheet.is_empty()));
}

/// Four rows of the table less than it has: the record goes on overleaf, row by row, none lost and none twice.
#[test]
fn a_record_that_is_too_long_goes_on_overleaf() {
    let g = Geometry::ours();
    let blocks = [sample::grid(6, 30, Cell::Number), sample::signatures(6)];
    let sides = flow(&blocks, &record_heads(g), g);
    assert_eq!(sides.len(), 2);
    let all = sides.iter().flat_map(|it| &it.blocks);
    let rows: Vec<usize> = all
        .filter_map(|it| match &it.block {
            Block::Grid(grid) => Some(grid.rows.len()),
            _ => None,
        })
        .collect();
    assert_eq!(rows.iter().sum::<usize>(), 30);
    for side in &sides {
        assert_eq!(identities(side), 1);
        assert_eq!(overruns(side, g), []);
    }
}

/// Ticks over the whole side and rows: `spare` ticks go where that saves the sheet.
fn front(ticks: usize, spare: Option<u8>, rows: usize, further: Option<u8>, g: &Geometry) -> Front {
    let bands = [
        sample::danger(),
        Block::Ticks(sample::ticks(9, None)),
        Block::Ticks(sample::ticks(ticks, spare)),
        Block::Rows(sample::rows(rows, further)),
    ];
    Front {
        bands: bands.into_iter().map(|it| Band::of(it, g)).collect(),
        foot: None,
    }
}

fn ticks(sides: &[Side]) -> usize {
    let all = sides.iter().flat_map(|it| &it.blocks);
    all.map(|it| match &it.block {
        Block::Ticks(ticks) => ticks.items.len(),
        _ => 0,
    })
    .sum()
}

/// From the geometry: side of 272 - 43 = 229 mm, danger 30, nine ticks 6.4 + 3 · 10.2 = 37, twelve more
/// 6.4 + 4 · 10.2 = 47.2, rows 9.2 + 10 a row + 4.7 + 0.6, three gaps of 2: 134.7 mm and 10 mm for each row.
/// Nine rows make 224.7 and fit, ten make 234.7 and do not; without one row of ticks, 10.2 mm, they do.
#[test]
fn what_may_go_goes_only_if_that_saves_the_sheet() {
    let g = Geometry::ours();
    let heads = do_heads("TIGHTEN", g);
    let count = |spare, rows| {
        let sides = place(&front(12, spare, rows, None, g), &heads, g);
        (sides.len(), ticks(&sides), names(&sides).len())
    };
    assert_eq!(count(Some(1), 9), (1, 21, 9), "all fit");
    assert_eq!(
        count(Some(1), 10),
        (1, 18, 10),
        "three ticks make room for a row"
    );
    assert_eq!(count(None, 10), (2, 21, 10), "what must stand never goes");
    // Without any of the twelve 229 - 87.5 + 2 mm hold fourteen rows; thirty do not fit all the same.
    assert_eq!(count(Some(1), 30), (2, 21, 30), "nothing goes in vain");
}

/// Rows that only say what is expected go before ticks of a lower rank, the middle one first.
#[test]
fn the_highest_rank_goes_first() {
    let g = Geometry::ours();
    let heads = do_heads("TIGHTEN", g);
    // Seven rows and three of 5.4 mm make 220.9 mm and fit; eight make 230.9, without one of 5.4 mm 225.5.
    let sides = place(&front(12, Some(1), 8, Some(2), g), &heads, g);
    assert_eq!(sides.len(), 1);
    assert_eq!(ticks(&sides), 21);
    let expected = ["P1", "P2", "P3", "P4", "P5", "P6", "P7", "P8", "P9", "P11"];
    assert_eq!(names(&sides), expected);
}

fn user(text: &str) -> Result<Geometry, Vec<&'static str>> {
    Geometry::with_user_file(text, &mut Sources::default())
        .map_err(|it| it.iter().map(|it| it.id).collect())
}

#[test]
fn a_users_measures_are_laid_over_ours_and_checked() {
    let merged = user("list: { row: 12 }\n").expect("a taller row is no fault");
    assert_eq!(merged.list.row.mm().to_string(), "12");
    assert_eq!(merged.grid.row, Geometry::ours().grid.row);
    assert_eq!(
        user("lists: { row: 12 }\n").err(),
        Some(vec!["job.unknown_key"])
    );
    assert_eq!(
        user("list: { high: 12 }\n").err(),
        Some(vec!["job.unknown_key"])
    );
    assert_eq!(
        user("list: { row: 400 }\n").err(),
        Some(vec!["geometry.out_of_range"])
    );
    assert_eq!(
        user("sizes: { note: 6 }\n").err(),
        Some(vec!["geometry.out_of_range"])
    );
    assert_eq!(
        user("boxes: { tick: 6 }\n").err(),
        Some(vec!["geometry.too_small"]),
        "gloves"
    );
    assert_eq!(
        user("page: { width: 190 }\n").err(),
        Some(vec!["geometry.too_small"]),
        "wider than the paper"
    );
}

/// The layout reads the same measures: a taller row is drawn taller.
#[test]
fn changed_measures_are_drawn() {
    let g = user("list: { row: 12 }\n").expect("a taller row is no fault");
    let record = flow(&sample::record()[..3], &record_heads(&g), &g);
    let front = place(
        &sample::flange_front(8, sample::rows(3, None), &g),
        &do_heads("TIGHTEN", &g),
        &g,
    );
    let overrides = Overrides::from([("geometry.json".to_owned(), g.json())]);
    let pages = sample::lay_out(vec![sample::card(front, record, &g)], &overrides);
    let boxes = pages.boxes("box");
    let on_record: Vec<f64> = boxes
        .iter()
        .filter(|it| it.page == 2)
        .map(|it| it.height)
        .collect();
    assert_eq!(on_record.len(), 9);
    assert!(
        on_record.iter().all(|height| (height - 12.0).abs() < 0.05),
        "{on_record:?}"
    );
}

/// Larger type takes more width and, with what must grow with it, more height: what no longer fits is told.
#[test]
fn larger_type_is_told_not_overprinted() {
    let larger = "sizes: { text: 13, step: 15, line: 5.6 }\nticks: { pitch: 11.6, most_pitch: 12 }\n\
                  head: { height: 7, two_lines: 12 }\ncautions: { row: 8 }\nrows: { pitch: 11.6 }\nlist: { row: 11 }\n\
                  grid: { row: 11, band: 6 }\ndanger: { line: 6 }\nkeys: { height: 25, other: 19, fact: 6.2 }\n\
                  order: { row: 10 }\nrows: { pitch: 11.6, further: 6.2 }\n";
    let larger = larger.replacen("rows: { pitch: 11.6 }\n", "", 1);
    let g = user(&larger).expect("measures that hold the larger type");
    let found: Vec<&str> = sample::cards(&g)
        .iter()
        .flat_map(|it| it.overruns(&g))
        .map(|it| it.field)
        .collect();
    // Settings that no longer stand beside the picture go below it, where their lines have room.
    assert!(!found.contains(&"rows.line"), "{found:?}");
    for field in ["ticks.item", "danger.box", "cautions.word"] {
        assert!(found.contains(&field), "{field} is not among {found:?}");
    }
    assert_eq!(
        user("sizes: { text: 13 }\n")
            .err()
            .map(|it| it.contains(&"geometry.too_small")),
        Some(true)
    );
}

/// Nothing of a side hangs on anything but its blocks and the geometry.
#[test]
fn the_same_blocks_make_the_same_bytes() {
    let g = Geometry::ours();
    let bytes = || serde_json::to_vec(&sample::cards(g)).expect("plain data");
    assert_eq!(bytes(), bytes());
}
