//! Invented names of children and families, put together from syllables. It knows nothing of their lives.

use crate::story::dice::Dice;

/// Beginnings of given names.
const BEGINNINGS: [&str; 26] = [
    "Neru", "Tavi", "Ibo", "Oku", "Selo", "Rumi", "Fanu", "Lomi", "Deko", "Pemba", "Yoru", "Anzi", "Kiva", "Teve", "Mire", "Tamsi", "Olu",
    "Bemu", "Hembo", "Wubi", "Zeko", "Govi", "Juvo", "Vanti", "Ebri", "Uzho",
];
/// Ends of given names; the empty one leaves the short form.
const ENDS: [&str; 17] = ["", "ka", "li", "mi", "ri", "ni", "bo", "va", "zu", "ko", "mu", "pe", "ndi", "su", "ro", "te", "vo"];
/// Beginnings of house names.
const HOUSES: [&str; 22] = [
    "Tevo", "Kezu", "Orim", "Bali", "Sundo", "Veri", "Hamu", "Zoli", "Petu", "Yandi", "Rukso", "Gemi", "Ilvo", "Nodu", "Ashti", "Fembo",
    "Lurvi", "Osku", "Tindu", "Wemzi", "Dravo", "Embri",
];
/// Ends of house names.
const HOUSE_ENDS: [&str; 14] = ["", "ra", "len", "vik", "mo", "sha", "tun", "bri", "ndo", "gu", "res", "zan", "pol", "dim"];

/// Ways to a home in this invented country.
const WAYS: [&str; 16] = [
    "Blue door behind the fish drying racks",
    "Second house after the millet store",
    "Past the old ferry landing, under the two mango trees",
    "Uphill from the water tap, roof with a white stone",
    "Beside the pumpkin field, ask for the net mender",
    "Last house before the footbridge",
    "Opposite the groundnut press",
    "Three houses along the lake path from the landing",
    "Yellow shutters, next to the meeting place",
    "Behind the school garden, green fence",
    "Where the path forks to the cassava terraces, left side",
    "Above the bean terraces; call from the gate, there is a dog",
    "Courtyard with the big grinding stone",
    "Two houses after the bicycle workshop",
    "By the spring, the house with the reed roof",
    "Top of the ridge path, stone wall",
];

/// Who looks after a child, with the share of families in percent.
const RELATIONS: [(&str, i32); 5] = [("mother", 86), ("grandmother", 7), ("father", 4), ("aunt", 2), ("foster mother", 1)];

/// A given name.
pub fn given(dice: &mut Dice) -> String {
    format!("{}{}", dice.pick(&BEGINNINGS), dice.pick(&ENDS))
}

/// A house name, which children share with their caregivers.
pub fn house(dice: &mut Dice) -> String {
    format!("{}{}", dice.pick(&HOUSES), dice.pick(&HOUSE_ENDS))
}

/// How to find the home.
pub fn way(dice: &mut Dice) -> &'static str {
    WAYS[usize::try_from(dice.between(0, 15)).unwrap_or(0)]
}

/// Who looks after the child.
pub fn relation(dice: &mut Dice) -> &'static str {
    let mut at = dice.between(1, 100);
    for (word, share) in RELATIONS {
        at -= share;
        if at <= 0 {
            return word;
        }
    }
    "mother"
}

/// A phone number that nobody has: the range is the demo's own.
pub fn phone(dice: &mut Dice) -> String {
    format!("000 {:03} {:03}", dice.between(0, 999), dice.between(0, 999))
}
