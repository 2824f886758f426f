//! The sides to do: bands of columns from the top, a foot at the bottom.

use super::{Block, Placed, Side};
use crate::document::geometry::{Geometry, Mm};

/// What the sides to do are made of.
#[derive(Clone, Debug, Default)]
pub struct Front {
    /// From the top down.
    pub bands: Vec<Band>,
    /// What stands at the bottom of each of these sides: the order of the moves.
    pub foot: Option<Block>,
}

/// What stands at the top of the sides of one kind.
#[derive(Clone, Debug, Default)]
pub struct Heads {
    /// Of the first side.
    pub first: Vec<Block>,
    /// Of each further one.
    pub again: Vec<Block>,
}

impl Heads {
    /// The same on every side.
    pub fn every(blocks: Vec<Block>) -> Self {
        Self {
            first: blocks.clone(),
            again: blocks,
        }
    }

    pub(super) fn of(&self, side: usize) -> &[Block] {
        if side == 0 { &self.first } else { &self.again }
    }
}

/// Blocks beside one another, all of one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// From left to right.
    pub columns: Vec<Column>,
}

/// Blocks under one another.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// Left edge, from that of the text.
    pub x: Mm,
    /// Width.
    pub width: Mm,
    /// From the top down.
    pub blocks: Vec<Block>,
}

impl Band {
    /// One block over the whole width.
    pub fn of(block: Block, g: &Geometry) -> Self {
        Self::column(vec![block], g)
    }

    /// Blocks under one another over the whole width.
    pub fn column(blocks: Vec<Block>, g: &Geometry) -> Self {
        let (x, width) = (Mm::ZERO, g.page.width);
        Self {
            columns: vec![Column { x, width, blocks }],
        }
    }

    /// A picture and what belongs to it at the left, blocks with texts at the right: these get the width that their
    /// longest line needs, the picture the rest. Where both do not stand side by side the texts stand below the
    /// picture; without one they have the whole width.
    pub fn beside(picture: Vec<Block>, texts: Vec<Block>, g: &Geometry) -> Vec<Self> {
        if picture.is_empty() {
            return vec![Self::column(texts, g)];
        }
        let widest = |blocks: &[Block], but_picture: bool| {
            let counted = blocks.iter().filter(|it| !(but_picture && is_picture(it)));
            counted
                .map(|it| it.fits().needs(g))
                .max()
                .unwrap_or_default()
        };
        let least = g
            .picture
            .least_width
            .max(widest(&picture, false).min(g.picture.most_width));
        let column = |x, width, blocks| Column { x, width, blocks };
        let room = g.page.width - g.page.gutter - widest(&texts, true);
        if room < least {
            let width = g.picture.most_width;
            let x = (g.page.width - width).over(2);
            let above = Self {
                columns: vec![column(x, width, picture)],
            };
            return vec![above, Self::column(texts, g)];
        }
        let left = room.min(g.picture.most_width);
        let x = left + g.page.gutter;
        vec![Self {
            columns: vec![
                column(Mm::ZERO, left, picture),
                column(x, g.page.width - x, texts),
            ],
        }]
    }

    fn heights(&self, g: &Geometry) -> [Mm; 2] {
        let columns = self.columns.iter().map(|it| it.heights(g));
        columns.fold([Mm::ZERO; 2], |[least, most], it| {
            [least.max(it[0]), most.max(it[1])]
        })
    }

    pub(super) fn blocks(&mut self) -> impl Iterator<Item = &mut Block> {
        self.columns.iter_mut().flat_map(|it| &mut it.blocks)
    }

    /// What a height does not hold: at most one block of a column is parted, what stands below it goes along.
    fn part(&mut self, room: Mm, g: &Geometry) -> Option<Self> {
        let mut kept = self.clone();
        let parted = kept.columns.iter_mut().filter_map(|it| it.part(room, g));
        let rest: Vec<Block> = parted.flatten().collect();
        if rest.is_empty() || kept.heights(g)[0] > room {
            return None;
        }
        *self = kept;
        Some(Self::column(rest, g))
    }
}

fn is_picture(block: &Block) -> bool {
    matches!(block, Block::Picture(_))
}

impl Column {
    fn heights(&self, g: &Geometry) -> [Mm; 2] {
        let mut sum = [Mm::ZERO; 2];
        for it in &self.blocks {
            let [least, most] = it.fits().heights(self.width, g);
            if most > Mm::ZERO {
                let gap = if sum[1] > Mm::ZERO {
                    g.page.gap
                } else {
                    Mm::ZERO
                };
                sum = [sum[0] + gap + least, sum[1] + gap + most];
            }
        }
        sum
    }

    fn part(&mut self, room: Mm, g: &Geometry) -> Option<Vec<Block>> {
        let mut used = Mm::ZERO;
        for at in 0..self.blocks.len() {
            let height = self.blocks[at].fits().heights(self.width, g)[0];
            if used + height > room {
                let first = self.blocks[at]
                    .fits_mut()
                    .part(self.width, room - used, g)?;
                let below = self.blocks.split_off(at + 1);
                return Some(std::iter::once(first).chain(below).collect());
            }
            used += height + g.page.gap;
        }
        None
    }

