//! The stylesheet and the mark, inside the binary, named by their content so that a browser may keep them for good.

use std::sync::LazyLock;

use sha2::Digest;
use sha2::Sha256;

const STYLE: &str = include_str!("../../assets/style.css");
const MARK: &str = include_str!("../../assets/mark.svg");

/// A file that pages refer to.
#[derive(Debug, Clone)]
pub struct Asset {
    /// Its name under `/assets/`.
    pub name: String,
    /// Its media type.
    pub media_type: &'static str,
    /// Its content.
    pub body: &'static str,
}

/// All files that pages refer to.
#[must_use]
pub fn all() -> Vec<Asset> {
    vec![
        Asset { name: named("style", STYLE, "css"), media_type: "text/css; charset=utf-8", body: STYLE },
        Asset { name: named("mark", MARK, "svg"), media_type: "image/svg+xml", body: MARK },
    ]
}

/// Where the stylesheet is.
#[must_use]
pub fn style_path() -> &'static str {
    static PATH: LazyLock<String> = LazyLock::new(|| format!("/assets/{}", named("style", STYLE, "css")));
    &PATH
}

/// Where the mark is.
#[must_use]
pub fn mark_path() -> &'static str {
    static PATH: LazyLock<String> = LazyLock::new(|| format!("/assets/{}", named("mark", MARK, "svg")));
    &PATH
}

fn named(stem: &str, body: &str, ending: &str) -> String {
    let digest = Sha256::digest(body.as_bytes());
    let hex: String = digest.iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    format!("{stem}-{hex}.{ending}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pages_refer_to_files_there_are() {
        let names: Vec<String> = all().into_iter().map(|a| format!("/assets/{}", a.name)).collect();
        assert!(names.iter().any(|n| n == style_path()) && names.iter().any(|n| n == mark_path()), "{names:?}");
    }

    #[test]
    fn the_name_follows_the_content() {
        assert_ne!(named("style", "a{}", "css"), named("style", "b{}", "css"));
        assert_eq!(named("style", "", "css"), "style-e3b0c44298fc.css");
    }
}
