//! `--leaflets FOLDER`: a keeper's own leaflets, under the same checks, never replacing a built-in one by accident.

use crate::bench::{Bench, DEMO_DAY};

/// A leaflet with the id of a built-in one, which permits supers while it is in.
fn leaflet(head: &str) -> String {
    format!(
        r#"format = 1
id = "amitraz-strip-500mg-a"
jurisdiction = "gb"
{head}
title = "amitraz 500 mg bee-hive strip, as read by a keeper (invented)"
actives = ["amitraz"]
form = "strip"
strength = "500 mg"
unit = "strip"
release = "slow"

[[source]]
id = "pack"
country = "gb"
kind = "authority"
title = "Leaflet in the pack (invented)"

[[rule]]
kind = "supers_during"
value = "on"
from = 2020-01-01
force = "label"
source = ["pack"]
confidence = "document"
checked_on = 2026-01-01

[[rule]]
kind = "removal"
value = "needed"
from = 2020-01-01
force = "label"
source = ["pack"]
confidence = "document"
checked_on = 2026-01-01

[[rule]]
kind = "withdrawal"
days = 0
from = 2020-01-01
force = "label"
source = ["pack"]
confidence = "document"
checked_on = 2026-01-01

[[rule]]
kind = "wait_after_removal"
days = 0
from = 2020-01-01
force = "label"
source = ["pack"]
confidence = "document"
checked_on = 2026-01-01
"#
    )
}

fn bench_with(head: &str) -> Bench {
    let bench = Bench::with_demo();
    std::fs::create_dir_all(bench.path("own/gb")).unwrap();
    bench.write("own/gb/amitraz-strip-500mg-a.toml", leaflet(head));
    bench
}

#[test]
fn a_leaflet_with_the_id_of_a_built_in_one_is_refused_unless_it_says_so() {
    let ran = bench_with("").run(&["leaflets", "--leaflets", "own"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""));
    assert_eq!(
        ran.err,
        "error: 1 fault in the leaflets of `own`\n\
         gb/amitraz-strip-500mg-a.toml: there is a built-in leaflet `gb/amitraz-strip-500mg-a`, which this one would replace\n  \
         help: give it another id, or say so: instead_of = \"gb/amitraz-strip-500mg-a\"\n  \
         help: fix these files; nothing in the folder is used until then\n"
    );
    let other =
        bench_with("instead_of = \"gb/amitraz-strip-500mg-b\"").run(&["leaflets", "--leaflets", "own"]);
    assert!(
        other.code == Some(1) && other.err.contains("`instead_of` names `gb/amitraz-strip-500mg-b`"),
        "{}",
        other.err
    );
}

#[test]
fn a_leaflet_that_says_which_built_in_one_it_stands_in_for_is_used_and_named_as_ones_own() {
    let bench = bench_with("instead_of = \"gb/amitraz-strip-500mg-a\"");
    let ask = ["supering", "T1", "--on", DEMO_DAY, "--json"];
    let built_in = bench.run(&ask).json();
    assert_eq!(built_in[0]["answer"], "no");
    let own = bench.run(&[&ask[..], &["--leaflets", "own"]].concat()).json();
    assert_eq!(own[0]["answer"], "yes");
    let grounds = own[0]["grounds"].as_array().unwrap();
    let last = grounds.iter().rfind(|ground| ground["decides"] == true).unwrap();
    assert_eq!(last["values"][0]["said_by"], "own_leaflet");
    assert_eq!(last["values"][0]["sources"][0], "pack: Leaflet in the pack (invented) [gb, authority]");
}

#[test]
fn every_fault_of_every_own_file_is_reported_and_none_of_the_folder_is_used() {
    let bench = bench_with("instead_of = \"gb/amitraz-strip-500mg-a\"");
    bench.write("own/gb/one.toml", "format = 1\nid = \"one\"\n");
    bench.write("own/gb/two.toml", "format = 2\n");
    let ran = bench.run(&["supering", "--leaflets", "own"]);
    assert_eq!(ran.code, Some(1));
    for part in ["own", "gb/one.toml", "`title`", "gb/two.toml", "nothing in the folder is used"] {
        assert!(ran.err.contains(part), "{part}: {}", ran.err);
    }
}

#[test]
fn a_folder_that_is_not_there_is_named() {
    let ran = Bench::with_demo().run(&["supering", "--leaflets", "nowhere"]);
    assert!(ran.code == Some(1) && ran.err.contains("cannot read the leaflets in `nowhere`"), "{}", ran.err);
}
