//! A rule reads the same in a report as in a keeper's confirmation: the words of the journal are the English ones.

use combclear_domain::Quantity;
use combclear_domain::basics::words::Unit;
use combclear_domain::facts::confirmed::in_words;
use combclear_domain::rules::leaflet::Says;
use combclear_domain::rules::leaflet::rule::{DosePer, TemperatureWindow, YearCounting};
use combclear_wording::Words;
use combclear_wording::leaflet::says;

#[test]
fn every_rule_of_every_built_in_leaflet_says_what_a_keeper_confirms() {
    let mut rules = 0;
    for leaflet in combclear_leaflets::builtin().unwrap().iter() {
        for rule in &leaflet.rules {
            let confirmed = in_words(&rule.says, leaflet.unit);
            assert_eq!(says(Words::english(), &rule.says, leaflet.unit), confirmed, "{:?}", rule.says);
            rules += 1;
        }
    }
    assert!(rules > 500, "only {rules} rules were looked at");
}

#[test]
fn so_do_values_that_no_built_in_leaflet_states() {
    let tenths = |tenths: u64| Quantity::from_thousandths(tenths * 100);
    for amount in [tenths(5), Quantity::whole(1), Quantity::whole(2)] {
        for most in [None, Some(Quantity::whole(1)), Some(Quantity::whole(3))] {
            for unit in [None, Some("g"), Some("ml"), Some("strip"), Some("drop")] {
                for per in DosePer::ALL {
                    for (min_bees, max_bees) in
                        [(None, None), (Some(1), None), (None, Some(9)), (Some(1), Some(9))]
                    {
                        same(&Says::Dose {
                            amount,
                            amount_max: most,
                            per: *per,
                            frames: Some(2),
                            min_bees,
                            max_bees,
                            unit: unit.map(str::to_owned),
                            when: max_bees.map(|_| "in spring".to_owned()),
                        });
                    }
                }
            }
        }
    }
    for days in [0, 1, 2] {
        same(&Says::StayMin { days, brood: None });
        same(&Says::WaitAfterRemoval { days });
        same(&Says::GapBetweenCourses { days });
        for most in [None, Some(1), Some(7)] {
            let (count, count_max) = (u8::try_from(days).unwrap(), most.map(|_| 4));
            let (interval_min_days, interval_max_days) = (Some(days).filter(|days| *days > 0), most);
            same(&Says::Doses { count, count_max, interval_min_days, interval_max_days });
        }
    }
    for count in [1, 2] {
        for counted in [None, Some(YearCounting::CalendarYear), Some(YearCounting::TwelveMonths)] {
            same(&Says::CoursesPerYear { count, counted });
        }
        same(&Says::CoursesPerBroodlessPeriod { count });
        same(&Says::BroodBoxes { max: count });
    }
    for window in TemperatureWindow::ALL {
        for (min_tenths_c, max_tenths_c) in
            [(None, None), (Some(-5), None), (None, Some(-100)), (Some(-1), Some(295))]
        {
            same(&Says::Temperature { window: *window, first_days: Some(1), min_tenths_c, max_tenths_c });
        }
    }
    for (min_brood_frames, min_bees) in
        [(None, None), (Some(6), None), (None, Some(10_000)), (Some(1), Some(1))]
    {
        same(&Says::ColonySize { min_brood_frames, min_bees, text: Some("strong".to_owned()) });
    }
}

fn same(rule: &Says) {
    for unit in Unit::ALL {
        assert_eq!(says(Words::english(), rule, *unit), in_words(rule, *unit), "{rule:?}");
    }
}
