use super::{Row, Rows};
use falsewright_core::catalogue::{Hollow, Tube, standard_section};

/// Area cm², Iy cm⁴, Wpl cm³, Iz cm⁴.
const WORKED: [(&str, [f64; 4]); 25] = [
    ("UB 203x133x25", [32.0, 2340.0, 258.0, 308.0]),
    ("UB 254x146x31", [39.7, 4413.0, 393.0, 448.0]),
    ("UB 305x165x40", [51.3, 8503.0, 623.0, 764.0]),
    ("UB 356x171x51", [64.9, 14140.0, 896.0, 968.0]),
    ("UB 406x178x60", [76.5, 21600.0, 1199.0, 1203.0]),
    ("UB 457x191x67", [85.5, 29380.0, 1471.0, 1452.0]),
    ("UB 533x210x92", [117.0, 55230.0, 2360.0, 2389.0]),
    ("HE 200 B", [78.1, 5696.0, 643.0, 2003.0]),
    ("HE 240 B", [106.0, 11260.0, 1053.0, 3923.0]),
    ("HE 300 B", [149.0, 25170.0, 1869.0, 8563.0]),
    ("IPE 200", [28.5, 1943.0, 221.0, 142.0]),
    ("IPE 220", [33.4, 2772.0, 285.0, 205.0]),
    ("IPE 240", [39.1, 3892.0, 367.0, 284.0]),
    ("IPE 270", [45.9, 5790.0, 484.0, 420.0]),
    ("IPE 300", [53.8, 8356.0, 628.0, 604.0]),
    ("IPE 330", [62.6, 11770.0, 804.0, 788.0]),
    ("IPE 360", [72.7, 16270.0, 1019.0, 1043.0]),
    ("IPE 400", [84.5, 23130.0, 1307.0, 1318.0]),
    ("PFC 125x65x15", [18.8, 483.1, 89.9, 80.0]),
    ("PFC 150x75x18", [22.8, 861.0, 132.0, 131.0]),
    ("PFC 150x90x24", [30.4, 1162.0, 179.0, 253.0]),
    ("PFC 180x75x20", [25.9, 1370.0, 176.0, 146.0]),
    ("PFC 180x90x26", [33.2, 1817.0, 232.0, 277.0]),
    ("PFC 200x75x23", [29.9, 1963.0, 227.0, 170.0]),
    ("PFC 200x90x30", [37.9, 2523.0, 291.0, 314.0]),
];

/// Area cm², Iy cm⁴, Iz cm⁴.
const HANDBOOK: [(&str, [f64; 3]); 56] = [
    ("IPE 80", [7.64, 80.1, 8.49]),
    ("IPE 100", [10.3, 171.0, 15.9]),
    ("IPE 120", [13.2, 318.0, 27.7]),
    ("IPE 140", [16.4, 541.0, 44.9]),
    ("IPE 160", [20.1, 869.0, 68.3]),
    ("IPE 180", [23.9, 1317.0, 101.0]),
    ("IPE 450", [98.8, 33740.0, 1676.0]),
    ("IPE 500", [116.0, 48200.0, 2142.0]),
    ("IPE 550", [134.0, 67120.0, 2668.0]),
    ("IPE 600", [156.0, 92080.0, 3387.0]),
    ("HE 100 A", [21.2, 349.0, 134.0]),
    ("HE 120 A", [25.3, 606.0, 231.0]),
    ("HE 140 A", [31.4, 1033.0, 389.0]),
    ("HE 160 A", [38.8, 1673.0, 616.0]),
    ("HE 180 A", [45.3, 2510.0, 925.0]),
    ("HE 200 A", [53.8, 3692.0, 1336.0]),
    ("HE 220 A", [64.3, 5410.0, 1955.0]),
    ("HE 240 A", [76.8, 7763.0, 2769.0]),
    ("HE 260 A", [86.8, 10450.0, 3668.0]),
    ("HE 280 A", [97.3, 13670.0, 4763.0]),
    ("HE 300 A", [112.5, 18260.0, 6310.0]),
    ("HE 100 B", [26.0, 450.0, 167.0]),
    ("HE 120 B", [34.0, 864.0, 318.0]),
    ("HE 140 B", [43.0, 1509.0, 550.0]),
    ("HE 160 B", [54.3, 2492.0, 889.0]),
    ("HE 180 B", [65.3, 3831.0, 1363.0]),
    ("HE 220 B", [91.0, 8091.0, 2843.0]),
    ("HE 260 B", [118.4, 14920.0, 5135.0]),
    ("HE 280 B", [131.4, 19270.0, 6595.0]),
    ("UC 152x152x23", [29.2, 1250.0, 400.0]),
    ("UC 152x152x30", [38.3, 1748.0, 560.0]),
    ("UC 152x152x37", [47.1, 2210.0, 706.0]),
    ("UC 203x203x46", [58.7, 4568.0, 1548.0]),
    ("UC 203x203x60", [76.4, 6125.0, 2065.0]),
    ("UC 254x254x73", [93.1, 11407.0, 3908.0]),
    ("UC 254x254x89", [113.0, 14268.0, 4857.0]),
    ("UB 203x133x30", [38.2, 2896.0, 385.0]),
    ("UB 254x146x37", [47.2, 5537.0, 571.0]),
    ("UB 254x146x43", [54.8, 6544.0, 677.0]),
    ("UB 305x165x46", [58.7, 9899.0, 896.0]),
    ("UB 305x165x54", [68.8, 11696.0, 1063.0]),
    ("UB 356x171x57", [72.6, 16038.0, 1108.0]),
    ("UB 356x171x67", [85.5, 19463.0, 1362.0]),
    ("UB 406x178x54", [69.0, 18722.0, 1021.0]),
    ("UB 406x178x67", [85.5, 24331.0, 1365.0]),
    ("UB 406x178x74", [94.5, 27310.0, 1545.0]),
    ("UB 457x191x82", [104.0, 37051.0, 1871.0]),
    ("UB 457x191x98", [125.0, 45727.0, 2347.0]),
    ("UB 533x210x82", [105.0, 47539.0, 2007.0]),
    ("UB 610x229x101", [129.0, 75780.0, 2915.0]),
    ("PFC 230x75x26", [32.7, 2748.0, 181.0]),
    ("PFC 230x90x32", [41.0, 3518.0, 334.0]),
    ("PFC 260x75x28", [35.1, 3619.0, 185.0]),
    ("PFC 260x90x35", [44.4, 4728.0, 353.0]),
    ("PFC 300x90x41", [52.7, 7218.0, 404.0]),
    ("PFC 300x100x46", [58.0, 8229.0, 568.0]),
];

