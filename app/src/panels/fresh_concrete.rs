use crate::language::{key, told};
use crate::memo::Memo;
use crate::store::Store;
use crate::units;
use crate::widgets::{Form, Unit};
use falsewright_core::results::PourFilling;
use falsewright_core::scheme::{
    CementChemistry, Concrete, Consistency, Delivery, FormElement, PressureMethod as Method,
};
use leptos::prelude::*;

/// Fields of the fresh concrete: what it is, how it arrives, how its pressure is found.
pub fn fields(concrete: Memo<Concrete>, form: Form<Concrete>) -> impl IntoView {
    view! {
        {form.number("Temperature", Unit::of("°C", 1), |of: &Concrete| of.temperature_c, |of, value| of.temperature_c = value)}
        {form.number("Unit weight", Unit::of("kN/m³", 2), |of: &Concrete| of.unit_weight_kn_m3, |of, value| of.unit_weight_kn_m3 = value)}
        {form.choice("Delivery by", DELIVERIES, by_volume, set_by_volume)}
        {move || if concrete.with(by_volume) {
            form.number("Delivery", Unit::of("m³/h", 1), rate, set_rate)
        } else {
            form.number("Rise", Unit::of("m/h", 2), rate, set_rate)
        }}
        {form.choice("Pressure", METHODS, name, set_name)}
        {move || inputs(concrete.with(name), form)}
    }
}

/// How long each pour takes, and how fast it rises where its pressure is found.
#[component]
pub fn Fillings() -> impl IntoView {
    let store = Store::here();
    let line = |filling: &PourFilling| {
        let text = say!(
            "{} fills in {}, rising {} at its forms.",
            filling.mark,
            units::unbroken(units::quantity(filling.filling.duration_h(), "h", 1)),
            units::unbroken(units::quantity(filling.governing_rise_m_h, "m/h", 2))
        );
        let warnings = filling
            .warnings
            .iter()
            .map(|warning| view! { <p>{format!("▲ {}", told(warning))}</p> }.into_any())
            .collect_view();
        view! { <p>{text}</p> {warnings} }.into_any()
    };
    let lines = move || store.settled.get().design.results.fillings.iter().map(line).collect_view();
    view! { <div class="fillings" data-testid="fillings">{move || lines()}</div> }
}

/// A method without its inputs.
#[derive(Clone, Copy, PartialEq)]
enum Name {
    Ciria,
    Din,
    Aci,
    FullHead,
}

const METHODS: &[(Name, &str)] = &[
    (Name::Ciria, "CIRIA R108"),
    (Name::Din, "DIN 18218"),
    (Name::Aci, "ACI 347"),
    (Name::FullHead, key("full head")),
];

const DELIVERIES: &[(bool, &str)] = &[(true, key("volume")), (false, key("rise"))];

const FORMS: &[(FormElement, &str)] = &[(FormElement::Wall, key("wall")), (FormElement::Column, key("column"))];

const CONSISTENCIES: &[(Consistency, &str)] = &[
    (Consistency::F1, "F1"),
    (Consistency::F2, "F2"),
    (Consistency::F3, "F3"),
    (Consistency::F4, "F4"),
    (Consistency::F5, "F5"),
    (Consistency::F6, "F6"),
    (Consistency::Scc, "SCC"),
];

const CHEMISTRIES: &[(CementChemistry, &str)] = &[
    (CementChemistry::Plain, key("I, II, III")),
    (CementChemistry::PlainRetarded, key("I, II, III retarded")),
    (CementChemistry::Blended, key("blend")),
    (CementChemistry::BlendedRetarded, key("blend, retarded")),
    (CementChemistry::HighlyBlended, key("high blend")),
];

fn name(concrete: &Concrete) -> Name {
    match concrete.method {
        Method::CiriaR108 { .. } => Name::Ciria,
        Method::Din18218 { .. } => Name::Din,
        Method::Aci347 { .. } => Name::Aci,
        Method::FullHead => Name::FullHead,
    }
}

fn set_name(concrete: &mut Concrete, chosen: Name) {
    if chosen == name(concrete) {
        return;
    }
    concrete.method = match chosen {
        Name::Ciria => Method::CiriaR108 { c1: 1.0, c2: 0.45 },
        Name::Din => Method::Din18218 { class: Consistency::F3, setting_time_h: 7.0 },
        Name::Aci => Method::Aci347 {
            element: FormElement::Wall,
            chemistry: CementChemistry::Blended,
            slump_mm: 150.0,
            vibrated_depth_m: 1.2,
        },
        Name::FullHead => Method::FullHead,
    };
}

/// The inputs of a method; a change to one that no longer applies does nothing.
fn inputs(name: Name, form: Form<Concrete>) -> AnyView {
    macro_rules! get {
        ($pattern:pat => $value:expr, $other:expr) => {
            |of: &Concrete| match of.method {
                $pattern => $value,
                _ => $other,
            }
        };
    }
    macro_rules! set {
        ($variant:ident, $field:ident) => {
            |of: &mut Concrete, value| {
                if let Method::$variant { $field, .. } = &mut of.method {
                    *$field = value;
                }
            }
        };
    }
    match name {
        Name::Ciria => view! {
            {form.number("C1, section", Unit::NONE, get!(Method::CiriaR108 { c1, .. } => c1, 1.0), set!(CiriaR108, c1))}
            {form.number("C2, materials", Unit::NONE, get!(Method::CiriaR108 { c2, .. } => c2, 0.45), set!(CiriaR108, c2))}
        }
        .into_any(),
        Name::Din => view! {
            {form.choice("Consistency", CONSISTENCIES, get!(Method::Din18218 { class, .. } => class, Consistency::F3), set!(Din18218, class))}
            {form.number("Setting time", Unit::of("h", 1), get!(Method::Din18218 { setting_time_h, .. } => setting_time_h, 7.0), set!(Din18218, setting_time_h))}
        }
        .into_any(),
        Name::Aci => view! {
            {form.choice("Form of a", FORMS, get!(Method::Aci347 { element, .. } => element, FormElement::Wall), set!(Aci347, element))}
            {form.choice("Cement", CHEMISTRIES, get!(Method::Aci347 { chemistry, .. } => chemistry, CementChemistry::Blended), set!(Aci347, chemistry))}
            {form.number("Slump", Unit::of("mm", 0), get!(Method::Aci347 { slump_mm, .. } => slump_mm, 150.0), set!(Aci347, slump_mm))}
            {form.number("Vibrated depth", Unit::of("m", 2), get!(Method::Aci347 { vibrated_depth_m, .. } => vibrated_depth_m, 1.2), set!(Aci347, vibrated_depth_m))}
        }
        .into_any(),
        Name::FullHead => ().into_any(),
    }
}

fn by_volume(concrete: &Concrete) -> bool {
    matches!(concrete.delivery, Delivery::Volume { .. })
}

fn set_by_volume(concrete: &mut Concrete, volume: bool) {
    if volume != by_volume(concrete) {
        concrete.delivery =
            if volume { Delivery::Volume { rate_m3_h: 20.0 } } else { Delivery::Rise { rate_m_h: 2.0 } };
    }
}

fn rate(concrete: &Concrete) -> f64 {
    match concrete.delivery {
        Delivery::Volume { rate_m3_h } => rate_m3_h,
        Delivery::Rise { rate_m_h } => rate_m_h,
    }
}

fn set_rate(concrete: &mut Concrete, value: f64) {
    match &mut concrete.delivery {
        Delivery::Volume { rate_m3_h } => *rate_m3_h = value,
        Delivery::Rise { rate_m_h } => *rate_m_h = value,
    }
}
