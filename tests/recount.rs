//! Every kind of figure of a month counted a second time by SQL that was written from the definitions, without looking at how the
//! program counts. Tests of made-up months and of the demo share it.

use std::collections::BTreeMap;

use domain::report::csv_table::Table;
use sea_orm::ConnectionTrait;
use sea_orm::DbBackend;
use sea_orm::Statement;
use spoonround::files::report_csv;
use spoonround::store::Db;

/// First and last day of the month counted.
pub type Days<'a> = (&'a str, &'a str);

/// A file as rows of column and text.
fn read(bytes: &[u8]) -> Vec<BTreeMap<String, String>> {
    let mut csv = csv::ReaderBuilder::new().from_reader(bytes);
    let head = csv.headers().expect("a header").clone();
    csv.records().map(|row| head.iter().zip(row.expect("a row").iter()).map(|(h, c)| (h.to_owned(), c.to_owned())).collect()).collect()
}

/// What is shown in a column where the other columns hold these texts; `None` where it is withheld, or left out with its row as happens to
/// rows of several splits where many figures are small.
fn shown(rows: &[BTreeMap<String, String>], place: &[(&str, &str)], column: &str) -> Option<i64> {
    let row = rows.iter().find(|row| place.iter().all(|(name, text)| row[*name] == *text));
    let Some(row) = row else {
        assert!(place.iter().filter(|(_, text)| *text != "all").count() > 1, "no row {place:?}");
        return None;
    };
    let withheld = row["withheld"].split(';').any(|entry| entry.split(':').next() == Some(column));
    assert_eq!(withheld, row[column].is_empty(), "{place:?} {column}: empty if and only if withheld");
    row[column].parse().ok()
}

/// One number from the database for each village (by code) and for all.
pub async fn recount(db: &Db, (first, last): Days<'_>, select: &str) -> BTreeMap<String, i64> {
    let sql = format!("{CTE} {select}").replace(":first", &format!("'{first}'")).replace(":last", &format!("'{last}'"));
    let rows = db.direct().query_all_raw(Statement::from_string(DbBackend::Sqlite, sql)).await.expect("an answer");
    let mut of = BTreeMap::new();
    let mut all = 0;
    for row in rows {
        let (code, count): (String, i64) = (row.try_get_by_index(0).expect("a code"), row.try_get_by_index(1).expect("a count"));
        all += count;
        of.insert(code, count);
    }
    of.insert("all".to_owned(), all);
    of
}

/// Children with their place and status at the end of the month, visits that count, and the last visit of each child in the month.
const CTE: &str = "
WITH slot(code, months, days, after) AS (VALUES
  ('d003',0,3,7),('d007',0,7,7),('d014',0,14,7),('d042',0,42,7),('d070',0,70,7),('d098',0,98,7),('m04',4,0,7),('m05',5,0,7),
  ('m06',6,0,10),('m06d14',6,14,10),('m07',7,0,10),('m08',8,0,10),('m09',9,0,10),('m10',10,0,10),('m11',11,0,10),
  ('m12',12,0,14),('m14',14,0,14),('m16',16,0,14),('m18',18,0,14),('m20',20,0,14),('m22',22,0,14),('m24',24,0,14)),
child AS (SELECT * FROM children WHERE id NOT IN (SELECT child_id FROM record_corrections WHERE kind = 'merge')),
aim AS (SELECT c.id child, c.registered_on, s.code, s.after,
  -- The same day of the month; in a shorter month its last day.
  date(min(date(c.born, 'start of month', '+' || s.months || ' months', '+' || (strftime('%d', c.born) - 1) || ' days'),
    date(c.born, 'start of month', '+' || (s.months + 1) || ' months', '-1 day')), '+' || s.days || ' days') day FROM child c, slot s),
-- Where a child lived on a day; before its registration, where it was registered.
lived AS (SELECT child_id child, area_id, CASE seq WHEN 1 THEN '0000-01-01' ELSE from_on END since, coalesce(to_on, '9999-12-31') until FROM placements),
target AS (SELECT a.*, l.area_id FROM aim a JOIN lived l ON l.child = a.child AND a.day BETWEEN l.since AND l.until),
seen AS (SELECT v.*, c.born,
  (strftime('%Y', v.visited_on) - strftime('%Y', c.born)) * 12 + (strftime('%m', v.visited_on) - strftime('%m', c.born))
  - (strftime('%d', v.visited_on) < strftime('%d', c.born) AND strftime('%d', v.visited_on, '+1 day') <> '01') months
  FROM visits v JOIN child c ON c.id = v.child_id
  WHERE v.voided_at IS NULL AND v.contact <> 'phone' AND v.visited_on <= :last
    AND (c.left_on IS NULL OR c.left_on >= v.visited_on)),
nearest AS (SELECT v.child_id child, t.code, row_number() OVER (PARTITION BY v.id
  ORDER BY abs(julianday(t.day) - julianday(v.visited_on)), t.day DESC) place FROM seen v JOIN target t ON t.child = v.child_id),
