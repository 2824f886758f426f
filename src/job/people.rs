//! People and crews.

use serde::Deserialize;

use super::{MethodWord, Name};
use crate::units::Date;
use crate::yaml::{At, Text};

/// A person.
#[derive(Debug, Deserialize)]
pub struct Person {
    /// Role in this job.
    pub role: Option<At<Text<40>>>,
    /// Employer.
    pub company: Option<At<Text<40>>>,
    /// Certificates of competence.
    pub certificates: Option<At<Vec<At<Certificate>>>>,
    /// Languages read, as codes.
    pub languages: Option<At<Vec<At<Text<8>>>>>,
}

/// A certificate of competence.
#[derive(Debug, Deserialize)]
pub struct Certificate {
    /// Its name or number.
    pub name: At<Text<40>>,
    /// Methods it covers.
    pub methods: Option<At<Vec<At<MethodWord>>>>,
    /// Last day of validity.
    pub until: Option<At<Date>>,
}

/// A crew.
#[derive(Debug, Deserialize)]
pub struct Crew {
    /// Its lead.
    pub lead: At<Name>,
    /// The others.
    pub members: Option<At<Vec<At<Name>>>>,
}
