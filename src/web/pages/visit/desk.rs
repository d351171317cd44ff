//! One child's file laid out for a visit: the questions that fit, what is open, the foods to ask about. It turns what is stored into
//! what the page shows, and text that was typed into values; it writes nothing.

use std::collections::BTreeSet;
use std::sync::Arc;

use chrono::NaiveDate;
use domain::child_code::ChildCode;
use domain::draft::questions::Before;
use domain::draft::questions::Questions;
use domain::draft::visit::VisitFrame;
use domain::draft::visit::VisitRead;
use domain::draft::visit::read_visit;
use domain::fault::Faults;
use domain::follow_up::FollowUp;
use domain::food::FoodCode;
use domain::food::FoodGroup;
use domain::ids::VisitId;
use domain::protocol::Food;
use domain::protocol::Protocol;
use domain::rule::Class;
use domain::unusual::Unusual;
use domain::unusual::unusual;
use domain::visit::Visit;
use maud::Markup;

use crate::args;
use crate::i18n::codes;
use crate::i18n::explain;
use crate::i18n::format;
use crate::service::child_file;
use crate::service::child_file::ChildFile;
use crate::service::food_like::food_like;
use crate::service::record_visit::outcome_path;
use crate::view::emergency;
use crate::view::emergency::Emergency;
use crate::view::filled::Filled;
use crate::view::layout;
use crate::view::parts::not_saved_title;
use crate::view::visit_form;
use crate::view::visit_form::Correcting;
use crate::view::visit_form::OpenLine;
use crate::view::visit_form::VisitForm;
use crate::web::extract::Signed;
use crate::web::failure::Failure;
use crate::web::pages::visit::NOT_YET;

/// How many foods stand for a group on its tile.
const EXAMPLES: usize = 3;

/// As inside a list: the protocol writes names as at the head of a line.
fn lower_first(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// A child's file on the table.
pub struct Desk<'a> {
    /// Who works.
    pub signed: &'a Signed,
    /// The child.
    pub file: ChildFile,
    /// Its visits up to today.
    pub visits: Vec<Visit>,
    /// The protocol in force today.
    pub protocol: Arc<Protocol>,
}

/// What to do about danger that is saved already.
pub struct Danger {
    /// How urgent it is.
    pub class: Class,
    /// What stands above the form.
    pub block: Markup,
}

/// A form to be shown.
pub struct Form {
    action: String,
    key: String,
    filled: Filled,
    faults: Faults,
    read: Option<VisitRead>,
    correcting: Option<(i64, bool)>,
    danger: Option<Markup>,
    /// Whether that is an emergency.
    emergency: bool,
    /// What is stored was saved as it stands: nothing of it is asked about again.
    quiet: bool,
    newest: Option<Newest>,
    gone: bool,
}

/// A visit that somebody changed since the form was shown.
pub struct Newest {
    /// As its form would send it.
    pub filled: Filled,
    /// Who changed it last.
    pub by: String,
    /// Why.
    pub reason: String,
    /// Danger in it that the form did not say, as the field that says it and what it says.
    pub danger: Vec<(String, String)>,
    /// Danger that the form itself said was saved.
    pub saved: bool,
}

impl Form {
    /// An empty form that goes there.
    pub fn fresh(action: &str, key: &str) -> Self {
        Self {
            action: action.to_owned(),
            key: key.to_owned(),
            filled: Filled::default(),
            faults: Faults::new(),
            read: None,
            correcting: None,
            danger: None,
            emergency: false,
            quiet: false,
            newest: None,
            gone: false,
        }
    }

    /// With day and place filled in before anything is typed.
    pub fn beginning(mut self, filled: Filled) -> Self {
        self.filled = filled;
        self
    }

    /// With what was typed and what it became.
    pub fn with(mut self, filled: &Filled, read: &VisitRead) -> Self {
        self.filled = filled.clone();
        self.faults = read.faults.clone();
        self.read = Some(read.clone());
        self
    }

    /// As a correction of a visit; `unfinished`: its danger was saved before the rest.
    pub const fn correcting(mut self, seq: i64, unfinished: bool) -> Self {
        self.correcting = Some((seq, unfinished));
        self
    }

    /// Under what to do about danger that is saved.
    pub fn under(mut self, danger: Option<Danger>) -> Self {
        self.emergency = danger.as_ref().is_some_and(|d| d.class == Class::Now);
        self.danger = danger.map(|d| d.block);
        self
    }

    /// Beside what somebody else made of the visit meanwhile.
    pub fn beside(mut self, newest: Option<Newest>) -> Self {
        self.newest = newest;
        self
    }

