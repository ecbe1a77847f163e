//! HTML: escaping, addresses, and the frame of every page.

use super::STYLE;

/// Text for an element or a quoted attribute. Characters that HTML does not allow are left out.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out += "&amp;",
            '<' => out += "&lt;",
            '>' => out += "&gt;",
            '"' => out += "&quot;",
            '\n' | '\t' => out.push(' '),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// A file's name as a part of an address (RFC 3986, section 2: all but unreserved characters as `%`
/// and two digits).
#[must_use]
pub fn address(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    for byte in name.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            out.push(char::from(byte));
        } else {
            out += &format!("%{byte:02X}");
        }
    }
    out
}

/// A whole page; `up` leads from it to the gallery's folder: nothing, or `../` for each folder.
#[must_use]
pub fn document(title: &str, description: &str, up: &str, body: &str) -> String {
    let (title, description) = (escaped(title), escaped(description));
    let style = STYLE.replace("FONTS/", &format!("{up}fonts/"));
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>{title}</title>\n\
         <meta name=\"description\" content=\"{description}\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"color-scheme\" content=\"light dark\">\n\
         <link rel=\"icon\" href=\"data:,\">\n<style>\n{style}</style>\n</head>\n<body>\n{body}</body>\n</html>\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_and_addresses_are_escaped() {
        assert_eq!(escaped("a<b> & \"c\"\u{0}\n"), "a&lt;b&gt; &amp; &quot;c&quot; ");
        assert_eq!(address("low tide #1.png"), "low%20tide%20%231.png");
        assert_eq!(address("ü"), "%C3%BC");
    }
}
