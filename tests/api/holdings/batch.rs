//! `POST /holdings/{holding}/entries`

use serde_json::{Value, json};

use crate::seed::{self, HOLDING, entries, entry, established, id};

const PATH: &str = "/holdings/heathside/entries";

fn outcomes(report: &Value) -> Vec<&str> {
    report["items"].as_array().unwrap().iter().map(|item| item["outcome"].as_str().unwrap()).collect()
}

#[tokio::test]
async fn a_batch_is_recorded_in_the_order_in_which_it_was_sent() {
    let bench = seed::begun().await;
    let report = bench.post(PATH, &json!(entries()[1..])).await.good();
    assert_eq!(outcomes(&report), ["new"; 15]);
    for (index, item) in (1..).zip(report["items"].as_array().unwrap()) {
        assert_eq!(item["entry"]["seq"], index + 1);
        assert_eq!(item["entry"]["id"], entries()[index]["id"]);
        assert_eq!(item["entry"]["recorded_at"], "2026-04-11T08:15:30.123Z");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

#[tokio::test]
async fn what_was_recorded_already_is_known_and_not_recorded_again() {
    let bench = seed::begun().await;
    bench.post(PATH, &json!(entries()[1..3])).await.good();
    bench.clock.move_on(7);
    let report = bench.post(PATH, &json!(entries()[1..5])).await.good();
    assert_eq!(outcomes(&report), ["known", "known", "new", "new"]);
    assert_eq!(report["items"][0]["entry"]["recorded_at"], "2026-04-11T08:15:30.123Z");
    assert_eq!(report["items"][2]["entry"]["recorded_at"], "2026-04-11T08:22:30.123Z");
    assert_eq!(bench.entries_of(HOLDING).await, 5);
    let report = bench.post(PATH, &json!(entries()[..5])).await.good();
    assert_eq!(outcomes(&report), ["known"; 5]);
    assert_eq!(bench.entries_of(HOLDING).await, 5);
}

#[tokio::test]
async fn a_batch_with_one_entry_that_cannot_be_true_is_refused_as_a_whole() {
    let bench = seed::begun().await;
    bench.post(PATH, &json!(entries()[1..3])).await.good();
    let batch = json!([
        established(4, "M1", "orchard"),
        established(5, "M2", "orchad"),
        established(6, "M3", "orchard")
    ]);
    let answer = bench.post(PATH, &batch).await;
    let problem = answer.problem(422, "refused-entry", PATH);
    let detail =
        "entry 2 of the 3 in the batch cannot be true: there is no apiary `orchad`; nothing was recorded";
    assert_eq!(problem["detail"], detail);
    let errors = json!([{
        "pointer": "/1/body/apiary", "detail": "there is no apiary `orchad`", "help": "did you mean `orchard`?",
    }]);
    assert_eq!(problem["errors"], errors);
    assert_eq!(bench.entries_of(HOLDING).await, 3);
    // The holding in memory keeps nothing of it either.
    bench.get("/holdings/heathside/colonies/M1").await.problem(
        404,
        "unknown-colony",
        "/holdings/heathside/colonies/M1",
    );
    assert_eq!(bench.post(PATH, &json!([established(4, "M1", "orchard")])).await.status, 200);
}

#[tokio::test]
async fn every_entry_of_a_batch_that_cannot_be_read_is_named() {
    let bench = seed::begun().await;
    let batch = json!([
        entries()[0],
        entry(2, "2025-02-29", "apiary_details", json!({ "apiary": "orchard" })),
        entry(3, "2026-01-02", "apiary_details", json!({ "apiary": "a/b" })),
        7,
        { "on": "2026-01-02", "recorded_by": "A. Keeper", "kind": "strike_out", "body": {} },
    ]);
    let problem = bench.post(PATH, &batch).await.problem(422, "unreadable-entry", PATH);
    assert_eq!(
        problem["detail"],
        "`2025-02-29` is not a day of the calendar, and 3 more; nothing was recorded"
    );
    let errors = problem["errors"].as_array().unwrap();
    let places: Vec<_> = errors.iter().map(|fault| (&fault["pointer"], &fault["detail"])).collect();
    let want = [
        (json!("/1/on"), json!("`2025-02-29` is not a day of the calendar")),
        (json!("/2/body/apiary"), json!("`a/b` cannot be the name of an apiary: it contains a `/`")),
        (json!("/3"), json!("this is not an entry")),
        (json!("/4/id"), json!("the entry has no id")),
    ];
    assert_eq!(places, want.iter().map(|(pointer, detail)| (pointer, detail)).collect::<Vec<_>>());
    assert_eq!(bench.entries_of(HOLDING).await, 1);
}

#[tokio::test]
async fn other_content_under_a_used_id_refuses_the_batch() {
    let bench = seed::begun().await;
    bench.post(PATH, &json!(entries()[1..3])).await.good();
    let other = entry(2, "2026-01-03", "apiary_details", json!({ "apiary": "orchard" }));
    let (pointer, ..) = bench.post(PATH, &json!([established(4, "M1", "orchard"), other])).await.fault(
        409,
        "same-id-other-content",
        PATH,
    );
    assert_eq!(pointer, "/1/id");
    // The same id twice in one batch with different content is refused too.
    let twice = json!([established(4, "M1", "orchard"), established(4, "M2", "orchard")]);
    let (pointer, detail, _) = bench.post(PATH, &twice).await.fault(409, "same-id-other-content", PATH);
    assert_eq!(pointer, "/1/id");
    assert!(detail.contains(&id(4)), "{detail}");
    assert_eq!(bench.entries_of(HOLDING).await, 3);
}

#[tokio::test]
async fn a_batch_has_1_to_1000_entries() {
    let bench = seed::begun().await;
    let inspections = |count: u32| {
        let seen = |number: u32| entry(100 + number, "2026-04-01", "inspection", json!({ "colony": "M1" }));
        Value::Array((0..count).map(seen).collect())
    };
    bench.post(PATH, &json!(entries()[1..4])).await.good();
    for (batch, detail) in [
        (json!([]), "the batch has 0 entries; nothing was recorded"),
        (inspections(1001), "the batch has 1001 entries; nothing was recorded"),
        (json!({ "entries": [] }), "the body is not a batch of entries; nothing was recorded"),
        (json!("x"), "the body is not a batch of entries; nothing was recorded"),
    ] {
        let (pointer, said, help) = bench.post(PATH, &batch).await.fault(422, "unreadable-entry", PATH);
        assert_eq!((pointer.as_str(), said.as_str()), ("", detail));
        assert_eq!(help, "send a JSON array of 1 to 1000 entries");
    }
    let report = bench.post(PATH, &inspections(1000)).await.good();
    assert_eq!(outcomes(&report), ["new"; 1000]);
    assert_eq!(bench.entries_of(HOLDING).await, 1004);
}

#[tokio::test]
async fn a_batch_for_a_holding_that_was_never_begun_names_the_nearest_and_begins_none() {
    let bench = seed::bench().await;
    let path = "/holdings/heathsite/entries";
    let fault = bench.post(path, &json!(entries()[..3])).await.fault(404, "unknown-holding", path);
    let detail = "no entry is recorded under the holding `heathsite`".to_owned();
    assert_eq!(fault, ("holding".to_owned(), detail, "did you mean `heathside`?".to_owned()));
    assert_eq!(bench.entries_of("heathsite").await, 0);
}

#[tokio::test]
async fn many_appends_at_once_are_all_recorded_without_a_gap() {
    let bench = std::sync::Arc::new(seed::bench().await);
    let tasks: Vec<_> = (0..30)
        .map(|number| {
            let bench = std::sync::Arc::clone(&bench);
            tokio::spawn(async move {
                let seen = entry(100 + number, "2026-04-01", "inspection", json!({ "colony": "M1" }));
                bench.put(&seed::path(100 + number), &seen).await.status
            })
        })
        .collect();
    for task in tasks {
        assert_eq!(task.await.unwrap(), 201);
    }
    let verified = bench.get("/holdings/heathside/verification").await.good();
    assert_eq!((&verified["answer"], &verified["entries"]), (&json!("sound"), &json!(46)));
}
