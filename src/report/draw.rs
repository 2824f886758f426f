//! The caret drawing: the user's own line with the wrong value underlined.

use std::borrow::Cow;
use std::ops::Range;

use annotate_snippets::{Annotation, AnnotationKind, Element, Level, Origin, Renderer, Snippet};

use super::{Finding, Place, Severity, Sources};

/// Lines longer than this are named but not shown: no screen would hold them.
const LONGEST_LINE: usize = 2_000;

/// The sentences of one finding in the reader's language.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told {
    /// What was found, one line.
    pub title: String,
    /// Why it matters; may be empty.
    pub why: String,
    /// What to do; may be empty.
    pub fix: String,
    /// One short label for each related place of the finding, in the same order.
    pub labels: Vec<String>,
}

/// The short words in front of lines, in the reader's language. They default to the names of the
/// fields, which are also those of the JSON form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Words {
    /// In front of the title of an error.
    pub error: String,
    /// In front of the title of what a named person must accept.
    pub accept: String,
    /// In front of the title of what is only for information.
    pub note: String,
    /// In front of the reason.
    pub why: String,
    /// In front of the remedy.
    pub fix: String,
}

impl Default for Words {
    fn default() -> Self {
        Self {
            error: "error".to_owned(),
            accept: "accept".to_owned(),
            note: "note".to_owned(),
            why: "why".to_owned(),
            fix: "fix".to_owned(),
        }
    }
}

/// How a finding is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// Several lines, no colour: for files and pipes.
    Plain,
    /// Several lines with terminal colours.
    Styled,
    /// One line: `job.yaml:12:7: title`.
    Short,
}

/// Draws one finding. The text ends without a line break and holds no control characters but line
/// breaks and, if styled, colours.
pub fn draw(
    finding: &Finding,
    told: &Told,
    words: &Words,
    sources: &Sources,
    style: Style,
) -> String {
    let renderer = match style {
        Style::Short => return short(finding, told, words, sources),
        Style::Plain => Renderer::plain(),
        Style::Styled => Renderer::styled(),
    };
    let (level, name) = match finding.severity {
        Severity::Error => (Level::ERROR, &words.error),
        Severity::Accept => (Level::WARNING, &words.accept),
        Severity::Note => (Level::NOTE, &words.note),
    };
    let title = level
        .with_name(name.as_str())
        .primary_title(clean(&told.title))
        .id(finding.id);
    let mut group = title.elements(pictures(finding, told, sources));
    for (name, text) in [(&words.why, &told.why), (&words.fix, &told.fix)] {
        if !text.is_empty() {
            group = group.element(message(name, text));
        }
    }
    renderer.render(&[group])
}

fn message<'a>(name: &'a str, text: &str) -> Element<'a> {
    Level::HELP.with_name(name).message(clean(text)).into()
}

fn short(finding: &Finding, told: &Told, words: &Words, sources: &Sources) -> String {
    let title = clean(&told.title);
    match finding.place {
        Some(place) => format!("{}: {title}", clean(&sources.name_place(place))),
        None => {
            let severity = match finding.severity {
                Severity::Error => &words.error,
                Severity::Accept => &words.accept,
                Severity::Note => &words.note,
            };
            format!("{severity}: {title}")
        }
    }
}

/// The finding's own place, then the related ones with their labels.
fn pictures<'a>(finding: &Finding, told: &'a Told, sources: &'a Sources) -> Vec<Element<'a>> {
    let own = finding
        .place
        .map(|place| (place, AnnotationKind::Primary, None));
    let related = finding
        .related
        .iter()
        .enumerate()
        .map(|(index, &(place, _))| {
            let label = told.labels.get(index).map(String::as_str);
            (place, AnnotationKind::Context, label)
        });
    own.into_iter()
        .chain(related)
        .map(|(place, kind, label)| picture(place, kind, label, sources))
        .collect()
}

fn picture<'a>(
    place: Place,
    kind: AnnotationKind,
    label: Option<&'a str>,
    sources: &'a Sources,
) -> Element<'a> {
    let path = clean(sources.name(place.file));
    let line = usize::try_from(place.line).unwrap_or(1);
    match cut_out(sources.text(place.file), place) {
        Some((text, span)) => {
            let mut mark: Annotation<'a> = kind.span(span);
            if let Some(label) = label.filter(|label| !label.is_empty()) {
                mark = mark.label(clean(label));
            }
            Snippet::source(without_controls(text))
                .line_start(line)
                .path(path)
                .annotation(mark)
                .into()
        }
        None => Origin::path(path)
            .line(line)
            .char_column(usize::try_from(place.column).unwrap_or(1))
            .into(),
    }
}

/// The line of the file that holds the place, and the place within it. One line is cut out, because
/// handing over a whole file costs a thousand times as much.
fn cut_out(text: &str, place: Place) -> Option<(&str, Range<usize>)> {
    let start = usize::try_from(place.start).ok()?;
    let end = usize::try_from(place.end).ok()?;
    let before = text.get(..start)?;
    let from = before.rfind(['\n', '\r']).map_or(0, |at| at + 1);
    let until = text[start..]
        .find(['\n', '\r'])
        .map_or(text.len(), |at| start + at);
    let line = &text[from..until];
    if line.len() > LONGEST_LINE {
        return None;
    }
    // An empty place still gets one caret.
    let end = end.clamp(start, until);
    let end = if text.is_char_boundary(end) {
        end
    } else {
        start
    };
    Some((line, start - from..end - from))
}

/// A text that came from a file, made safe for a terminal: control characters become visible signs.
fn clean(text: &str) -> String {
    annotate_snippets::normalize_untrusted_str(&without_controls(text))
}

/// The renderer makes most control characters visible; U+0080 to U+009F, which some terminals obey,
/// are left to us. The sign that replaces them has as many bytes, so that places stay right.
fn without_controls(text: &str) -> Cow<'_, str> {
    let high_control = |sign: char| ('\u{80}'..='\u{9f}').contains(&sign);
    if text.contains(high_control) {
        Cow::Owned(text.replace(high_control, "\u{b7}"))
    } else {
        Cow::Borrowed(text)
    }
}
