//! Slips of the pen that make a file unreadable, each with what it is called and how to mend it.

use crate::remark::{Code, Remark};
use crate::source::Place;

/// A slip of the pen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Slip {
    /// A line indented with tabs.
    Tab,
    /// A line indented unlike its neighbours.
    Indent,
    /// A key without its colon.
    NoColon(String),
    /// A colon that touches what follows it.
    NoColonSpace(String),
    /// An equals sign for a colon.
    Equals(String),
    /// A dash that touches what follows it.
    NoDashSpace,
    /// A quote that is not closed on its line.
    OpenQuote,
    /// Text behind a closing quote.
    BehindQuote,
    /// A colour without quotes, which is read as a comment.
    BareColour,
    /// A text with a colon in it.
    ColonInText,
    /// A second key on the line of the first.
    SecondKey(String),
    /// A text that begins with a sign that means something else.
    FirstSign(char),
    /// A bracket that is never closed.
    Unclosed(char),
    /// A bracket closed by another kind.
    WrongCloser(char, char),
    /// A closing bracket that nothing opened.
    ExtraCloser(char),
    /// Two entries without a comma between them.
    NoComma(String),
    /// A semicolon for a comma.
    Semicolon,
    /// One comma behind the other.
    TwoCommas,
    /// A line that ends the pattern.
    Document,
}

impl Slip {
    /// The slip as a remark at a place.
    pub fn remark(&self, place: Place) -> Remark {
        let code = if *self == Self::BareColour { Code::BareColour } else { Code::Yaml };
        Remark::words(code, self.headline()).at(place).helping(self.help())
    }

    fn headline(&self) -> String {
        match self {
            Self::Tab => "this line is indented with a tab".to_owned(),
            Self::Indent => "this line is not indented like the lines it belongs to".to_owned(),
            Self::NoColon(key) => format!("there is no colon behind `{key}`"),
            Self::NoColonSpace(key) => format!("there is no space behind `{key}:`"),
            Self::Equals(key) => format!("an equals sign stands behind `{key}`, where a colon is meant"),
            Self::NoDashSpace => "there is no space behind this dash".to_owned(),
            Self::OpenQuote => "this quote is not closed on its line".to_owned(),
            Self::BehindQuote => "this text goes on behind its closing quote".to_owned(),
            Self::BareColour => "this colour has no quotes, so that it is read as a comment".to_owned(),
            Self::ColonInText => "there is a second colon in this text".to_owned(),
            Self::SecondKey(key) => format!("`{key}:` stands on the line of another key"),
            Self::FirstSign(sign) => format!("this text begins with `{sign}`, which means something else here"),
            Self::Unclosed(bracket) => format!("this `{bracket}` is never closed"),
            Self::WrongCloser(found, wanted) => format!("`{found}` closes what only `{wanted}` can close"),
            Self::ExtraCloser(found) => format!("this `{found}` closes nothing"),
            Self::NoComma(next) => format!("there is no comma before `{next}`"),
            Self::Semicolon => "a semicolon stands here, where a comma is meant".to_owned(),
            Self::TwoCommas => "one comma stands behind the other, with nothing between them".to_owned(),
            Self::Document => "this line ends the pattern before its end".to_owned(),
        }
    }

    fn help(&self) -> String {
        match self {
            Self::Tab => "put spaces in its place: two for each step".to_owned(),
            Self::Indent => "begin it under the first letter of its neighbours, with spaces".to_owned(),
            Self::NoColon(key) => format!("write `{key}: …`"),
            Self::NoColonSpace(key) => format!("write `{key}: …`, with a space"),
            Self::Equals(key) => format!("write `{key}: …`"),
            Self::NoDashSpace => "write `- `, with a space".to_owned(),
            Self::OpenQuote => "write the same quote at its end".to_owned(),
            Self::BehindQuote => "put the whole text in double quotes, and no double quote inside".to_owned(),
            Self::BareColour => "put it in quotes, like \"#5d7f5b\"".to_owned(),
            Self::ColonInText | Self::FirstSign(_) => "put the whole text in double quotes".to_owned(),
            Self::SecondKey(key) => format!("begin a new line with `{key}:`, under the first letter of the other key"),
            Self::Unclosed(bracket) => format!("write `{}` at its end", closer(*bracket)),
            Self::WrongCloser(_, wanted) => format!("write `{wanted}`"),
            Self::ExtraCloser(found) => format!("take it out, or write `{}` where it opens", opener(*found)),
            Self::NoComma(next) => format!("write a comma before `{next}`"),
            Self::Semicolon => "write a comma".to_owned(),
            Self::TwoCommas => "take one out".to_owned(),
            Self::Document => "take it out".to_owned(),
        }
    }
}

/// The bracket that closes one.
pub const fn closer(bracket: char) -> char {
    if bracket == '[' { ']' } else { '}' }
}

const fn opener(bracket: char) -> char {
    if bracket == ']' { '[' } else { '{' }
}
