//! What only the inside can see: the files one by one.

use super::engine::is_template;
use super::entries::{EMBEDDED, Entries, Text};
use super::{Values, Wording, plain};

#[test]
fn every_embedded_file_is_read_and_no_id_stands_twice() {
    for (_, files) in EMBEDDED {
        let mut all = Entries::default();
        for (name, text) in *files {
            assert_eq!(all.add(text), [], "{name}");
        }
    }
}

/// A text that is filled without the engine says what the engine says, whatever the values hold.
#[test]
fn plain_texts_are_said_as_the_engine_says_them() {
    let wording = Wording::embedded("en").expect("English is embedded");
    let mut plain_texts = 0;
    for id in wording.ids() {
        let Some(Text::One(text)) = wording.entries.text(id) else {
            continue;
        };
        let names = wording.variables(id);
        for value in ["12\u{a0}kN", "{{ x }} {% if %}", "<b>&\"\\", ""] {
            let values = Values::each(names.iter().map(String::as_str), value);
            if let Some(said) =
                plain::filled(text, &|name| values.text(name)).filter(|_| is_template(text))
            {
                assert_eq!(Ok(said), wording.engine.render(id, &values), "{id}");
                plain_texts += 1;
            }
        }
    }
    assert!(plain_texts > 0, "no text is plain");
}

#[test]
fn counts_are_said_in_digits_and_the_rest_is_left_to_the_engine() {
    let values = Values::new().with("count", 24_usize).with("yes", true);
    let filled = |text| plain::filled(text, &|name| values.text(name));
    assert_eq!(
        filled("of {{ count }} studs"),
        Some("of 24 studs".to_owned())
    );
    for text in [
        "{{ yes }}",
        "{{ absent }}",
        "{{ count | plural('a', 'b') }}",
        "{% if yes %}x{% endif %}",
        "{{ open",
    ] {
        assert_eq!(filled(text), None, "{text}");
    }
}
