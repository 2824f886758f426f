//! Reads laid-out pages back: where boxes and texts stand, and how large they are. Tests live on it.

use typst::foundations::Label;
use typst::introspection::Tag;
use typst::layout::{Abs, Frame, FrameItem, Point, Transform};
use typst::text::TextItem;
use typst::visualize::{Color, Curve, CurveItem, Geometry, Paint};

use super::Typeset;

/// A rectangle on a page, in mm from its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// Page, from 1.
    pub page: usize,
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Region {
    /// Whether two regions of one page share more than `slack` mm in both directions.
    pub fn overlaps(&self, other: &Self, slack: f64) -> bool {
        let across = (self.x + self.width).min(other.x + other.width) - self.x.max(other.x);
        let down = (self.y + self.height).min(other.y + other.height) - self.y.max(other.y);
        self.page == other.page && across > slack && down > slack
    }
}

/// A shape that a template labelled, such as `<tick>`.
#[derive(Clone, Debug)]
pub struct Outline {
    /// The label without its brackets.
    pub label: String,
    /// The shape without the width of its line.
    pub region: Region,
}

/// A run of text as it stands on the page.
#[derive(Clone, Debug)]
pub struct Printed {
    /// The text.
    pub text: String,
    /// From the top of its capitals to its baseline, or to the foot of its descenders if it has any.
    pub region: Region,
    /// Size in pt.
    pub size: f64,
    /// How light the type is: 0 black, 1 white.
    pub lightness: f64,
    /// Whether it stands upright; a watermark does not.
    pub upright: bool,
}

/// Everything that was found on the pages.
#[derive(Debug, Default)]
pub(super) struct Reading {
    outlines: Vec<Outline>,
    marks: Vec<(String, usize)>,
    shapes: Vec<Region>,
    texts: Vec<Printed>,
}

impl Typeset {
    /// Size of a page in mm, width and height; `page` counts from 1.
    pub fn page_size(&self, page: usize) -> (f64, f64) {
        self.document
            .pages()
            .get(page.saturating_sub(1))
            .map_or((0.0, 0.0), |page| {
                (page.frame.width().to_mm(), page.frame.height().to_mm())
            })
    }

    /// The pages on which the label stands, in order, one entry for each time.
    pub fn pages_of(&self, label: &str) -> Vec<usize> {
        let marks = self.reading().marks.iter();
        marks
            .filter(|(name, _)| name == label)
            .map(|(_, page)| *page)
            .collect()
    }

    /// The shapes that carry the label.
    pub fn boxes(&self, label: &str) -> Vec<Region> {
        let outlines = self.outlines().iter();
        outlines
            .filter(|outline| outline.label == label)
            .map(|outline| outline.region)
            .collect()
    }

    /// Every labelled shape.
    pub fn outlines(&self) -> &[Outline] {
        &self.reading().outlines
    }

    /// Every shape, labelled or not, with the extent of its points.
    pub fn shapes(&self) -> &[Region] {
        &self.reading().shapes
    }

    /// Every run of text of a page (from 1), in the order of the template.
    pub fn texts(&self, page: usize) -> Vec<&Printed> {
        let texts = self.reading().texts.iter();
        texts.filter(|text| text.region.page == page).collect()
    }

    /// The text of a page (from 1), runs joined by a space, in the order of the template.
    pub fn text(&self, page: usize) -> String {
        let runs: Vec<&str> = self
            .texts(page)
            .into_iter()
            .map(|run| run.text.as_str())
            .collect();
        runs.join(" ")
    }

    /// The smallest type of a page (from 1), in pt; none on an empty page.
    pub fn smallest_text(&self, page: usize) -> Option<f64> {
        self.texts(page)
            .into_iter()
            .map(|run| run.size)
            .min_by(f64::total_cmp)
    }

    fn reading(&self) -> &Reading {
        self.reading.get_or_init(|| {
            let mut reading = Reading::default();
            for (index, page) in self.document.pages().iter().enumerate() {
                reading.walk(&page.frame, Transform::identity(), index + 1);
            }
            reading
        })
    }
}

