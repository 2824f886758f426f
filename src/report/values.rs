//! The values that a finding names.

use std::ops::Index;

/// Values by name, in the order of the names. A finding has few of them and a job may have thousands of
/// findings, so they stand in a list: a map takes ten times the room.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct FindingValues(Vec<(&'static str, String)>);

impl FindingValues {
    /// Sets a value.
    pub fn insert(&mut self, name: &'static str, value: String) {
        match self.rank(name) {
            Ok(at) => self.0[at].1 = value,
            Err(at) => {
                self.0.reserve_exact(1);
                self.0.insert(at, (name, value));
            }
        }
    }

    /// Takes a value away.
    pub fn remove(&mut self, name: &str) {
        self.0.retain(|(known, _)| *known != name);
    }

    /// Takes all away.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// The value of a name.
    pub fn get(&self, name: &str) -> Option<&str> {
        let at = self.rank(name).ok()?;
        self.0.get(at).map(|(_, value)| value.as_str())
    }

    /// Names and values in order.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, &str)> {
        self.0.iter().map(|(name, value)| (*name, value.as_str()))
    }

    fn rank(&self, name: &str) -> Result<usize, usize> {
        self.0.binary_search_by(|(known, _)| (*known).cmp(name))
    }
}

impl Index<&str> for FindingValues {
    type Output = str;

    /// The value of a name; empty if there is none.
    fn index(&self, name: &str) -> &str {
        self.get(name).unwrap_or_default()
    }
}
