//! A page that went through a copier.

use studbook::typeset::Typeset;

/// A page after a copier: 150 dots per inch, every dot black or white.
pub(crate) struct Bitmap {
    pub(crate) width: usize,
    dark: Vec<bool>,
}

const DOTS: f64 = 150.0 / 25.4;

impl Bitmap {
    pub(crate) fn of(pages: &Typeset, page: usize) -> Self {
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

    pub(crate) fn height(&self) -> usize {
        self.dark.len() / self.width
    }

    pub(crate) fn is_dark(&self, x: usize, y: usize) -> bool {
        self.dark.get(y * self.width + x).copied().unwrap_or(false)
    }

    /// Whether a dot within one of the point (in mm) is dark.
    pub(crate) fn is_inked(&self, x: f64, y: f64) -> bool {
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