impl Reading {
    fn walk(&mut self, frame: &Frame, outer: Transform, page: usize) {
        let mut pending: Option<Label> = None;
        for (position, item) in frame.items() {
            let here = outer.pre_concat(Transform::translate(position.x, position.y));
            match item {
                FrameItem::Group(group) => {
                    self.walk(&group.frame, here.pre_concat(group.transform), page);
                }
                FrameItem::Tag(Tag::Start(content, _)) => {
                    pending = content.label().or(pending);
                    if let Some(label) = content.label() {
                        self.marks.push((label.resolve().as_str().to_owned(), page));
                    }
                }
                FrameItem::Tag(Tag::End(..)) => pending = None,
                FrameItem::Shape(shape, _) => {
                    self.shapes.push(extent(&shape.geometry, here, page));
                    if let Some(label) = pending.take() {
                        self.outlines(label, &shape.geometry, here, page);
                    }
                }
                FrameItem::Text(text) => self.texts.push(printed(text, here, page)),
                FrameItem::Image(..) | FrameItem::Link(..) => {}
            }
        }
    }

    /// One labelled curve may draw many boxes: each piece of it is one.
    fn outlines(&mut self, label: Label, geometry: &Geometry, here: Transform, page: usize) {
        let label = label.resolve().as_str().to_owned();
        let regions = match geometry {
            Geometry::Curve(curve) => pieces(curve)
                .into_iter()
                .map(|piece| extent(&Geometry::Curve(piece), here, page))
                .collect(),
            single => vec![extent(single, here, page)],
        };
        self.outlines
            .extend(regions.into_iter().map(|region| Outline {
                label: label.clone(),
                region,
            }));
    }
}

/// The pieces of a curve that begin with a move of their own.
fn pieces(curve: &Curve) -> Vec<Curve> {
    let mut pieces: Vec<Curve> = Vec::new();
    for item in &curve.0 {
        if matches!(item, CurveItem::Move(_)) || pieces.is_empty() {
            pieces.push(Curve::new());
        }
        if let Some(piece) = pieces.last_mut() {
            piece.0.push(item.clone());
        }
    }
    pieces
}

fn extent(geometry: &Geometry, here: Transform, page: usize) -> Region {
    let (from, to) = match geometry {
        Geometry::Line(to) => (Point::zero(), *to),
        Geometry::Rect(size) => (Point::zero(), size.to_point()),
        Geometry::Curve(curve) => {
            let bounds = curve.bbox(None);
            (bounds.min, bounds.max)
        }
    };
    region(
        here,
        page,
        [from, to, Point::new(from.x, to.y), Point::new(to.x, from.y)],
    )
}

fn region(here: Transform, page: usize, corners: [Point; 4]) -> Region {
    let moved = corners.map(|corner| corner.transform(here));
    let span = |of: fn(&Point) -> Abs| {
        let values = moved.iter().map(|point| of(point).to_mm());
        let low = values.clone().fold(f64::INFINITY, f64::min);
        (low, values.fold(f64::NEG_INFINITY, f64::max) - low)
    };
    let ((x, width), (y, height)) = (span(|point| point.x), span(|point| point.y));
    Region {
        page,
        x,
        y,
        width,
        height,
    }
}

fn printed(text: &TextItem, here: Transform, page: usize) -> Printed {
    // Capital height and descender of the house face in parts of its size (its OS/2 and hhea tables).
    let descends = text
        .text
        .contains(|character| "Qgjpqy,;()[]{}/|_@$".contains(character));
    let (rise, fall) = (
        text.size * 0.698,
        text.size * if descends { 0.22 } else { 0.02 },
    );
    let (left, right) = (Abs::zero(), text.width());
    let corners = [
        Point::new(left, -rise),
        Point::new(right, -rise),
        Point::new(left, fall),
        Point::new(right, fall),
    ];
    Printed {
        text: text.text.to_string(),
        region: region(here, page, corners),
        size: text.size.to_pt() * here.sy.get().abs().max(here.ky.get().abs()),
        lightness: lightness(&text.fill),
        upright: here.kx.get().abs() < 1e-9,
    }
}

fn lightness(paint: &Paint) -> f64 {
    match paint {
        Paint::Solid(color) => luma(color),
        Paint::Gradient(_) | Paint::Tiling(_) => 1.0,
    }
}

fn luma(color: &Color) -> f64 {
    let [red, green, blue, alpha] = color.to_rgb().into_format::<f64, f64>().into();
    1.0 - alpha * (1.0 - (0.299 * red + 0.587 * green + 0.114 * blue))
}
