//! What the page calls. A text goes in and a text comes out: the page asks for room, writes a task there, and reads what came of it.
//!
//! Nothing else is shared, so that the page needs no glue that a tool would have to write.

use std::cell::RefCell;

use crate::Phone;

thread_local! {
    static PHONE: RefCell<Phone> = RefCell::new(Phone::default());
    static TASK: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
    static DONE: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Makes room for a task of so many bytes of JSON in UTF-8, and says where.
#[expect(unsafe_code, reason = "the page finds it by its name, and no other function here has that name")]
#[unsafe(no_mangle)]
pub(crate) extern "C" fn room(bytes: usize) -> *mut u8 {
    TASK.with_borrow_mut(|task| {
        task.clear();
        task.resize(bytes, 0);
        task.as_mut_ptr()
    })
}

/// Does the task that was written there. Returns how many bytes the outcome has.
#[expect(unsafe_code, reason = "as above")]
#[unsafe(no_mangle)]
pub(crate) extern "C" fn work() -> usize {
    let task = TASK.with_borrow_mut(std::mem::take);
    let done = PHONE.with_borrow_mut(|phone| phone.do_as_told(&String::from_utf8_lossy(&task)));
    DONE.with_borrow_mut(|outcome| {
        *outcome = done;
        outcome.len()
    })
}

/// Where the outcome is.
#[expect(unsafe_code, reason = "as above")]
#[unsafe(no_mangle)]
pub(crate) extern "C" fn outcome() -> *const u8 {
    DONE.with_borrow(|done| done.as_ptr())
}
