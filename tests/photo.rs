//! Pictures are built here in memory and read back from the prepared JPEG with the same decoder
//! that any viewer would use; what a format demands is named beside each test.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, ExtendedColorType, GrayImage, ImageFormat, Luma, LumaA, Rgb, RgbImage};
use studbook::photo::{Photo, Refusal, prepare};
use studbook::units::Length;

const FRAME: Length = Length::mm(90.0);

/// 40 wide and 20 high: left half dark, right half light, and a white corner at the top right.
fn picture() -> RgbImage {
    RgbImage::from_fn(40, 20, |x, y| match (x, y) {
        (32.., ..4) => Rgb([250, 250, 250]),
        (20.., _) => Rgb([180, 180, 180]),
        _ => Rgb([40, 40, 40]),
    })
}

fn jpeg(picture: &RgbImage) -> Vec<u8> {
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, 95)
        .encode(
            picture,
            picture.width(),
            picture.height(),
            ExtendedColorType::Rgb8,
        )
        .expect("encodes");
    bytes
}

fn png(picture: impl Into<DynamicImage>) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture
        .into()
        .write_to(&mut bytes, ImageFormat::Png)
        .expect("encodes");
    bytes.into_inner()
}

/// Puts an EXIF segment with one entry, the orientation (tag 0x0112 of TIFF 6.0), after the start.
fn with_orientation(jpeg: &[u8], orientation: u8) -> Vec<u8> {
    let mut segment = b"Exif\0\0II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0".to_vec();
    segment.extend([orientation, 0, 0, 0, 0, 0, 0, 0]);
    let length = u16::try_from(segment.len() + 2)
        .expect("short")
        .to_be_bytes();
    [&jpeg[..2], &[0xFF, 0xE1], &length, &segment, &jpeg[2..]].concat()
}

fn read(photo: &Photo) -> GrayImage {
    assert_eq!(
        image::guess_format(&photo.jpeg).ok(),
        Some(ImageFormat::Jpeg)
    );
    let picture = image::load_from_memory(&photo.jpeg).expect("decodes");
    assert!(
        matches!(picture, DynamicImage::ImageLuma8(_)),
        "one grey channel"
    );
    picture.into_luma8()
}

/// The same signs as CRC-32 of PNG wants (ISO 3309), so that a header can be forged.
fn crc(bytes: &[u8]) -> [u8; 4] {
    let mut crc = u32::MAX;
    for &byte in bytes {
        crc ^= u32::from(byte);
        for _ in 0..8 {
            crc = if crc & 1 == 1 {
                (crc >> 1) ^ 0xEDB8_8320
            } else {
                crc >> 1
            };
        }
    }
    (!crc).to_be_bytes()
}

fn png_header(width: u32, height: u32) -> Vec<u8> {
    let chunk = [
        b"IHDR".as_slice(),
        &width.to_be_bytes(),
        &height.to_be_bytes(),
        &[8, 2, 0, 0, 0],
    ]
    .concat();
    let start = b"\x89PNG\r\n\x1a\n\0\0\0\x0d";
    let data = b"\0\0\0\0IDAT\x35\xaf\x06\x1e";
    [start.as_slice(), &chunk, &crc(&chunk), data].concat()
}

#[test]
fn greys_are_stretched_to_what_a_copier_keeps() {
    let photo = prepare(&jpeg(&picture()), FRAME, FRAME).expect("a good picture");
    assert_eq!((photo.width, photo.height), (40, 20), "never enlarged");
    let grey = read(&photo);
    let dark = grey.get_pixel(2, 10).0[0];
    let light = grey.get_pixel(38, 1).0[0];
    assert!((5..=16).contains(&dark), "{dark} is near 10");
    assert!((239..=250).contains(&light), "{light} is near 245");
}

#[test]
fn one_grey_stays_as_it_is() {
    let grey = GrayImage::from_pixel(16, 16, Luma([90]));
    let photo = prepare(&png(grey), FRAME, FRAME).expect("a good picture");
    assert!((88..=92).contains(&read(&photo).get_pixel(8, 8).0[0]));
}

/// EXIF orientation 6: the camera was turned, the first row is the right side of the scene.
#[test]
fn pictures_stand_upright() {
    let turned = with_orientation(&jpeg(&picture()), 6);
    let photo = prepare(&turned, FRAME, FRAME).expect("a good picture");
    assert_eq!((photo.width, photo.height), (20, 40));
    let grey = read(&photo);
    assert!(
        grey.get_pixel(10, 5).0[0] < 60,
        "the left half of the file is on top"
    );
    assert!(
        grey.get_pixel(18, 38).0[0] > 200,
        "its top right corner is below at the right"
    );
    let upside_down = with_orientation(&jpeg(&picture()), 3);
    let photo = prepare(&upside_down, FRAME, FRAME).expect("a good picture");
    assert!(read(&photo).get_pixel(38, 10).0[0] < 60);
}

