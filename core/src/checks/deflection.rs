use super::comparison::Comparison;
use crate::formula::number;
use crate::results::{CheckKind, Verdict};

/// Deflection against a part of the span, in millimetres.
pub fn check_deflection(deflection_m: f64, span_m: f64, span_over_deflection: f64) -> Verdict {
    let (deflection_mm, span_mm) = (deflection_m.abs() * 1e3, span_m * 1e3);
    let comparison = Comparison {
        check: CheckKind::Deflection,
        demand: deflection_mm,
        resistance: span_mm / span_over_deflection,
        unit: "mm",
        source: "Limit of deflection set in the scheme".into(),
    };
    let numbers =
        formula!("{} mm / ({} mm / {})", number(deflection_mm), number(span_mm), number(span_over_deflection));
    comparison.verdict("δ / (L / n)", numbers)
}
