//! A page that went through a copier: 150 dots per inch, every dot black or white.

mod sample;

use sample::{draft, lay_out, loosening, tightening, upright};
use studbook::typeset::{Region, Typeset};

struct Bitmap {
    width: usize,
    dark: Vec<bool>,
}

const DOTS: f64 = 150.0 / 25.4;

impl Bitmap {
    fn of(pages: &Typeset, page: usize) -> Self {
        let options = typst_render::RenderOptions {
            pixel_per_pt: (150.0 / 72.0).into(),
            ..Default::default()
        };
        let picture = typst_render::render(&pages.document().pages()[page - 1], &options);
        let dark = picture.pixels().iter().map(|pixel| {
            let grey = (u32::from(pixel.red()) * 299
                + u32::from(pixel.green()) * 587
                + u32::from(pixel.blue()) * 114)
                / 1000;
            grey < 128
        });
        Self {
            width: picture.width() as usize,
            dark: dark.collect(),
        }
    }

    fn height(&self) -> usize {
        self.dark.len() / self.width
    }

    fn is_dark(&self, x: usize, y: usize) -> bool {
        self.dark.get(y * self.width + x).copied().unwrap_or(false)
    }

    /// Whether a dot within one of the point (in mm) is dark.
    fn is_inked(&self, x: f64, y: f64) -> bool {
        let near = |dot: usize| dot.saturating_sub(1)..=dot + 1;
        let (x, y) = (dot(x), dot(y));
        near(x).any(|x| near(y).any(|y| self.is_dark(x, y)))
    }
}

/// The dot in which a length in mm ends.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a length on a page is between 0 and 297 mm"
)]
fn dot(length: f64) -> usize {
    (length * DOTS) as usize
}

fn outline_points(region: &Region) -> Vec<(f64, f64)> {
    let Region {
        x,
        y,
        width,
        height,
        ..
    } = *region;
    (0..=40)
        .flat_map(|step| {
            let part = f64::from(step) / 40.0;
            [
                (x + part * width, y),
                (x + part * width, y + height),
                (x, y + part * height),
                (x + width, y + part * height),
            ]
        })
        .collect()
}

#[test]
fn every_box_keeps_its_outline() {
    let pages = &lay_out(vec![tightening(24), loosening(36), draft(24)]);
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        for outline in pages
            .outlines()
            .iter()
            .filter(|outline| outline.region.page == page)
        {
            let points = outline_points(&outline.region);
            let inked = points
                .iter()
                .filter(|(x, y)| bitmap.is_inked(*x, *y))
                .count();
            assert!(
                inked * 10 >= points.len() * 9,
                "{inked} of {}: {outline:?}",
                points.len()
            );
        }
    }
}

#[test]
fn the_code_is_still_read() {
    let pages = &lay_out(vec![tightening(24), draft(64)]);
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        // A camera is held over the corner of the code, not over the rings of the picture.
        let (left, top) = (bitmap.width * 3 / 4, bitmap.height() * 9 / 10);
        let (wide, high) = (bitmap.width - left, bitmap.height() - top);
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(wide, high, |x, y| {
            if bitmap.is_dark(left + x, top + y) {
                0
            } else {
                255
            }
        });
        let read = image
            .detect_grids()
            .into_iter()
            .filter_map(|code| code.decode().ok());
        let contents: Vec<String> = read.map(|(_, content)| content).collect();
        assert_eq!(contents, ["HL-31-WP-007/B/XA7HCFDY"], "page {page}");
    }
}

#[test]
fn light_type_stands_on_dark_only() {
    let pages = &lay_out(vec![tightening(24), loosening(24), draft(24)]);
    let mut light = 0;
    for page in 1..=pages.page_count() {
        let bitmap = Bitmap::of(pages, page);
        for text in upright(pages, page)
            .into_iter()
            .filter(|text| text.lightness > 0.5)
        {
            light += 1;
            assert!(text.size > 13.9, "white type below 14 pt: {text:?}");
            let Region {
                x,
                y,
                width,
                height,
                ..
            } = text.region;
            // Around the word, half a millimetre outside, everything is dark.
            let around = Region {
                page,
                x: x - 0.6,
                y: y - 0.6,
                width: width + 1.2,
                height: height + 1.2,
            };
            assert!(
                outline_points(&around)
                    .iter()
                    .all(|(x, y)| bitmap.is_inked(*x, *y)),
                "{text:?}"
            );
        }
    }
    assert!(light >= 6, "the words of the sides are white on dark");
}
