//! What the document says on food: stages, thickness, foods by group, advice, recipes.

use domain::food::FoodGroup;
use domain::food::Texture;
use domain::protocol::Food;
use domain::protocol::Iron;
use domain::protocol::Stage;
use domain::protocol::StageId;

use super::Block;
use super::Line;
use super::Text;
use super::Writer;
use super::said;
use crate::args;
use crate::i18n::codes;
use crate::i18n::format;

fn none(writer: Writer<'_>) -> Line {
    writer.say("doc-none")
}

fn range(writer: Writer<'_>, least: u8, most: u8) -> String {
    if least == most {
        return least.to_string();
    }
    writer.w.say_with("doc-range", args!["from" => least.to_string(), "to" => most.to_string()])
}

fn range_f(writer: Writer<'_>, (least, most): (f64, f64)) -> String {
    let number = |n: f64| format::number(writer.w, n, if (n * 10.0).fract().abs() < 1e-9 { 1 } else { 2 });
    if (least - most).abs() < f64::EPSILON {
        return number(least);
    }
    writer.w.say_with("doc-range", args!["from" => number(least), "to" => number(most)])
}

/// Cups as they are spoken of: a half and three quarters by name.
fn cups_in_words(writer: Writer<'_>, (least, most): (f64, f64)) -> String {
    let same = |a: f64, b: f64| (a - b).abs() < f64::EPSILON;
    let word = |n: f64| [(0.5, "doc-cup-half"), (0.75, "doc-cup-three-quarters")].into_iter().find(|(known, _)| same(*known, n));
    match (same(least, most), word(least), word(most)) {
        (true, Some((_, id)), _) => writer.w.say(id),
        (false, Some((_, from)), Some((_, to))) => {
            writer.w.say_with("doc-range", args!["from" => writer.w.say(from), "to" => writer.w.say(to)])
        }
        _ => range_f(writer, (least, most)),
    }
}

pub(super) fn stages(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(writer.part("doc-stages"));
    blocks.push(Block::Para(writer.say("doc-stages-what")));
    let columns = ["doc-stage", "doc-texture", "doc-meals-bf", "doc-meals-nbf", "doc-snacks", "doc-amount", "doc-energy"];
    blocks.push(Block::Table {
        caption: w.say("doc-stages"),
        columns: columns.map(|id| w.say(id)).to_vec(),
        rows: protocol.stages.iter().map(|stage| stage_row(writer, stage)).collect(),
    });
    let sources = protocol.stages.iter().map(|stage| {
        vec![Text::Said(w.say_with("doc-fact", args!["name" => codes::stage_name(w, stage.id)])), writer.quoted(&stage.source)]
    });
    blocks.push(Block::List(sources.collect()));
}

fn stage_row(writer: Writer<'_>, stage: &Stage) -> Vec<Line> {
    let w = writer.w;
    let age = if stage.id == StageId::FirstTastes {
        w.say("doc-stage-first")
    } else {
        let (from, to) = (stage.from_months, stage.to_months.saturating_sub(1));
        if from == to {
            w.say_with("common-months", args!["count" => from])
        } else {
            w.say_with("doc-stage-age", args!["from" => from.to_string(), "to" => to.to_string()])
        }
    };
    let texture = |(least, most): (Texture, Texture)| {
        if least == most {
            return codes::texture(w, least);
        }
        w.say_with("doc-range", args!["from" => codes::texture(w, least), "to" => codes::texture(w, most)])
    };
    let mut textures = stage.texture_expected.map_or_else(|| none(writer), |pair| said(texture(pair)));
    if let Some(floor) = stage.texture_floor {
        textures.push(Text::Said(w.say_with("doc-texture-least", args!["texture" => codes::texture(w, floor)])));
    }
    if stage.texture_expected.is_none() {
        return vec![vec![Text::Said(codes::stage_name(w, stage.id)), Text::Said(age)], textures]
            .into_iter()
            .chain(std::iter::repeat_with(|| none(writer)).take(5))
            .collect();
    }
    let least = |n: u8| Text::Said(w.say_with("doc-least", args!["n" => n.to_string()]));
    // The spoons of the first days come before the cup that they rise to.
    let cups = stage.cups.map(|cups| w.say_with("doc-cups", args!["n" => cups_in_words(writer, cups)]));
    let spoons = stage.tablespoons.map(|(from, to)| w.say_with("doc-spoons", args!["n" => range(writer, from, to)]));
    let amount = match (spoons, cups) {
        (Some(spoons), Some(cups)) => said(w.say_with("doc-spoons-to-cups", args!["spoons" => spoons, "cups" => cups])),
        (spoons, cups) => spoons.into_iter().chain(cups).map(Text::Said).collect(),
    };
    let (bf, nbf) = (stage.meals_expected_bf, stage.meals_expected_nbf);
    let milk = Text::Said(w.say_with("doc-least-milk", args!["n" => stage.milk_feeds_min_nbf.to_string()]));
    vec![
        vec![Text::Said(codes::stage_name(w, stage.id)), Text::Said(age)],
        textures,
        vec![Text::Said(range(writer, bf.0, bf.1)), least(stage.meals_min_bf)],
        vec![Text::Said(range(writer, nbf.0, nbf.1)), least(stage.feeds_min_nbf), milk],
        said(range(writer, stage.snacks.0, stage.snacks.1)),
        if amount.is_empty() { none(writer) } else { amount },
        vec![
            Text::Said(w.say_with("doc-energy-bf", args!["n" => stage.kcal_bf.to_string()])),
            Text::Said(w.say_with("doc-energy-nbf", args!["n" => stage.kcal_nbf.to_string()])),
        ],
    ]
}

