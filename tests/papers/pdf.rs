//! The PDF.

use combclear_papers::{Paper, pdf::pdf};

use super::making::{demo, hard, made};

#[test]
fn the_same_register_gives_the_same_bytes() {
    let paper = Paper::of(&demo(), None);
    let (one, other) = (pdf(&paper, made()).unwrap(), pdf(&paper, made()).unwrap());
    assert!(one.bytes == other.bytes);
    assert_eq!(one.missing, Vec::<String>::new());
    std::fs::write("/tmp/p/demo.pdf", one.bytes).unwrap();
    std::fs::write("/tmp/p/demo.html", combclear_papers::html::page(&paper)).unwrap();
    std::fs::write("/tmp/p/demo.csv", combclear_papers::flat::csv(&demo()).unwrap()).unwrap();
    std::fs::write("/tmp/p/hard.pdf", pdf(&Paper::of(&hard(), None), made()).unwrap().bytes).unwrap();
}
