//! The card for the site: the greatest rate of each pour at each temperature.

use super::unfolding;
use crate::language::{t, told};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use falsewright_core::limits::{Governing, Limit, PourLimits, TEMPERATURES_C, site_limits};
use falsewright_core::scheme::PressureMethod;
use leptos::prelude::*;

/// Worked out only while it is open, and anew with each finished change.
#[component]
pub fn SiteCard() -> impl IntoView {
    let store = Store::here();
    unfolding::part("site-card", t("Limits of the pour for the site"), |open| {
        view! { <div class="tables">{tables(store, open)}</div> }.into_any()
    })
}

/// One table for each pour, while they are wanted.
pub(super) fn tables(store: Store, wanted: Signal<bool>) -> impl IntoView {
    let pours = Memo::new(move |_| {
        store.commits();
        let scheme = store.scheme.get_untracked();
        let limits = wanted.get().then(|| site_limits(&scheme, &store.catalogue.get_untracked()));
        let head = matches!(scheme.concrete.method, PressureMethod::FullHead);
        limits.and_then(Result::ok).map(|pours| (pours, head))
    });
    move || {
        let (pours, head) = pours.get()?;
        let nothing =
            pours.is_empty().then(|| view! { <p class="quiet">{t("No wall shutter stands yet.")}</p> }.into_any());
        let head = head.then(|| {
            view! {
                <p class="quiet">{t("Full head counts every rate alike: choose another method to see limits.")}</p>
            }
            .into_any()
        });
        Some(view! { {nothing} {head} {pours.into_iter().map(table).collect_view()} }.into_any())
    }
}

fn table(pour: PourLimits) -> impl IntoView {
    let rows = TEMPERATURES_C.iter().zip(pour.limits).map(|(&temperature_c, limit)| row(temperature_c, limit));
    view! {
        <table>
            <caption>{say!("{}: at most", pour.mark)}</caption>
            <thead><tr><th>{units::unit("°C")}</th><th class="n">{units::unit("m/h")}</th><th class="n">{units::unit("m³/h")}</th><th>{t("Governs")}</th></tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
}

fn row(temperature_c: f64, limit: Limit) -> impl IntoView {
    let (rise, delivery, governs) = match limit {
        Limit::Any => (t("any").to_owned(), t("any").to_owned(), t("bears full head").to_owned()),
        Limit::UpTo { delivery_m3_h, rise_m_h, governing } => {
            let end = t("end of the search").to_owned();
            (
                units::at_most(rise_m_h, "m/h", 1),
                units::at_most(delivery_m3_h, "m³/h", 1),
                governing.as_ref().map_or(end, words),
            )
        }
        Limit::Never { governing } => (t("none").to_owned(), t("none").to_owned(), words(&governing)),
    };
    view! {
        <tr>
            <td>{units::amount(temperature_c, "°C", 0)}</td>
            <td class="n">{rise}</td>
            <td class="n">{delivery}</td>
            <td>{governs}</td>
        </tr>
    }
}

fn words(governing: &Governing) -> String {
    match governing.check {
        Some(check) => format!("{}, {}", told(&governing.member), t(check.name())),
        None => told(&governing.member),
    }
}
