//! The calculation note of a group of joints: everything a reviewing engineer needs to reproduce
//! the numbers by hand.

mod chart;
mod plan;

pub use chart::{Band, Chart, Limit as ChartLimit, Mark, Span, chart};

pub use plan::{
    EndAngles, Line, Lookup, MOST_STEPS, Panel, Plan, PlanWords, Point, RoundTurn, StepLoad, plan,
};

use serde::Serialize;

use super::blocks::Head;
use super::desk::{BigValue, Furniture, Paragraphs, Table, TitleBlock};
use crate::formula::Node;

/// A calculation note.
#[derive(Clone, Debug, Serialize)]
pub struct Note {
    /// By which [`super::desk::Page::At`] refers to it.
    pub label: String,
    /// Edges of the pages.
    pub furniture: Furniture,
    /// Title.
    pub title: String,
    /// The joints, studs and method in one line.
    pub subtitle: String,
    /// At most four values: target load, setting, what governs.
    pub summary: Vec<BigValue>,
    /// What the values hold for, and for nothing else.
    pub valid: Vec<String>,
    /// Least, target and greatest load against the limits.
    pub chart: Option<Chart>,
    /// Load and turn after each step of a plan of rounds; none for other methods.
    pub plan: Option<Plan>,
    /// Load still missing by the mean turn of the last round; none for other methods.
    pub lookup: Option<Lookup>,
    /// The inputs.
    pub inputs: Inputs,
    /// The five lines of the hand check.
    pub hand_check: HandCheck,
    /// The title block at the foot of the first page.
    pub title_block: TitleBlock,
    /// The steps, formula by formula.
    pub steps: FormulaSteps,
    /// Where the formulas hold.
    pub holds: Paragraphs,
    /// Every limit.
    pub limits: Limits,
    /// Members, sensitivity, hours, long orders...
    pub tables: Vec<Table>,
    /// What was not checked.
    pub not_checked: Paragraphs,
}

/// A symbol as it is drawn.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Sign {
    /// `µ`.
    pub base: String,
    /// `th`, or empty.
    pub index: String,
}

/// The table of inputs.
#[derive(Clone, Debug, Serialize)]
pub struct Inputs {
    /// Title and remark.
    pub head: Head,
    /// Heads: symbol, meaning, value, origin.
    pub columns: [String; 4],
    /// Rows in groups that belong together; a thin line stands between groups.
    pub groups: Vec<Vec<Input>>,
}

/// A row of the inputs.
#[derive(Clone, Debug, Serialize)]
pub struct Input {
    /// One symbol, or several that share a row.
    pub symbols: Vec<Sign>,
    /// What it is.
    pub meaning: String,
    /// Value with unit; empty prints a box.
    pub value: String,
    /// Line of the job, row of a table, default with its key, or who must give it.
    pub origin: String,
}

/// The recipe of the hand check.
#[derive(Clone, Debug, Serialize)]
pub struct HandCheck {
    /// Title and remark.
    pub head: Head,
    /// Five lines, each with numbers.
    pub lines: Vec<String>,
}

/// The steps of the calculation.
#[derive(Clone, Debug, Serialize)]
pub struct FormulaSteps {
    /// Title and remark.
    pub head: Head,
    /// Groups under a short title each.
    pub groups: Vec<StepGroup>,
}

/// Steps that belong together.
#[derive(Clone, Debug, Serialize)]
pub struct StepGroup {
    /// Its title; may be empty.
    pub title: String,
    /// Its steps.
    pub steps: Vec<FormulaStep>,
}

/// A step: symbol = formula = numbers = result.
#[derive(Clone, Debug, Serialize)]
pub struct FormulaStep {
    /// Its number in this note.
    pub number: String,
    /// What it yields, in words.
    pub name: String,
    /// The symbol.
    pub symbol: Node,
    /// The right-hand side with symbols.
    pub formula: Node,
    /// The same with numbers; none when an input is missing.
    pub numbers: Option<Node>,
    /// The result; empty prints a box with who must give what is missing.
    pub result: String,
    /// Its unit.
    pub unit: String,
    /// Behind the result: `set 455 bar, gives 4168 N·m`; or who must give the missing input.
    pub remark: String,
    /// Document, edition and clause.
    pub source: String,
    /// The line in plain text, for a reader that cannot see it.
    pub alt: String,
}

/// The table of limits.
#[derive(Clone, Debug, Serialize)]
pub struct Limits {
    /// Title and remark.
    pub head: Head,
    /// Heads: quantity, value, limit, ratio, verdict, source.
    pub columns: [String; 6],
    /// The limits; what governs is bold.
    pub rows: Vec<LimitRow>,
}

/// A row of the limits.
#[derive(Clone, Debug, Serialize)]
pub struct LimitRow {
    /// What is limited.
    pub quantity: String,
    /// Its value.
    pub value: String,
    /// The limit with its sign: `≤ 690 kN`.
    pub limit: String,
    /// Value over limit, or limit over value where it is a least one: above 1 is a breach.
    pub ratio: String,
    /// `pass`, `FAIL`, `not known`.
    pub verdict: String,
    /// Where the limit comes from.
    pub source: String,
    /// Whether the row is bold: it governs, or it fails.
    pub strong: bool,
    /// Whether the verdict stands in a box: it fails.
    pub fails: bool,
}
