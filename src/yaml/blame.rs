//! Where a syntax error was made, which is often not where it is noticed.

use super::lines::place_of;
use super::syntax::Failure;
use crate::report::Place;

/// Moves a failure to its likely cause.
pub(super) fn on_its_cause(source: &str, failure: Failure) -> Failure {
    match failure.finding.id {
        "yaml.tab" => at_the_tab(source, failure),
        "yaml.after_quote" => at_the_open_quote(source, failure),
        "yaml.colon" | "yaml.no_colon" if failure.bracket.is_none() => {
            at_the_line_without_colon(source, failure)
        }
        _ => at_the_open_bracket(source, failure),
    }
}

fn place(failure: &Failure) -> Option<(Place, usize)> {
    let place = failure.finding.place?;
    Some((place, usize::try_from(place.start).ok()?))
}

fn moved(mut failure: Failure, id: &'static str, to: Place) -> Failure {
    failure.finding.id = id;
    failure.finding.place = Some(to);
    failure.line = to.line;
    failure
}

/// The parser stops before the tab; people must see the tab.
fn at_the_tab(source: &str, failure: Failure) -> Failure {
    let Some((place, at)) = place(&failure) else {
        return failure;
    };
    let rest = source.get(at..).unwrap_or_default();
    let own_line = rest
        .find(['\t', '\n'])
        .filter(|&end| rest[end..].starts_with('\t'));
    let next_line = rest.find('\n').and_then(|end| {
        let next = &rest[end + 1..];
        let space = &next[..next.len() - next.trim_start_matches([' ', '\t']).len()];
        space.find('\t').map(|tab| end + 1 + tab)
    });
    match own_line.or(next_line) {
        Some(further) => {
            let tab = place_of(source, at + further, 1, place.file);
            moved(failure, "yaml.tab", tab)
        }
        None => failure,
    }
}

/// Text behind a closing quote: if the quotation spans lines, the quote before it was never closed,
/// and what looks like its end opens another text.
fn at_the_open_quote(source: &str, failure: Failure) -> Failure {
    let Some((place, at)) = place(&failure) else {
        return failure;
    };
    let before = source.get(..at).unwrap_or_default().trim_end();
    let Some(quote) = before
        .chars()
        .next_back()
        .filter(|sign| "\"'".contains(*sign))
    else {
        return failure;
    };
    let Some(open) = before[..before.len() - 1].rfind(quote) else {
        return failure;
    };
    if !before[open..].contains('\n') {
        return failure;
    }
    let open = place_of(source, open, 1, place.file);
    moved(failure, "yaml.unclosed_quote", open)
}

/// A line such as `count 24` runs on into the next one, whose colon is then one too many.
fn at_the_line_without_colon(source: &str, failure: Failure) -> Failure {
    let Some((place, at)) = place(&failure) else {
        return failure;
    };
    let before = source.get(..at).unwrap_or_default();
    let Some(line_start) = before.rfind('\n').map(|end| end + 1) else {
        return failure;
    };
    let above = before[..line_start].trim_end();
    let above_start = above.rfind('\n').map_or(0, |end| end + 1);
    let above_line = &above[above_start..];
    let text = above_line.trim_start();
    let same_depth = above_line.len() - text.len() == indent(&source[line_start..]);
    let runs_on = same_depth && !text.is_empty() && !text.contains([':', '#', '"', '\'', '|', '>']);
    if !runs_on || text.starts_with(['-', '[', '{', ']', '}']) {
        return failure;
    }
    let start = above_start + (above_line.len() - text.len());
    let culprit = place_of(source, start, text.len(), place.file);
    moved(failure, "yaml.no_colon", culprit)
}

/// An error inside a bracket, in a line that does not stand deeper than the bracket's own line: the
/// bracket was meant to close before it.
fn at_the_open_bracket(source: &str, failure: Failure) -> Failure {
    let Some(bracket) = failure.bracket else {
        return failure;
    };
    let Some((_, at)) = place(&failure) else {
        return failure;
    };
    let open = usize::try_from(bracket.start).unwrap_or_default();
    let between = source.get(open..at).unwrap_or_default();
    let own_start = source[..open].rfind('\n').map_or(0, |end| end + 1);
    let own = indent(&source[own_start..]);
    let starts = between.match_indices('\n').map(|(end, _)| open + end + 1);
    let left = starts.into_iter().any(|start| {
        let line = source[start..]
            .split('\n')
            .next()
            .unwrap_or_default()
            .trim();
        !line.is_empty()
            && !line.starts_with(['#', ']', '}', ','])
            && indent(&source[start..]) <= own
    });
    if !left {
        return failure;
    }
    let sign = source[open..].chars().next().unwrap_or('[');
    let mut failure = moved(
        failure,
        "yaml.bracket",
        Place {
            end: bracket.start + 1,
            ..bracket
        },
    );
    failure.finding.values.clear();
    failure.finding = failure.finding.with("open", sign.to_string());
    failure
}

/// Columns before the first sign of a line; a tab counts eight.
pub(super) fn indent(line: &str) -> usize {
    line.chars()
        .take_while(|sign| matches!(sign, ' ' | '\t'))
        .map(|sign| if sign == '\t' { 8 } else { 1 })
        .sum()
}
