//! What is told before an entry is recorded that the record speaks against, and what an answer says of a dose that is still to come.

use crate::bench::Bench;

/// One colony with strips placed on 1 May, and a lot that is over on 31 August.
fn with_strips_in() -> Bench {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country gb --on 2026-01-02 -y",
        "record apiary East --on 2026-01-02 -y",
        "record colony S1-S2 --apiary East --medicines none --on 2026-01-02 -y",
        "record medicine strips --pack-name Strips --unit strip --on 2026-01-02 --supers-during off \
         --withdrawal-days 0 --wait-after-removal-days 0 --removal needed --stay-min-days 42 --doses 1 -y",
        "record lot L1 --medicine strips --quantity 40 --expiry 2026-08-31 --on 2026-01-02 -y",
        "record given S1 --each 2 --on 2026-05-01 -y",
    ]);
    bench
}

/// Common practice, no source: supers stay off while strips are in, and what was in a super with them is not sold as honey.
#[test]
fn supers_honey_and_doses_that_the_record_speaks_against_are_told_before_they_are_recorded() {
    let bench = with_strips_in();
    let supers = |colonies: &str, on: &str| {
        bench.type_in(&format!("record supers-on {colonies} --supers 1 --purpose harvest --on {on} -y"))
    };
    supers("S1", "2026-05-25").done().says(&["by the record no supers may go on S1 that day"]);
    let told = supers("S2", "2026-05-25").done();
    assert!(!told.out.contains("by the record"), "{}", told.out);
    let harvest = bench.type_in("record harvest --harvest-lot H1 S1 S2 --on 2026-05-28 -y");
    harvest.done().says(&["by the record no honey may be taken from S1 that day"]);
    let given = bench.type_in("record given S2 --each 2 --on 2026-06-01 -y");
    given.done().says(&["harvest supers are on S2 that day", "take them off first"]);
    let expired = bench.type_in("record given S1 --each 2 --on 2026-09-01 -y");
    expired.done().says(&["lot L1 expired on 2026-08-31"]);
    let last_day = bench.type_in("record given S1 --each 2 --on 2026-08-31 -y");
    assert!(!last_day.done().out.contains("expired"));
}

#[test]
fn a_leaflet_that_there_is_not_is_told_with_the_one_that_is_written_much_like_it() {
    let bench = with_strips_in();
    let record = |leaflet: &str| {
        let describe =
            format!("record medicine m-{leaflet} --pack-name M --unit strip --leaflet {leaflet} -y");
        bench.type_in(&describe).done()
    };
    record("amitraz-strip-500")
        .says(&["no leaflet `amitraz-strip-500` here: did you mean `amitraz-strip-500mg-a`?"]);
    assert!(!record("amitraz-strip-500mg-a").out.contains("no leaflet"));
}

/// A spray of two doses three days apart: between them nothing bars supers, and they must be off for the second.
#[test]
fn a_yes_between_two_doses_says_that_supers_must_be_off_for_the_next() {
    let bench = Bench::new();
    bench.type_in_all([
        "begin north --keeper K --country de --on 2026-03-01 -y",
        "record apiary East --on 2026-03-01 -y",
        "record colony S1 --apiary East --medicines none --on 2026-03-01 -y",
        "record medicine a --pack-name Spray --unit ml --leaflet lactic-acid-spray-15 --on 2026-03-01 -y",
        "record lot LA --medicine a --quantity 2000 --expiry 2028-05 --on 2026-03-01 -y",
        "record leaflet LA --supers-during off --withdrawal-days 0 --flow-before-days 0 \
         --wait-after-removal-days 0 --removal nothing_stays --doses 2 --on 2026-03-01 -y",
        "record given S1 --lot LA --each 5 --on 2026-04-01 -y",
    ]);
    let between = bench.type_in("supering S1 --on 2026-04-02").done();
    between.says(&["Supers may go on", "off again for the next dose"]);
    bench.type_in("supering --on 2026-04-02").done().says(&["off again for the next dose"]);
    let supers = bench.type_in("record supers-on S1 --supers 1 --purpose harvest --on 2026-04-02 -y");
    supers.done().says(&["a further dose for S1 is still to come"]);
    let due = |more: &str| bench.type_in(&format!("due --from 2026-04-02{more}")).done();
    due("").says(&["East, on 2026-04-04 (Saturday)", "must    Take the honey supers off before dose 2: S1"]);
    due(" --full").says(&["take the honey supers off before dose 2 of Spray", "they may be on now"]);
    // Strips that may stay in under supers, without honey from them: a yes at a glance says both.
    bench.type_in_all([
        "record medicine c --pack-name Card --unit piece --supers-during on_no_harvest --withdrawal-days 0 \
         --wait-after-removal-days 0 --removal needed --doses 1 --on 2026-03-01 -y",
        "record lot LC --medicine c --quantity 20 --on 2026-03-01 -y",
        "record given S1 --lot LC --each 1 --on 2026-04-02 -y",
    ]);
    let both = bench.type_in("supering --on 2026-04-02").done();
    both.says(&["no honey may be taken yet", "off again for the next dose"]);
    bench.type_in("record given S1 --lot LA --each 5 --continues yes --on 2026-04-04 -y").done();
    let after = bench.type_in("supering S1 --on 2026-04-05").done();
    assert!(!after.out.contains("next dose"), "{}", after.out);
}

/// What was read in the pack counts before what was declared of the medicine.
#[test]
fn a_dose_under_supers_is_told_where_the_pack_forbids_what_was_declared() {
    let bench = with_strips_in();
    bench.type_in_all([
        "record medicine c --pack-name Card --unit piece --supers-during on --on 2026-01-02 -y",
        "record lot LC --medicine c --quantity 20 --on 2026-01-02 -y",
        "record supers-on S2 --supers 1 --purpose harvest --on 2026-05-02 -y",
    ]);
    let given = |on: &str| bench.type_in(&format!("record given S2 --lot LC --each 1 --on {on} -y")).done();
    assert!(!given("2026-05-03").out.contains("harvest supers are on"));
    bench.type_in("record leaflet LC --supers-during off --on 2026-05-04 -y").done();
    given("2026-05-05").says(&["harvest supers are on S2 that day"]);
}

/// Two medicines in, of which one lets supers stay on: what leads to the day is taking out the other.
#[test]
fn the_next_step_is_about_what_bars_supers() {
    let bench = with_strips_in();
    bench.type_in_all([
        "record medicine b --pack-name Pad --unit piece --on 2026-01-02 --supers-during on \
         --withdrawal-days 0 --wait-after-removal-days 14 --removal needed --stay-min-days 42 --doses 1 -y",
        "record lot LB --medicine b --quantity 20 --on 2026-01-02 -y",
        "record given S1 --lot LB --each 1 --on 2026-04-20 -y",
    ]);
    let board = bench.type_in("supering --on 2026-06-14");
    board.says(&["next: take it out", "once out, supers from 2026-06-14"]);
    assert!(!board_says_pad_first(&bench), "taking the pad out does not lead to that day");
}

fn board_says_pad_first(bench: &Bench) -> bool {
    let out = bench.type_in("supering S1 --on 2026-06-14").out.clone();
    let (pad, strips) = (out.find("take out Pad"), out.find("take out Strips"));
    pad.zip(strips).is_some_and(|(pad, strips)| pad < strips)
}
