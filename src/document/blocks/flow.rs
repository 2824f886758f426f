//! The sides to record: blocks of different widths, each at the highest place that is wide enough for it.

use std::collections::VecDeque;

use super::place::{let_one_go, set, set_head};
use super::{Block, Heads, Side};
use crate::document::geometry::{Geometry, Mm};

/// The sides that some blocks take, in their order. What may go goes only if that saves a sheet; what must stand and
/// finds no room goes to the next side, below the head again.
pub fn flow(blocks: &[Block], heads: &Heads, g: &Geometry) -> Vec<Side> {
    let all = flow_all(blocks.to_vec(), heads, g);
    if all.len() < 2 {
        return all;
    }
    let mut fewer = blocks.to_vec();
    while let_one_go(fewer.iter_mut()) {
        let sides = flow_all(fewer.clone(), heads, g);
        if sides.len() < 2 {
            return sides;
        }
    }
    all
}

fn flow_all(blocks: Vec<Block>, heads: &Heads, g: &Geometry) -> Vec<Side> {
    let has_height = |it: &Block| it.fits().heights(g.page.width, g)[1] > Mm::ZERO;
    let mut left: VecDeque<Block> = blocks.into_iter().filter(has_height).collect();
    let mut sides = Vec::new();
    while !left.is_empty() || sides.is_empty() {
        let mut side = Side::default();
        let top = set_head(&mut side, heads.of(sides.len()), g);
        let mut rows = fill(&mut left, top, g);
        spread(&mut rows, g);
        for (block, place) in rows {
            set(&mut side, block, place, g);
        }
        sides.push(side);
    }
    sides
}

/// A block with its left, top, width and height.
type Found = (Block, [Mm; 4]);

/// Takes blocks as long as the side holds them; at least one, where `overruns` finds it if it is too high.
fn fill(left: &mut VecDeque<Block>, top: Mm, g: &Geometry) -> Vec<Found> {
    let across = g.page.across;
    let wide = (g.page.width + g.page.gutter).over(across) - g.page.gutter;
    let width_of = |span: usize| {
        let gutters = g.page.gutter.times(span.saturating_sub(1));
        if span == across {
            g.page.width
        } else {
            wide.times(span) + gutters
        }
    };
    let mut found: Vec<Found> = Vec::new();
    let mut ends = vec![top; across];
    while let Some(mut block) = left.pop_front() {
        let needs = block.fits().needs(g);
        let span = (1..across)
            .find(|it| width_of(*it) >= needs)
            .unwrap_or(across);
        let starts = (0..=across - span)
            .map(|at| (ends[at..at + span].iter().copied().max().unwrap_or(top), at));
        let (y, at) = starts.min().unwrap_or((top, 0));
        let width = width_of(span);
        let fits = |block: &Block| y + block.fits().heights(width, g)[0] <= g.page.bottom;
        let mut rest = None;
        if !fits(&block) {
            rest = block.fits_mut().part(width, g.page.bottom - y, g);
            if rest.is_none() && !found.is_empty() {
                left.push_front(block);
                break;
            }
        }
        let height = block.fits().heights(width, g)[0];
        ends[at..at + span].fill(y + height + g.page.gap);
        let x = (wide + g.page.gutter).times(at);
        found.push((block, [x, y, width, height]));
        if let Some(rest) = rest {
            left.push_front(rest);
            break;
        }
    }
    found
}

/// What a side does not use goes to the gaps, then to the last block.
fn spread(found: &mut [Found], g: &Geometry) {
    let end = found
        .iter()
        .map(|(_, [_, y, _, height])| *y + *height)
        .max()
        .unwrap_or_default();
    let spare = (g.page.bottom - end).max(Mm::ZERO);
    let mut tops: Vec<Mm> = found.iter().map(|(_, [_, y, ..])| *y).collect();
    tops.sort_unstable();
    tops.dedup();
    let gaps = tops.len().saturating_sub(1);
    let opened = spare.over(2).over(gaps).min(g.page.most_gap - g.page.gap);
    for (_, [_, y, ..]) in found.iter_mut() {
        let above = tops.iter().filter(|top| **top < *y).count();
        *y += opened.times(above);
    }
    let spare = spare - opened.times(gaps);
    if let Some((block, [_, y, width, height])) = found.last_mut()
        && *y + *height + spare <= g.page.bottom
    {
        let most = block.fits().heights(*width, g)[1];
        *height += (most - *height).max(Mm::ZERO).min(spare);
    }
}
