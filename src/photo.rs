//! Pictures from the site: bytes in, an upright grey JPEG at print resolution out, or a refusal.
//!
//! The bytes of the camera never reach a pack, so that places and camera data stay out of it. This
//! is the only module that names the `image` crate.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::imageops::FilterType;
use image::metadata::Orientation;
use image::{DynamicImage, ExtendedColorType, GrayImage, ImageDecoder, ImageError, ImageFormat};
use image::{ImageReader, Limits};

use crate::units::Length;

/// Files above this size are refused unread.
pub const MOST_BYTES: usize = 64 << 20;
/// Pictures wider or higher than this are refused before they are unpacked.
pub const MOST_PIXELS_A_SIDE: u32 = 12_000;
/// Pictures that need more memory than this are refused before they are unpacked.
const MOST_MEMORY: u64 = 256 << 20;
/// A progressive JPEG has about ten scans; a file with more than this wants to eat time.
const MOST_SCANS: usize = 64;
/// Resolution of the print.
const DOTS_PER_INCH: f64 = 300.0;
/// Quality of the JPEG in the pack.
const QUALITY: u8 = 80;
/// The share of pixels that may be cut off at each end when the greys are stretched.
const CUT_PER_MILLE: usize = 5;
/// The greys after stretching: not quite black to not quite white, so that a copier keeps both.
const DARKEST: u8 = 10;
const LIGHTEST: u8 = 245;

/// A picture that is ready for the pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// The bytes of a grey JPEG without any metadata.
    pub jpeg: Vec<u8>,
    /// Its width in pixels.
    pub width: u32,
    /// Its height in pixels.
    pub height: u32,
}

/// Why a picture is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The file has no bytes.
    Empty,
    /// The file is larger than [`MOST_BYTES`].
    TooManyBytes,
    /// The first bytes belong to no format of pictures.
    NotAPicture,
    /// A picture, but of a format that is not taken: its name in capitals, `GIF`, `HEIC`...
    Format(&'static str),
    /// More pixels than [`MOST_PIXELS_A_SIDE`], or more memory than 256 MiB.
    TooLarge,
    /// The file ends before the picture does.
    Incomplete,
    /// The file breaks the rules of its format; what the decoder says.
    Broken(String),
}

impl Refusal {
    /// The key of its wording.
    pub const fn id(&self) -> &'static str {
        match self {
            Self::Empty => "photo.empty",
            Self::TooManyBytes => "photo.too_many_bytes",
            Self::NotAPicture => "photo.not_a_picture",
            Self::Format(_) => "photo.format",
            Self::TooLarge => "photo.too_large",
            Self::Incomplete => "photo.incomplete",
            Self::Broken(_) => "photo.broken",
        }
    }

    /// What its wording may name beside the file: the format, or what the decoder says.
    pub fn detail(&self) -> &str {
        match self {
            Self::Format(name) => name,
            Self::Broken(reason) => reason,
            _ => "",
        }
    }
}

/// Prepares a picture for a frame of the given size on paper: upright, at most 300 dots per inch,
/// grey, stretched to the range that survives a copier. It is never enlarged.
///
/// The same bytes give the same bytes on every machine.
///
/// # Errors
/// Everything that is not a whole, sane JPEG, PNG or WebP picture is refused.
pub fn prepare(bytes: &[u8], frame_width: Length, frame_height: Length) -> Result<Photo, Refusal> {
    check_file(bytes)?;
    let (picture, orientation) = decode(bytes)?;
    let grey = on_white(&picture);
    drop(picture);
    let (width, height) = (dots(frame_width), dots(frame_height));
    // The frame belongs to the upright picture, and turning is cheaper after scaling.
    let (across, down) = if lies_on_its_side(orientation) {
        (height, width)
    } else {
        (width, height)
    };
    let mut picture = DynamicImage::ImageLuma8(grey);
    if picture.width() > across || picture.height() > down {
        picture = picture.resize(across, down, FilterType::Triangle);
    }
    picture.apply_orientation(orientation);
    let mut grey = picture.into_luma8();
    stretch(&mut grey);
    encode(&grey)
}

/// What can be said without unpacking the picture.
fn check_file(bytes: &[u8]) -> Result<(), Refusal> {
    if bytes.is_empty() {
        return Err(Refusal::Empty);
    }
    if bytes.len() > MOST_BYTES {
        return Err(Refusal::TooManyBytes);
    }
    match image::guess_format(bytes) {
        Ok(ImageFormat::Jpeg) => check_jpeg_end(bytes),
        Ok(ImageFormat::Png | ImageFormat::WebP) => Ok(()),
        Ok(other) => Err(Refusal::Format(name_of(other))),
        Err(_) => Err(refusal_of_the_unknown(bytes)),
    }
}

fn name_of(format: ImageFormat) -> &'static str {
    match format {
        ImageFormat::Gif => "GIF",
        ImageFormat::Tiff => "TIFF",
        ImageFormat::Bmp => "BMP",
        ImageFormat::Ico => "ICO",
        ImageFormat::Avif => "AVIF",
        ImageFormat::Hdr => "HDR",
        ImageFormat::OpenExr => "EXR",
        ImageFormat::Dds => "DDS",
        ImageFormat::Pnm => "PNM",
        ImageFormat::Qoi => "QOI",
        _ => "?",
    }
}

/// Formats that people do hand in and that the decoder does not know by name.
fn refusal_of_the_unknown(bytes: &[u8]) -> Refusal {
    const TELEPHONE: [&[u8]; 7] = [
        b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1",
    ];
    let brand = (bytes.get(4..8) == Some(b"ftyp".as_slice())).then(|| bytes.get(8..12));
    if brand
        .flatten()
        .is_some_and(|brand| TELEPHONE.contains(&brand))
    {
        return Refusal::Format("HEIC");
    }
    if bytes.starts_with(b"%PDF") {
        return Refusal::Format("PDF");
    }
    Refusal::NotAPicture
}

