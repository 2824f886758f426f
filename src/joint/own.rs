//! Keys that one method alone asks for. They reach it as they were written: a new one is a line of the table and nothing
//! else outside its method.

use crate::job::table::Key;
use crate::report::Place;
use crate::units::Quantity;
use crate::yaml::Text;

use super::{Fact, Level};

/// What stands behind such a key.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// A number in SI.
    Si(f64),
    /// A text.
    Text(String),
}

/// What family and joint say of such keys, by their paths.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OwnKeys(Vec<(&'static str, Fact<Given>)>);

impl OwnKeys {
    /// Takes in what a layer says; a nearer layer comes later and wins.
    pub fn take(&mut self, path: &'static str, given: Given, (place, level): (Place, Level)) {
        let fact = Fact::job(given, place, level);
        match self.0.iter_mut().find(|(known, _)| *known == path) {
            Some((_, known)) => *known = fact,
            None => self.0.push((path, fact)),
        }
    }

    fn fact<G, T, V>(&self, key: &Key<G, T>, read: fn(&Given) -> Option<V>) -> Fact<V> {
        let missing = || Fact::missing(key.field.path, key.field.who);
        let found = self.0.iter().find(|(path, _)| *path == key.field.path);
        found.map_or_else(missing, |(_, fact)| match fact {
            Fact::Known { value, origin } => read(value).map_or_else(missing, |value| {
                let origin = origin.clone();
                Fact::Known { value, origin }
            }),
            Fact::Missing { .. } => missing(),
        })
    }

    /// The number behind a key; the default of the table, else missing, where nobody gives it.
    pub fn quantity<G, Q: Quantity>(&self, key: &Key<G, Q>) -> Fact<Q> {
        let given = self.fact(key, |given| match given {
            Given::Si(si) => Some(Q::from_si(*si)),
            Given::Text(_) => None,
        });
        match key.default {
            Some(default) => given.or(|| Fact::default(default(), key.field.path)),
            None => given,
        }
    }

    /// The text behind a key, missing where nobody gives it.
    pub fn text<G, const MAX: usize>(&self, key: &Key<G, Text<MAX>>) -> Fact<String> {
        self.fact(key, |given| match given {
            Given::Text(text) => Some(text.clone()),
            Given::Si(_) => None,
        })
    }
}
