use super::programme::AllBays;
use crate::language::{t, told};
use crate::persistence::{download, file_name};
use crate::store::Store;
use crate::units;
use falsewright_core::quantities::{Quantity, by_hand_kg, to_csv};
use leptos::prelude::*;

/// The bill of quantities, as a drawing's schedule.
#[component]
pub fn Schedule() -> impl IntoView {
    let store = Store::here();
    let save = move |_| {
        let csv = to_csv(&store.worked.get_untracked().design.quantities);
        let name = file_name(&store.scheme.get_untracked().name);
        if download(&format!("{name}-quantities.csv"), "text/csv", &csv).is_err() {
            store.tell(Some(
                t("The browser did not save the file. Try again, or allow downloads for this page.").into(),
            ));
        }
    };
    let heavy = move || {
        store.settled.get().design.quantities.iter().any(Quantity::is_heavy).then(|| {
            let most = units::quantity(by_hand_kg(), "kg", 0);
            view! { <p class="quiet">{say!("▲ A piece of more than {}: not for one person by hand (HSE L23).", most)}</p> }
                .into_any()
        })
    };
    let rows = move || store.settled.get().design.quantities.iter().cloned().map(row).collect_view();
    view! {
        <section class="schedule" aria-label=t("Schedule")>
            <p class="head">
                <span>{t("One bay's set of equipment and one bay's concrete")}</span>
                <button data-testid="csv" on:click=save>{t("Save as CSV")}</button>
            </p>
            <table data-testid="schedule">
                <thead>
                    <tr><th>{t("Mark")}</th><th>{t("Item and size")}</th><th class="n">{t("Count, mass")}</th></tr>
                </thead>
                <tbody>{move || rows()}</tbody>
            </table>
            {move || heavy()}
            <AllBays/>
        </section>
    }
}

fn row(quantity: Quantity) -> impl IntoView {
    let store = Store::here();
    let owner = quantity.owner;
    let chosen = move || owner.is_some() && store.selection.get().and_then(|target| target.element()) == owner;
    let decimals = if quantity.unit == "no." { 0 } else { 1 };
    let mark = quantity.mark.clone();
    let heavy = quantity.piece_kg().filter(|_| quantity.is_heavy());
    let heavy = heavy.map(|kg| say!("▲ {} each", units::quantity(kg, "kg", 0)));
    view! {
        <tr class:chosen=chosen class:total=quantity.mark.is_empty()>
            <td class="mark">
                {match owner {
                    Some(owner) => view! { <button on:click=move |_| store.select(owner)>{mark}</button> }.into_any(),
                    None => mark.into_any(),
                }}
            </td>
            <td>{told(&quantity.item)} " " <span class="size">{told(&quantity.size)}</span></td>
            <td class="n">
                {format!("{} {}", units::amount_trimmed(quantity.count, quantity.unit, decimals), t(units::unit(quantity.unit)))}
                {(quantity.mass_kg > 0.0 && quantity.unit != "kg").then(|| view! { <span class="mass">{units::quantity(quantity.mass_kg, "kg", 0)}</span> }.into_any())}
                {heavy.map(|heavy| view! { <span class="mass">{heavy}</span> }.into_any())}
            </td>
        </tr>
    }
}