pub fn rows() -> Vec<Row> {
    let mut rows = Rows::new("Steel sections");
    for (name, [area, major, plastic, minor]) in WORKED {
        let source = "EN 10365 dimensions, worked independently with exact fillets; printed tables within 0.6 %";
        let got = properties(name);
        rows.from(source, "cm²", 0.005).check(format!("A of {name}"), area, got.area_mm2 * 1e-2);
        rows.from(source, "cm⁴", 0.005).check(format!("Iy of {name}"), major, got.major_inertia_mm4 * 1e-4);
        rows.from(source, "cm³", 0.005).check(format!("Wpl of {name}"), plastic, got.plastic_modulus_mm3 * 1e-3);
        rows.from(source, "cm⁴", 0.005).check(format!("Iz of {name}"), minor, got.minor_inertia_mm4 * 1e-4);
    }
    for (name, [area, major, minor]) in HANDBOOK {
        let got = properties(name);
        let source = "EN 10365 handbook values, from memory";
        rows.from(source, "cm²", 0.006).check(format!("A of {name}"), area, got.area_mm2 * 1e-2);
        rows.from(source, "cm⁴", 0.006).check(format!("Iy of {name}"), major, got.major_inertia_mm4 * 1e-4);
        rows.from(source, "cm⁴", 0.006).check(format!("Iz of {name}"), minor, got.minor_inertia_mm4 * 1e-4);
    }
    hollows(&mut rows);
    rows.rows
}

fn properties(name: &str) -> falsewright_core::catalogue::SectionProperties {
    standard_section(name).unwrap_or_else(|| panic!("no {name}")).properties()
}

fn hollows(rows: &mut Rows) {
    let source = "EN 10210-2 tables, from memory";
    for (h_mm, b_mm, t_mm, [area, major]) in
        [(100.0, 100.0, 5.0, [18.7, 279.0]), (80.0, 80.0, 5.0, [14.7, 137.0]), (150.0, 100.0, 6.3, [29.5, 898.0])]
    {
        let got = Hollow { h_mm, b_mm, t_mm }.properties();
        let of = format!("of {h_mm} × {b_mm} × {t_mm}");
        rows.from(source, "cm²", 0.006).check(format!("A {of}"), area, got.area_mm2 * 1e-2);
        rows.from(source, "cm⁴", 0.006).check(format!("Iy {of}"), major, got.major_inertia_mm4 * 1e-4);
    }
    let tube = Tube { diameter_m: 0.0483, wall_m: 0.004 };
    let printed = "Data sheet of scaffold tube to TG20 and EN 12811-2";
    rows.from(printed, "cm²", 0.002).check("A of 48.3 × 4.0", 5.57, tube.area_m2() * 1e4);
    rows.from(printed, "cm⁴", 0.003).check("I of 48.3 × 4.0", 13.8, tube.inertia_m4() * 1e8);
    rows.from(printed, "cm³", 0.001).check("Wel of 48.3 × 4.0", 5.70, tube.elastic_modulus_m3() * 1e6);
    rows.check("Wpl of 48.3 × 4.0", 7.87, tube.plastic_modulus_m3() * 1e6);
    rows.from(printed, "cm", 0.003).check("i of 48.3 × 4.0", 1.57, tube.gyration_m() * 1e2);
    rows.from(printed, "kg/m", 0.001).check("Weight of 48.3 × 4.0", 4.37, tube.mass_kg_m());
}