    fn lay(self, top: Mm, height: Mm, g: &Geometry, side: &mut Side) {
        let mut spare = (height - self.heights(g)[0]).max(Mm::ZERO);
        let last = self.blocks.len().saturating_sub(1);
        let mut y = top;
        for (index, block) in self.blocks.into_iter().enumerate() {
            let [least, most] = block.fits().heights(self.width, g);
            if most == Mm::ZERO {
                continue;
            }
            let more = (most - least).min(spare);
            spare = spare - more;
            // The last of several stands at the foot of its column.
            if index == last && index > 0 {
                y += spare;
            }
            set(side, block, [self.x, y, self.width, least + more], g);
            y += least + more + g.page.gap;
        }
    }
}

/// Sets a block into its place: left, top, width, height.
pub(super) fn set(side: &mut Side, mut block: Block, [x, y, width, height]: [Mm; 4], g: &Geometry) {
    block.fits_mut().settle(width, height, g);
    side.blocks.push(Placed {
        x,
        y,
        width,
        height,
        block,
    });
}

/// Sets the blocks at the top of a side and says where the next one may begin.
pub(super) fn set_head(side: &mut Side, blocks: &[Block], g: &Geometry) -> Mm {
    let mut y = g.page.top;
    for block in blocks {
        let height = block.fits().heights(g.page.width, g)[0];
        set(side, block.clone(), [Mm::ZERO, y, g.page.width, height], g);
        // The strip of the tag has its white within.
        let gap = if matches!(block, Block::Identity(_)) {
            Mm::ZERO
        } else {
            g.page.gap
        };
        y += height + gap;
    }
    y
}

/// The sides that some bands take. What may go goes only if that saves a sheet, the highest rank first; what must
/// stand never does: it goes to the next side, below the head again.
pub fn place(front: &Front, heads: &Heads, g: &Geometry) -> Vec<Side> {
    let all = place_all(front, heads, g);
    if all.len() < 2 {
        return all;
    }
    let mut fewer = front.clone();
    while let_one_go(fewer.bands.iter_mut().flat_map(Band::blocks)) {
        fewer.bands.retain(|it| it.heights(g)[1] > Mm::ZERO);
        let sides = place_all(&fewer, heads, g);
        if sides.len() < 2 {
            return sides;
        }
    }
    all
}

/// Lets the last thing of the highest rank go; whether there was one.
pub(super) fn let_one_go<'a>(blocks: impl Iterator<Item = &'a mut Block>) -> bool {
    let ranked = blocks.filter_map(|it| Some((it.fits().spare()?, it)));
    match ranked.max_by_key(|(rank, _)| *rank) {
        Some((rank, block)) => {
            block.fits_mut().let_go(rank);
            true
        }
        None => false,
    }
}

fn place_all(front: &Front, heads: &Heads, g: &Geometry) -> Vec<Side> {
    let foot = front.foot.as_ref();
    let foot_height = foot.map_or(Mm::ZERO, |it| it.fits().heights(g.page.width, g)[0]);
    let bottom = g.page.bottom - foot_height;
    let mut sides = Vec::new();
    let mut next: Vec<Band> = front
        .bands
        .iter()
        .filter(|it| it.heights(g)[1] > Mm::ZERO)
        .cloned()
        .collect();
    while !next.is_empty() || sides.is_empty() {
        let mut side = Side::default();
        let top = set_head(&mut side, heads.of(sides.len()), g);
        let rest = overflow(&mut next, bottom - top, g);
        lay(next, top, bottom - top, g, &mut side);
        if let Some(foot) = foot.filter(|_| foot_height > Mm::ZERO) {
            set(
                &mut side,
                foot.clone(),
                [Mm::ZERO, bottom, g.page.width, foot_height],
                g,
            );
        }
        sides.push(side);
        next = rest;
    }
    sides
}

/// What a room does not hold: the bands behind the last that fits, and what that one can part with.
fn overflow(bands: &mut Vec<Band>, room: Mm, g: &Geometry) -> Vec<Band> {
    let mut used = Mm::ZERO;
    let fits = |band: &&Band| {
        let least = band.heights(g)[0];
        let has_room = used + least <= room;
        if has_room {
            used += least + g.page.gap;
        }
        has_room
    };
    let at = bands.iter().take_while(fits).count();
    let mut rest = bands.split_off(at);
    if let Some(first) = rest.first_mut()
        && let Some(parted) = first.part(room - used, g)
    {
        bands.push(std::mem::replace(first, parted));
    }
    if bands.is_empty() && !rest.is_empty() {
        // A band that no side holds is put where `overruns` finds it.
        bands.push(rest.remove(0));
    }
    rest
}

/// Places bands that fit. What is left goes half to the gaps, then to what can use it, from the last band up.
fn lay(bands: Vec<Band>, top: Mm, room: Mm, g: &Geometry, side: &mut Side) {
    let mut heights: Vec<Mm> = bands.iter().map(|it| it.heights(g)[0]).collect();
    let gaps = bands.len().saturating_sub(1);
    let used = heights.iter().copied().sum::<Mm>() + g.page.gap.times(gaps);
    let mut spare = (room - used).max(Mm::ZERO);
    let opened = spare.over(2).over(gaps).min(g.page.most_gap - g.page.gap);
    let gap = g.page.gap + opened;
    spare = spare - opened.times(gaps);
    for (band, height) in bands.iter().zip(&mut heights).rev() {
        let more = (band.heights(g)[1] - *height).max(Mm::ZERO).min(spare);
        *height += more;
        spare = spare - more;
    }
    let mut y = top;
    for (band, height) in bands.into_iter().zip(heights) {
        for column in band.columns {
            column.lay(y, height, g, side);
        }
        y += height + gap;
    }
}
