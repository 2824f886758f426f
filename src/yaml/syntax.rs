//! Syntax errors: from the parser's words to a place and an id that has a plain wording.

use granit_parser::{ErrorKind, ScanError};

use super::DEEPEST;
use super::blame;
use super::lines::place_of;
use crate::report::{FileId, Finding, Place};

/// The first thing in a text that is not YAML.
#[derive(Debug)]
pub(super) struct Failure {
    pub(super) finding: Finding,
    /// Line of the failure, from 1.
    pub(super) line: u32,
    /// Where the innermost open bracket stands.
    pub(super) bracket: Option<Place>,
}

/// Lists and maps that stand too deep in one another.
pub(super) fn too_deep(place: Place, bracket: Option<Place>) -> Box<Failure> {
    Box::new(Failure {
        finding: Finding::job("yaml.too_deep", place).with("limit", DEEPEST.to_string()),
        line: place.line,
        bracket,
    })
}

/// What the parser says, with its place. Its own sentence goes along only where we have no better.
pub(super) fn failure(
    error: &ScanError,
    source: &str,
    file: FileId,
    bracket: Option<Place>,
) -> Box<Failure> {
    let mark = error.marker();
    let at = mark.byte_offset().unwrap_or(source.len()).min(source.len());
    let width = source
        .get(at..)
        .and_then(|rest| rest.chars().next())
        .filter(|sign| !sign.is_whitespace())
        .map_or(0, char::len_utf8);
    let place = place_of(source, at, width, file);
    if *error.kind() == ErrorKind::RecursionLimitExceeded {
        return too_deep(place, bracket);
    }
    let mut finding = Finding::job(id(error.kind()), place);
    match error.kind() {
        ErrorKind::MismatchedFlowCollectionEnd { open, close } => {
            finding = finding
                .with("open", open.to_string())
                .with("close", close.to_string());
        }
        ErrorKind::UnclosedFlowCollection { open } => {
            finding = finding.with("open", open.to_string());
        }
        ErrorKind::UnexpectedCharacter { character } => {
            finding = finding.with("character", character.to_string());
        }
        other if finding.id == "yaml.syntax" => {
            finding = finding.with("detail", other.to_string());
        }
        _ => {}
    }
    Box::new(blame::on_its_cause(
        source,
        Failure {
            line: place.line,
            bracket,
            finding,
        },
    ))
}

fn id(kind: &ErrorKind) -> &'static str {
    use ErrorKind as K;
    match kind {
        K::TabNotAllowed
        | K::TabInBlockIndentation
        | K::TabInIndentation
        | K::TabInPlainScalar
        | K::TabAtBlockScalarStart => "yaml.tab",
        K::UnclosedQuotedScalar | K::DocumentIndicatorInQuotedScalar => "yaml.unclosed_quote",
        K::InvalidTrailingSingleQuotedScalar | K::InvalidTrailingDoubleQuotedScalar => {
            "yaml.after_quote"
        }
        K::UnclosedFlowCollection { .. }
        | K::MismatchedFlowCollectionEnd { .. }
        | K::MisplacedFlowCollectionEnd
        | K::UnexpectedEofFlowSequence
        | K::UnexpectedEofFlowMapping
        | K::UnexpectedEofImplicitFlowMapping
        | K::InvalidFlowScalarIndent => "yaml.bracket",
        K::ExpectedFlowMappingSeparator | K::ExpectedFlowSequenceSeparator => "yaml.separator",
        K::MappingValueNotAllowed | K::InvalidColonPlacement => "yaml.colon",
        K::SimpleKeyExpected | K::InvalidSimpleKey | K::ExpectedBlockMappingKey => "yaml.no_colon",
        K::InvalidIndentation
        | K::ExpectedBlockSequenceEntry
        | K::BlockSequenceEntryNotAllowed
        | K::MappingKeyNotAllowed
        | K::InvalidBlockScalarIndent
        | K::InvalidQuotedScalarIndent => "yaml.indentation",
        K::UnknownQuotedScalarEscape
        | K::InvalidQuotedScalarHexEscape
        | K::InvalidUnicodeEscape
        | K::InvalidLowSurrogate
        | K::MissingLowSurrogate
        | K::UnpairedLowSurrogate
        | K::InvalidLowSurrogateHexEscape => "yaml.escape",
        K::UnexpectedCharacter { .. } | K::PlainScalarStartsWithDashFlowIndicator => {
            "yaml.character"
        }
        _ => "yaml.syntax",
    }
}
