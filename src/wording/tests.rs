//! What only the inside can see: the files one by one.

use std::collections::BTreeSet;
use std::path::Path;

use super::entries::{EMBEDDED, Entries};

#[test]
fn every_file_of_a_language_folder_is_embedded() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("templates/wording");
    let names = |path: &Path| -> BTreeSet<String> {
        let entries = std::fs::read_dir(path).expect("the folder can be read");
        entries
            .map(|entry| entry.expect("the entry can be read").file_name())
            .map(|name| name.to_string_lossy().into_owned())
            .collect()
    };
    let languages: BTreeSet<String> = EMBEDDED
        .iter()
        .map(|(code, _)| (*code).to_owned())
        .collect();
    assert_eq!(names(&folder), languages);
    for (code, files) in EMBEDDED {
        let embedded: BTreeSet<String> = files.iter().map(|(name, _)| (*name).to_owned()).collect();
        assert_eq!(names(&folder.join(code)), embedded);
    }
}

#[test]
fn every_embedded_file_is_read_and_no_id_stands_twice() {
    for (_, files) in EMBEDDED {
        let mut all = Entries::default();
        for (name, text) in *files {
            assert_eq!(all.add(text), [], "{name}");
        }
    }
}
