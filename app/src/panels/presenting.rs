//! What stands beside the drawing while it is shown to others.

use super::ratio::Ratio;
use crate::comparison::KeyFigures;
use crate::editor::OptionId;
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::list;
use falsewright_core::limits::{Limit, limits_at};
use falsewright_core::scheme::PressureMethod;
use leptos::html::Button;
use leptos::prelude::*;
use std::time::Duration;

/// Key figures of the option on the sheet, the way to the others, and the way out.
#[component]
pub fn Presenting() -> impl IntoView {
    let store = Store::here();
    let presenting = Memo::new(move |_| store.presenting());
    move || presenting.get().then(|| view! { <Strip/> }.into_any())
}

#[component]
fn Strip() -> impl IntoView {
    let store = Store::here();
    let leave = NodeRef::<Button>::new();
    Effect::new(move || {
        if let Some(leave) = leave.get() {
            let _ = leave.focus();
        }
    });
    let order = Memo::new(move |_| store.job(|job| job.order().to_vec()));
    let several = Memo::new(move |_| order.with(|order| order.len() > 1));
    let title = move || {
        let name = store.scheme.with(|scheme| scheme.name.clone());
        let name = if name.is_empty() { t("Temporary works").to_owned() } else { name };
        let option = several.get().then(|| say!("Option {}", store.option_name(store.in_hand())));
        view! { {name} <small data-testid="present-option">{option}</small> }.into_any()
    };
    let tab = move |id: OptionId| {
        view! {
            <button
                aria-current=move || (store.in_hand() == id).then_some("true")
                data-testid=format!("present-{}", id.0)
                on:click=move |_| store.switch_to(id)
            >{move || store.option_name(id)}</button>
        }
        .into_any()
    };
    let step = move |by: isize, id: &'static str, name: &'static str, sign: &'static str| {
        view! {
            <button data-testid=id aria-label=t(name) title=t(name) on:click=move |_| store.step_option(by)>{sign}</button>
        }.into_any()
    };
    view! {
        <section class="presented" aria-label=t("Presenting view") data-testid="presenting">
            <header>
                <h2>{move || title()}</h2>
                {move || several.get().then(|| view! {
                    <nav aria-label=t("Options of the job")>
                        {step(-1, "present-earlier", key("Option before"), "‹")}
                        {list(move || order.get(), |id| id.0.to_string(), tab)}
                        {step(1, "present-later", key("Next option"), "›")}
                    </nav>
                }.into_any())}
                <button node_ref=leave data-testid="present-end" title="Escape" on:click=move |_| store.present(false)>{t("Leave")}</button>
            </header>
            <Figures/>
            <p class="caution" role="note">
                {t("No substitute for a competent designer and an independent checker. Local codes decide. Items are generic: the supplier's data replace them.")}
            </p>
        </section>
    }
}

#[component]
fn Figures() -> impl IntoView {
    let store = Store::here();
    let of = Memo::new(move |_| store.settled.with(|worked| KeyFigures::of(worked)));
    let limit = rate_limit(store);
    let worst = move || {
        let of = of.get();
        let place = of.place.clone();
        match of.worst {
            _ if of.failed => {
                view! { <strong class="fails">{format!("▲ {}", t("cannot be computed"))}</strong> }.into_any()
            }
            Some(value) => view! { <Ratio value/> <small>{place}</small> }.into_any(),
            None => view! { <small>{t("nothing checked yet")}</small> }.into_any(),
        }
    };
    let failing = move || {
        let failing = of.with(|of| of.failing);
        (failing > 0).then(|| view! {
            <div><dt>{t("Must not be built so")}</dt><dd class="fails">{format!("▲ {}", say!("{} notes", failing))}</dd></div>
        }.into_any())
    };
    let clear = move || {
        of.with(|of| of.clear_m).map(|[width, height]| format!("{} × {}", units::dimension(width), units::size(height)))
    };
    let weight = move || of.with(|of| units::quantity(of.equipment.mass_kg, "kg", 0));
    let cost = move || of.with(|of| of.cost).map(|cost| units::number(cost, 0));
    let pieces = move || of.with(|of| units::number(of.equipment.pieces, 0));
    view! {
        <dl>
            <div class="worst"><dt>{t("Worst ratio")}</dt><dd data-testid="present-worst">{move || worst()}</dd></div>
            {move || failing()}
            {move || clear().map(|clear| view! { <div><dt>{t("Clear way, width × height")}</dt><dd data-testid="present-clear">{clear}</dd></div> }.into_any())}
            <div><dt>{t("Pour the walls at most")}</dt><dd data-testid="present-rate">{move || limit.get()}</dd></div>
            <div><dt>{t("Equipment of a bay")}</dt><dd data-testid="present-weight">{move || weight()}</dd></div>
            <div><dt>{t("Pieces to handle")}</dt><dd data-testid="present-pieces">{move || pieces()}</dd></div>
            {move || cost().map(|cost| view! { <div><dt>{t("Cost of all bays")}</dt><dd data-testid="present-cost">{cost}</dd></div> }.into_any())}
        </dl>
    }
}

/// The greatest rate of the pour that bears least, at the temperature of the scheme; worked out once the rest is shown.
fn rate_limit(store: Store) -> ReadSignal<String> {
    let (limit, set_limit) = signal("…".to_owned());
    Effect::new(move || {
        store.in_hand();
        store.commits();
        set_limit.set("…".to_owned());
        let work_out = move || {
            let _ = set_limit.try_set(slowest(store));
        };
        set_timeout(work_out, Duration::from_millis(50));
    });
    limit
}

fn slowest(store: Store) -> String {
    let (scheme, catalogue) = (store.scheme.get_untracked(), store.catalogue.get_untracked());
    let by_full_head = t("any rate: full head is counted");
    if matches!(scheme.concrete.method, PressureMethod::FullHead) {
        return by_full_head.to_owned();
    }
    let temperature_c = scheme.concrete.temperature_c;
    let Ok(pours) = limits_at(&scheme, &catalogue, &[temperature_c]) else { return "–".to_owned() };
    // A slower rate comes before a faster one, none at all before every rate.
    let rise = |limit: &Limit| match limit {
        Limit::Never { .. } => 0.0,
        Limit::UpTo { rise_m_h, .. } => *rise_m_h,
        Limit::Any => f64::INFINITY,
    };
    let all = pours.iter().flat_map(|pour| pour.limits.iter().map(|limit| (pour.mark.as_str(), limit)));
    match all.min_by(|a, b| rise(a.1).total_cmp(&rise(b.1))) {
        None => t("no wall shutter").to_owned(),
        Some((_, Limit::Any)) => t("any rate").to_owned(),
        Some((mark, Limit::Never { .. })) => format!("▲ {mark}: {}", t("no rate")),
        Some((mark, Limit::UpTo { rise_m_h, .. })) => {
            let rise = format!("{} {}", units::at_most(*rise_m_h, "m/h", 1), units::unit("m/h"));
            format!("{rise} ({mark}, {})", units::quantity(temperature_c, "°C", 0))
        }
    }
}
