//! Closing the database.

use crate::making::Bench;

#[tokio::test]
async fn once_closed_a_copy_of_the_file_alone_holds_everything() {
    let (bench, journal, holding, entries) = Bench::with_entries(40).await;
    journal.close().await;
    assert!(journal.page(&holding, 0, 1).await.is_err(), "what is asked after that fails");
    let copy = bench.folder.path().join("copy.db");
    std::fs::copy(&bench.path, &copy).unwrap();
    let copied = combclear_store::open(&format!("sqlite:{}", copy.display())).await.unwrap();
    assert_eq!(copied.page(&holding, 0, 100).await.unwrap(), entries);
}
