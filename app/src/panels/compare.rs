//! The option on the sheet and the one beside it, in figures.

use crate::comparison::{Group, Row, table};
use crate::editor::OptionId;
use crate::language::t;
use crate::memo::Memo;
use crate::store::Store;
use leptos::prelude::*;

/// A table of both options in the order of the tray.
#[component]
pub fn Compare() -> impl IntoView {
    let store = Store::here();
    let pair = Memo::new(move |_| store.beside().map(|beside| in_order(store, beside)));
    let groups = move || {
        let [a, b] = pair.get()?;
        let (print_a, print_b) = (store.print(a)?, store.print(b)?);
        let names = [store.option_name(a), store.option_name(b)];
        Some(table(&print_a, &print_b).into_iter().map(|group| one(group, &names)).collect_view())
    };
    view! {
        <section class="compare" aria-label=t("Comparison") data-testid="compare">
            <p class="quiet">{t("Rows that differ are marked ≠. The change is from the first option to the second.")}</p>
            {move || groups()}
            <button data-testid="compare-end" on:click=move |_| store.lay_beside(None)>{t("End the comparison")}</button>
        </section>
    }
}

/// The option on the sheet and another, as they lie in the tray.
pub fn in_order(store: Store, beside: OptionId) -> [OptionId; 2] {
    let here = store.in_hand();
    let before = store.job(|job| job.place_of(beside) < job.place_of(here));
    if before { [beside, here] } else { [here, beside] }
}

fn one(group: Group, names: &[String; 2]) -> impl IntoView + use<> {
    let Group { title, rows, same } = group;
    let rest = (same > 0).then(|| {
        let words = if rows.is_empty() { say!("all {} the same", same) } else { say!("{} more the same", same) };
        view! { <tr><td class="quiet" colspan="4">{words}</td></tr> }.into_any()
    });
    let [a, b] = names.clone();
    view! {
        <table>
            <caption>{t(title)}</caption>
            <thead><tr><th></th><th class="n">{a}</th><th class="n">{b}</th><th class="n">{t("Difference")}</th></tr></thead>
            <tbody>{rows.into_iter().map(row).collect_view()} {rest}</tbody>
        </table>
    }
}

fn row(row: Row) -> impl IntoView {
    let differs = row.differs();
    let Row { name, values: [a, b], difference, fails: [fails_a, fails_b], words } = row;
    let key = name.clone();
    // Words take the room of the difference, which they have not.
    let span = if words { "2" } else { "1" };
    view! {
        <tr class:differs=differs data-row=key>
            <th scope="row"><span class="sign">{differs.then_some("≠ ")}</span>{name}</th>
            <td class:n=!words class:fail=fails_a>{a}</td>
            <td class:n=!words class:fail=fails_b colspan=span>{b}</td>
            {(!words).then(|| view! { <td class="n">{difference}</td> }.into_any())}
        </tr>
    }
}
