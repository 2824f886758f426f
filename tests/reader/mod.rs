//! A small job of our own, with one of each kind of value, for the tests of the reader.

#![allow(
    dead_code,
    missing_docs,
    unreachable_pub,
    reason = "each test file uses its own part of it"
)]

use serde::Deserialize;

use studbook::report::{FileId, Finding};
use studbook::units::{ClockTime, Date, Force, Length, Pressure, Ratio, Torque};
use studbook::yaml::{At, Named, Prose, Text, decode, read};

#[derive(Debug, Deserialize)]
pub struct Studs {
    pub count: At<u32>,
    pub thread: At<Text<32>>,
    pub length: At<Length>,
    pub preload: Option<At<Force>>,
}

#[derive(Debug, PartialEq, Deserialize)]
pub enum Kind {
    #[serde(rename = "hydraulic torque wrench")]
    Hydraulic,
    #[serde(rename = "hand torque wrench")]
    Hand,
}

pub type Point = (At<Pressure>, At<Torque>);

#[derive(Debug, Deserialize)]
pub struct Tool {
    pub kind: At<Kind>,
    pub points: Option<At<Vec<At<Point>>>>,
    pub due: Option<At<Date>>,
    pub start: Option<At<ClockTime>>,
}

#[derive(Debug, Deserialize)]
pub struct Joint {
    pub tag: At<Text<16>>,
    pub studs: At<Studs>,
    pub critical: Option<At<bool>>,
    pub share: Option<At<Ratio>>,
    pub note: Option<At<Prose<40>>>,
    pub passes: Vec<At<Ratio>>,
}

#[derive(Debug, Deserialize)]
pub struct Job {
    pub studbook: At<u32>,
    pub tools: Option<At<Named<Tool>>>,
    pub joints: Vec<At<Joint>>,
}

pub fn job(text: &str) -> (Option<Job>, Vec<Finding>) {
    decode(&read(text.as_bytes(), FileId(0)))
}
