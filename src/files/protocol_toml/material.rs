//! Reads coaching lines of a protocol file.

use domain::protocol::CoachMark;
use domain::protocol::CoachingLine;
use domain::protocol::StageId;

use super::super::toml_reader::Faults;
use super::super::toml_reader::Table;
use super::header::source;

/// `[[coach]]`.
pub fn coaching(root: &mut Table<'_, '_>, f: &mut Faults<'_>) -> Vec<CoachingLine> {
    let mut lines: Vec<CoachingLine> = Vec::new();
    for mut t in root.tables(f, "coach") {
        let key = t.need_text(f, "key", "a short name, e.g. \"small_spoon\"");
        if !key.is_empty() {
            t.rename(format!("coach {key}"));
        }
        if lines.iter().any(|line| line.key == key) {
            t.fault(f, "key", "stands twice; keep one");
        }
        t.need(f, "stages", "the stages it is for");
        t.need(f, "mark", "what it rests on: \"source\", \"memory\", \"practice\" or \"own\"");
        lines.push(CoachingLine {
            stages: t.words(f, "stages", StageId::from_code).unwrap_or_default(),
            text: t.need_text(f, "say", "the words in the language of the file"),
            texts: t.texts(f, "text"),
            danger: t.flag(f, "danger").unwrap_or(false),
            mark: t.word(f, "mark", CoachMark::from_code).unwrap_or(CoachMark::Own),
            source: source(&mut t, f),
            key,
        });
        t.finish(f);
    }
    lines
}
