//! An empty sheet as .xlsx: a tab for each kind of entry, and the lists of its choices in a hidden one.
//!
//! Every text is written as a text: a colony named `=1+1` stays one.

use combclear_domain::basics::misread::Named;
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::{Input, Origin};
use combclear_wording::{Label, Words, forms};
use rust_xlsxwriter::{
    DataValidation, DataValidationErrorStyle, DocProperties, ExcelDateTime, Format, FormatAlign, Formula,
    Workbook, Worksheet, XlsxError,
};

use super::{Choices, NotWritten};
use crate::columns::{Column, TABS, columns, letters};
use crate::read::ROWS_MOST;

/// The index of the first row that is filled in: after the headings and the hints.
const FIRST: u32 = 2;

/// An empty sheet.
///
/// # Errors
/// A text is longer than a cell takes.
pub fn xlsx(words: &Words, choices: &Choices) -> Result<Vec<u8>, NotWritten> {
    written(words, choices).map_err(|error| NotWritten(error.to_string()))
}

fn written(words: &Words, choices: &Choices) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = Workbook::new();
    // The library would put in the time of the clock.
    let made = ExcelDateTime::parse_from_str(&choices.on.to_string())?;
    workbook.set_properties(&DocProperties::new().set_creation_datetime(&made));
    let mut about_tab = Worksheet::new();
    about(words, choices, &mut about_tab)?;
    workbook.push_worksheet(about_tab);
    let (lists, lists_tab) = lists(words, choices)?;
    for kind in TABS {
        workbook.push_worksheet(tab(words, kind, &lists)?);
    }
    workbook.push_worksheet(lists_tab);
    workbook.save_to_buffer()
}

/// The first tab: for which holding it is, and how it is filled in.
fn about(words: &Words, choices: &Choices, tab: &mut Worksheet) -> Result<(), XlsxError> {
    let bold = Format::new().set_bold();
    tab.set_name(words.label(Label::SheetAbout))?;
    tab.write_string_with_format(0, 0, words.label(Label::SheetHolding), &bold)?;
    let holding = choices.holding.as_ref().map(ToString::to_string).unwrap_or_default();
    tab.write_string_with_format(0, 1, holding, &Format::new().set_num_format("@"))?;
    let lines = [
        Label::SheetAboutTabs,
        Label::SheetAboutNeeded,
        Label::SheetAboutDays,
        Label::SheetAboutNames,
        Label::SheetAboutImport,
    ];
    for (row, line) in (2_u32..).zip(lines) {
        tab.write_string(row, 0, words.label(line))?;
    }
    tab.set_column_width(0, 14)?;
    tab.set_column_width(1, 30)?;
    Ok(())
}

/// A list of choices in the hidden tab.
struct List {
    of: Named,
    /// Such as `=Choices!$A$2:$A$61`.
    range: String,
}

/// The hidden tab, with a column for each list that is not empty.
fn lists(words: &Words, choices: &Choices) -> Result<(Vec<List>, Worksheet), XlsxError> {
    let mut tab = Worksheet::new();
    let name = words.label(Label::SheetChoices);
    tab.set_name(name)?;
    tab.set_hidden(true);
    let all = [
        (Named::Apiary, Kind::ApiaryDetails, &choices.apiaries),
        (Named::Colony, Kind::ColonyEstablished, &choices.colonies),
        (Named::Medicine, Kind::MedicineDescribed, &choices.medicines),
        (Named::Lot, Kind::LotAcquired, &choices.lots),
        (Named::Leaflet, Kind::MedicineDescribed, &choices.leaflets),
        (Named::Jurisdiction, Kind::HoldingDetails, &choices.countries),
    ];
    let mut lists = Vec::new();
    for (column, (of, kind, texts)) in (0_u16..).zip(all) {
        let is_of = |column: &Column| matches!(column.input, Input::Name(named) if named == of);
        let label = columns(words, kind).into_iter().find(is_of).map(|column| column.label);
        tab.write_string(0, column, label.unwrap_or_default())?;
        for (row, text) in (1_u32..).zip(texts) {
            tab.write_string(row, column, text)?;
        }
        if !texts.is_empty() {
            let (column, last) = (letters(column.into()), texts.len().saturating_add(1));
            lists.push(List { of, range: format!("={name}!${column}$2:${column}${last}") });
        }
    }
    Ok((lists, tab))
}

