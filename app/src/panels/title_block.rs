use super::catalogue::own_codes_in_use;
use super::cutting::Cutting;
use super::element::selected;
use super::folds::Folds;
use super::fresh_concrete::{self, Fillings};
use super::hardening::StrikingTimes;
use super::hold_points::HoldPoints;
use super::margin::Leaf;
use super::moving::MovedBays;
use super::page_settings::PageSettings;
use super::programme::SetsAndBays;
use super::ratio::Ratio;
use super::site_card::SiteCard;
use super::site_loads;
use super::speech::Speech;
use super::unfolding;
use crate::language::{key, member, t, told};
use crate::memo::Memo;
use crate::persistence::{Saved, open_file, save_to_file, set_present_aside};
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit, later};
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Basis, Bays, Ground, Limits, Loads, Scheme, Section};
use leptos::prelude::*;

pub(super) const BASES: [(Basis, &str); 3] = [
    (Basis::WorkingLoad, key("Working load, permissible values")),
    (Basis::LimitStateB1, key("Limit state, EN 12812 class B1")),
    (Basis::LimitStateB2, key("Limit state, EN 12812 class B2")),
];

/// A part of something shown in hundredths.
const PERCENT: Unit = Unit::scaled("%", 1e-2, 2);

/// What the drawing is, how it stands, and what it is computed with.
#[component]
pub fn TitleBlock() -> impl IntoView {
    let store = Store::here();
    let Folds { data: open, leaf, .. } = expect_context();
    // Whoever turns to anything but the notes wants to see that.
    let folded = move || leaf.get() != Leaf::Notes || !selected(store).is_empty() || store.beside().is_some();
    view! {
        <section
            class="title-block"
            class:open=move || open.get()
            class:folded=folded
            aria-label=t("Title block") data-testid="title-block">
            <Summary/>
            <button class="more" aria-expanded=move || open.get().to_string() on:click=move |_| open.update(|open| *open = !*open)>
                {move || if open.get() { t("Less") } else { t("Data") }}
            </button>
            <div class="data">
                {later(|| view! { <Data/> }.into_any())}
            </div>
        </section>
    }
}

#[component]
fn Data() -> impl IntoView {
    // What is unfolded stands below what is seen of the settings, often. These events do not bubble.
    let unfolded = move |event: web_sys::Event| {
        let fold: web_sys::Element = event_target(&event);
        if fold.has_attribute("open") {
            fold.scroll_into_view_with_bool(true);
        }
    };
    view! {
        <Files/>
        <div class="settings" on:toggle:capture=unfolded>
            <Settings/>
            <Speech/>
            <PageSettings/>
        </div>
        {caution()}
    }
    .into_any()
}

pub(super) fn caution() -> impl IntoView {
    view! {
        <p class="caution" role="note">
            {t("No substitute for a competent designer and an independent checker. Local codes decide. Items are generic: the supplier's data replace them.")}
        </p>
    }
}

/// How it stands, in key figures.
#[component]
pub(super) fn Summary() -> impl IntoView {
    let store = Store::here();
    let worst = move || {
        let worked = store.settled.get();
        match worked.design.results.governing() {
            Some(check) => {
                let owner = check.owner;
                let text = format!("{}, {}", member(&check.member), told(&check.place));
                view! {
                    <Ratio value=check.ratio/>
                    <button class="plain" data-testid="worst" on:click=move |_| store.select(owner)>{text}</button>
                }
                .into_any()
            }
            None => view! { <span class="quiet" data-testid="worst">{t("nothing checked yet")}</span> }.into_any(),
        }
    };
    let clear = move || {
        let worked = store.settled.get();
        let room = worked.design.results.clearances.first()?;
        Some(format!("{} × {}", units::dimension(room.width_m), units::dimension(room.height_m)))
    };
    let concrete = move || {
        let worked = store.settled.get();
        let volumes = worked.design.model.pours.iter();
        let volumes = volumes.map(|pour| format!("{} {}", pour.mark, units::amount(pour.volume_m3, "m³", 1)));
        let all: f64 = worked.design.model.pours.iter().map(|pour| pour.volume_m3).sum();
        let volumes: Vec<String> = volumes.collect();
        let total = if volumes.is_empty() { t("none yet").to_owned() } else { units::quantity(all, "m³", 1) };
        view! { {total} <small>{if volumes.len() > 1 { volumes.join(", ") } else { String::new() }}</small> }.into_any()
    };
    let rise = move || {
        let worked = store.settled.get();
        let pressures = &worked.design.results.pressures;
        let fastest = pressures.iter().max_by(|a, b| a.rise_m_h.total_cmp(&b.rise_m_h))?;
        let greatest = pressures.iter().flat_map(|pressure| &pressure.points).map(|point| point.1).fold(0.0, f64::max);
        Some(format!("{}, {}", units::quantity(fastest.rise_m_h, "m/h", 2), units::quantity(greatest, "kPa", 0)))
    };
    let own = Memo::new(move |_| own_codes_in_use(store));
    let supplied = move || {
        let codes = own.get();
        let first = codes.first().cloned()?;
        Some(view! {
            <div class="supplied">
                <dt>{t("Items by supplier's or your own data")}</dt>
                <dd>
                    <button class="plain" data-testid="supplied" on:click=move |_| store.look_up(Some(first.clone()))>
                        {codes.join(", ")}
                    </button>
                </dd>
            </div>
        }.into_any())
    };
    let option = move || {
        let several = store.job(|job| !job.is_single());
        (several || store.scheme.with(|scheme| !scheme.option.is_empty())).then(|| {
            view! {
                <div class="option">
                    <dt>{t("Option")}</dt>
                    <dd data-testid="option">{move || store.option_name(store.in_hand())}</dd>
                </div>
            }
            .into_any()
        })
    };
    view! {
        <dl class="summary">
            <div class="worst"><dt>{t("Worst ratio")}</dt><dd>{move || worst()}</dd></div>
            <div class="clear"><dt>{units::of_dimension(t("Clear way"))}</dt><dd data-testid="clear">{move || clear().unwrap_or(t("none").into())}</dd></div>
            <div class="concrete"><dt>{t("Concrete of a bay")}</dt><dd data-testid="concrete">{move || concrete()}</dd></div>
            <div class="rise"><dt>{t("Rise and pressure")}</dt><dd>{move || rise().unwrap_or(t("no shutter yet").into())}</dd></div>
            {move || option()}
            {move || supplied()}
        </dl>
    }
}