filled AS (SELECT DISTINCT child, code FROM nearest WHERE place = 1),
gone AS (SELECT child_id child, happened_on FROM status_changes WHERE status <> 'active'),
due AS (SELECT t.* FROM target t WHERE date(t.day, '+' || t.after || ' days') BETWEEN :first AND :last
  AND t.day >= date(t.registered_on, '-7 days') AND t.registered_on <= :last
  AND NOT EXISTS (SELECT 1 FROM gone g WHERE g.child = t.child AND g.happened_on <= max(t.day, t.registered_on))),
month AS (SELECT s.*, row_number() OVER (PARTITION BY child_id ORDER BY visited_on DESC, entry_seq DESC) back,
  CASE WHEN months < 6 THEN 0 WHEN months < 9 THEN 1 WHEN months < 12 THEN 2 WHEN months < 24 THEN 3 ELSE 4 END band,
  CASE WHEN months < 6 THEN 0 WHEN months < 12 THEN 1 WHEN months < 24 THEN 2 ELSE 3 END growth_band
  FROM seen s WHERE visited_on >= :first),
last AS (SELECT * FROM month WHERE back = 1),
fed AS (SELECT l.child_id, l.area_id, l.months,
  (SELECT m.breastfed FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.breastfed IS NOT NULL ORDER BY back LIMIT 1) breastfed,
  (SELECT coalesce(m.meals, 0) FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id
     AND (m.meals IS NOT NULL OR m.solids_yesterday = 0) ORDER BY back LIMIT 1) meals,
  (SELECT m.formula_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.formula_times IS NOT NULL ORDER BY back LIMIT 1)
  + (SELECT m.animal_milk_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.animal_milk_times IS NOT NULL ORDER BY back LIMIT 1)
  + (SELECT m.drink_yogurt_times FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.drink_yogurt_times IS NOT NULL ORDER BY back LIMIT 1) milks,
  (SELECT CASE m.food_groups WHEN '' THEN 0 ELSE length(m.food_groups) - length(replace(m.food_groups, ' ', '')) + 1 END
     FROM month m WHERE m.child_id = l.child_id AND m.band = l.band AND m.area_id = l.area_id AND m.food_groups IS NOT NULL ORDER BY back LIMIT 1) groups
  FROM last l WHERE l.months BETWEEN 6 AND 23),
often AS (SELECT area_id, months, CASE WHEN breastfed = 1 THEN meals >= CASE WHEN months < 9 THEN 2 ELSE 3 END
  WHEN breastfed = 0 AND meals IS NOT NULL AND milks IS NOT NULL THEN meals + milks >= 4 AND meals >= 1 END yes FROM fed),
light AS (SELECT l.area_id,
  (SELECT CASE WHEN m.oedema = 1 THEN -9999 ELSE m.waz_h END FROM month m
     WHERE m.child_id = l.child_id AND m.growth_band = l.growth_band AND m.area_id = l.area_id
       AND (m.oedema = 1 OR (m.waz_h IS NOT NULL AND (m.waz_h BETWEEN -600 AND 500 OR m.confirmed LIKE '%weight%')))
     ORDER BY back LIMIT 1) waz
  FROM last l WHERE l.growth_band < 3),
told AS (SELECT v.area_id, f.food_code, f.minutes_after, ' ' || coalesce(f.signs, 'not recorded') || ' ' said
  FROM visit_foods f JOIN visits v ON v.id = f.visit_id JOIN child c ON c.id = v.child_id
  WHERE f.response = 'reaction' AND v.voided_at IS NULL AND v.visited_on BETWEEN :first AND :last AND (c.left_on IS NULL OR c.left_on >= v.visited_on)),
reacted AS (SELECT *, said = ' not recorded ' OR instr(said, ' hives_widespread ') OR instr(said, ' swelling_face ')
    OR instr(said, ' vomiting_repeated ') spreading FROM told
  WHERE NOT (instr(said, ' wheeze ') OR instr(said, ' breathing_trouble ') OR instr(said, ' hoarse_cry ') OR instr(said, ' swollen_tongue_throat ')
    OR instr(said, ' pale_floppy ') OR instr(said, ' collapse ') OR instr(said, ' sleepy_pale ')
    OR (instr(said, ' rash_local ') OR instr(said, ' hives_widespread ') OR instr(said, ' swelling_face '))
      AND (instr(said, ' vomiting_once ') OR instr(said, ' vomiting_repeated ') OR instr(said, ' loose_stools '))
      AND coalesce(minutes_after, 0) <= 240))";

/// What a village is called in the answer of a recount.
pub fn by_village(from: &str, of: &str) -> String {
    format!("SELECT a.code, count({of}) FROM areas a LEFT JOIN {from} GROUP BY a.code")
}

/// What a kind of figure came to: counted in the whole programme, and figures that were shown and the same.
#[derive(Debug, Clone, Copy, Default)]
pub struct Compared {
    pub counted: i64,
    pub shown: u32,
}

