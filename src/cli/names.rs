//! Where results go and what their files are called.

use std::fs;
use std::path::{MAIN_SEPARATOR, Path, PathBuf};

use festoon::english::any;

use super::{Failure, VariantOptions};

/// Where results go.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// To standard output.
    Output,
    /// Into a folder, named like the pattern.
    Folder(PathBuf),
    /// To this very file.
    File(PathBuf),
    /// Into this device or pipe.
    Device(PathBuf),
}

/// What `-o` means, for results whose files may have these endings. A folder is there already, or
/// ends with a stroke, or has no ending; what is none of this is refused rather than guessed at.
pub fn target(output: Option<&Path>, endings: &[&str]) -> Result<Target, Failure> {
    let Some(path) = output else { return Ok(Target::Folder(PathBuf::new())) };
    let place = || path.to_owned();
    match fs::metadata(path) {
        _ if path.as_os_str() == "-" => Ok(Target::Output),
        Ok(there) if there.is_dir() => Ok(Target::Folder(place())),
        Ok(there) if !there.is_file() => Ok(Target::Device(place())),
        _ if path.to_string_lossy().ends_with(['/', MAIN_SEPARATOR]) => Ok(Target::Folder(place())),
        _ if ending(path).is_some_and(|ending| endings.contains(&&*ending)) => Ok(Target::File(place())),
        Err(_) if path.extension().is_none() && path.file_name().is_some() => Ok(Target::Folder(place())),
        _ => Err(Failure::trouble(format!(
            "{}: write a file's name that ends in {}, or a folder's that ends in /",
            path.display(),
            any(&endings.iter().map(|ending| format!(".{ending}")).collect::<Vec<_>>())
        ))),
    }
}

/// The ending of a file's name, in small letters.
pub fn ending(path: &Path) -> Option<String> {
    path.extension().map(|ending| ending.to_string_lossy().to_lowercase())
}

/// The name for results of a pattern: all of its file's but `.yaml`, then the variant's.
pub fn stem(pattern: &str, variant: &VariantOptions, unnamed: &str) -> String {
    let whole = || Path::new(pattern).file_name().unwrap_or_default().to_string_lossy().into_owned();
    let name = if pattern == "-" { unnamed.to_owned() } else { without_yaml(&whole()).to_owned() };
    let named = [&variant.size, &variant.colourway].into_iter().flatten().cloned();
    named.chain(variant.measures.names()).fold(name, |name, part| format!("{name}-{}", part.replace(parts_names, "-")))
}

/// Whether a file's name says that it is YAML.
pub fn is_yaml(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "yaml" || ending == "yml")
}

/// A file's name without `.yaml` or `.yml`.
pub fn without_yaml(name: &str) -> &str {
    let cut = |ending: &str| {
        let (stem, end) = name.split_at_checked(name.len().checked_sub(ending.len())?)?;
        (!stem.is_empty() && end.eq_ignore_ascii_case(ending)).then_some(stem)
    };
    cut(".yaml").or_else(|| cut(".yml")).unwrap_or(name)
}

/// Whether a character would lead to another folder, or part a name in two on a command line.
fn parts_names(c: char) -> bool {
    c == ' ' || c == '/' || c == '\\' || c.is_control()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(pattern: &str, size: Option<&str>) -> String {
        let variant = VariantOptions { size: size.map(str::to_owned), ..VariantOptions::default() };
        stem(pattern, &variant, "sheet")
    }

    #[test]
    fn names_are_all_of_a_files_but_yaml() {
        let names = ["-", "a/v1.2.yaml", "v1.3.YML", "v1.4", "...yaml", ".yaml", "ü.yaml"];
        let stems = ["sheet", "v1.2", "v1.3", "v1.4", "..", ".yaml", "ü"];
        assert_eq!(names.map(|name| named(name, None)), stems);
    }

    #[test]
    fn variants_do_not_lead_elsewhere() {
        assert_eq!(named("a.yaml", Some("../b c\n")), "a-..-b-c-");
    }

    #[test]
    fn outputs_are_obeyed_or_refused() {
        let meant = |output: &str| target(Some(Path::new(output)), &["pdf", "png"]).ok();
        let path = PathBuf::from;
        assert_eq!(meant("-"), Some(Target::Output));
        assert_eq!(meant("no/x.pdf"), Some(Target::File(path("no/x.pdf"))));
        assert_eq!(meant("no/X.PNG"), Some(Target::File(path("no/X.PNG"))));
        assert_eq!(meant("no/out"), Some(Target::Folder(path("no/out"))));
        assert_eq!(meant("no/out.v2/"), Some(Target::Folder(path("no/out.v2/"))));
        assert_eq!(meant("src"), Some(Target::Folder(path("src"))));
        for refused in ["no/X.jpg", "no/out.v2", "no/x.", "", "Cargo.toml", "LICENSE-MIT"] {
            assert_eq!(meant(refused), None, "{refused}");
        }
    }
}
