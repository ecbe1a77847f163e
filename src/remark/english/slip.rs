//! Slips of the pen, in English: what each is called and how to mend it.

use crate::remark::said::slip::{Slip, closer};

/// What was found.
pub fn headline(said: &Slip) -> String {
    match said {
        Slip::Tab { .. } => "this line is indented with a tab".to_owned(),
        Slip::Indent => "this line is not indented like the lines it belongs to".to_owned(),
        Slip::NoColon(key) => format!("there is no colon behind `{key}`"),
        Slip::NoColonSpace(key) => format!("there is no space behind `{key}:`"),
        Slip::Equals(key) => format!("an equals sign stands behind `{key}`, where a colon is meant"),
        Slip::NoDashSpace => "there is no space behind this dash".to_owned(),
        Slip::OpenQuote => "this quote is not closed on its line".to_owned(),
        Slip::BehindQuote => "this text goes on behind its closing quote".to_owned(),
        Slip::BareColour => "this colour has no quotes, so that it is read as a comment".to_owned(),
        Slip::ColonInText => "there is a second colon in this text".to_owned(),
        Slip::SecondKey(key) => format!("`{key}:` stands on the line of another key"),
        Slip::FirstSign(sign) => format!("this text begins with `{sign}`, which means something else here"),
        Slip::Unclosed(bracket) => format!("this `{bracket}` is never closed"),
        Slip::WrongCloser(found, wanted) => format!("`{found}` closes what only `{wanted}` can close"),
        Slip::ExtraCloser(found) => format!("this `{found}` closes nothing"),
        Slip::NoComma(next) => format!("there is no comma before `{next}`"),
        Slip::Semicolon => "a semicolon stands here, where a comma is meant".to_owned(),
        Slip::TwoCommas => "one comma stands behind the other, with nothing between them".to_owned(),
        Slip::Document => "this line ends the pattern before its end".to_owned(),
    }
}

/// What to change.
pub fn help(said: &Slip) -> String {
    match said {
        Slip::Tab { more } => spaces(*more),
        Slip::Indent => "begin it under the first letter of its neighbours, with spaces".to_owned(),
        Slip::NoColon(key) => format!("write `{key}: …`"),
        Slip::NoColonSpace(key) => format!("write `{key}: …`, with a space"),
        Slip::Equals(key) => format!("write `{key}: …`"),
        Slip::NoDashSpace => "write `- `, with a space".to_owned(),
        Slip::OpenQuote => "write the same quote at its end".to_owned(),
        Slip::BehindQuote => "put the whole text in double quotes, and no double quote inside".to_owned(),
        Slip::BareColour => "put it in quotes, like \"#5d7f5b\"".to_owned(),
        Slip::ColonInText | Slip::FirstSign(_) => "put the whole text in double quotes".to_owned(),
        Slip::SecondKey(key) => format!("begin a new line with `{key}:`, under the first letter of the other key"),
        Slip::Unclosed(bracket) => format!("write `{}` at its end", closer(*bracket)),
        Slip::WrongCloser(_, wanted) => format!("write `{wanted}`"),
        Slip::ExtraCloser(found) => format!("take it out, or write `{}` where it opens", opener(*found)),
        Slip::NoComma(next) => format!("write a comma before `{next}`"),
        Slip::Semicolon => "write a comma".to_owned(),
        Slip::TwoCommas => "take one out".to_owned(),
        Slip::Document => "take it out".to_owned(),
    }
}

fn spaces(more: usize) -> String {
    let others = if more > 0 { format!("; {more} more lines have one") } else { String::new() };
    format!("put spaces in its place: two for each step{others}")
}

const fn opener(bracket: char) -> char {
    if bracket == ']' { '[' } else { '{' }
}
