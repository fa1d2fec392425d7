//! The picture of a season: it shows what the answers say, and each day once.

use combclear_domain::Day;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::history::History;
use combclear_domain::questions::timeline::{DAYS_AROUND, Timeline};
use combclear_pictures as picture;
use combclear_testkit::files::demo_holding;
use combclear_wording::Words;

const DAYS: [&str; 4] = ["2025-09-01", "2026-03-01", "2026-07-20", "2026-08-29"];

fn each(mut seen: impl FnMut(&Timeline, &History)) -> usize {
    let (holding, leaflets) = (demo_holding(), combclear_leaflets::builtin().unwrap());
    let colonies: Vec<ColonyName> = holding.colonies().cloned().collect();
    for colony in &colonies {
        let history = History::of(&holding, leaflets, colony);
        for on in DAYS {
            seen(&Timeline::of(&holding, leaflets, colony, on.parse().unwrap()), &history);
        }
    }
    colonies.len() * DAYS.len()
}

#[test]
fn each_day_is_shown_once_with_the_answer_that_the_question_gives() {
    let count = each(|season, history| {
        let mut next = season.from;
        for (from, to, _) in &season.answers {
            assert_eq!(*from, next, "{}", season.colony);
            next = to.next();
        }
        assert_eq!(next, season.to.next(), "{}", season.colony);
        // From the day asked about on, these are the days ahead of the answer.
        let ahead = history.supering_ahead(season.on, DAYS_AROUND + 1);
        let shown: Vec<_> = season
            .answers
            .iter()
            .filter(|(_, to, _)| *to >= season.on)
            .map(|(from, to, answer)| ((*from).max(season.on), *to, *answer))
            .collect();
        assert_eq!(shown, ahead, "{}", season.colony);
        // And the first of them is the answer.
        assert_eq!(ahead.first().map(|(_, _, answer)| *answer), Some(history.may_be_supered(season.on)));
    });
    assert!(count > 100, "{count}");
}

#[test]
fn what_is_in_is_drawn_up_to_the_day_and_what_is_out_up_to_its_end() {
    each(|season, _| {
        for course in &season.courses {
            assert!(course.placed <= season.on, "{}", season.colony);
            assert!(!course.inside || course.out.is_none(), "{}", season.colony);
            assert!(
                course.out.is_none_or(|out| out >= course.placed && out <= season.on),
                "{}",
                season.colony
            );
            assert!(
                course.doses.iter().all(|dose| *dose >= course.placed && *dose <= season.on),
                "{}",
                season.colony
            );
            assert!(course.inside || course.may_come_out.is_none() && course.must_be_out.is_none());
        }
        assert!(
            season
                .supers
                .iter()
                .all(|span| span.from <= season.on && span.off.is_none_or(|off| off <= season.on))
        );
    });
}

/// The numbers after an attribute.
fn numbers(drawn: &str, attribute: &str) -> Vec<f64> {
    let attribute = format!(" {attribute}=\"");
    let after = drawn.split(&attribute).skip(1);
    after.filter_map(|rest| rest.split('"').next()?.parse().ok()).collect()
}

#[test]
fn everything_lies_within_the_picture_and_no_line_of_text_is_wider_than_a_phone() {
    each(|season, _| {
        let drawn = picture::of_colony(Words::english(), season);
        let (lefts, widths) = (numbers(&drawn, "x"), numbers(&drawn, "width"));
        assert!(lefts.iter().all(|x| (0.0..=360.0).contains(x)), "{drawn}");
        assert!(widths.iter().all(|width| (0.0..=360.0).contains(width)), "{drawn}");
        for text in drawn.split("<text ").skip(1) {
            let text = text.split('>').nth(1).unwrap().split('<').next().unwrap();
            assert!(text.chars().count() <= 60, "{text}");
        }
    });
}

#[test]
fn a_name_with_markup_in_it_is_only_text() {
    let season = Timeline {
        colony: "<script>\"&".parse().unwrap(),
        on: "2026-08-29".parse().unwrap(),
        from: "2026-05-01".parse().unwrap(),
        to: "2026-12-27".parse().unwrap(),
        answers: Vec::new(),
        courses: Vec::new(),
        supers: Vec::new(),
        flows: Vec::new(),
    };
    let drawn = picture::of_colony(Words::english(), &season);
    assert!(!drawn.contains("<script") && drawn.contains("&lt;script&gt;"), "{drawn}");
}

#[test]
fn the_season_of_a_hive_with_strips_in() {
    let (holding, leaflets) = (demo_holding(), combclear_leaflets::builtin().unwrap());
    let on: Day = "2026-08-29".parse().unwrap();
    let season = Timeline::of(&holding, leaflets, &"O2".parse().unwrap(), on);
    let drawn = picture::of_colony(Words::english(), &season);
    let kept = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/season.svg"));
    assert!(
        drawn == kept,
        "the picture in the README is another. Draw it anew from the journal of the demo:\n\n    combclear supering O2 --on \
         2026-08-29 --picture demo/season.svg\n"
    );
    insta::assert_snapshot!(drawn.replace("><", ">\n<"));
    let seasons: Vec<Timeline> = ["O2", "O4", "O8"]
        .into_iter()
        .map(|colony| Timeline::of(&holding, leaflets, &colony.parse().unwrap(), on))
        .collect();
    let drawn = picture::of_apiary(Words::english(), &"Oxmarl".parse().unwrap(), on, &seasons).unwrap();
    insta::assert_snapshot!(drawn.replace("><", ">\n<"));
    assert_eq!(picture::of_apiary(Words::english(), &"Oxmarl".parse().unwrap(), on, &[]), None);
}
