//! The index of a pack: what is in it, which document belongs to which record, and how to check it.

use combclear_domain::Instant;
use combclear_domain::journal::Checkpoint;
use combclear_domain::questions::register::DocumentPart;
use combclear_wording::pack::{self as say, Part};
use combclear_wording::visible::visible;
use combclear_wording::{Label, Words};
use maud::{Markup, html};

use super::names::name_of_season;
use super::{Input, Proofs, Put, checkpoint};
use crate::exchange::notes;
use crate::html;
use crate::sheet::{Paper, written};

/// The page that says what is in a pack.
pub(super) fn page(words: &Words, input: &Input<'_>, paper: &Paper, put: &Proofs, made: Instant) -> String {
    let checkpoint = checkpoint(input.register);
    let proofs = &proofs(words, input, put);
    let label = |label| words.label(label);
    let file = |name: &str, says| html! { a href=(name) { (name) } ": " (label(says)) };
    let body = html! {
        h1 { (label(Label::PackTitle)) }
        dl {
            div { dt { (label(Label::Holding)) } dd { (visible(&paper.holding)) } }
            @for fact in &paper.facts { div { dt { (fact.head) } dd { (visible(&fact.says)) } } }
            div { dt { (label(Label::PackPutTogether)) } dd { (made) } }
        }
        p { strong { (paper.notice) } }
        h2 { (label(Label::PackContents)) }
        ul {
            li { (file("register.html", Label::PackHtml)) }
            @if input.typesetter.is_some() {
                li { (file("register.pdf", Label::PackPdf)) }
            } @else {
                li { (label(Label::PackNoPdf)) }
            }
            li { (file("register.csv", Label::PackCsv)) }
            li { (file("register.json", Label::PackJson)) }
            li {
                a href="exchange-treatments.json" { "exchange-treatments.json" } ", "
                (file("exchange-transactions.json", Label::PackExchange))
                ul { @for note in notes() { li { (note) } } }
            }
            @if input.gaps.is_some() {
                li { a href="gaps.html" { "gaps.html" } ", " (file("gaps.json", Label::PackGaps)) }
            } @else {
                li { (label(Label::PackGapsNotAsked)) }
            }
            @for (place, season) in input.seasons.iter().enumerate() {
                @let name = name_of_season(place, season);
                li { a href=(name) { (name) } ": " (visible(&say::season(words, &season.apiary))) }
            }
            @if checkpoint.is_some() { li { (file("checkpoint.txt", Label::PackCheckpoint)) } }
            li { (file("SHA256SUMS", Label::PackSums)) }
        }
        h2 id="proofs" { (label(Label::PackProofs)) }
        @if proofs.is_empty() { p { (label(Label::PackNoProofs)) } } @else { (table(words, proofs)) }
        h2 { (label(Label::PackHowToCheck)) }
        ol {
            li { (parts(&say::check_files(words, "sha256sum -c SHA256SUMS"))) }
            li { (label(Label::PackCheckProofs)) }
            @if let Some(Checkpoint { entries, head, .. }) = &checkpoint {
                li { (parts(&say::check_journal(words, "combclear verify --since-checkpoint checkpoint.txt", *entries, *head))) }
            }
        }
    };
    let title = format!("{}: {}, {}", label(Label::PackTitle), visible(&paper.holding), paper.period);
    html::document(words, &title, &body, paper.size)
}

/// A document and the record it belongs to.
struct Proof<'a> {
    /// What it proves, in words.
    of: String,
    document: &'a DocumentPart,
    /// Where it is in the pack, or why it is not there.
    put: Result<&'a Put, Label>,
}

/// Every document of the register, in order. A content named several times has one file.
fn proofs<'a>(words: &Words, input: &Input<'a>, put: &'a Proofs) -> Vec<Proof<'a>> {
    let register = input.register;
    let acquired = register
        .acquisitions
        .iter()
        .map(|row| (say::acquisition(words, row.written.seq, &row.lot), &row.documents));
    let of_vets =
        register.vet_lots.iter().map(|row| (say::vet_lot(words, row.written.seq, &row.lot), &row.documents));
    let prescribed = register
        .prescriptions
        .iter()
        .map(|row| (say::prescription(words, row.written.seq, &row.prescription.number), &row.documents));
    let each = acquired.chain(of_vets).chain(prescribed);
    let proofs =
        each.flat_map(|(of, documents)| documents.iter().map(move |document| (of.clone(), document)));
    let proof = |(of, document): (String, &'a DocumentPart)| {
        let put = match put.by_hash.get(&document.content) {
            Some(Ok(put)) => Ok(put),
            Some(Err(why)) => Err(*why),
            None => Err(Label::PackNotKept),
        };
        Proof { of, document, put }
    };
    proofs.map(proof).collect()
}

fn table(words: &Words, proofs: &[Proof<'_>]) -> Markup {
    let heads = [Label::PackBelongsTo, Label::PackFile, Label::PackCalled, Label::Sha256];
    let called = |document: &DocumentPart| {
        let name = written(document.file_name.as_ref());
        name.map_or_else(|| words.label(Label::NotRecorded).to_owned(), visible)
    };
    html! {
        table {
            caption { (words.label(Label::PackProofsCaption)) }
            thead { tr { @for head in heads { th scope="col" { (words.label(head)) } } } }
            tbody { @for proof in proofs { tr {
                th scope="row" { (visible(&proof.of)) }
                td { @match &proof.put {
                    Ok(put) => {
                        a href=(put.name) { (put.name) }
                        @for caution in &put.cautions { br; em { (words.label(*caution)) } }
                        @if let Some(copy) = &put.copy {
                            br; a href=(copy) { (copy) } ": " (words.label(Label::PackOfficeCopy))
                        }
                    }
                    Err(why) => { em { (words.label(*why)) } }
                } }
                td { (called(proof.document)) }
                td { (proof.document.content) }
            } } }
        }
    }
}

/// A sentence with its commands marked as code.
fn parts(parts: &[Part]) -> Markup {
    html! {
        @for part in parts {
            @match part {
                Part::Words(words) => { (words) }
                Part::Code(code) => { code { (code) } }
            }
        }
    }
}
