//! Any run of actions can be taken back to the start, done again, and kept over a reload.

use super::*;

/// Numbers that look random and are the same each time: xorshift after Marsaglia (2003).
struct Dice(u64);

impl Dice {
    fn below(&mut self, count: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 33) as usize % count
    }

    fn place(&mut self) -> (f64, f64) {
        (-0.6 + 9.3 * self.below(1000) as f64 / 1000.0, -0.3 + 6.3 * self.below(1000) as f64 / 1000.0)
    }
}

const ACTIONS: [Action; 9] = [
    Action::Duplicate,
    Action::Mirror,
    Action::Opposite,
    Action::SameLevel,
    Action::SameSpacing,
    Action::EquallyApart,
    Action::Remove,
    Action::AddMore,
    Action::Duplicate,
];

fn act(desk: &mut Desk, dice: &mut Dice) {
    let ((x, z), (to_x, to_z)) = (dice.place(), dice.place());
    match dice.below(9) {
        0 => desk.tool(Tool::ALL[dice.below(Tool::ALL.len())]),
        1 => desk.tap(x, z),
        2 => desk.drag((x, z), (to_x, to_z)),
        3 => desk.drag((x, z), (x + 0.3, z - 0.2)),
        4 => {
            desk.modifiers.shift = true;
            desk.tap(x, z);
            desk.modifiers.shift = false;
        }
        5 => {
            let key = [Key::Left, Key::Right, Key::Up, Key::Down, Key::Delete, Key::Escape][dice.below(6)];
            desk.key(key);
        }
        6 => {
            desk.modifiers.control = true;
            desk.key(Key::Char(['z', 'y', 'a', 'd'][dice.below(4)]));
            desk.modifiers.control = false;
        }
        7 => desk.act(ACTIONS[dice.below(ACTIONS.len())]),
        _ => {
            if let Ok(text) = desk.editor.copied() {
                let outcome = desk.editor.paste(&text).unwrap_or_default();
                desk.seen(outcome);
            }
        }
    }
}

#[test]
fn random_sequences_are_taken_back_done_again_and_kept() {
    for seed in 1..=12_u64 {
        let mut dice = Dice(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15));
        let mut desk = Desk::demo();
        for _ in 0..60 {
            act(&mut desk, &mut dice);
        }
        desk.key(Key::Escape);
        let document = desk.editor.document();
        assert_eq!(Document::with_steps(document.scheme().clone(), &document.written_steps()), *document, "{seed}");
        let (last, at) = (desk.scheme().clone(), desk.editor.document().at());
        desk.editor.go_to(0);
        assert!(desk.scheme().name.is_empty() && desk.scheme().shutters.is_empty(), "{seed}: the plain box");
        for step in 1..=at {
            let outcome = desk.editor.redo();
            desk.seen(outcome);
            assert_eq!(desk.editor.document().at(), step);
        }
        assert_eq!(*desk.scheme(), last, "{seed}");
    }
}

#[test]
fn the_list_names_every_step_and_goes_anywhere() {
    let mut desk = Desk::boxed();
    desk.tool(Tool::Shutter);
    desk.tap(0.0, 2.0);
    desk.tool(Tool::Legs);
    desk.tap(3.4, 2.0);
    desk.tool(Tool::Select);
    desk.tap(0.0, 2.0);
    let names = |desk: &Desk| desk.editor.document().steps().into_iter().map(|step| step.label).collect::<Vec<_>>();
    assert_eq!(names(&desk), ["Where the steps begin", "Add shutter", "Add falsework"]);
    let outcome = desk.editor.go_to(1);
    desk.seen(outcome);
    assert_eq!((desk.scheme().shutters.len(), desk.scheme().falsework.len()), (1, 0));
    assert_eq!(names(&desk).len(), 3, "what was taken back stays in the list");
    let outcome = desk.editor.go_to(2);
    desk.seen(outcome);
    assert_eq!(desk.scheme().falsework.len(), 1);
    assert!(!desk.editor.go_to(3).committed);
}

#[test]
fn selecting_leaves_what_was_taken_back() {
    let mut desk = Desk::demo();
    desk.tap(0.225, 2.2);
    desk.key(Key::Up);
    desk.editor.undo();
    desk.tap(0.225, 3.45);
    desk.drag((-0.9, 1.9), (1.0, 5.2));
    assert!(desk.editor.can_redo());
}
