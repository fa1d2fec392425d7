//! Changes an input by its lines and words. Single bytes alone rarely make an entry out of another.

use libfuzzer_sys::fuzzer_mutate;

/// Changes the first `size` bytes, and gives back how many there are then.
pub fn change(bytes: &mut [u8], size: usize, most: usize, seed: u32) -> usize {
    let mut dice = Dice((u64::from(seed) | 1 << 40).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    let most = most.min(bytes.len());
    let changed = match dice.below(8) {
        0..=2 => None,
        3 | 4 => lines(&bytes[..size], &mut dice),
        5 | 6 => words(&bytes[..size], &mut dice),
        _ => digit(&bytes[..size], &mut dice),
    };
    match changed.filter(|changed| changed.len() <= most && !changed.is_empty()) {
        Some(changed) => {
            bytes[..changed.len()].copy_from_slice(&changed);
            changed.len()
        }
        None => fuzzer_mutate(bytes, size, most),
    }
}

/// Doubles, drops or swaps lines.
fn lines(bytes: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let mut lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
    let (one, other) = (dice.below(lines.len()), dice.below(lines.len()));
    match dice.below(4) {
        0 => lines.insert(other, lines[one]),
        1 => drop(lines.remove(one)),
        2 => lines.swap(one, other),
        _ => lines[one] = lines[other],
    }
    Some(lines.join(&b'\n'))
}

/// Puts a word of the input in the place of another, or takes it away.
fn words(bytes: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let is_within = |byte: &u8| byte.is_ascii_alphanumeric() || b"_-.: ".contains(byte);
    let mut found = Vec::new();
    let mut begin = 0;
    for (at, byte) in bytes.iter().enumerate() {
        if !is_within(byte) {
            found.extend((begin < at).then_some(begin..at));
            begin = at + 1;
        }
    }
    let place = found.get(dice.below(found.len().max(1)))?.clone();
    let word = found.get(dice.below(found.len()))?.clone();
    let mut changed = bytes[..place.start].to_vec();
    match dice.below(8) {
        0 => {}
        // A name with a sign at its end is another name.
        1 => {
            changed.extend_from_slice(&bytes[place.clone()]);
            changed.push(b'1');
        }
        _ => changed.extend_from_slice(&bytes[word]),
    }
    changed.extend_from_slice(&bytes[place.end..]);
    Some(changed)
}

/// Changes a digit: another day, another amount.
fn digit(bytes: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let digits: Vec<usize> = (0..bytes.len()).filter(|at| bytes[*at].is_ascii_digit()).collect();
    let at = *digits.get(dice.below(digits.len().max(1)))?;
    let mut changed = bytes.to_vec();
    changed[at] = b"0123456789"[dice.below(10)];
    Some(changed)
}

/// Random numbers (xorshift64*).
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 33) as usize % sides.max(1)
    }
}
