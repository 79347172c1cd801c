use crate::widgets::{Form, Unit};
use falsewright_core::scheme::{Loads, SiteWind, Terrain};
use leptos::prelude::*;

const TERRAINS: &[(Terrain, &str)] = &[
    (Terrain::Sea, "0, coast"),
    (Terrain::I, "I, flat"),
    (Terrain::II, "II, country"),
    (Terrain::III, "III, suburb"),
    (Terrain::IV, "IV, town"),
];

/// Fields of wind, plant and warmth, empty where they are not given.
pub fn fields(loads: Memo<Loads>, form: Form<Loads>) -> impl IntoView {
    let given = Memo::new(move |_| loads.with(|loads| loads.wind.is_some()));
    view! {
        {form.optional("Basic wind", Unit::of("m/s", 1), |of: &Loads| of.wind.map(|wind| wind.basic_m_s), |of, value| {
            of.wind = value.map(|basic_m_s| of.wind.map_or(SiteWind::at(basic_m_s), |wind| SiteWind { basic_m_s, ..wind }));
        })}
        {move || given.get().then(|| of_wind(form))}
        {form.optional("Plant pushes", Unit::of("kN", 1), |of: &Loads| of.plant_kn, |of, value| of.plant_kn = value)}
        {form.optional("Temperature range", Unit::of("K", 0), |of: &Loads| of.temperature_range_k, |of, value| of.temperature_range_k = value)}
    }
}

/// What is asked of a wind that is given; a change after it was taken away does nothing.
fn of_wind(form: Form<Loads>) -> impl IntoView {
    macro_rules! set {
        ($field:ident) => {
            |of: &mut Loads, value| {
                if let Some(wind) = &mut of.wind {
                    wind.$field = value;
                }
            }
        };
    }
    view! {
        {form.choice("Terrain", TERRAINS, |of: &Loads| of.wind.map_or(Terrain::II, |wind| wind.terrain), set!(terrain))}
        {form.number("Stands for", Unit::of("days", 0), |of: &Loads| of.wind.map_or(0.0, |wind| wind.stands_days), set!(stands_days))}
        {form.number("Force coefficient", Unit::NONE, |of: &Loads| of.wind.map_or(0.0, |wind| wind.force_coefficient), set!(force_coefficient))}
    }
}
