//! A joint in the list: its tag and family beside the keys that a family may have too.

use serde::Deserialize;
use serde::de::value::MapAccessDeserializer;
use serde::de::{DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, Visitor};

use super::table::{Field, Kind, Who};
use super::values::{Value, Visit};
use super::{JointKeys, Name};
use crate::report::Place;
use crate::yaml::{At, Text};

/// A joint in the list. Its keys stand apart, so that thousands of joints do not make one piece of memory that no
/// allocator uses again.
#[derive(Debug)]
pub struct JointEntry {
    /// Its tag, unique in the job.
    pub tag: At<Text<32>>,
    /// The family whose data it takes.
    pub family: Option<At<Name>>,
    /// Its own data; nearest wins.
    pub keys: Box<JointKeys>,
}

impl JointEntry {
    const TAG: Field = Field::new("tag", Kind::Value, Who::Planner);
    const FAMILY: Field = Field {
        list: Some("families"),
        ..Field::new("family", Kind::Value, Who::Planner)
    };

    fn fields() -> Vec<&'static Field> {
        let mut fields = vec![const { &Self::TAG }, const { &Self::FAMILY }];
        fields.extend(JointKeys::fields());
        fields
    }
}

impl Value for JointEntry {
    const KIND: Kind = Kind::Group(Self::fields);

    fn walk(&self, field: &'static Field, place: Place, visit: &mut dyn Visit) {
        visit.joint(self.tag.get().map(|tag| tag.as_str()));
        self.tag.walk(const { &Self::TAG }, place, visit);
        if let Some(family) = &self.family {
            family.walk(const { &Self::FAMILY }, place, visit);
        }
        self.keys.walk(field, place, visit);
        visit.joint(None);
    }
}

impl<'de> Deserialize<'de> for JointEntry {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_struct("joint", &WITH_TAG, Reader)
    }
}

/// All keys that may stand there; the reader names the near one of a key that may not.
const WITH_TAG: [&str; JointKeys::NAMES.len() + 2] = {
    let mut names = ["tag"; JointKeys::NAMES.len() + 2];
    names[1] = "family";
    let mut at = 0;
    while at < JointKeys::NAMES.len() {
        names[at + 2] = JointKeys::NAMES[at];
        at += 1;
    }
    names
};

struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = JointEntry;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("map")
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<JointEntry, A::Error> {
        let (mut tag, mut family) = (None, None);
        let own = Own {
            map,
            tag: &mut tag,
            family: &mut family,
        };
        let keys = JointKeys::deserialize(MapAccessDeserializer::new(own))?;
        Ok(JointEntry {
            tag: tag.ok_or_else(|| A::Error::missing_field("tag"))?,
            family,
            keys: Box::new(keys),
        })
    }
}

/// The keys of a map but for those that a joint has beside a family. Nothing is buffered, so every place is kept.
struct Own<'a, A> {
    map: A,
    tag: &'a mut Option<At<Text<32>>>,
    family: &'a mut Option<At<Name>>,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Own<'_, A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, A::Error> {
        loop {
            let Some(key) = self.map.next_key::<String>()? else {
                return Ok(None);
            };
            match key.as_str() {
                "tag" => *self.tag = Some(self.map.next_value()?),
                "family" => *self.family = self.map.next_value()?,
                key => {
                    return seed
                        .deserialize(IntoDeserializer::<A::Error>::into_deserializer(key))
                        .map(Some);
                }
            }
        }
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}
