//! Every text of the job that reaches paper, held against the signs that the fonts carry.

use crate::job::{
    Acceptance, Certificate, Clearance, Contents, Crew, DrawingReference, EnergyControl, Gasket,
    HoldPoint, Isolation, Job, JointEntry, JointKeys, LimitOverride, Lubricant, Material,
    Numbering, Obstacle, Opening, Pack, Permit, Person, Point, Proof, Purge, Reaction, Reference,
    Revision, Roles, Service, Studs, Target, Tighten, Tool,
};
use crate::report::{Finding, Place};
use crate::yaml::{At, Named, Prose, Text};

/// Signs that one finding names; the rest of a text in a foreign script says nothing new.
const MOST_NAMED: usize = 5;

/// A finding `job.missing_character` for each text of the job with a sign that no font has.
/// `missing` lists those of a text; the typesetter, which knows the fonts, gives it.
pub fn missing_characters(job: &Job, missing: fn(&str) -> Vec<char>) -> Vec<Finding> {
    let mut walk = Walk {
        missing,
        findings: Vec::new(),
    };
    job.texts(None, &mut walk);
    walk.findings
}

struct Walk {
    missing: fn(&str) -> Vec<char>,
    findings: Vec<Finding>,
}

impl Walk {
    fn look(&mut self, text: &str, place: Option<Place>) {
        let lacking = (self.missing)(text);
        if lacking.is_empty() {
            return;
        }
        let named: Vec<String> = lacking
            .iter()
            .take(MOST_NAMED)
            .map(|sign| named(*sign))
            .collect();
        let more = lacking.len().saturating_sub(MOST_NAMED);
        self.findings.push(
            Finding::job("job.missing_character", place)
                .with("characters", named.join(", "))
                .with(
                    "more",
                    if more > 0 {
                        more.to_string()
                    } else {
                        String::new()
                    },
                )
                .with("text", text),
        );
    }
}

/// `U+6F22 (漢)`; a sign that shows nothing is named by its number alone.
fn named(sign: char) -> String {
    let number = format!("U+{:04X}", u32::from(sign));
    if sign.is_control() || sign.is_whitespace() {
        number
    } else {
        format!("{number} ({sign})")
    }
}

/// Something that holds texts.
trait Texts {
    fn texts(&self, place: Option<Place>, walk: &mut Walk);
}

impl<const MAX: usize> Texts for Text<MAX> {
    fn texts(&self, place: Option<Place>, walk: &mut Walk) {
        walk.look(self.as_str(), place);
    }
}

impl<const MAX: usize> Texts for Prose<MAX> {
    fn texts(&self, place: Option<Place>, walk: &mut Walk) {
        walk.look(self.as_str(), place);
    }
}

impl<T: Texts> Texts for At<T> {
    fn texts(&self, _: Option<Place>, walk: &mut Walk) {
        if let Some(value) = self.get() {
            value.texts(Some(self.place()), walk);
        }
    }
}

impl<T: Texts> Texts for Option<T> {
    fn texts(&self, place: Option<Place>, walk: &mut Walk) {
        if let Some(value) = self {
            value.texts(place, walk);
        }
    }
}

impl<T: Texts> Texts for Vec<T> {
    fn texts(&self, place: Option<Place>, walk: &mut Walk) {
        for value in self {
            value.texts(place, walk);
        }
    }
}

impl<T: Texts> Texts for Named<T> {
    fn texts(&self, _: Option<Place>, walk: &mut Walk) {
        for (name, value) in self.iter() {
            if let Some(text) = name.get() {
                walk.look(text, Some(name.place()));
            }
            value.texts(Some(value.place()), walk);
        }
    }
}

/// Lists the fields of a type that hold texts which are printed. Names by which one part of the
/// job refers to another are left out where the name is looked at in its own place; so are paths.
macro_rules! texts {
    ($($type:ident { $($field:ident),* $(,)? })*) => { $(
        impl Texts for $type {
            fn texts(&self, place: Option<Place>, walk: &mut Walk) {
                $(self.$field.texts(place, walk);)*
            }
        }
    )* };
}

texts! {
    Job { pack, lubricants, gaskets, materials, tools, people, crews, isolations, permits, limits, accepted, families, joints }
    Pack {
        number, title, subtitle, client, owner, site, unit, department, technical_reference, revisions,
        scope, excluded, references, regime, distribution, roles
    }
    Revision { revision, text, prepared, checked, approved }
    Reference { document, revision, title }
    Roles { in_charge, permits, isolation, tools, calculation, inspection }
    Lubricant { source }
    Gasket { material, approval }
    Material { source, nuts }
    Tool { serial, calibration, checks, spare }
    Person { role, company, certificates }
    Certificate { name }
    Crew { lead, members }
    Permit { kind, number, by }
    LimitOverride { value, reason }
    Acceptance { reason }
    Isolation {
        boundary, drawing, reason, contents, energies, opening, points, proof, procedure, purge,
        permit, certificate, accepted_by
    }
    DrawingReference { number, revision }
    Contents { fluid, hazard }
    EnergyControl { what, control }
    Opening { name }
    Point { tag, position, location }
    Proof { at, gauge }
    Purge { medium, until }
    JointEntry { tag, keys }
    JointKeys {
        equipment, equipment_name, unit, place, drawing, service, studs, target, tighten, hold_points,
        numbering, obstacles, clearance, danger, limits
    }
    Service { fluid }
    Studs { grade, nut_grade }
    Target { reason }
    Tighten { reaction }
    Reaction { on }
    HoldPoint { point, text, accept }
    Numbering { first, seen_from }
    Obstacle { what }
    Clearance { at }
}

impl Texts for crate::job::Calibration {
    fn texts(&self, place: Option<Place>, walk: &mut Walk) {
        self.certificate.texts(place, walk);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::Sources;

    /// A stand-in for fonts without signs beyond Latin.
    fn beyond_latin(text: &str) -> Vec<char> {
        text.chars()
            .filter(|sign| u32::from(*sign) > 0x24f)
            .collect()
    }

    #[test]
    fn each_text_is_named_with_its_place_and_sign() {
        let text = "studbook: 1\npack: { title: Kühler 漢 }\njoints:\n  - tag: E-1\n    place: \"\u{1F600}\"\n    studs: { grade: B7 }\n";
        let (job, found) = crate::job::open("job.yaml", text.as_bytes(), &mut Sources::default());
        assert!(found.is_empty(), "{found:?}");
        let findings = missing_characters(&job.unwrap(), beyond_latin);
        let told: Vec<(u32, &str)> = findings
            .iter()
            .map(|finding| (finding.place.unwrap().line, &finding.values["characters"]))
            .collect();
        assert_eq!(told, [(2, "U+6F22 (漢)"), (5, "U+1F600 (\u{1F600})")]);
    }
}
