//! The table of measures: one line each feeds the reader, the check and the layout.

use serde::{Deserialize, Serialize};

use super::{Mm, Places};
use crate::report::Finding;
use crate::yaml::{self, At, Tree};

/// What a measure may be.
trait Measure: Sized {
    /// The least and the greatest that a sheet of paper knows.
    const RANGE: [f64; 2];
    fn new(number: f64) -> Self;
}

impl Measure for Mm {
    const RANGE: [f64; 2] = [0.0, 297.0];
    fn new(number: f64) -> Self {
        Self::new(number)
    }
}

/// A size of type in pt. Smaller type than 8 pt does not survive a copier on site.
impl Measure for f64 {
    const RANGE: [f64; 2] = [8.0, 72.0];
    fn new(number: f64) -> Self {
        number
    }
}

impl Measure for usize {
    const RANGE: [f64; 2] = [1.0, 24.0];
    fn new(number: f64) -> Self {
        // Whole hundredths of a millimetre, counted: no number of the range is lost on the way.
        Mm::new(number.floor()).holds(Mm::new(1.0))
    }
}

macro_rules! measures {
    ($($part:ident: $name:ident, $given:ident { $($measure:ident: $kind:ty),* })*) => {
        /// Every measure of a placed page, by the part of the page that it belongs to.
        #[derive(Clone, Debug, Default, PartialEq, Serialize)]
        #[allow(missing_docs, reason = "templates/geometry.yaml says what each of them means")]
        pub struct Geometry { $(pub $part: $name),* }

        $(
            #[derive(Clone, Debug, Default, PartialEq, Serialize)]
            #[allow(missing_docs, reason = "templates/geometry.yaml says what each of them means")]
            pub struct $name { $(pub $measure: $kind),* }

            #[derive(Debug, Deserialize)]
            struct $given { $($measure: Option<At<f64>>),* }
        )*

        #[derive(Debug, Deserialize)]
        struct Given { $($part: Option<At<$given>>),* }

        impl Geometry {
            /// The key of every measure.
            #[cfg(test)]
            pub(super) const MEASURES: &'static [&'static str] =
                &[$($(concat!(stringify!($part), ".", stringify!($measure))),*),*];

            /// Takes the measures that a file gives, and says what is wrong with them and where each stands.
            pub(super) fn lay_over(&mut self, tree: &Tree) -> (Vec<Finding>, Places) {
                let (given, mut findings) = yaml::decode::<Given>(tree);
                let mut places = Places::new();
                $(if let Some(part) = given.as_ref().and_then(|it| it.$part.as_ref()).and_then(At::get) {
                    $(
                        let key = concat!(stringify!($part), ".", stringify!($measure));
                        take(key, part.$measure.as_ref(), &mut self.$part.$measure, &mut places, &mut findings);
                    )*
                })*
                (findings, places)
            }
        }
    };
}

/// Takes one measure, if the file gives it and a sheet can have it.
fn take<M: Measure>(
    key: &'static str,
    given: Option<&At<f64>>,
    into: &mut M,
    places: &mut Places,
    findings: &mut Vec<Finding>,
) {
    let Some((number, place)) = given.and_then(At::both) else {
        return;
    };
    places.insert(key, place);
    let [least, most] = M::RANGE;
    if (least..=most).contains(number) {
        *into = M::new(*number);
    } else {
        let finding = Finding::job("geometry.out_of_range", place).with("key", key);
        findings.push(
            finding
                .with("least", least.to_string())
                .with("most", most.to_string()),
        );
    }
}

measures! {
    sizes: Sizes, SizesGiven { note: f64, text: f64, step: f64, head: f64, value: f64, line: Mm }
    page: Page, PageGiven { binding: Mm, outside: Mm, width: Mm, running: Mm, sheet: Mm, top: Mm, bottom: Mm,
        footer: Mm, gap: Mm, most_gap: Mm, gutter: Mm, across: usize }
    frame: Frame, FrameGiven { left: Mm, right: Mm, footer: Mm, number: Mm, notes_at: Mm, notes: Mm, pages: Mm, reason: Mm,
        code: Mm }
    boxes: Boxes, BoxesGiven { tick: Mm, number: Mm, height: Mm, sign: Mm, hold_sign: Mm, date: Mm, time: Mm, apart: Mm }
    head: HeadSize, HeadSizeGiven { height: Mm, two_lines: Mm }
    identity: IdentitySize, IdentitySizeGiven { height: Mm, full: Mm, tag: Mm, badge: Mm, badge_height: Mm, draft: Mm,
        name: Mm, place: Mm, class: Mm, drawing: Mm }
    danger: DangerSize, DangerSizeGiven { height: Mm, line: Mm, cell: Mm, inset: Mm, first: Mm, second: Mm, third: Mm,
        fourth: Mm, between: Mm }
    cautions: CautionsSize, CautionsSizeGiven { row: Mm, word: Mm, end: Mm, most: usize }
    ticks: TicksSize, TicksSizeGiven { pitch: Mm, most_pitch: Mm, least: Mm, gap: Mm, lines: usize }
    keys: KeysSize, KeysSizeGiven { height: Mm, with_second: Mm, room: Mm, beside_room: Mm, others_at: Mm, other: Mm,
        other_room: Mm, facts_at: Mm, beside_facts_at: Mm, label: Mm, first_fact: Mm, fact: Mm, missing_fact: Mm, pad: Mm }
    picture: PictureSize, PictureSizeGiven { least_width: Mm, most_width: Mm, top: Mm, least: Mm, least_with_words: Mm,
        per_number: Mm, inner_numbers: Mm, per_letter: Mm, number: Mm, first: Mm, number_reach: Mm, first_reach: Mm,
        further_sign: Mm, obstacle: Mm, obstacle_reach: Mm, mark: Mm, first_mark: Mm, mark_reach: Mm, legend: Mm, pad: Mm }
    studs: StudsSize, StudsSizeGiven { per_stud: Mm, least: Mm, around: Mm, most: usize, gap: Mm, pad: Mm }
    dial: DialSize, DialSizeGiven { size: Mm, words_at: Mm, height: Mm, pad: Mm }
    rows: RowsSize, RowsSizeGiven { pitch: Mm, most_pitch: Mm, further: Mm, name: Mm, dial: Mm, expected: Mm,
        gap: Mm, two_lines: Mm, foot: Mm }
    stop: StopSize, StopSizeGiven { height: Mm, part: Mm, inset: Mm, and: Mm }
    order: OrderSize, OrderSizeGiven { pad: Mm, row: Mm, note: Mm, at: Mm, least_gap: Mm, most_gap: Mm }
    list: ListSize, ListSizeGiven { row: Mm, number: Mm, wide: Mm, strokes: Mm, gap: Mm }
    grid: GridSize, GridSizeGiven { row: Mm, names: Mm, tick: Mm, number: Mm, gap: Mm, band: Mm }
    deviation: DeviationSize, DeviationSizeGiven { height: Mm, width: Mm, at: Mm }
    signatures: SignaturesSize, SignaturesSizeGiven { head: Mm, pitch: Mm, most_pitch: Mm, label: Mm, width: Mm }
    notes: NotesSize, NotesSizeGiven { line: Mm, least: usize }
}
