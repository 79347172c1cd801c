"""Works out section properties and Eurocode formulas with general-purpose libraries, as JSON on standard output."""

import json
import sys

from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_3_materials.table_3_1 import (
    SteelStrengthClass,
    Table3Dot1NominalValuesHotRolledStructuralSteel,
)
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_13 import (
    Form6Dot13MCRdClass1And2,
)
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_18 import (
    Form6Dot18DesignPlasticShearResistance,
)
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_18_sub_av import (
    Form6Dot18SubARolledIandHSection,
    Form6Dot18SubBRolledChannelSection,
)
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_29rho import Form6Dot29Rho
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_30 import (
    Form6Dot30ReducedPlasticResistanceMoment,
)
from blueprints.codes.eurocode.en_1993_1_1_2005.chapter_6_ultimate_limit_state.formula_6_36 import (
    Form6Dot36MomentReduction,
)
from blueprints.codes.eurocode.en_1993_1_8_2005.chapter_3_connections_made_with_bolts_rivets_or_pins.table_3_4 import (
    Table3Dot4TensionResistanceBolt,
)
from blueprints.codes.eurocode.en_338_2016.chapter_5_classification_of_structural_timber.table_1 import (
    SoftwoodStrengthClassBending,
    Table1StrengthClassesSoftwoodBending,
)
from sectionproperties.analysis import Section
from sectionproperties.pre.library import channel_section, i_section, rectangular_hollow_section
from structuralcodes.codes import ec2_2004

I_SECTIONS = {
    "UB 203x133x25": (203.2, 133.2, 5.7, 7.8, 7.6),
    "UB 305x165x40": (303.4, 165.0, 6.0, 10.2, 8.9),
    "UB 457x191x67": (453.4, 189.9, 8.5, 12.7, 10.2),
    "HE 200 B": (200, 200, 9, 15, 18),
    "HE 300 B": (300, 300, 11, 19, 27),
    "IPE 200": (200, 100, 5.6, 8.5, 12),
    "IPE 330": (330, 160, 7.5, 11.5, 18),
}
CHANNELS = {
    "PFC 125x65x15": (125, 65, 5.5, 9.5, 12),
    "PFC 150x75x18": (150, 75, 5.5, 10, 12),
    "PFC 200x90x30": (200, 90, 7, 14, 12),
}
HOLLOWS = {"SHS 100x100x5": (100, 100, 5), "RHS 150x100x6.3": (150, 100, 6.3)}

cases = []


def case(identity, topic, library, inputs, expected):
    expected = {name: float(f"{float(value):.7g}") for name, value in expected.items()}
    cases.append({"id": identity, "topic": topic, "source": library, "inputs": inputs, "expected": expected})


def properties(geometry, thickness):
    geometry.create_mesh(mesh_sizes=[thickness * thickness / 4])
    section = Section(geometry)
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    section.calculate_plastic_properties()
    major, minor, _ = section.get_ic()
    plastic, _ = section.get_s()
    return {
        "area_mm2": section.get_area(),
        "major_inertia_mm4": major,
        "minor_inertia_mm4": minor,
        "plastic_modulus_mm3": plastic,
        "torsion_mm4": section.get_j(),
        "warping_mm6": section.get_gamma(),
    }


SECTIONS = "sectionproperties 3.10.2, finite elements"
CODES = "structuralcodes 0.7.2"
FORMULAS = "blue-prints 0.8.0"

for name, (h, b, tw, tf, r) in I_SECTIONS.items():
    geometry = i_section(d=h, b=b, t_f=tf, t_w=tw, r=r, n_r=16)
    case(name, "i", SECTIONS, {"h": h, "b": b, "tw": tw, "tf": tf, "r": r}, properties(geometry, tw))
for name, (h, b, tw, tf, r) in CHANNELS.items():
    # The library's channel has tapering roots of one radius, as a parallel-flange channel has.
    geometry = channel_section(d=h, b=b, t_f=tf, t_w=tw, r=r, n_r=16)
    case(name, "channel", SECTIONS, {"h": h, "b": b, "tw": tw, "tf": tf, "r": r}, properties(geometry, tw))
for name, (h, b, t) in HOLLOWS.items():
    geometry = rectangular_hollow_section(d=h, b=b, t=t, r_out=1.5 * t, r_in=t, n_r=16)
    expected = {key: value for key, value in properties(geometry, t).items() if key != "warping_mm6"}
    case(f"{name} hot finished", "hollow", SECTIONS, {"h": h, "b": b, "t": t}, expected)

