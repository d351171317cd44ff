//! The contrast of the stylesheet's colours, computed from its own tokens, in light and in dark.
//! Least ratios: 7 for every text on every ground (WCAG 2.2, 1.4.6; 4.5 would do for AA, the screens are read in the sun: our own
//! choice), 3 for lines and borders (1.4.11).

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
    let words = ["ink", "ink-2", "act", "alarm", "soon", "leaf", "lake"];
    let grounds = ["ground", "wash", "mango-wash", "alarm-wash"];
    let mut wanted: Vec<(&str, &str, f64)> = words.iter().flat_map(|word| grounds.map(|ground| (*word, ground, 7.0))).collect();
    wanted.extend(["act", "act-deep"].map(|button| ("on-act", button, 7.0)));
    wanted.extend([("on-mango", "mango", 7.0), ("on-siren", "siren", 7.0), ("on-head", "head", 7.0)]);
    wanted.extend(["ground", "wash"].map(|ground| ("line", ground, 3.0)));
    for (scheme, colours) in [("light", &light), ("dark", &dark)] {
        for (front, back, least) in &wanted {
            let found = ratio(colours[*front], colours[*back]);
            assert!(found >= *least, "{front} on {back} in {scheme}: {found:.2}, wanted {least}");
        }
    }
}