/// The tab of a kind of entry.
fn tab(words: &Words, kind: Kind, lists: &[List]) -> Result<Worksheet, XlsxError> {
    let heading = Format::new().set_bold().set_text_wrap().set_align(FormatAlign::Top);
    let hint = Format::new().set_font_color(0x0080_8080).set_text_wrap().set_align(FormatAlign::Top);
    let mut tab = Worksheet::new();
    tab.set_name(forms::tab(words, kind))?;
    tab.set_freeze_panes(FIRST, 1)?;
    tab.set_row_height(1, 64)?;
    let last = FIRST.saturating_add(u32::try_from(ROWS_MOST).unwrap_or(u32::MAX)).saturating_sub(1);
    for (index, column) in (0_u16..).zip(columns(words, kind)) {
        tab.set_column_width(index, width(&column))?;
        if let Some(format) = format(&column) {
            tab.set_column_format(index, &format)?;
        }
        tab.write_string_with_format(0, index, column.heading(words), &heading)?;
        tab.write_string_with_format(1, index, &column.hint, &hint)?;
        if let Some(choice) = choice(words, &column, lists)? {
            tab.add_data_validation(FIRST, index, last, index, &choice)?;
        }
    }
    Ok(tab)
}

fn width(column: &Column) -> u32 {
    match column.input {
        Input::Names(_) | Input::Parts(_) => 30,
        Input::Text if column.key == "note" => 30,
        _ => 18,
    }
}

/// How the cells of a column are formatted. Texts are so that a program does not turn a batch into a number or a name into a day;
/// an expiry is a text so that a month stays one.
fn format(column: &Column) -> Option<Format> {
    let format = |written: &str| Some(Format::new().set_num_format(written));
    match (column.input, column.origin) {
        (Input::Day, Origin::Printed) => format("@"),
        (Input::Day, _) => format("yyyy-mm-dd"),
        (Input::TimeOfDay, _) => format("hh:mm"),
        (Input::Whole | Input::Amount | Input::Temperature, _) => None,
        _ => format("@"),
    }
}

/// The list of choices of a column. Only words of a fixed list are enforced: a name may be new in the same sheet, and a cell may hold
/// a range of colonies.
fn choice(words: &Words, column: &Column, lists: &[List]) -> Result<Option<DataValidation>, XlsxError> {
    let fixed = |list: Vec<String>| {
        let choice = DataValidation::new().allow_list_strings(&list)?;
        choice
            .set_error_style(DataValidationErrorStyle::Stop)
            .set_error_message(words.label(Label::SheetChoose))
            .map(Some)
    };
    let yes = || words.label(Label::RecordingYes).to_owned();
    match column.input {
        Input::Word(list) => fixed(list().into_iter().map(|word| word.replace('_', " ")).collect()),
        Input::YesNo => fixed(vec![yes(), words.label(Label::RecordingNo).to_owned()]),
        // An entry of the journal may be named by its number.
        Input::FirstDose => {
            Ok(Some(DataValidation::new().allow_list_strings(&[yes()])?.show_error_message(false)))
        }
        Input::Name(of) | Input::Names(of) if column.origin != Origin::New => {
            let list = lists.iter().find(|list| list.of == of);
            Ok(list.map(|list| {
                DataValidation::new().allow_list_formula(Formula::new(&list.range)).show_error_message(false)
            }))
        }
        _ => Ok(None),
    }
}
