//! The gallery's memory: what each pattern's files were made from.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Map, Value, json};

/// Hashes of what the files in a gallery were made from.
#[derive(Debug, Default, PartialEq)]
pub struct Manifest {
    /// Of each pattern, by its folder.
    pub patterns: BTreeMap<String, String>,
    /// Of all together.
    pub contact: String,
}

impl Manifest {
    /// Where a gallery keeps it.
    pub fn path(out: &Path) -> PathBuf {
        out.join("manifest.json")
    }

    /// Reads a gallery's; empty where there is none or it cannot be understood.
    pub fn read(out: &Path) -> Self {
        let text = fs::read_to_string(Self::path(out)).unwrap_or_default();
        let value: Value = serde_json::from_str(&text).unwrap_or_default();
        let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
        let patterns = value["patterns"].as_object().into_iter().flatten();
        Self {
            patterns: patterns.map(|(folder, hash)| (folder.clone(), text(hash))).collect(),
            contact: text(&value["contact"]),
        }
    }

    /// The file's text.
    pub fn text(&self) -> String {
        let patterns: Map<_, _> = self.patterns.iter().map(|(folder, hash)| (folder.clone(), json!(hash))).collect();
        format!("{:#}\n", json!({ "patterns": patterns, "contact": self.contact }))
    }
}

/// A hash of texts and their borders: FNV-1a with 128 bits (Fowler, Noll, Vo and Eastlake, RFC 9923).
pub fn hash<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    const BASIS: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
    const PRIME: u128 = 0x0000_0000_0100_0000_0000_0000_0000_013b;
    // No text holds a zero byte's place: 0xff never stands in UTF-8.
    let bytes = texts.into_iter().flat_map(|text| text.bytes().chain([0xff]));
    let sum = bytes.fold(BASIS, |sum, byte| (sum ^ u128::from(byte)).wrapping_mul(PRIME));
    format!("{sum:032x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_tell_texts_and_their_borders_apart() {
        assert_ne!(hash(["ab", "c"]), hash(["a", "bc"]));
        assert_eq!(hash(["ab"]), hash(["ab"]));
        assert_eq!(hash([]), "6c62272e07bb014262b821756295c58d");
    }

    #[test]
    fn what_is_written_is_read_again() {
        let patterns = [("a \"b\"".to_owned(), "1".to_owned())].into();
        let manifest = Manifest { patterns, contact: "2".to_owned() };
        let out = std::env::temp_dir().join(format!("festoon-manifest-{}", std::process::id()));
        fs::create_dir_all(&out).unwrap();
        fs::write(Manifest::path(&out), manifest.text()).unwrap();
        assert_eq!(Manifest::read(&out), manifest);
        fs::remove_dir_all(&out).unwrap();
        assert_eq!(Manifest::read(&out), Manifest::default());
    }
}
