//! Printing remarks and troubles to standard error.

use std::io::{IsTerminal, Write, stderr};

use clap::{Args, ValueEnum};

use festoon::pattern::parts;
use festoon::remark::Remark;
use festoon::remark::escape::escaped;
use festoon::remark::plain::plain;
use festoon::remark::render::{Notation, render};
use festoon::source::Source;

/// How remarks are printed.
#[derive(Args)]
pub struct Messages {
    /// How remarks are printed: plain on a terminal, full elsewhere, unless told
    #[arg(long = "messages", value_enum, global = true)]
    style: Option<MessageStyle>,
    /// Whether remarks are coloured
    #[arg(long, value_enum, default_value = "auto", global = true, overrides_with = "color")]
    color: ColourChoice,
}

#[derive(Clone, Copy, ValueEnum)]
enum MessageStyle {
    /// What, where, why, and what to do
    Plain,
    /// With the lines that are meant
    Full,
    /// One line a remark
    Short,
    /// One JSON array
    Json,
}

#[derive(Clone, Copy, ValueEnum)]
enum ColourChoice {
    Auto,
    Always,
    Never,
}

impl Messages {
    /// Whether remarks are coloured here and now.
    pub fn colour(&self) -> bool {
        match self.color {
            ColourChoice::Always => true,
            ColourChoice::Never => false,
            ColourChoice::Auto => {
                std::env::var_os("NO_COLOR").is_none_or(|set| set.is_empty()) && stderr().is_terminal()
            }
        }
    }

    fn render(&self, remarks: &[Remark], source: &Source) -> String {
        let usual = || if stderr().is_terminal() { MessageStyle::Plain } else { MessageStyle::Full };
        let style = match self.style.unwrap_or_else(usual) {
            MessageStyle::Plain => return plain(remarks, source, &parts(source), self.colour()),
            MessageStyle::Full => Notation::Full,
            MessageStyle::Short => Notation::Short,
            MessageStyle::Json => Notation::Json,
        };
        render(remarks, source, style, self.colour())
    }
}

/// Prints remarks; no remarks are nothing, or an empty array.
pub fn remarks(remarks: &[Remark], source: &Source, messages: &Messages) {
    say(&messages.render(remarks, source));
}

/// Prints why a command did not do what was asked.
pub fn trouble(message: &str) {
    say(&told(message));
}

/// The line that says why.
pub fn told(message: &str) -> String {
    format!("festoon: {}\n", escaped(message))
}

/// Prints a line of news.
pub fn news(message: &str) {
    say(&format!("{}\n", escaped(message)));
}

/// Prints what another process of this program has said.
pub fn passed_on(text: &str) {
    say(text);
}

fn say(text: &str) {
    // Where standard error is closed there is nobody left to tell.
    let _ = stderr().write_all(text.as_bytes());
}