    /// As a new visit, because the one that was corrected is not there any more.
    pub const fn instead(mut self) -> Self {
        self.gone = true;
        self
    }

    /// Without asking about unusual values.
    pub const fn quietly(mut self) -> Self {
        self.quiet = true;
        self
    }
}

impl<'a> Desk<'a> {
    /// Opens a child's file as of today.
    ///
    /// # Errors
    /// [`Failure::NotFound`] outside the scope.
    pub async fn open(signed: &'a Signed, code: &ChildCode) -> Result<Self, Failure> {
        let today = signed.visitor.today;
        let file = child_file::open(&signed.context(), code, today).await?;
        let visits = file.visits.iter().map(|record| record.visit.clone()).collect();
        Ok(Self { signed, visits, protocol: Arc::clone(signed.visitor.protocols.on(today)), file })
    }

    /// The child's code.
    pub fn code(&self) -> &str {
        &self.file.record.code
    }

    /// The name of a food in the language of the page.
    pub fn food_name(&self, code: &str) -> String {
        self.protocol.food_name(&FoodCode(code.to_owned()), self.signed.words().lang().code()).to_owned()
    }

    /// What was typed, as values.
    pub fn read(&self, form: &Filled, id: VisitId) -> VisitRead {
        let told: BTreeSet<&str> = self.visits.iter().flat_map(|v| v.foods.iter().map(|f| f.code.as_str())).collect();
        let known =
            |code: &str| told.contains(code) || self.signed.visitor.protocols.iter().any(|p| p.food(&FoodCode(code.to_owned())).is_some());
        let like = |typed: &str| food_like(&self.protocol, self.signed.words().lang().code(), typed).map(str::to_owned);
        let (born, today) = (self.file.record.facts.born, self.signed.visitor.today);
        let eaten = |code: &str| self.recipe(code).map(|(recipe, protocol)| recipe.eaten(&protocol.foods));
        read_visit(&form.0, &VisitFrame { id, born, today, foods: &known, eaten: &eaten, like: &like })
    }

    /// What is unusual about measurements, by the protocol of their day.
    pub fn unusual(&self, read: &VisitRead) -> Vec<Unusual> {
        unusual(&self.file.record.facts, &self.visits, &read.visit, self.signed.visitor.protocols.on(read.visit.on))
    }

    /// Which questions stand open for a visit on a day; the visit with this id does not count as known before.
    pub fn questions(&self, on: NaiveDate, id: VisitId) -> Questions {
        let open = self.file.assessment.open().into_iter().filter(|f| f.opened_by != id).map(|f| f.rule).collect();
        let visits: Vec<Visit> = self.visits.iter().filter(|v| v.id != id).cloned().collect();
        Questions::of(&Before { child: &self.file.record.facts, visits: &visits, open: &open, on })
    }

    /// The page of a form.
    pub fn page(&self, form: &Form) -> Markup {
        let signed = self.signed;
        let w = signed.words();
        let record = &self.file.record;
        let today = signed.visitor.today;
        let (on, id) = form.read.as_ref().map_or((today, NOT_YET), |read| (read.visit.on, read.visit.id));
        let questions = self.questions(on, id);
        let corrected = form.correcting.and_then(|(seq, _)| self.file.visit(seq));
        let newest = form.newest.as_ref();
        let open = self.open_lines(&[Some(&form.filled), newest.map(|newest| &newest.filled)], form.correcting.map(|_| id));
        let told = [form.read.as_ref().map(|read| &read.visit), newest.and(corrected).map(|record| &record.visit)];
        let foods = self.food_lines(&told, corrected.map(|record| &record.visit), &form.faults, questions.months);
        let odd = form.read.as_ref().filter(|_| !form.quiet).map(|read| self.unusual(read));
        let code = ChildCode::parse(&record.code).ok();
        let result = code.zip(form.correcting).map_or_else(String::new, |(code, (seq, _))| outcome_path(&code, seq));
        let talk = self.talk_part(form.correcting.map(|_| id), form.read.as_ref().map(|read| &read.talk));
        let token = signed.visitor.token();
        let body = visit_form::body(&VisitForm {
            w,
            examples: &|group| self.examples(group),
            action: &form.action,
            token: &token,
            key: &form.key,
            name: self.file.called(),
            sex: record.facts.sex,
            code: &record.code,
            born: record.facts.born,
            today,
            questions: &questions,
            open: &open,
            talk: &talk,
            foods: &foods,
            recipes: &self.recipe_lines(&form.filled),
            all_foods: &self.all_foods(),
            filled: &form.filled,
            faults: &form.faults,
            unusual: odd.as_deref().zip(form.read.as_ref().map(|read| &read.visit)),
            danger: form.danger.clone(),
            correcting: form.correcting.map(|(seq, unfinished)| Correcting {
                seq,
                on: corrected.map_or(on, |record| record.visit.on),
                unfinished,
                result: &result,
                version: corrected.map_or(0, |record| record.version),
                newest: newest.map(|newest| visit_form::Newest {
                    filled: &newest.filled,
                    by: &newest.by,
                    reason: &newest.reason,
                    danger: &newest.danger,
                    saved: newest.saved,
                }),
            }),
            rest: form.read.as_ref().is_some_and(|read| read.only_recipes) && !form.quiet,
            gone: form.gone,
        });
        let title = visit_form::title(w, self.file.called(), form.correcting.is_some());
        let saved = form.faults.is_empty() && form.newest.is_none() && !form.gone;
        let title = if saved { title } else { not_saved_title(w, &title) };
        let mut shell = signed.shell(&title);
        shell.without_reach = true;
        shell.urgent = form.emergency;
        layout::page(&shell, body)
    }

