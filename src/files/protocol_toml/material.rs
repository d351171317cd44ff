//! Reads coaching lines of a protocol file.

use domain::protocol::CoachMark;
use domain::protocol::CoachingLine;
use domain::protocol::StageId;
use domain::rule::RuleId;

use super::super::faults::Faults;
use super::super::saying::say;
use super::super::toml_reader::Table;
use super::header::source;

/// `[[coach]]`.
pub fn coaching(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<CoachingLine> {
    let mut lines: Vec<CoachingLine> = Vec::new();
    for mut t in root.tables(f, "coach") {
        let key = t.need_text(f, "key", say("a short name, e.g. {example}").with("example", "\"small_spoon\""));
        if !key.is_empty() {
            t.rename(format!("coach {key}"));
        }
        if lines.iter().any(|line| line.key == key) {
            t.fault(f, "key", say("stands twice; keep one"));
        }
        let before = f.len();
        t.need(f, "stages", say("the stages it is for, e.g. {example}").with("example", "[\"mid_8\", \"lumps_9_11\"]"));
        t.need(f, "mark", say("what it rests on, one of {words}").with("words", "\"source\", \"memory\", \"practice\", \"own\""));
        lines.push(CoachingLine {
            stages: t.words(f, "stages", StageId::from_code).unwrap_or_default(),
            text: t.need_text(f, "say", say("the words in the language of the file")),
            texts: t.texts(f, "text"),
            danger: t.flag(f, "danger").unwrap_or(false),
            not_with: t.words(f, "not_with", RuleId::from_code).unwrap_or_default(),
            mark: t.word(f, "mark", CoachMark::from_code).unwrap_or(CoachMark::Own),
            source: source(&mut t, f),
            key,
        });
        if t.has("stages") && lines.last().is_some_and(|line| line.stages.is_empty()) && f.len() == before {
            t.fault(f, "stages", say("names no stage; name one, or leave the line out"));
        }
        t.finish(f);
    }
    lines
}