pub(super) fn thickness(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    let energy = &protocol.energy;
    blocks.push(writer.part("doc-thickness"));
    let kcal = |n: f64| said(w.say_with("doc-kcal-per-g", args!["n" => format::number(w, n, 1)]));
    let stomach = w.say_with("doc-g-per-kg", args!["n" => format::number(w, energy.stomach_g_per_kg, 0)]);
    blocks.push(Block::Facts(vec![
        (w.say("doc-density-0"), kcal(energy.density[0])),
        (w.say("doc-density-1"), kcal(energy.density[1])),
        (w.say("doc-density-2"), kcal(energy.density[2])),
        (w.say("doc-density-least"), kcal(energy.least_density)),
        (w.say("doc-stomach"), said(stomach)),
    ]));
    blocks.push(writer.source(&energy.source));
}

pub(super) fn foods(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(writer.part("doc-foods"));
    blocks.push(Block::Para(said(w.say_with("doc-foods-what", args!["count" => protocol.foods.iter().count()]))));
    for group in FoodGroup::ALL.iter().copied().map(Some).chain([None]) {
        let of_group: Vec<&Food> = protocol.foods.iter().filter(|food| food.group == group).collect();
        if of_group.is_empty() {
            continue;
        }
        let group_called = group.is_some();
        let called = group.map_or_else(|| w.say("doc-group-none"), |group| codes::food_group(w, group));
        blocks.push(Block::Heading(said(&called)));
        blocks.push(Block::List(of_group.iter().map(|food| food_line(writer, food)).collect()));
        // Most foods of a group share their source: each is said once. Those in no group have little in common, so it is said whose it is.
        let mut sources: Vec<&str> = of_group.iter().map(|food| food.source.as_str()).collect();
        sources.sort_unstable();
        sources.dedup();
        for source in sources {
            let mut line = writer.source_line(source);
            if !group_called {
                let whose = of_group.iter().filter(|food| food.source == source).map(|food| food.name(w.lang().code()).to_owned());
                let whose = format::list(w, &whose.collect::<Vec<_>>());
                line.insert(0, Text::Said(w.say_with("doc-fact", args!["name" => whose])));
            }
            blocks.push(Block::Para(line));
        }
    }
}

/// A food's name, then whatever is said of it, parted by semicolons.
fn food_line(writer: Writer<'_>, food: &Food) -> Line {
    let w = writer.w;
    let lang = w.lang().code();
    let mut facts: Line = Vec::new();
    if food.iron != Iron::None {
        facts.push(Text::Said(format!(
            "{} {}",
            w.say_with("doc-fact", args!["name" => w.say("doc-food-iron")]),
            codes::iron(w, food.iron)
        )));
    }
    if let Some(allergen) = food.allergen {
        facts.push(Text::Said(format!(
            "{} {}",
            w.say_with("doc-fact", args!["name" => w.say("doc-food-allergen")]),
            codes::allergen(w, allergen)
        )));
    }
    if food.earliest_days != 180 {
        facts.push(Text::Said(format!(
            "{} {}",
            w.say("doc-food-from"),
            w.say_with("doc-food-days", args!["n" => food.earliest_days.to_string()])
        )));
    }
    for (holds, id) in [
        (food.choking, "doc-food-choking"),
        (food.drink, "doc-food-drink"),
        (food.unhealthy, "doc-food-unhealthy"),
        (food.sweet_drink, "doc-food-sweet-drink"),
        (!food.active, "doc-food-hidden"),
    ] {
        if holds {
            facts.push(Text::Said(w.say(id)));
        }
    }
    if food.local_wait_months > 0 {
        let policy = codes::hold_policy(w, food.hold_policy);
        facts.push(Text::Said(w.say_with("doc-food-wait", args!["months" => food.local_wait_months.to_string(), "policy" => policy])));
    }
    if let Some(kcal) = food.kcal_per_100g {
        facts.push(Text::Said(w.say_with("doc-food-kcal", args!["n" => kcal.to_string()])));
    }
    let mut line = vec![writer.quoted_in(food.name(lang), &food.name)];
    for (at, fact) in facts.into_iter().enumerate() {
        line.push(Text::Said(if at == 0 { "–".to_owned() } else { "·".to_owned() }));
        line.push(fact);
    }
    if !food.safe_form(lang).trim().is_empty() {
        line.push(Text::Said(format!("· {}", w.say_with("doc-fact", args!["name" => w.say("doc-food-safe")]))));
        line.push(writer.quoted_in(food.safe_form(lang), &food.safe_form));
    }
    if food.kcal_per_100g.is_some() && !food.kcal_source.trim().is_empty() {
        line.push(Text::Said(w.say("doc-food-kcal-source")));
        line.push(writer.quoted(&food.kcal_source));
    }
    line
}