    /// What is open, most urgent first; on a correction also what the forms tell of that is no longer open.
    fn open_lines(&self, forms: &[Option<&Filled>], correcting: Option<VisitId>) -> Vec<OpenLine> {
        let w = self.signed.words();
        let line = |f: &FollowUp| OpenLine {
            rule: f.rule,
            class: f.class,
            opened_on: f.opened_on,
            why: explain(f.rule, &f.evidence, w, &|code| self.food_name(code)),
            from_before: correcting != Some(f.opened_by),
        };
        let mut lines: Vec<OpenLine> = self.file.assessment.open().into_iter().map(line).collect();
        if correcting.is_some() {
            for f in self.file.assessment.follow_ups.iter().rev() {
                let tells =
                    |form: &&Filled| !form.one(&format!("outcome_{}", f.rule.code())).is_empty() || form.has("referrals", f.rule.code());
                if forms.iter().flatten().any(tells) && !lines.iter().any(|known| known.rule == f.rule) {
                    lines.push(line(f));
                }
            }
        }
        lines
    }

    fn all_foods(&self) -> Vec<(String, String)> {
        let lang = self.signed.words().lang().code();
        let mut foods: Vec<(String, String)> =
            self.protocol.foods.iter().filter(|f| f.active).map(|f| (f.code.as_str().to_owned(), f.name(lang).to_owned())).collect();
        // What is none of the others comes last.
        foods.sort_by(|a, b| (a.0 == FoodCode::NOT_LISTED, &a.1).cmp(&(b.0 == FoodCode::NOT_LISTED, &b.1)));
        foods
    }

    /// Foods of the programme that stand for a group, in words.
    fn examples(&self, group: FoodGroup) -> Option<String> {
        let w = self.signed.words();
        let names = self.protocol.foods.examples(group).into_iter().take(EXAMPLES);
        // A name's form, after a comma, would read as one more food; the group's own word says nothing more.
        let plain = |food: &&Food| lower_first(food.name(w.lang().code()).split(',').next().unwrap_or_default());
        let own = codes::food_group(w, group).to_lowercase();
        let names = names.map(|food| plain(&food)).filter(|name| *name != own);
        names.reduce(|most, next| w.say_with("common-list-comma", args!["most" => most, "next" => next]))
    }

    /// What an emergency page says of this child.
    pub fn emergency(&self, kinds: Vec<emergency::Kind>, seen: Vec<String>) -> Emergency<'_> {
        let facts = &self.file.record.facts;
        let today = self.signed.visitor.today;
        Emergency {
            name: self.file.called(),
            sex: facts.sex,
            age: format::age(self.signed.words(), facts.born, today),
            under_one: domain::calendar::completed_months(facts.born, today).is_none_or(|months| months < 12),
            kinds,
            seen,
            number: self.signed.visitor.settings.emergency_number.as_deref(),
        }
    }

    /// The page that is opened before anything is written.
    pub fn emergency_page(&self) -> Markup {
        let w = self.signed.words();
        let title = w.say_with("emergency-title", crate::args!["name" => self.file.called()]);
        let mut shell = self.signed.shell(&title);
        shell.urgent = true;
        layout::page(&shell, emergency::body(w, &self.emergency(emergency::ALL.to_vec(), Vec::new()), self.code()))
    }
}
