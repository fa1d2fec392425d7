//! The answer for one colony beside the same written by hand, and beside two engines that read the rule when the program runs.

use std::hint::black_box;

use anyhow::{bail, ensure};
use combclear_bench::plain::{self, PlainAnswer, PlainCourse};
use combclear_bench::scene::{Ending, leaflets, with_courses};
use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::facts::history::History;
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use serde_json::{Value, json};

use crate::expression::Expression;
use crate::policy::Policy;
use crate::table::Table;
use crate::timing::median;

const COURSES: [u16; 3] = [1, 5, 20];
/// The day out of a course that is still in, as a number.
const NEVER: i64 = 9_999_999;

pub(crate) fn measure(table: &mut Table) -> anyhow::Result<()> {
    for courses in COURSES {
        // Every course is over, so that every one is looked at. The other scene is for the answers alone.
        let _ = beside(courses, Ending::LastIsIn)?;
        let Beside { scene, history, by_hand, facts } = beside(courses, Ending::AllOver)?;
        let on = scene.on;
        let grounds = median(|| black_box(&history).supering(black_box(on)));
        let plain = median(|| plain::answer(black_box(&by_hand), black_box(on)));
        let mut policy = Policy::new(&facts)?;
        policy.answer()?;
        let interpreted = median(|| policy.answer_by_interpreter());
        let policy = median(|| policy.answer());
        let mut expression = Expression::new(&facts)?;
        let expression = median(|| expression.answer());
        let what = |what: &str| format!("{what}, {courses} courses");
        table.time(
            &what("verdict with all grounds"),
            grounds,
            "by hand: verdict and last blocked day",
            plain,
        );
        table.time(&what("verdict with all grounds"), grounds, "`zen-expression`, compiled", expression);
        table.time(&what("verdict with all grounds"), grounds, "`regorus`, its virtual machine", policy);
        table.time(&what("verdict with all grounds"), grounds, "`regorus`, its interpreter", interpreted);
        let named = median(|| black_box(&history).supering(black_box(on)).named_days());
        table.time(&what("grounds and named days"), named, "by hand: verdict and last blocked day", plain);
        let verdict = median(|| black_box(&history).may_be_supered(black_box(on)));
        let plain = median(|| plain::may_be_supered(black_box(&by_hand), black_box(on)));
        table.time(&what("verdict alone"), verdict, "by hand: verdict alone", plain);
        let derived = median(|| History::of(black_box(&scene.holding), leaflets(), &scene.colony));
        table.alone(&what("`History::of`, from the files"), derived);
        let words = Words::english();
        let asked =
            median(|| SuperingReport::ask(words, black_box(&scene.holding), leaflets(), &scene.colony, on));
        table.alone(&what("`SuperingReport::ask`, in words"), asked);
    }
    Ok(())
}

/// What an engine says: the verdict, and the number of the last blocked day.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Said {
    pub(crate) verdict: Verdict,
    pub(crate) last: Option<i64>,
}

struct Beside {
    scene: combclear_bench::scene::Scene,
    history: History,
    by_hand: Vec<PlainCourse>,
    facts: Value,
}

/// A scene with its facts for each, all of whom give the same answer.
fn beside(courses: u16, ending: Ending) -> anyhow::Result<Beside> {
    let scene = with_courses(courses, ending);
    let history = History::of(&scene.holding, leaflets(), &scene.colony);
    let by_hand = plain::of(&history);
    let facts = facts(&by_hand, scene.on);
    let ours = history.supering(scene.on);
    let ours = PlainAnswer { verdict: ours.verdict, last_blocked: ours.named_days().last_blocked };
    let plain = plain::answer(&by_hand, scene.on);
    ensure!(plain == ours, "by hand {plain:?}, ours {ours:?}");
    let ours = Said { verdict: ours.verdict, last: ours.last_blocked.map(number) };
    let mut policy = Policy::new(&facts)?;
    let theirs = [
        ("machine", policy.answer()?),
        ("interpreter", policy.answer_by_interpreter()?),
        ("expression", Expression::new(&facts)?.answer()?),
    ];
    for (who, theirs) in theirs {
        ensure!(theirs == ours, "the {who} says {theirs:?}, not {ours:?}");
    }
    Ok(Beside { scene, history, by_hand, facts })
}

/// The same facts as numbers of days.
fn facts(courses: &[PlainCourse], on: Day) -> Value {
    let courses: Vec<Value> = courses
        .iter()
        .map(|course| {
            json!({
                "placed": number(course.placed),
                "out": course.out.map_or(NEVER, number),
                "withdrawal": course.withdrawal,
                "wait": course.wait,
                "supers_off": course.supers_off,
                "documented": course.documented,
            })
        })
        .collect();
    json!({ "on": number(on), "never": NEVER, "courses": courses })
}

fn number(day: Day) -> i64 {
    day.days_since(Day::FIRST)
}

/// The verdict with this name.
pub(crate) fn verdict_of(word: &str) -> anyhow::Result<Verdict> {
    match word {
        "yes" => Ok(Verdict::Yes),
        "no" => Ok(Verdict::No),
        "unknown" => Ok(Verdict::Unknown),
        _ => bail!("{word} is no verdict"),
    }
}
