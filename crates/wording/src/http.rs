//! What the service says of a request that it cannot answer as it was sent.

crate::terminal::sentences! {
    /// A part of the address that is not the id of an entry.
    HttpNotAnEntry: not_an_entry(why: &str);
    /// A query parameter that is given twice.
    HttpGivenTwice: given_twice(parameter: &str);
    /// A query parameter that is missing.
    HttpMissing: missing(parameter: &str);
    /// A query parameter that the path does not take.
    HttpNoParameter: no_parameter(parameter: &str);
    /// Those that it takes.
    HttpTakes: takes(known: &str);
    /// How to mend a query parameter.
    HttpCorrectOrLeaveOut: correct_or_leave_out(parameter: &str);
    /// A number of entries that cannot be asked for.
    HttpNotALimit: not_a_limit(text: &str, most: u32);
    /// A place in a journal that cannot be one.
    HttpNotAPlace: not_a_place(text: &str);
    /// What is wrong with a text, and where.
    HttpAtLine: at_line(line: usize, column: usize, what: &str);
}