#[test]
fn large_pictures_are_scaled_to_300_dots_per_inch() {
    let large = RgbImage::from_fn(3000, 1500, |x, y| {
        Rgb([
            u8::try_from(x % 251).unwrap_or(0),
            u8::try_from(y % 241).unwrap_or(0),
            90,
        ])
    });
    let bytes = jpeg(&large);
    // 50.8 mm are two inches: 600 dots.
    let photo = prepare(&bytes, Length::mm(50.8), Length::mm(50.8)).expect("a good picture");
    assert_eq!((photo.width, photo.height), (600, 300));
    let turned = with_orientation(&bytes, 8);
    let photo = prepare(&turned, Length::mm(50.8), Length::mm(25.4)).expect("a good picture");
    assert_eq!(
        (photo.width, photo.height),
        (150, 300),
        "the frame is that of the upright picture"
    );
}

#[test]
fn nothing_of_the_camera_is_kept_and_the_bytes_are_the_same_twice() {
    let bytes = with_orientation(&jpeg(&picture()), 1);
    let photo = prepare(&bytes, FRAME, FRAME).expect("a good picture");
    assert!(!photo.jpeg.windows(4).any(|window| window == b"Exif"));
    assert_eq!(
        photo,
        prepare(&bytes, FRAME, FRAME).expect("a good picture")
    );
}

#[test]
fn sixteen_bits_and_see_through_pictures_are_taken() {
    let deep = image::ImageBuffer::from_fn(20, 20, |x, _| {
        Luma([if x < 10 { 2_000u16 } else { 60_000 }])
    });
    let photo = prepare(&png(deep), FRAME, FRAME).expect("a good picture");
    let grey = read(&photo);
    assert!(grey.get_pixel(2, 2).0[0] < 30 && grey.get_pixel(17, 2).0[0] > 225);
    // Black and fully see-through stands as white beside solid black.
    let glass =
        image::GrayAlphaImage::from_fn(20, 20, |x, _| LumaA([0, if x < 10 { 0 } else { 255 }]));
    let grey = read(&prepare(&png(glass), FRAME, FRAME).expect("a good picture"));
    assert!(grey.get_pixel(2, 2).0[0] > 225 && grey.get_pixel(17, 2).0[0] < 30);
}

#[test]
fn a_file_that_was_cut_short_is_refused_at_any_length() {
    let whole = jpeg(&picture());
    for length in 3..whole.len() {
        assert_eq!(
            prepare(&whole[..length], FRAME, FRAME),
            Err(Refusal::Incomplete),
            "{length}"
        );
    }
    let whole = png(picture());
    for length in [20, 60, whole.len() - 20] {
        assert!(prepare(&whole[..length], FRAME, FRAME).is_err(), "{length}");
    }
    // Some cameras write more behind the end marker: that is no fault.
    let mut longer = jpeg(&picture());
    longer.extend([0u8; 100]);
    assert!(prepare(&longer, FRAME, FRAME).is_ok());
}

#[test]
fn hostile_headers_are_refused_before_anything_is_unpacked() {
    assert_eq!(
        prepare(&png_header(60_000, 60_000), FRAME, FRAME),
        Err(Refusal::TooLarge)
    );
    assert_eq!(
        prepare(&png_header(12_000, 12_000), FRAME, FRAME),
        Err(Refusal::TooLarge)
    );
    // The frame header of a JPEG: marker C0, length, precision, height, width (ITU-T T.81, B.2.2).
    let mut forged = jpeg(&picture());
    let frame = forged
        .windows(2)
        .position(|pair| pair == [0xFF, 0xC0])
        .expect("a frame header");
    forged[frame + 5..frame + 9].copy_from_slice(&[0xEA, 0x60, 0xEA, 0x60]);
    assert_eq!(prepare(&forged, FRAME, FRAME), Err(Refusal::TooLarge));
}

#[test]
fn a_jpeg_of_countless_scans_is_refused() {
    let whole = jpeg(&picture());
    let scan = whole
        .windows(2)
        .position(|pair| pair == [0xFF, 0xDA])
        .expect("a scan");
    let mut forged = whole[..scan].to_vec();
    for _ in 0..1000 {
        forged.extend(&whole[scan..whole.len() - 2]);
    }
    forged.extend([0xFF, 0xD9]);
    assert_eq!(prepare(&forged, FRAME, FRAME), Err(Refusal::TooLarge));
}

#[test]
fn other_files_are_refused_by_name() {
    let refused = |bytes: &[u8]| prepare(bytes, FRAME, FRAME).expect_err("not taken");
    assert_eq!(refused(b""), Refusal::Empty);
    assert_eq!(refused(b"GIF89a\x01\0\x01\0"), Refusal::Format("GIF"));
    assert_eq!(
        refused(b"\0\0\0\x18ftypheic\0\0\0\0mif1"),
        Refusal::Format("HEIC")
    );
    assert_eq!(refused(b"II*\0\x08\0\0\0"), Refusal::Format("TIFF"));
    assert_eq!(refused(b"%PDF-1.7"), Refusal::Format("PDF"));
    assert_eq!(
        refused(b"tag,place\nE-310-CH-01,north"),
        Refusal::NotAPicture
    );
    assert_eq!(refused(b"x"), Refusal::NotAPicture);
    assert_eq!(refused(&[0xFF, 0xD8, 0xFF, 0xD9]), Refusal::Incomplete);
    let mut wrong_sum = png(picture());
    let data = wrong_sum
        .windows(4)
        .position(|name| name == b"IDAT")
        .expect("a data chunk");
    wrong_sum[data + 6] ^= 0x55;
    assert!(matches!(refused(&wrong_sum), Refusal::Broken(_)));
    assert!(!refused(&wrong_sum).detail().is_empty());
}
