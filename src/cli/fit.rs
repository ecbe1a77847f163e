//! Measures of the one that a piece is made for.

use clap::Args;

use festoon::design::Fit;
use festoon::pattern::bounds::{Unit, bound};
use festoon::units::Length;

/// Measures of the one that the piece is made for, in place of the pattern's.
#[derive(Args, Clone, Debug, Default)]
pub struct FitOptions {
    /// Make it for a neck whose base measures so much
    #[arg(long, value_name = "LENGTH", value_parser = neck)]
    neck: Option<Length>,
    /// Make it for a wrist of this girth
    #[arg(long, value_name = "LENGTH", value_parser = wrist)]
    wrist: Option<Length>,
    /// Make it for an ankle of this girth
    #[arg(long, value_name = "LENGTH", value_parser = ankle)]
    ankle: Option<Length>,
    /// Leave so much room between limb and piece
    #[arg(long, value_name = "LENGTH", value_parser = ease)]
    ease: Option<Length>,
}

fn neck(text: &str) -> Result<Length, String> {
    within("neck base", text)
}

fn wrist(text: &str) -> Result<Length, String> {
    within("wrist", text)
}

fn ankle(text: &str) -> Result<Length, String> {
    within("ankle", text)
}

fn ease(text: &str) -> Result<Length, String> {
    within("ease", text)
}

/// A length within what the pattern's key of `wear:` may say.
fn within(key: &str, text: &str) -> Result<Length, String> {
    let length = super::length(text)?;
    match bound("Wear", key, Unit::Millimetres).filter(|bound| bound.forbids(length.value())) {
        Some(bound) => Err(bound.words()),
        None => Ok(length),
    }
}

impl FitOptions {
    /// What they ask for.
    pub const fn fit(&self) -> Fit {
        Fit { neck: self.neck, wrist: self.wrist, ankle: self.ankle, ease: self.ease }
    }

    /// Parts of the name of what is made to them: `wrist-152mm`.
    pub fn names(&self) -> impl Iterator<Item = String> {
        let all = [("neck", self.neck), ("wrist", self.wrist), ("ankle", self.ankle), ("ease", self.ease)];
        all.into_iter().filter_map(|(word, length)| Some(format!("{word}-{}mm", length?.value())))
    }
}