for fck in (20, 25, 30, 40, 50):
    fcm = ec2_2004.fcm(fck)
    case(f"concrete C{fck}", "concrete", CODES, {"fck": fck}, {"fctm": ec2_2004.fctm(fck), "Ecm": ec2_2004.Ecm(fcm)})
for cement in "RNS":
    s = ec2_2004.s_time_development(cement)
    for days in (1, 3, 7, 14, 56):
        beta = ec2_2004.beta_cc(days, s)
        expected = {"beta_cc": beta, "fcm": ec2_2004.fcm_time(ec2_2004.fcm(30), beta)}
        case(f"hardening {cement} {days} d", "hardening", CODES, {"cement": cement, "days": days, "fck": 30}, expected)
for history in ([(24, 20)], [(24, 5)], [(12, 30), (36, 12)], [(48, 10), (24, 2)]):
    celsius, hours = [part[1] for part in history], [part[0] for part in history]
    age = ec2_2004.t_T(celsius, [h / 24 for h in hours]) * 24
    label = " then ".join(f"{h} h at {c} °C" for h, c in history)
    case(f"equivalent age, {label}", "age", CODES, {"history": history}, {"hours": age})

for name, (h, b, tw, tf, r) in I_SECTIONS.items():
    section = next(one for one in cases if one["id"] == name)["expected"]
    area = Form6Dot18SubARolledIandHSection(
        a=section["area_mm2"], b1=b, b2=b, hw=h - 2 * tf, r1=r, r2=r, tf1=tf, tf2=tf, tw=tw, eta=1.0
    )
    shear = Form6Dot18DesignPlasticShearResistance(a_v=float(area), f_y=275, gamma_m0=1.0)
    moment = Form6Dot13MCRdClass1And2(w_pl=section["plastic_modulus_mm3"], f_y=275, gamma_m0=1.0)
    rho = Form6Dot29Rho(v_ed=0.8 * float(shear), v_pl_rd=float(shear))
    reduced = Form6Dot30ReducedPlasticResistanceMoment(
        w_pl_y=section["plastic_modulus_mm3"],
        rho=float(rho),
        h_w=h - 2 * tf,
        t_w=tw,
        f_y=275,
        gamma_m0=1.0,
        m_y_c_rd=float(moment),
    )
    share = min((section["area_mm2"] - 2 * b * tf) / section["area_mm2"], 0.5)
    axial = Form6Dot36MomentReduction(mpl_y_rd=float(moment), a=share, n=0.4)
    expected = {
        "shear_area_mm2": area,
        "shear_kn": float(shear) / 1e3,
        "moment_knm": float(moment) / 1e6,
        "moment_at_0.8_shear_knm": float(reduced) / 1e6,
        "moment_at_0.4_axial_knm": float(axial) / 1e6,
    }
    case(f"{name} S275 resistances", "resistance", FORMULAS, {"h": h, "b": b, "tw": tw, "tf": tf, "r": r, "fy": 275}, expected)
for name, (h, b, tw, tf, r) in CHANNELS.items():
    section = next(one for one in cases if one["id"] == name)["expected"]
    area = Form6Dot18SubBRolledChannelSection(a=section["area_mm2"], b=b, tf=tf, tw=tw, r=r)
    case(f"{name} shear area", "channel shear", FORMULAS, {"h": h, "b": b, "tw": tw, "tf": tf, "r": r}, {"shear_area_mm2": area})
for area, strength in ((177, 1100), (314, 1100), (245, 800)):
    tension = Table3Dot4TensionResistanceBolt(f_ub=strength, a_s=area, gamma_m2=1.25)
    case(f"rod {area} mm² {strength} N/mm²", "bolt", FORMULAS, {"As": area, "fu": strength}, {"kn": float(tension) / 1e3})
for grade in ("S235", "S275", "S355"):
    for thickness in (10,):
        steel = next(one for one in SteelStrengthClass if one.name.endswith(grade))
        table = Table3Dot1NominalValuesHotRolledStructuralSteel(steel_class=steel, thickness=thickness)
        case(f"{grade} {thickness} mm", "yield", FORMULAS, {"grade": grade, "t": thickness}, {"fy": table.fy})
for name in ("C16", "C18", "C24", "C27", "C30"):
    table = Table1StrengthClassesSoftwoodBending(timber_class=SoftwoodStrengthClassBending[name])
    expected = {
        "bending": table.f_m_k,
        "shear": table.f_v_k,
        "bearing": table.f_c_90_k,
        "compression": table.f_c_0_k,
        "modulus": table.e_m_0_mean,
        "modulus_005": table.e_m_0_k,
    }
    case(f"{name} of EN 338:2016", "timber", FORMULAS, {"class": name}, expected)

json.dump(cases, sys.stdout, indent=1, ensure_ascii=False)
print()
