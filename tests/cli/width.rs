//! The width of what is printed: nothing is wider than 80 columns in a pipe, or than a narrower terminal, and no word is broken.

use std::process::Command;

use crate::bench::{Bench, DEMO_DAY, bare, ran};

/// Every command that answers a keeper at a glance, on the demo.
const GLANCES: [&[&str]; 13] = [
    &["today", "--on", DEMO_DAY],
    &["supering", "--on", DEMO_DAY],
    &["supering", "O6", "T4", "O4", "--on", DEMO_DAY],
    &["options", "M1", "--from", DEMO_DAY],
    &["options", "M4", "--from", DEMO_DAY, "--ground", "dry"],
    &["options", "--apiary", "Saltwend", "--from", DEMO_DAY],
    &["due", "--from", DEMO_DAY],
    &["gaps", "--from", "2026-01-01", "--to", DEMO_DAY, "--as-of", DEMO_DAY],
    &["stock", "--on", DEMO_DAY],
    &["retention", "--on", "2026-11-27"],
    &["leaflets"],
    &["leaflets", "amitraz-strip-500mg-a"],
    &["leaflets", "--all-countries"],
];

fn widest(text: &str) -> (usize, &str) {
    text.lines().map(|line| (line.chars().count(), line)).max().unwrap_or_default()
}

#[test]
fn no_line_at_a_glance_is_wider_than_80_columns() {
    let bench = Bench::with_demo();
    for glance in GLANCES {
        let out = bench.run(glance).out;
        let (width, line) = widest(&out);
        assert!(!out.is_empty() && width <= 80, "{glance:?}: {width} columns: {line}");
    }
}

#[test]
fn no_line_in_full_is_wider_either_unless_it_is_for_a_program() {
    let bench = Bench::with_demo();
    for glance in GLANCES.iter().filter(|glance| glance[0] != "today") {
        let out = bench.run(&[glance, &["--full"][..]].concat()).out;
        for line in out.lines().filter(|line| line.chars().count() > 80) {
            // A line to be imported, or one word that is too long.
            let word = line.trim().split(' ').max_by_key(|word| word.len()).unwrap();
            assert!(line.starts_with('{') || word.len() + 12 > line.trim().len(), "{glance:?}: {line}");
        }
    }
}

#[test]
fn the_same_words_are_printed_whatever_the_width() {
    let bench = Bench::with_demo();
    for glance in [GLANCES[0], GLANCES[1], GLANCES[6]] {
        let words = |text: &str| text.split_whitespace().map(ToOwned::to_owned).collect::<Vec<_>>();
        let plain = bench.run(glance).out;
        let narrow = in_terminal(&bench, 40, glance);
        assert_eq!(words(&narrow), words(&plain), "{glance:?}");
        let wide = in_terminal(&bench, 200, glance);
        assert_eq!(words(&wide), words(&plain), "{glance:?}");
        assert!(widest(&wide).0 > 80, "{wide}");
    }
}

#[test]
fn a_narrow_terminal_is_written_to_in_its_width_and_never_in_less_than_40() {
    let bench = Bench::with_demo();
    for (columns, most) in [(64, 64), (40, 40), (10, 40)] {
        for glance in GLANCES {
            let out = in_terminal(&bench, columns, glance);
            for line in out.lines().filter(|line| line.chars().count() > most) {
                // One word may be longer than the line; it is not broken.
                let word = line.split_whitespace().map(|word| word.chars().count()).max().unwrap();
                assert!(word + 8 > most, "{columns} columns, {glance:?}: {line}");
            }
        }
    }
}

/// What the program prints in a terminal of so many columns.
fn in_terminal(bench: &Bench, columns: u16, arguments: &[&str]) -> String {
    const RUN: &str = "
import fcntl, os, pty, struct, sys, termios
pid, terminal = pty.fork()
if pid == 0:
    fcntl.ioctl(1, termios.TIOCSWINSZ, struct.pack('HHHH', 40, int(sys.argv[1]), 0, 0))
    os.execv(sys.argv[2], sys.argv[2:])
out = b''
while True:
    try:
        part = os.read(terminal, 65536)
    except OSError:
        break
    if not part:
        break
    out += part
os.waitpid(pid, 0)
sys.stdout.buffer.write(out.replace(b'\\r\\n', b'\\n'))
";
    let program = env!("CARGO_BIN_EXE_combclear");
    let mut command: Command = bare("python3".as_ref(), &bench.path("."));
    command.args(["-c", RUN, &columns.to_string(), program]).args(arguments);
    ran(command.output().unwrap()).done().out
}
