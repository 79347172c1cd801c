//! What must have been seen before the work goes on.

use super::unfolding;
use crate::language::{t, told};
use crate::store::Store;
use falsewright_core::hold_points::{HoldPoint, hold_points};
use falsewright_core::sentence::Sentence;
use leptos::prelude::*;

/// Told only while they are open.
#[component]
pub fn HoldPoints() -> impl IntoView {
    let store = Store::here();
    let stages = move |open: Signal<bool>| {
        let design = &store.settled.get().design;
        let all = open.get().then(|| store.scheme.with_untracked(|scheme| hold_points(scheme, design)))?;
        let none = all.is_empty().then(|| view! { <p class="quiet">{t("No equipment stands yet.")}</p> }.into_any());
        Some(view! { {none} {all.into_iter().map(stage).collect_view()} }.into_any())
    };
    unfolding::part("hold-points", t("Hold points"), |open| (move || stages(open)).into_any())
}

fn stage(HoldPoint { stage, points }: HoldPoint) -> AnyView {
    view! {
        <h3>{told(&stage)}</h3>
        <ul>{points.iter().map(|point| view! { <li>{told(point)}</li> }.into_any()).collect_view()}</ul>
    }
    .into_any()
}

/// A sheet of them to be signed; nothing while no equipment stands.
pub(super) fn sheet(store: Store) -> Option<AnyView> {
    let worked = store.worked.get_untracked();
    let all = store.scheme.with_untracked(|scheme| hold_points(scheme, &worked.design));
    let row = |point: Sentence| view! { <tr><td>{told(&point)}</td><td/><td/></tr> }.into_any();
    let rows = |HoldPoint { stage, points }: HoldPoint| {
        view! {
            <tbody>
                <tr><th colspan="3" scope="rowgroup">{told(&stage)}</th></tr>
                {points.into_iter().map(row).collect_view()}
            </tbody>
        }
        .into_any()
    };
    (!all.is_empty()).then(|| {
        view! {
            <section class="to-sign">
                <h2>{t("Hold points")}</h2>
                <table>
                    <thead><tr><th>{t("To be seen")}</th><th>{t("Seen by")}</th><th>{t("Date, time")}</th></tr></thead>
                    {all.into_iter().map(rows).collect_view()}
                </table>
            </section>
        }
        .into_any()
    })
}
