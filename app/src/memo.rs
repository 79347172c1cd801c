//! Values worked out from others, anew only when these change.

use leptos::prelude::{Get, GetUntracked, Signal};
use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

/// A value worked out from others. What reads it is told only of a value that differs from the one before.
///
/// Behind it is one type of memo for all types of values, for each more would add its own code to the page.
pub struct Memo<T> {
    kept: leptos::prelude::Memo<Kept>,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Memo<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Memo<T> {}

trait Value: Send + Sync {
    fn any(&self) -> &dyn Any;

    fn same(&self, other: &dyn Value) -> bool;
}

impl<T: PartialEq + Send + Sync + 'static> Value for T {
    fn any(&self) -> &dyn Any {
        self
    }

    fn same(&self, other: &dyn Value) -> bool {
        other.any().downcast_ref() == Some(self)
    }
}

#[derive(Clone)]
struct Kept {
    value: Arc<dyn Value>,
    /// Counts as another value whatever it is.
    new: bool,
}

impl PartialEq for Kept {
    fn eq(&self, other: &Self) -> bool {
        !self.new && self.value.same(&*other.value)
    }
}

impl Kept {
    fn of<T: 'static>(&self) -> &T {
        (*self.value).any().downcast_ref().expect("a memo keeps values of its own type")
    }
}

type Work = Box<dyn Fn(Option<&Kept>) -> Kept + Send + Sync>;

fn memo(work: Work) -> leptos::prelude::Memo<Kept> {
    leptos::prelude::Memo::new(work)
}

impl<T: PartialEq + Send + Sync + 'static> Memo<T> {
    /// Works a value out from others, and from the one before if there is one.
    pub fn new(work: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self {
        let work = move |before: Option<&Kept>| Kept { value: Arc::new(work(before.map(Kept::of))), new: false };
        Self { kept: memo(Box::new(work)), of: PhantomData }
    }

    /// As [`Memo::new`], but what reads it is told of every value, without comparing it to the one before.
    pub fn of_every(work: impl Fn() -> T + Send + Sync + 'static) -> Self {
        let work = move |_: Option<&Kept>| Kept { value: Arc::new(work()), new: true };
        Self { kept: memo(Box::new(work)), of: PhantomData }
    }
}

impl<T> Memo<T> {
    /// A memo of the value as it is now, whatever becomes of it.
    pub fn as_it_is(&self) -> Self {
        let kept = self.kept.get_untracked();
        Self { kept: memo(Box::new(move |_| kept.clone())), of: PhantomData }
    }
}

impl<T: 'static> Memo<T> {
    /// Looks at the value.
    pub fn with<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(self.kept.get().of())
    }

    /// Looks at the value without being told of the next.
    pub fn with_untracked<U>(&self, look: impl FnOnce(&T) -> U) -> U {
        look(self.kept.get_untracked().of())
    }

    /// Looks at the value if it is still there.
    pub fn try_with<U>(&self, look: impl FnOnce(&T) -> U) -> Option<U> {
        Some(look(self.kept.try_get()?.of()))
    }

    /// Is told of the next value. The value is worked out for that: until then a memo knows of no changes.
    pub fn track(&self) {
        self.kept.get();
    }
}

impl<T: Clone + 'static> Memo<T> {
    /// The value.
    pub fn get(&self) -> T {
        self.with(T::clone)
    }

    /// The value, without being told of the next.
    pub fn get_untracked(&self) -> T {
        self.with_untracked(T::clone)
    }

    /// The value if it is still there, without being told of the next.
    pub fn try_get_untracked(&self) -> Option<T> {
        Some(self.kept.try_get_untracked()?.of::<T>().clone())
    }
}

impl<T: Clone + Send + Sync + 'static> From<Memo<T>> for Signal<T> {
    fn from(memo: Memo<T>) -> Self {
        Signal::derive(move || memo.get())
    }
}

#[cfg(test)]
mod tests {
    use super::Memo;
    use leptos::prelude::{Get, Owner, RwSignal, Set};
    use std::sync::Arc;
    use std::sync::atomic::{AtomicUsize, Ordering};

    #[test]
    fn a_memo_works_anew_only_when_what_it_reads_has_changed() {
        let owner = Owner::new();
        owner.set();
        let number = RwSignal::new(1);
        let odd = Memo::new(move |_| number.get() % 2 == 1);
        let worked = Arc::new(AtomicUsize::new(0));
        let count = worked.clone();
        let told = Memo::new(move |before: Option<&String>| {
            count.fetch_add(1, Ordering::Relaxed);
            format!("{}{}", before.map_or("", String::as_str), if odd.get() { "odd " } else { "even " })
        });
        assert_eq!(told.get(), "odd ");
        number.set(3);
        assert_eq!(told.with(String::len), 4);
        assert_eq!(worked.load(Ordering::Relaxed), 1);
        number.set(4);
        assert_eq!(told.get_untracked(), "odd even ");
        assert_eq!(odd.try_get_untracked(), Some(false));
        assert_eq!(worked.load(Ordering::Relaxed), 2);
    }

    #[test]
    fn a_memo_of_what_is_now_keeps_it() {
        let owner = Owner::new();
        owner.set();
        let number = RwSignal::new(1);
        let twice = Memo::new(move |_| 2 * number.get());
        let kept = twice.as_it_is();
        number.set(3);
        assert_eq!((twice.get(), kept.get()), (6, 2));
    }

    #[test]
    fn what_only_tracks_a_memo_is_told_of_its_values() {
        let owner = Owner::new();
        owner.set();
        let number = RwSignal::new(1);
        let half = Memo::new(move |_| number.get() / 2);
        let worked = Arc::new(AtomicUsize::new(0));
        let count = worked.clone();
        let told = Memo::new(move |_| {
            half.track();
            count.fetch_add(1, Ordering::Relaxed)
        });
        assert_eq!(told.get(), 0);
        number.set(4);
        assert_eq!(told.get(), 1);
        number.set(5);
        assert_eq!(told.get(), 1);
    }
}