#[component]
fn Settings() -> impl IntoView {
    let store = Store::here();
    let part = move |of: fn(&Scheme) -> String| Memo::new(move |_| store.scheme.with(|scheme| of(scheme)));
    let name = Form::new(part(|scheme| scheme.name.clone()), move |name| store.edit(Edit::SetName(name)));
    let revision = part(|scheme| scheme.revision.clone());
    let revision = Form::new(revision, move |revision| store.edit(Edit::SetRevision(revision)));
    let bays = Form::new(Memo::new(move |_| store.scheme.with(|scheme| scheme.bays)), move |bays| {
        store.edit(Edit::SetBays(bays));
    });
    let basis = Form::new(Memo::new(move |_| store.scheme.with(|scheme| scheme.basis)), move |basis| {
        store.edit(Edit::SetBasis(basis));
    });
    let concrete = Memo::new(move |_| store.scheme.with(|scheme| scheme.concrete));
    let fresh = Form::new(concrete, move |concrete| store.edit(Edit::SetConcrete(concrete)));
    let of_loads = Memo::new(move |_| store.scheme.with(|scheme| scheme.loads));
    let loads = Form::new(of_loads, move |loads| store.edit(Edit::SetLoads(loads)));
    let limits = Form::new(Memo::new(move |_| store.scheme.with(|scheme| scheme.limits)), move |limits| {
        store.edit(Edit::SetLimits(limits));
    });
    let ground = Form::new(Memo::new(move |_| store.scheme.with(|scheme| scheme.ground)), move |ground| {
        store.edit(Edit::SetGround(ground));
    });
    let loads_and_limits = unfolding::part("loads-and-limits", t("Loads and limits"), move |_| {
        view! {
            <div class="fields">
                {loads.number("Formwork", Unit::of("kPa", 2), |of: &Loads| of.formwork_kpa, |of, value| of.formwork_kpa = value)}
                {loads.number("Operations", Unit::of("kPa", 2), |of: &Loads| of.operations_kpa, |of, value| of.operations_kpa = value)}
                {loads.number("Horizontal", PERCENT, |of: &Loads| of.horizontal_fraction, |of, value| of.horizontal_fraction = value)}
                {loads.number("Leg off axis", Unit::FINE, |of: &Loads| of.leg_eccentricity_m, |of, value| of.leg_eccentricity_m = value)}
                {site_loads::fields(of_loads, loads)}
                {limits.number("Deflection, span /", Unit::NONE, |of: &Limits| of.span_over_deflection, |of, value| of.span_over_deflection = value)}
                {limits.number("Clear tolerance", Unit::FINE, |of: &Limits| of.access_tolerance_m, |of, value| of.access_tolerance_m = value)}
                {ground.number("Ground bears", Unit::of("kPa", 0), |of: &Ground| of.allowable_kpa, |of, value| of.allowable_kpa = value)}
                {ground.number("Ground level", Unit::M, |of: &Ground| of.level_m, |of, value| of.level_m = value)}
            </div>
        }
        .into_any()
    });
    view! {
        <div class="fields">
            {name.text("Scheme", |name| name, |name, text| *name = text)}
            {revision.text("Revision", |revision| revision, |revision, text| *revision = text)}
            {bays.number("Bay length", Unit::M, |bays: &Bays| bays.length_m, |bays, value| bays.length_m = value)}
            {bays.count("Bays", |bays: &Bays| bays.count, |bays, count| bays.count = count)}
            {fresh_concrete::fields(concrete, fresh)}
            {basis.choice("Basis", &BASES, |basis: &Basis| *basis, |basis, value| *basis = value)}
        </div>
        <Fillings/>
        <SiteCard/>
        <HoldPoints/>
        {loads_and_limits}
        <StrikingTimes/>
        <MovedBays/>
        <SetsAndBays/>
        <Cutting/>
    }
}

#[component]
fn Files() -> impl IntoView {
    let store = Store::here();
    let saved = move || match store.saved() {
        Saved::Nothing => t("Nothing to save yet"),
        Saved::Waiting => t("Saving …"),
        Saved::Kept => t("Saved in this browser"),
        Saved::Failed => t("▲ Not saved in this browser: save to a file"),
    };
    let blank = move |_| {
        set_present_aside(store);
        let section = Section { outline: Vec::new(), cells: Vec::new(), joints: Vec::new() };
        store.open(Scheme::blank(section));
    };
    let print = move |_| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    };
    view! {
        <div class="files">
            <span class="saved" role=move || (store.saved() == Saved::Failed).then_some("alert") data-testid="saved">{move || saved()}</span>
            <button data-testid="save-file" on:click=move |_| save_to_file(store)>{t("Save file")}</button>
            <label class="file">
                <input type="file" data-testid="open-file" on:change=move |event| open_file(store, &event)/>
                {t("Open")}
            </label>
            <button data-testid="new-sheet" on:click=blank>{t("New")}</button>
            <button data-testid="print" on:click=print>{t("Print")}</button>
        </div>
    }
}
