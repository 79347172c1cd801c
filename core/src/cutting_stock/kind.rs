//! Pieces of one length and the stock they may come from.

/// Which lengths pieces add up to is worked out for bars up to so long, mm.
const LONGEST_ADDED_UP_MM: u64 = 1 << 16;

/// A stock length, mm, and the room in it for pieces that each bring a saw cut along.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stock {
    pub mm: u32,
    pub room: u64,
}

impl Stock {
    pub fn new(mm: u32, kerf: u64) -> Self {
        Self { mm, room: u64::from(mm) + kerf }
    }
}

/// Pieces of one length.
pub struct Kind {
    /// Length with its saw cut, mm.
    pub size: u64,
    /// The stock length it needs for itself, mm; none where two such go into the longest bar.
    pub alone_mm: u64,
    /// How many kinds go into no bar with a piece of it, itself and longer ones counted.
    pub apart: usize,
    /// The stock, mm, that pieces of this length and longer fill best, and how much of it they fill at most.
    pub best: (u64, u64),
}

pub fn kinds(lengths: &[u32], counts: &[u64], stocks: &[Stock], kerf: u64) -> Vec<Kind> {
    let longest = stocks.last().map_or(0, |stock| stock.room);
    let mut sums = (longest <= LONGEST_ADDED_UP_MM).then(|| Sums::up_to(longest));
    let full = stocks.first().map_or((1, 1), |stock| (u64::from(stock.mm), stock.room));
    let kind = |(at, (&mm, &count)): (usize, (&u32, &u64))| {
        let size = u64::from(mm) + kerf;
        let own = stocks.iter().find(|stock| stock.mm >= mm).map_or(0, |stock| u64::from(stock.mm));
        let best = sums.as_mut().and_then(|sums| {
            sums.add(size, count);
            let filled = stocks.iter().map(|stock| (u64::from(stock.mm), sums.most(stock.room)));
            filled.filter(|best| best.1 > 0).reduce(|a, b| if b.0 * a.1 < a.0 * b.1 { b } else { a })
        });
        let apart = lengths[..=at].iter().take_while(|&&longer| u64::from(longer) + kerf + size > longest).count();
        Kind { size, alone_mm: if 2 * size > longest { own } else { 0 }, apart, best: best.unwrap_or(full) }
    };
    lengths.iter().zip(counts).enumerate().map(kind).collect()
}

/// Which lengths pieces add up to, a bit for each mm.
struct Sums(Vec<u64>);

impl Sums {
    fn up_to(longest: u64) -> Self {
        let mut bits = vec![0; longest as usize / 64 + 1];
        bits[0] = 1;
        Self(bits)
    }

    /// Adds up to `count` pieces, in lots of one, two, four and so on.
    fn add(&mut self, size: u64, count: u64) {
        let (mut rest, mut lot) = (count.min(64 * self.0.len() as u64 / size), 1);
        while rest > 0 {
            self.shift(size * lot.min(rest));
            rest -= lot.min(rest);
            lot *= 2;
        }
    }

    fn shift(&mut self, by: u64) {
        let (words, bits) = (by as usize / 64, by % 64);
        for at in (words..self.0.len()).rev() {
            let carried = if bits > 0 && at > words { self.0[at - words - 1] >> (64 - bits) } else { 0 };
            self.0[at] |= self.0[at - words] << bits | carried;
        }
    }

    /// The largest sum up to `room`.
    fn most(&self, room: u64) -> u64 {
        (0..=room).rev().find(|&mm| self.0[mm as usize / 64] >> (mm % 64) & 1 == 1).unwrap_or(0)
    }
}
