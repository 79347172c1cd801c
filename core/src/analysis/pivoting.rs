use super::FrameError;

/// Rounds without fewer faults after which parts are changed one at a time.
const PATIENCE: usize = 3;

/// Finds which of some parts let go, by block principal pivoting (J. J. Júdice, F. M. Pires, *Computers & Operations
/// Research* 21 (1994), 587–596): all parts at fault are changed at once, or one at a time where that does not help.
///
/// `open` is where to start. `faults` gives the parts at fault when these let go: those that bear a force of the wrong
/// sign, and those that let go where they would be pressed.
pub(super) fn settle(
    mut open: Vec<bool>,
    mut faults: impl FnMut(&[bool]) -> Result<Vec<usize>, FrameError>,
) -> Result<Vec<bool>, FrameError> {
    let rounds = 20 + 10 * open.len();
    let (mut fewest, mut patience) = (usize::MAX, PATIENCE);
    let mut found = faults(&open)?;
    for _ in 0..rounds {
        if found.is_empty() {
            return Ok(open);
        }
        if found.len() < fewest {
            (fewest, patience) = (found.len(), PATIENCE);
        } else {
            patience = patience.saturating_sub(1);
        }
        let together = (patience > 0).then_some(&found[..]);
        let (mut next, mut refused) = (None, FrameError::NoContact { rounds });
        for change in together.into_iter().chain(found.chunks(1).rev()) {
            let mut trial = open.clone();
            change.iter().for_each(|&part| trial[part] = !trial[part]);
            match faults(&trial) {
                Ok(left) => {
                    if change.len() < found.len() {
                        patience = 0;
                    }
                    next = Some((trial, left));
                    break;
                }
                Err(error) => refused = error,
            }
        }
        (open, found) = next.ok_or(refused)?;
    }
    Err(FrameError::NoContact { rounds })
}