pub(super) fn modes(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    blocks.push(writer.part("doc-modes"));
    blocks.push(Block::Facts(vec![
        (w.say("doc-mode-allergens"), said(codes::allergen_mode(w, protocol.allergens))),
        (w.say("doc-mode-milk"), said(codes::milk_mode(w, protocol.milk))),
    ]));
}

/// Each line of advice once with its stages, what is about danger first.
pub(super) fn coaching(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    if protocol.coaching.is_empty() {
        return;
    }
    blocks.push(writer.part("doc-coaching"));
    let mut lines: Vec<_> = protocol.coaching.iter().collect();
    lines.sort_by_key(|line| !line.danger);
    let listed = lines.into_iter().map(|advice| {
        let mut line = Line::new();
        if advice.danger {
            line.push(Text::Said(w.say_with("doc-fact", args!["name" => w.say("doc-coaching-danger")])));
        }
        line.push(writer.quoted_in(advice.text(w.lang().code()), &advice.text));
        let stages: Vec<String> = advice.stages.iter().map(|stage| codes::stage_name(w, *stage)).collect();
        line.push(Text::Said(format!("[{}]", format::list(w, &stages))));
        // What only names the mark again is not a source.
        if !super::rules::MARKS.contains(&advice.source.trim().to_lowercase().as_str()) {
            line.extend(writer.source_line(&advice.source));
        }
        line.push(Text::Said(format!("({})", codes::mark(w, advice.mark))));
        line
    });
    blocks.push(Block::List(listed.collect()));
}

pub(super) fn recipes(writer: Writer<'_>, blocks: &mut Vec<Block>) {
    let Writer { w, protocol } = writer;
    if protocol.recipes.is_empty() {
        return;
    }
    let lang = w.lang().code();
    blocks.push(writer.part("doc-recipes"));
    for recipe in &protocol.recipes {
        // Which language its words are in is told by its name.
        let text = recipe.text(lang);
        let own = |words: &str| {
            let translated = recipe.texts.contains_key(lang);
            Text::Quoted(words.to_owned(), if translated { lang.to_owned() } else { protocol.language.clone() })
        };
        blocks.push(Block::Heading(vec![own(&text.name)]));
        let last = recipe.parts.len();
        let parts = recipe.parts.iter().enumerate().flat_map(|(at, part)| {
            let known = protocol.food(&part.food).map_or_else(|| part.food.as_str(), |food| &food.name);
            let name = writer.quoted_in(protocol.food_name(&part.food, lang), known);
            let grams = format::g(w, i64::from(part.grams));
            let grams = Text::Said(if at + 1 == last { grams } else { format!("{grams};") });
            let measure = text.measures.get(at).map(|measure| own(&format!("({measure})")));
            [Some(name), measure, Some(grams)].into_iter().flatten()
        });
        let textures: Vec<String> = recipe.textures.iter().map(|texture| codes::texture(w, *texture)).collect();
        let keeps = recipe.keeps;
        let (room, cold) = (keeps.cooked_room_hours.to_string(), keeps.cooked_cold_hours.to_string());
        let mut kept = said(w.say_with("doc-recipe-keeps-how", args!["room" => room, "cold" => cold]));
        if let Some((room, cold)) = keeps.flour_days {
            kept.push(Text::Said(w.say_with("doc-recipe-flour", args!["room" => room.to_string(), "cold" => cold.to_string()])));
        }
        let mut facts = vec![(w.say("doc-recipe-parts"), parts.collect())];
        if recipe.water_ml > 0 {
            facts.push((w.say("doc-recipe-water"), said(w.say_with("doc-recipe-ml", args!["n" => recipe.water_ml.to_string()]))));
        }
        facts.push((w.say("doc-recipe-cooked"), said(format::g(w, i64::from(recipe.cooked_g)))));
        facts.push((w.say("doc-recipe-textures"), said(format::list(w, &textures))));
        if let Some(kcal) = recipe.kcal_per_g(&protocol.foods) {
            facts.push((w.say("doc-recipe-energy"), said(w.say_with("doc-kcal-per-g", args!["n" => format::number(w, kcal, 2)]))));
        }
        let allergens: Vec<String> = recipe.allergens(&protocol.foods).into_iter().map(|allergen| codes::allergen(w, allergen)).collect();
        if !allergens.is_empty() {
            facts.push((w.say("doc-food-allergen"), said(format::list(w, &allergens))));
        }
        facts.push((w.say("doc-recipe-keeps"), kept));
        facts.push((w.say("doc-recipe-steps"), text.steps.iter().map(|step| own(step)).collect()));
        if !text.warnings.is_empty() {
            facts.push((w.say("doc-recipe-warnings"), text.warnings.iter().map(|warning| own(warning)).collect()));
        }
        blocks.push(Block::Facts(facts));
        blocks.push(writer.source(&recipe.source));
    }
}
