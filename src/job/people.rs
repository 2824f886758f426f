//! People and crews.

use super::table::keys;
use super::{MethodWord, Name};
use crate::units::Date;
use crate::yaml::{At, Text};

keys! {
    /// A person.
    Person at "people.*." asks Planner {
        /// Role in this job.
        role: Text<40>;
        /// Employer.
        company: Text<40>;
        /// Certificates of competence.
        certificates: Vec<At<Certificate>>;
        /// Languages read, as codes.
        languages: Vec<At<Text<8>>>, printed = false;
    }

    /// A certificate of competence.
    Certificate at "people.*.certificates." asks Planner {
        /// Its name or number.
        name [required]: Text<40>;
        /// Methods it covers.
        methods: Vec<At<MethodWord>>, list = "methods", printed = false;
        /// Last day of validity.
        until: Date;
    }

    /// A crew.
    Crew at "crews.*." asks Planner {
        /// Its lead.
        lead [required]: Name, list = "people";
        /// The others.
        members: Vec<At<Name>>, list = "people";
    }
}
