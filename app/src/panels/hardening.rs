use super::unfolding;
use crate::language::{key, t};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::results::StrikingTime;
use falsewright_core::scheme::edit::Edit;
use falsewright_core::scheme::{Cement, Hardening, Striking, Temperature, TemperatureTextError};
use leptos::prelude::*;

const CEMENTS: &[(Cement, &str)] =
    &[(Cement::Rapid, key("R, rapid")), (Cement::Normal, key("N, normal")), (Cement::Slow, key("S, slow"))];

/// What is assumed until the user says otherwise.
pub const USUAL: Hardening =
    Hardening { class_mpa: 30.0, cement: Cement::Normal, temperature: Temperature::Mean { celsius: 10.0 } };

/// Hardening with its temperatures as they are typed.
#[derive(Clone, PartialEq)]
struct Written {
    hardening: Hardening,
    temperature: String,
}

/// Fields of how concrete hardens. Text that is no temperature changes nothing, and is told of.
pub fn fields(hardening: Memo<Vec<Hardening>>, put: impl Fn(Vec<Hardening>) + Send + Sync + 'static) -> impl IntoView {
    let write = |hardening: Hardening| Written { temperature: units::written(&hardening.temperature), hardening };
    let written = Memo::new(move |_| hardening.get().into_iter().map(write).collect::<Vec<_>>());
    let store = Store::here();
    let read = move |Written { mut hardening, temperature }: Written| {
        match temperature.parse() {
            Ok(temperature) => hardening.temperature = temperature,
            Err(TemperatureTextError) => store.tell(Some(say!(
                "“{}” is no temperature. Write one, or hours and temperatures such as 24 h 15; 48 h 8.",
                temperature
            ))),
        }
        hardening
    };
    let form = Form::of_several(written, move |all: Vec<Written>| put(all.into_iter().map(read).collect()));
    view! {
        {form.number("Strength class fck", Unit::of("MPa", 1), |of| of.hardening.class_mpa, |of, value| of.hardening.class_mpa = value)}
        {form.choice("Cement class", CEMENTS, |of| of.hardening.cement, |of, value| of.hardening.cement = value)}
        {form.text("Temperature in °C, or by hours: 24 h 15; 48 h 8", |of| &of.temperature, |of, text| of.temperature = text)}
    }
}

/// How the concrete of the job hardens, and when its forms may go.
#[component]
pub fn StrikingTimes() -> impl IntoView {
    let store = Store::here();
    let striking = Memo::new(move |_| store.scheme.with(|scheme| scheme.striking.clone()));
    let put = move |striking| store.edit(Edit::SetStriking(striking));
    let form = Form::new(striking, put);
    let computed = Memo::new(move |_| striking.with(Option::is_some));
    let hardening = Memo::new(move |_| vec![striking.get().map_or(USUAL, |striking| striking.hardening)]);
    let change = move |hardening: Vec<Hardening>| {
        let service_kpa = striking.get_untracked().and_then(|striking| striking.service_kpa);
        put(hardening.into_iter().next().map(|hardening| Striking { hardening, service_kpa }));
    };
    let times = move || {
        let times = store.settled.get().design.results.striking.clone();
        (!times.is_empty()).then(|| table(times))
    };
    unfolding::part("striking", t("Striking"), |_| {
        view! {
            <div class="fields">
                {form.toggle("Compute when forms may go", Option::is_some, |of, wanted| {
                    *of = wanted.then_some(Striking { hardening: USUAL, service_kpa: None });
                })}
                {move || computed.get().then(|| view! {
                    {fields(hardening, change)}
                    {form.number("Soffits are designed for", Unit::of("kPa", 1),
                        |of| of.as_ref().and_then(|of| of.service_kpa).unwrap_or(0.0),
                        |of, value| if let Some(of) = of {
                            of.service_kpa = Some(value).filter(|value| *value > 0.0);
                        })}
                }.into_any())}
            </div>
            {move || times()}
        }
        .into_any()
    })
}

pub(super) fn table(times: Vec<StrikingTime>) -> impl IntoView {
    let hours = |hours: Option<f64>| hours.map_or(t("never").to_owned(), |hours| units::trimmed(hours.ceil(), 0));
    let row = move |time: StrikingTime| {
        view! {
            <tr title=format!("{} {}", time.formula, time.source)>
                <td>{format!("{} {}", time.pour, t(time.form.name()))}</td>
                <td class="n">{units::amount(time.required_mpa, "MPa", 1)}</td>
                <td class="n">{hours(time.hours)}</td>
                <td class="n">{hours(time.untested_h)}</td>
            </tr>
        }
        .into_any()
    };
    view! {
        <table class="striking" data-testid="striking-times">
            <thead>
                <tr><th>{t("Forms")}</th><th class="n">{format!("{}, {}", t("need"), units::unit("MPa"))}</th><th class="n">{t("after, h")}</th><th class="n">{t("untested, h")}</th></tr>
            </thead>
            <tbody>{times.into_iter().map(row).collect_view()}</tbody>
        </table>
        <p class="quiet">{t("Hours after the last concrete of the pour. Confirm the strength by cubes or probes at the forms. Untested: BS 8110 practice (from memory).")}</p>
    }
}
