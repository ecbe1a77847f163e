//! The frame of every page, texts and addresses.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::STYLE;

/// A text without the characters that HTML does not allow.
#[must_use]
pub fn clean(text: &str) -> String {
    let spaced = text.chars().map(|sign| if matches!(sign, '\n' | '\t') { ' ' } else { sign });
    spaced.filter(|sign| !sign.is_control()).collect()
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
pub fn document(title: &str, description: &str, up: &str, body: &Markup) -> String {
    let style = STYLE.replace("FONTS/", &format!("{up}fonts/"));
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                title { (clean(title)) }
                meta name="description" content=(clean(description));
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                link rel="icon" href="data:,";
                style { (PreEscaped(style)) }
            }
            body { (body) }
        }
    };
    page.into_string() + "\n"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_and_addresses_hold_only_what_html_allows() {
        assert_eq!(clean("a<b> & \"c\"\u{0}\n"), "a<b> & \"c\" ");
        assert_eq!(address("low tide #1.png"), "low%20tide%20%231.png");
        assert_eq!(address("ü"), "%C3%BC");
    }

    #[test]
    fn what_a_pattern_says_is_never_a_tag() {
        let words = "</style><script>\"'&";
        let page = document(words, words, "", &html! { p title=(clean(words)) { (clean(words)) } });
        assert_eq!(page.matches("<script").count(), 0, "{page}");
        assert!(
            page.contains("<p title=\"&lt;/style&gt;&lt;script&gt;&quot;'&amp;\">&lt;/style&gt;&lt;script&gt;"),
            "{page}"
        );
    }
}
