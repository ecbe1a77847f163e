//! What the schema says of the keys and words at a path.

use std::sync::LazyLock;

use serde_json::Value;

use crate::pattern;

/// The language's schema, made once.
static SCHEMA: LazyLock<Value> = LazyLock::new(pattern::schema);

/// A key or word of the language.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[non_exhaustive]
pub struct Keyword {
    /// As a pattern writes it.
    pub word: String,
    /// What it does or means.
    pub meaning: String,
}

/// What may stand under the keys of a path: each way to write it.
fn ways(path: &[String]) -> Vec<&'static Value> {
    let mut ways = spread(&SCHEMA);
    for key in path {
        ways = ways.into_iter().filter_map(|way| under(way, key)).flat_map(spread).collect();
    }
    ways
}

/// What a group says of a key; groups of ids say the same of all.
fn under(group: &'static Value, key: &str) -> Option<&'static Value> {
    let own = group.get("properties").and_then(|properties| properties.get(key));
    own.or_else(|| group.get("additionalProperties").filter(|any| any.is_object()))
}

/// The ways that a schema leaves open, through references, choices and lists.
fn spread(schema: &'static Value) -> Vec<&'static Value> {
    if let Some(reference) = schema.get("$ref").and_then(Value::as_str) {
        return SCHEMA.pointer(reference.trim_start_matches('#')).map(spread).unwrap_or_default();
    }
    let choices = ["anyOf", "oneOf"].into_iter().filter_map(|key| schema.get(key)?.as_array()).flatten();
    let inner: Vec<_> = choices.chain(schema.get("items")).flat_map(spread).collect();
    [vec![schema], inner].concat()
}

/// The keys that may stand under a path.
pub fn keys(path: &[String]) -> Vec<Keyword> {
    let groups = ways(path).into_iter().filter_map(|way| way.get("properties")?.as_object());
    let mut keys: Vec<Keyword> = Vec::new();
    for (key, value) in groups.flatten() {
        if keys.iter().all(|known| known.word != *key) {
            keys.push(Keyword { word: key.clone(), meaning: meaning(value) });
        }
    }
    keys
}

/// The words that may stand as the value of a path's last key.
pub fn words(path: &[String]) -> Vec<Keyword> {
    let entry = |word: &Value, meaning: String| Some(Keyword { word: word.as_str()?.to_owned(), meaning });
    let of = |way: &'static Value| -> Vec<Keyword> {
        let listed = way.get("enum").and_then(Value::as_array).into_iter().flatten();
        let listed = listed.filter_map(|word| entry(word, String::new()));
        listed.chain(way.get("const").and_then(|word| entry(word, described(way)))).collect()
    };
    ways(path).into_iter().flat_map(of).collect()
}

/// What a key does, and what it takes.
pub fn of_key(path: &[String], key: &str) -> Option<Keyword> {
    let said = ways(path).into_iter().find_map(|way| way.get("properties")?.get(key));
    said.map(|value| Keyword { word: key.to_owned(), meaning: meaning(value) })
}

/// The description of a key, and of what it takes where that says more.
fn meaning(schema: &'static Value) -> String {
    let own = described(schema);
    let taken = spread(schema).into_iter().skip(1).map(described).find(|taken| !taken.is_empty());
    match taken {
        Some(taken) if taken != own && !own.is_empty() => format!("{own}\n{taken}"),
        Some(taken) if own.is_empty() => taken,
        _ => own,
    }
}

fn described(schema: &Value) -> String {
    schema.get("description").and_then(Value::as_str).unwrap_or_default().replace('\n', " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(keys: &[&str]) -> Vec<String> {
        keys.iter().map(|key| (*key).to_owned()).collect()
    }

    #[test]
    fn keys_come_from_the_schema() {
        let words = |at: &[&str]| keys(&path(at)).into_iter().map(|key| key.word).collect::<Vec<_>>();
        assert!(words(&[]).contains(&"strands".to_owned()));
        assert!(words(&["beads", "any"]).contains(&"finish".to_owned()));
        assert!(words(&["strands"]).contains(&"cord".to_owned()));
        assert!(words(&["strands", "beads"]).contains(&"repeat".to_owned()));
        assert!(words(&["strands", "beads", "of"]).contains(&"mirror".to_owned()), "lists in lists");
        assert!(words(&["beads", "any", "sold"]).contains(&"by".to_owned()));
    }

    #[test]
    fn words_come_with_their_meaning() {
        let shapes = words(&path(&["beads", "any", "shape"]));
        assert!(shapes.contains(&Keyword { word: "round".into(), meaning: "A ball.".into() }), "{shapes:?}");
        assert!(words(&path(&["units"])).iter().any(|entry| entry.word == "both"));
        assert!(words(&path(&["strands", "beads", "repeat"])).iter().any(|entry| entry.word == "fill"));
    }

    #[test]
    fn every_key_of_a_bead_has_a_meaning() {
        for key in keys(&path(&["beads", "any"])) {
            assert!(!key.meaning.is_empty(), "{}", key.word);
        }
        let size = of_key(&path(&["beads", "any"]), "size").unwrap();
        assert!(size.meaning.starts_with("Across the hole"), "{}", size.meaning);
    }
}
