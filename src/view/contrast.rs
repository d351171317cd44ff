//! The contrast of the stylesheet's colours, computed from its own tokens, in light and in dark.
//! Least ratios: 7 for text and 4.5 for secondary text (WCAG 2.2 asks 4.5, the screens are read in the sun: our own choice for 7),
//! 3 for lines and borders (WCAG 2.2, 1.4.11).

use std::collections::BTreeMap;

const STYLE: &str = include_str!("../assets/style.css");

/// Token colours of a block that starts with this text.
fn tokens(from: &str) -> BTreeMap<String, [f64; 3]> {
    let block = STYLE.split_once(from).and_then(|(_, rest)| rest.split_once('}')).map_or("", |(block, _)| block);
    let read = |pair: &str| {
        let (name, value) = pair.trim().strip_prefix("--")?.split_once(':')?;
        let hex = value.trim().strip_prefix('#').filter(|h| h.len() == 6)?;
        let channel = |at: usize| u8::from_str_radix(hex.get(at..at + 2)?, 16).ok().map(f64::from);
        Some((name.to_owned(), [channel(0)?, channel(2)?, channel(4)?]))
    };
    block.split(';').filter_map(read).collect()
}

/// Relative luminance as WCAG 2.2 defines it.
fn luminance(colour: [f64; 3]) -> f64 {
    let [r, g, b] = colour.map(|c| {
        let c = c / 255.0;
        if c <= 0.040_45 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

fn ratio(one: [f64; 3], other: [f64; 3]) -> f64 {
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn black_on_white_is_21() {
    assert!((ratio([0.0; 3], [255.0; 3]) - 21.0).abs() < 1e-9);
}

#[test]
fn text_lines_and_marks_stand_out_in_light_and_dark() {
    let light = tokens("\n:root{");
    let mut dark = light.clone();
    dark.extend(tokens("(prefers-color-scheme:dark){:root{"));
    assert!(light.len() > 18 && dark["ground"] != light["ground"], "the tokens were not read: {light:?}");
    let wanted = [
        ("ink", "ground", 7.0),
        ("ink", "wash", 7.0),
        ("ink", "mango-wash", 7.0),
        ("ink", "alarm-wash", 7.0),
        ("ink-2", "ground", 4.5),
        ("ink-2", "wash", 4.5),
        ("act", "ground", 7.0),
        ("on-act", "act", 7.0),
        ("on-act", "act-deep", 7.0),
        ("on-mango", "mango", 7.0),
        ("alarm", "ground", 7.0),
        ("alarm", "alarm-wash", 4.5),
        ("on-siren", "siren", 7.0),
        ("soon", "ground", 7.0),
        ("leaf", "ground", 7.0),
        ("lake", "ground", 7.0),
        ("on-head", "head", 7.0),
        ("line", "ground", 3.0),
        ("line", "wash", 3.0),
    ];
    for (scheme, colours) in [("light", &light), ("dark", &dark)] {
        for (front, back, least) in wanted {
            let found = ratio(colours[front], colours[back]);
            assert!(found >= least, "{front} on {back} in {scheme}: {found:.2}, wanted {least}");
        }
    }
}
