//! Whether the measures leave room for the type that stands in them. Widths are checked text by text, where blocks are.

use super::{Geometry, Mm, Places};
use crate::report::{Finding, Place};

/// A measure by its key, as it is and as it must be at least.
type Least = (&'static str, Mm, Mm);

/// Lines of type keep apart when their distance is 1.15 times their size.
const LEADING: f64 = 1.15;
/// Millimetres of one point.
const POINT: f64 = 25.4 / 72.0;

/// Height of lines of type under one another, from their sizes in pt.
fn lines(sizes: &[f64]) -> Mm {
    Mm::new(sizes.iter().sum::<f64>() * POINT * LEADING)
}

impl Geometry {
    /// Measures that are smaller than what must stand in them; each with its least value.
    pub(super) fn too_small(&self, places: &Places, start: Place) -> Vec<Finding> {
        let tell = |(key, has, least): Least| {
            let place = places.get(key).copied().unwrap_or(start);
            (has < least).then(|| {
                Finding::job("geometry.too_small", place)
                    .with("key", key)
                    .with("has", has.mm().to_string())
                    .with("least", least.mm().to_string())
            })
        };
        let all = self
            .least_of_pages()
            .into_iter()
            .chain(self.least_of_blocks());
        all.filter_map(tell).collect()
    }

    /// Each measure that depends on others, as it is and as it must be at least.
    fn least_of_pages(&self) -> Vec<Least> {
        let s = &self.sizes;
        let line = s.line;
        let paper = Mm::new(210.0);
        vec![
            ("sizes.line", line, lines(&[s.text])),
            (
                "page.outside",
                paper - self.page.binding - self.page.width,
                self.page.outside,
            ),
            ("page.footer", self.page.footer, self.page.bottom),
            (
                "page.bottom",
                self.page.bottom,
                self.page.top + Mm::new(100.0),
            ),
            ("page.most_gap", self.page.most_gap, self.page.gap),
            ("boxes.height", self.boxes.height, Mm::new(10.0)),
            ("boxes.tick", self.boxes.tick, Mm::new(10.0)),
            ("head.height", self.head.height, lines(&[s.text])),
            (
                "head.two_lines",
                self.head.two_lines,
                self.head.height + lines(&[s.text]) - Mm::new(1.0),
            ),
        ]
    }

    /// The same for what stands in blocks.
    fn least_of_blocks(&self) -> Vec<Least> {
        let s = &self.sizes;
        let line = s.line;
        let signature = |first: Mm| self.boxes.apart + first + self.boxes.date;
        vec![
            (
                "danger.line",
                self.danger.line,
                lines(&[s.step]) - Mm::new(0.2),
            ),
            ("cautions.row", self.cautions.row, lines(&[s.step])),
            (
                "ticks.pitch",
                self.ticks.pitch,
                self.boxes.tick.max(line.times(self.ticks.lines)),
            ),
            (
                "keys.height",
                self.keys.height,
                lines(&[s.text, s.value, s.text]),
            ),
            (
                "keys.other",
                self.keys.other,
                lines(&[s.text, s.head, s.text]),
            ),
            ("keys.fact", self.keys.fact, lines(&[s.step])),
            (
                "rows.pitch",
                self.rows.pitch,
                self.boxes.tick.max(lines(&[s.step, s.text])),
            ),
            ("rows.further", self.rows.further, lines(&[s.step])),
            (
                "order.row",
                self.order.row,
                Mm::new((s.text + s.step) * POINT),
            ),
            (
                "list.row",
                self.list.row,
                self.boxes.height.max(lines(&[s.text, s.note])),
            ),
            (
                "grid.row",
                self.grid.row,
                self.boxes.height.max(lines(&[s.text, s.note])),
            ),
            ("grid.band", self.grid.band, lines(&[s.text])),
            ("signatures.label", self.signatures.label, lines(&[s.note])),
            (
                "signatures.pitch",
                self.signatures.pitch,
                self.signatures.label + self.boxes.height,
            ),
            (
                "signatures.width",
                self.signatures.width,
                signature(self.boxes.sign),
            ),
            ("picture.legend", self.picture.legend, lines(&[s.note])),
        ]
    }
}
