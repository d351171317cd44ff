//! Reads the feeding stages of a protocol file and checks that they follow each other.

use domain::food::Texture;
use domain::protocol::Stage;
use domain::protocol::StageId;
use domain::protocol::Stages;

use super::super::faults::Faults;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::super::toml_reader::unknown_key;
use super::header::source;

/// A stage as read, with its place for faults.
struct Read<'a, 't> {
    stage: Stage,
    table: Table<'a, 't>,
}

/// `[[stage]]`: all seven, by age without gap or overlap.
pub fn stages(root: &mut Table<'_, '_>, f: &mut Faults<'_>, exit_age_months: u32) -> Option<Stages> {
    root.need(f, "stage", say("the feeding stages as [[stage]] tables"));
    let mut read: Vec<Read<'_, '_>> = root.tables(f, "stage").into_iter().filter_map(|table| stage(table, f)).collect();
    read.sort_by_key(|one| one.stage.from_months);
    let root_span = root.span_of("stage");
    for id in StageId::ALL {
        match read.iter().filter(|one| one.stage.id == *id).count() {
            0 => f.add(
                &root_span,
                "stage",
                say("the stage {stage} is missing; copy it from the default protocol").with("stage", format!("{:?}", id.code())),
            ),
            1 => {}
            _ => f.add(&root_span, "stage", say("the stage {stage} stands twice; keep one").with("stage", format!("{:?}", id.code()))),
        }
    }
    let (first, by_age): (Vec<_>, Vec<_>) = read.into_iter().partition(|one| one.stage.id == StageId::FirstTastes);
    let mut reached = 0;
    let mut texture = None;
    for Read { stage, table } in &by_age {
        if stage.from_months > reached {
            table.fault(f, "from_months", say("leaves a gap: no stage holds month {month}").with("month", reached));
        } else if stage.from_months < reached {
            table.fault(f, "from_months", say("overlaps the stage before it, which goes up to month {month}").with("month", reached));
        }
        if stage.to_months <= stage.from_months {
            table.fault(f, "to_months", say("must be more than {key}").with("key", "from_months"));
        }
        reached = stage.to_months;
        let expected = stage.texture_expected.map(|(least, _)| least);
        if expected < texture {
            table.fault(f, "texture_expected", say("falls below that of the stage before it; textures never fall with age"));
        }
        texture = expected.max(texture);
    }
    if reached != exit_age_months && !by_age.is_empty() {
        f.add(&root_span, "stage", say("the last stage must go up to month {month}, the exit age").with("month", exit_age_months));
    }
    let first = first.into_iter().next()?.stage;
    Some(Stages::new(by_age.into_iter().map(|one| one.stage).collect(), first))
}

fn stage<'a, 't>(mut t: Table<'a, 't>, f: &mut Faults<'_>) -> Option<Read<'a, 't>> {
    t.need(f, "id", say("its id, e.g. {example}").with("example", "\"lumps_9_11\""));
    let id = t.word(f, "id", StageId::from_code);
    if let Some(id) = id {
        t.rename(format!("stage {}", id.code()));
    }
    let whole = |t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str| u32::try_from(t.need_whole(f, key, 0..=60)).unwrap_or(0);
    let from_months = whole(&mut t, f, "from_months");
    let to_months = whole(&mut t, f, "to_months");
    let texture_expected = textures(&mut t, f);
    let floor = t.whole(f, "texture_floor", 0..=4).and_then(|level| Texture::new(u8::try_from(level).ok()?));
    if let (Some(floor), Some((least, _))) = (floor, texture_expected)
        && floor > least
    {
        t.fault(f, "texture_floor", say("must not be above the texture expected"));
    }
    let byte = |t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str| u8::try_from(t.need_whole(f, key, 0..=24)).unwrap_or(0);
    let kcal = |t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str| u32::try_from(t.need_whole(f, key, 0..=5_000)).unwrap_or(0);
    let stage = Stage {
        id: id.unwrap_or(StageId::MilkOnly),
        from_months,
        to_months,
        texture_expected,
        texture_floor: floor,
        meals_expected_bf: pair(&mut t, f, "meals_expected_bf"),
        meals_expected_nbf: pair(&mut t, f, "meals_expected_nbf"),
        meals_min_bf: byte(&mut t, f, "meals_min_bf"),
        feeds_min_nbf: byte(&mut t, f, "feeds_min_nbf"),
        milk_feeds_min_nbf: byte(&mut t, f, "milk_feeds_min_nbf"),
        snacks: pair(&mut t, f, "snacks"),
        cups: cups(&mut t, f),
        tablespoons: t.has("amount_tablespoons").then(|| pair(&mut t, f, "amount_tablespoons")),
        kcal_bf: kcal(&mut t, f, "kcal_bf"),
        kcal_nbf: kcal(&mut t, f, "kcal_nbf"),
        source: source(&mut t, f),
    };
    for (key, amounts) in [
        ("amount_tablespoons", stage.tablespoons.map(|(least, _)| f64::from(least))),
        ("amount_cup_250ml", stage.cups.map(|(least, _)| least)),
    ] {
        if amounts.is_some_and(|least| least <= 0.0) {
            t.fault(f, key, say("amounts must be above 0"));
        }
    }
    for key in t.unread_keys() {
        t.fault(f, &key, unknown_key());
    }
    id.map(|_| Read { stage, table: t })
}

/// One texture, or from–to.
fn textures(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<(Texture, Texture)> {
    if !t.has("texture_expected") {
        return None;
    }
    let what = say("must be [from, to] with textures from 0 to 4, the second not below the first");
    let levels: Vec<Option<i64>> = t.list(f, "texture_expected")?.iter().map(super::super::toml_reader::Item::as_whole).collect();
    let read = |level: Option<i64>| Texture::new(u8::try_from(level?).ok()?);
    match levels[..] {
        [least, most] => match (read(least), read(most)) {
            (Some(least), Some(most)) if least <= most => return Some((least, most)),
            _ => t.fault(f, "texture_expected", what),
        },
        _ => t.fault(f, "texture_expected", what),
    }
    None
}

fn pair(t: &mut Table<'_, '_>, f: &mut Faults<'_>, key: &str) -> (u8, u8) {
    if !t.need(f, key, say("a pair [from, to]")) {
        return (0, 0);
    }
    let Some(items) = t.list(f, key) else { return (0, 0) };
    let numbers: Vec<Option<u8>> = items.iter().map(|item| u8::try_from(item.as_whole()?).ok()).collect();
    match numbers[..] {
        [Some(least), Some(most)] if least <= most => (least, most),
        _ => {
            t.fault(f, key, say("must be [from, to], whole numbers from 0, the second not less than the first"));
            (0, 0)
        }
    }
}

fn cups(t: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Option<(f64, f64)> {
    if !t.has("amount_cup_250ml") {
        return None;
    }
    let items = t.list(f, "amount_cup_250ml")?;
    let numbers: Vec<Option<f64>> = items.iter().map(super::super::toml_reader::Item::as_number).collect();
    match numbers[..] {
        [Some(least), Some(most)] if least <= most => Some((least, most)),
        _ => {
            t.fault(f, "amount_cup_250ml", say("must be [from, to] in cups of 250 ml, the second not less than the first"));
            None
        }
    }
}
