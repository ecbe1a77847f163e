//! Whether sound inputs reach the whole language: every key and every word of its schema.

use std::collections::BTreeSet;

use festoon::pattern;
use festoon::source::Source;
use serde_json::Value;

use super::spoil::Corpus;

/// Most inputs that are looked at: a fifth of an ordinary run.
const MOST: u64 = 4_000;

/// What no text by itself is sound with: `tests/workshop/shelf.rs` gives the shelf beside it.
const BESIDE: &str = "Pattern: shelf";

#[test]
fn sound_inputs_reach_every_key_and_word_of_the_language() {
    let corpus = Corpus::read();
    let language = Language(pattern::schema());
    let (all, mut found) = (language.all(), BTreeSet::from([BESIDE.to_owned()]));
    let reaches_all = |number: u64| {
        let source = Source::new("spoiled.yaml", corpus.spoiled(1, number).0);
        // A JSON value cannot hold all that names something: `.nan` is a number to it.
        let written = serde_yaml::from_str(source.text()).ok().filter(|_| pattern::read(&source).0.is_some());
        written.iter().for_each(|written| language.find(written, &language.0, "Pattern", &mut found));
        all.is_subset(&found)
    };
    if !(0..MOST).any(reaches_all) {
        panic!("no sound input has: {:#?}", all.difference(&found).collect::<Vec<_>>());
    }
}

/// The schema of the language.
struct Language(Value);

impl Language {
    /// Every key and word, each behind its group.
    fn all(&self) -> BTreeSet<String> {
        let groups = self.0["$defs"].as_object().into_iter().flatten();
        let groups = groups.map(|(name, group)| (name.as_str(), group)).chain([("Pattern", &self.0)]);
        groups.flat_map(|(name, group)| Self::of_group(name, group)).collect()
    }

    fn of_group(name: &str, group: &Value) -> Vec<String> {
        let keys = group["properties"].as_object().into_iter().flatten().map(|(key, _)| key.as_str());
        let words = group["oneOf"].as_array().into_iter().flatten().filter_map(|word| word["const"].as_str());
        keys.chain(words).map(|what| format!("{name}: {what}")).collect()
    }

    /// What stands behind a reference, and its name.
    fn resolved<'a>(&'a self, schema: &'a Value, name: &'a str) -> (&'a Value, &'a str) {
        match schema["$ref"].as_str().and_then(|path| path.strip_prefix("#/$defs/")) {
            Some(name) => self.resolved(&self.0["$defs"][name], name),
            None => (schema, name),
        }
    }

    /// Notes what a value has of its schema.
    fn find(&self, value: &Value, schema: &Value, name: &str, found: &mut BTreeSet<String>) {
        let (schema, name) = self.resolved(schema, name);
        for form in schema["anyOf"].as_array().into_iter().flatten().filter(|form| self.is_meant(form, value)) {
            self.find(value, form, name, found);
        }
        match value {
            Value::Object(entries) => entries.iter().for_each(|(key, inner)| {
                let own = &schema["properties"][key];
                if own.is_object() {
                    found.insert(format!("{name}: {key}"));
                }
                self.find(inner, if own.is_object() { own } else { &schema["additionalProperties"] }, name, found);
            }),
            Value::Array(items) => items.iter().for_each(|item| self.find(item, &schema["items"], name, found)),
            word => {
                let word = word.as_str().map_or_else(|| word.to_string(), str::to_owned);
                found.insert(format!("{name}: {word}"));
            }
        }
    }

    /// Whether a value is of one of several forms: a group has the keys that it must.
    fn is_meant(&self, form: &Value, value: &Value) -> bool {
        let required = self.resolved(form, "").0["required"].as_array();
        value.as_object().is_none_or(|entries| {
            required.into_iter().flatten().filter_map(Value::as_str).all(|key| entries.contains_key(key))
        })
    }
}
