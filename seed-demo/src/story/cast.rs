//! The villages and the people who work there. It knows no child.

use chrono::NaiveDate;
use domain::calendar::add_days;
use domain::role::Role;

use crate::story::PROGRAMME_DAYS;
use crate::story::dice::Dice;
use crate::story::names;

/// A village.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Village {
    /// Short code, as in exports.
    pub code: &'static str,
    /// Name.
    pub name: &'static str,
    /// Minutes of walking to a home and back; of the ridge nobody has said yet.
    pub walk_minutes: Option<u16>,
}

/// The four villages.
pub const VILLAGES: [Village; 4] = [
    Village { code: "ulopi", name: "Ulopi", walk_minutes: Some(20) },
    Village { code: "sanga-point", name: "Sanga Point", walk_minutes: Some(35) },
    Village { code: "mbiro-hill", name: "Mbiro Hill", walk_minutes: Some(50) },
    Village { code: "tenzu-ridge", name: "Tenzu Ridge", walk_minutes: None },
];

/// Somebody who signs in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// Name at sign-in.
    pub sign_in_name: String,
    /// Full name.
    pub full_name: String,
    /// Role.
    pub role: Role,
    /// Villages: of a worker the first is home, of a supervisor all are assigned.
    pub villages: Vec<usize>,
    /// Share of the children, as a weight; 0 for all but workers.
    pub load: i32,
}

/// A worker away, and who stands in; the numbers count workers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cover {
    /// Who is away.
    pub worker: usize,
    /// Who stands in.
    pub covered_by: usize,
    /// First day.
    pub from_on: NaiveDate,
    /// Last day.
    pub to_on: NaiveDate,
}

/// Everybody.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cast {
    /// Workers; children name them by their place in this list.
    pub workers: Vec<Person>,
    /// One for two villages each.
    pub supervisors: Vec<Person>,
    /// The manager.
    pub manager: Person,
    /// The administrator.
    pub administrator: Person,
    /// Who stands in for whom.
    pub covers: Vec<Cover>,
}

/// The twelve workers everybody meets, three for each village; two carry far more than the others.
const WORKERS: [(&str, &str, usize, i32); 12] = [
    ("teveli", "Teveli Orimra", 0, 17),
    ("mireni", "Mireni Kezumo", 0, 8),
    ("olani", "Olani Sundolen", 0, 7),
    ("tamsi", "Tamsi Verisha", 1, 9),
    ("bemuko", "Bemuko Hamu", 1, 7),
    ("hembova", "Hembova Zolivik", 1, 6),
    ("kivandi", "Kivandi Petubri", 2, 16),
    ("anzimu", "Anzimu Yandi", 2, 6),
    ("wubiro", "Wubiro Gemitun", 2, 6),
    ("zekoli", "Zekoli Ilvogu", 3, 7),
    ("govika", "Govika Nodures", 3, 6),
    ("juvoni", "Juvoni Ashtira", 3, 5),
];

/// One worker for so many children, where there are more than twelve can see.
const CHILDREN_A_WORKER: u32 = 60;

impl Cast {
    /// The people of a programme with so many children on this day.
    #[must_use]
    pub fn of(children: u32, today: NaiveDate) -> Self {
        let person = |sign_in: &str, name: &str, role, villages: &[usize], load| Person {
            sign_in_name: sign_in.to_owned(),
            full_name: name.to_owned(),
            role,
            villages: villages.to_vec(),
            load,
        };
        let mut workers: Vec<Person> =
            WORKERS.iter().map(|&(sign_in, name, village, load)| person(sign_in, name, Role::Worker, &[village], load)).collect();
        let wanted = usize::try_from(children / CHILDREN_A_WORKER).unwrap_or(0);
        let mut dice = Dice::of(u32::MAX);
        for number in workers.len()..wanted {
            let name = format!("{} {}", names::given(&mut dice), names::house(&mut dice));
            workers.push(person(&format!("worker{}", number + 1), &name, Role::Worker, &[number % VILLAGES.len()], 8));
        }
        Self {
            workers,
            supervisors: vec![
                person("lomira", "Lomira Embrizan", Role::Supervisor, &[0, 1], 0),
                person("yorute", "Yorute Dravomo", Role::Supervisor, &[2, 3], 0),
            ],
            manager: person("selova", "Selova Tindusha", Role::Manager, &[], 0),
            administrator: person("fanuri", "Fanuri Wemzi", Role::Administrator, &[], 0),
            covers: vec![
                Cover { worker: 1, covered_by: 0, from_on: add_days(today, -4), to_on: add_days(today, 9) },
                Cover { worker: 8, covered_by: 7, from_on: add_days(today, -1), to_on: add_days(today, 3) },
                Cover { worker: 4, covered_by: 5, from_on: add_days(today, -75), to_on: add_days(today, -61) },
            ],
        }
    }

    /// The worker whom chance gives a child, by load.
    pub fn worker(&self, dice: &mut Dice) -> usize {
        let whole: i32 = self.workers.iter().map(|worker| worker.load).sum();
        let mut at = dice.between(1, whole);
        for (number, worker) in self.workers.iter().enumerate() {
            at -= worker.load;
            if at <= 0 {
                return number;
            }
        }
        0
    }

    /// The village a worker's families live in.
    #[must_use]
    pub fn village_of(&self, worker: usize) -> usize {
        self.workers.get(worker).and_then(|worker| worker.villages.first()).copied().unwrap_or(0)
    }

    /// The day everybody began: the programme is fourteen months old.
    #[must_use]
    pub fn started_on(today: NaiveDate) -> NaiveDate {
        add_days(today, -PROGRAMME_DAYS)
    }
}