/// Holds the files of a month against the recount, figure by figure where they are shown; answers how many were, by kind.
pub async fn compare(db: &Db, month: Days<'_>, tables: &[Table]) -> BTreeMap<String, Compared> {
    let files: BTreeMap<String, Vec<BTreeMap<String, String>>> =
        tables.iter().map(|table| (table.name.to_owned(), read(&report_csv::write(table).expect("written")))).collect();
    let everybody = [("sex", "all"), ("age_band_at_period_end", "all")];
    let grown = [("sex", "all"), ("age_band_at_visit", "all")];
    let mdd = [("sex", "all"), ("age_band_at_visit", "all"), ("indicator", "MDD")];
    let mmf = [("sex", "all"), ("age_band_at_visit", "all"), ("indicator", "MMF")];
    let about = [("rule", "all"), ("class", "all")];
    let milder = [("food_group", "all"), ("allergen", "all"), ("class", "all")];
    let rash = [("food_group", "pulses_nuts"), ("allergen", "peanut"), ("class", "mild")];
    let active_end = "(SELECT c.id, l.area_id FROM child c JOIN lived l ON l.child = c.id AND :last BETWEEN l.since AND l.until \
         WHERE c.registered_on <= :last AND (c.left_on IS NULL OR c.left_on > :last)) c ON c.area_id = a.id";
    let active_start = "(SELECT c.id, l.area_id FROM child c JOIN lived l ON l.child = c.id AND date(:first, '-1 day') BETWEEN l.since AND l.until \
         WHERE c.registered_on < :first AND (c.left_on IS NULL OR c.left_on >= :first)) c ON c.area_id = a.id";
    let done = "due d ON d.area_id = a.id AND EXISTS (SELECT 1 FROM filled f WHERE f.child = d.child AND f.code = d.code)";
    let opened = "follow_ups f ON f.area_id = a.id AND f.opened_on BETWEEN :first AND :last AND f.rule <> 'reaction.severe' \
         AND EXISTS (SELECT 1 FROM visits v WHERE v.id = f.opened_by_visit AND v.child_id = f.child_id AND v.voided_at IS NULL)";
    let groundnut = "reacted r ON r.area_id = a.id AND NOT r.spreading AND r.food_code IN ('groundnut_paste', 'groundnut_whole')";
    #[expect(clippy::type_complexity, reason = "a table of checks: file, row, column, question in SQL")]
    let checks: [(&str, &[(&str, &str)], &str, String); 15] = [
        ("enrolment", &everybody, "active_end", by_village(active_end, "c.id")),
        ("enrolment", &everybody, "active_start", by_village(active_start, "c.id")),
        ("visits", &[("slot", "all")], "due", by_village("due d ON d.area_id = a.id", "d.child")),
        ("visits", &[("slot", "all")], "done", by_village(done, "d.child")),
        ("growth", &grown, "children_visited", by_village("last l ON l.area_id = a.id AND l.growth_band < 3", "l.id")),
        ("growth", &grown, "waz_n", by_village("light g ON g.area_id = a.id AND g.waz IS NOT NULL", "g.waz")),
        ("growth", &grown, "waz_lt_m2", by_village("light g ON g.area_id = a.id AND g.waz < -200", "g.waz")),
        ("feeding", &mdd, "den", by_village("fed f ON f.area_id = a.id AND f.groups IS NOT NULL", "f.groups")),
        ("feeding", &mdd, "n", by_village("fed f ON f.area_id = a.id AND f.groups >= 5", "f.groups")),
        ("feeding", &mmf, "den", by_village("often o ON o.area_id = a.id AND o.yes IS NOT NULL", "o.yes")),
        ("feeding", &mmf, "n", by_village("often o ON o.area_id = a.id AND o.yes = 1", "o.yes")),
        ("followups", &about, "opened", by_village(opened, "f.id")),
        ("reactions", &milder, "n", by_village("reacted r ON r.area_id = a.id", "r.said")),
        ("reactions", &milder, "referred_n", by_village("reacted r ON r.area_id = a.id AND r.spreading", "r.said")),
        ("reactions", &rash, "n", by_village(groundnut, "r.said")),
    ];
    let mut kinds = BTreeMap::new();
    for (file, place, column, sql) in checks {
        let wanted = recount(db, month, &sql).await;
        let kind = [&[file], &*place.iter().map(|(_, text)| *text).filter(|text| *text != "all").collect::<Vec<_>>(), &[column]].concat();
        let compared: &mut Compared = kinds.entry(kind.join(" ")).or_default();
        compared.counted += wanted["all"];
        for (area, count) in &wanted {
            let at = [&[("area", area.as_str())], place].concat();
            if let Some(figure) = shown(&files[file], &at, column) {
                assert_eq!(figure, *count, "{file} {column} {area} in {month:?}");
                compared.shown += 1;
            }
        }
    }
    kinds
}
