//! The language as its own schema tells it: every key and every word, and which of them a text has.

use std::collections::BTreeSet;

use festoon::design::Design;
use festoon::pattern;
use festoon::source::Source;
use serde_json::Value;

/// The schema of the language.
pub struct Language(Value);

impl Language {
    pub fn new() -> Self {
        Self(pattern::schema())
    }

    /// Every key and word, each behind its group.
    pub fn all(&self) -> BTreeSet<String> {
        let groups = self.0["$defs"].as_object().into_iter().flatten();
        let groups = groups.map(|(name, group)| (name.as_str(), group)).chain([("Pattern", &self.0)]);
        groups.flat_map(|(name, group)| Self::of_group(name, group)).collect()
    }

    fn of_group(name: &str, group: &Value) -> Vec<String> {
        let keys = group["properties"].as_object().into_iter().flatten().map(|(key, _)| key.as_str());
        let words = ["oneOf", "anyOf"].into_iter().flat_map(|forms| group[forms].as_array().into_iter().flatten());
        keys.chain(words.filter_map(|word| word["const"].as_str())).map(|what| format!("{name}: {what}")).collect()
    }

    /// What a text has; of its articles, where its design is given, those that it takes: what nothing takes makes nothing of
    /// the piece. A JSON value cannot hold all that names something: `.nan` is a number to it.
    pub fn of(&self, source: &Source, design: Option<&Design>) -> BTreeSet<String> {
        let Ok(mut written) = serde_yaml::from_str::<Value>(source.text()) else { return BTreeSet::new() };
        for (group, taken) in design.map(taken).into_iter().flatten() {
            if let Some(articles) = written.get_mut(group).and_then(Value::as_object_mut) {
                articles.retain(|id, _| taken.contains(&id.as_str()));
            }
        }
        let mut found = BTreeSet::new();
        self.find(&written, &self.0, "Pattern", &mut found);
        found
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

/// The ids of the articles that a design takes.
fn taken(design: &Design) -> [(&'static str, Vec<&str>); 3] {
    [
        ("beads", design.beads.iter().map(|bead| bead.id.as_str()).collect()),
        ("cords", design.cords.iter().map(|cord| cord.id.as_str()).collect()),
        ("findings", design.findings.iter().map(|finding| finding.id.as_str()).collect()),
    ]
}
