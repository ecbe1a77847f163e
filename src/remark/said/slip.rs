//! Slips of the pen that make a file unreadable.

use crate::remark::Code;

/// A slip of the pen.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Slip {
    /// A line indented with tabs, and so many more of which that is not said by itself.
    Tab {
        /// How many more lines.
        more: usize,
    },
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
    /// Which remark it is.
    #[must_use]
    pub const fn code(&self) -> Code {
        match self {
            Self::BareColour => Code::BareColour,
            _ => Code::Yaml,
        }
    }
}

/// The bracket that closes one.
#[must_use]
pub const fn closer(bracket: char) -> char {
    if bracket == '[' { ']' } else { '}' }
}