/// Walks the segments of a JPEG to the end marker. The decoder itself takes a file that was cut in
/// half and fills the rest with grey, so a picture that misses its lower half would reach the crew.
fn check_jpeg_end(bytes: &[u8]) -> Result<(), Refusal> {
    const END: u8 = 0xD9;
    const SCAN: u8 = 0xDA;
    let mut at = 2;
    let mut scans = 0;
    while let Some(marker_at) = next_marker(bytes, at) {
        let marker = bytes.get(marker_at + 1).copied().unwrap_or_default();
        if marker == END {
            return if scans > 0 {
                Ok(())
            } else {
                Err(Refusal::Incomplete)
            };
        }
        if marker == SCAN {
            scans += 1;
            if scans > MOST_SCANS {
                return Err(Refusal::TooLarge);
            }
        }
        let Some(&[high, low]) = bytes.get(marker_at + 2..marker_at + 4) else {
            break;
        };
        at = marker_at + 2 + usize::from(u16::from_be_bytes([high, low])).max(2);
    }
    Err(Refusal::Incomplete)
}

/// The next marker at or after `from` that opens a segment: 0xFF followed by neither zero (a
/// stuffed byte of the picture data), nor filling, nor a restart or another mark without a length.
fn next_marker(bytes: &[u8], from: usize) -> Option<usize> {
    let tail = bytes.get(from..)?;
    let found = tail
        .windows(2)
        .position(|pair| pair[0] == 0xFF && !matches!(pair[1], 0x00 | 0x01 | 0xFF | 0xD0..=0xD8))?;
    Some(from + found)
}

fn decode(bytes: &[u8]) -> Result<(DynamicImage, Orientation), Refusal> {
    let mut limits = Limits::default();
    limits.max_image_width = Some(MOST_PIXELS_A_SIDE);
    limits.max_image_height = Some(MOST_PIXELS_A_SIDE);
    limits.max_alloc = Some(MOST_MEMORY);
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|error| Refusal::Broken(error.to_string()))?;
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(refusal)?;
    if decoder.total_bytes() > MOST_MEMORY {
        return Err(Refusal::TooLarge);
    }
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let picture = DynamicImage::from_decoder(decoder).map_err(refusal)?;
    Ok((picture, orientation))
}

fn refusal(error: ImageError) -> Refusal {
    match error {
        ImageError::Limits(_) => Refusal::TooLarge,
        ImageError::IoError(cause) if cause.kind() == std::io::ErrorKind::UnexpectedEof => {
            Refusal::Incomplete
        }
        other => Refusal::Broken(other.to_string()),
    }
}

/// Eight-bit grey, with whatever is see-through standing on white paper.
fn on_white(picture: &DynamicImage) -> GrayImage {
    if !picture.color().has_alpha() {
        return picture.to_luma8();
    }
    let with_alpha = picture.to_luma_alpha8();
    GrayImage::from_fn(with_alpha.width(), with_alpha.height(), |x, y| {
        let [grey, alpha] = with_alpha.get_pixel(x, y).0.map(u32::from);
        let mixed = (grey * alpha + 255 * (255 - alpha) + 127) / 255;
        image::Luma([u8::try_from(mixed).unwrap_or(u8::MAX)])
    })
}

const fn lies_on_its_side(orientation: Orientation) -> bool {
    matches!(
        orientation,
        Orientation::Rotate90
            | Orientation::Rotate270
            | Orientation::Rotate90FlipH
            | Orientation::Rotate270FlipH
    )
}

/// Dots across a length on paper, at least one, at most what a decoder would take.
fn dots(length: Length) -> u32 {
    let wanted = (length.to_inch() * DOTS_PER_INCH).floor();
    // Counting up to a bound instead of casting: the bound is small and a cast may cut.
    (1..=MOST_PIXELS_A_SIDE)
        .rev()
        .find(|&dots| f64::from(dots) <= wanted)
        .unwrap_or(1)
}

/// Spreads the greys so that at most 0.5 % of the pixels are cut at each end. A picture of one
/// grey is left as it is.
fn stretch(picture: &mut GrayImage) {
    let mut counts = [0usize; 256];
    for pixel in picture.pixels() {
        counts[usize::from(pixel.0[0])] += 1;
    }
    let cut = picture.pixels().len() * CUT_PER_MILLE / 1000;
    let low = end_of(counts.iter().copied(), cut);
    let high = 255 - end_of(counts.iter().rev().copied(), cut);
    if low >= high {
        return;
    }
    let range = u32::from(LIGHTEST - DARKEST);
    for pixel in picture.pixels_mut() {
        let above = usize::from(pixel.0[0]).clamp(low, high) - low;
        let spread = (u32::try_from(above).unwrap_or(0) * range)
            / u32::try_from(high - low).unwrap_or(1).max(1);
        pixel.0[0] = DARKEST + u8::try_from(spread).unwrap_or(LIGHTEST - DARKEST);
    }
}

/// The first grey at which more than `cut` pixels have been passed.
fn end_of(counts: impl Iterator<Item = usize>, cut: usize) -> usize {
    let mut passed = 0;
    for (grey, count) in counts.enumerate() {
        passed += count;
        if passed > cut {
            return grey;
        }
    }
    255
}

fn encode(picture: &GrayImage) -> Result<Photo, Refusal> {
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, QUALITY)
        .encode(
            picture.as_raw(),
            picture.width(),
            picture.height(),
            ExtendedColorType::L8,
        )
        .map_err(refusal)?;
    Ok(Photo {
        jpeg,
        width: picture.width(),
        height: picture.height(),
    })
}
