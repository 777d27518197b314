// SPDX-License-Identifier: MIT
// Good questions to start from; each has every field of its question.
#pragma once

#include <array>
#include <string_view>

namespace shimlight::fuzz {

struct Seed {
    std::string_view question, text;
};

inline constexpr std::array seeds{
    Seed{"glazing", R"({"method":"detailed","tilt_deg":60,"height_m":1.2,"panes":[
        {"thickness_m":0.003,"conductivity_w_mk":1,"emissivity_out":0.84,"emissivity_in":0.05},
        {"thickness_m":0.004}],"gaps":[{"width_m":0.0127,"gas":{"argon":0.9,"air":0.1}}],
        "outside":{"air_c":-18,"wind_m_s":5.5,"radiant_c":-25},
        "inside":{"air_c":21,"convective_w_m2k":3}})"},
    Seed{"glazing", R"({"method":"declared","panes":[{"thickness_m":0.004},{"thickness_m":0.004},
        {"thickness_m":0.004}],"gaps":[{"width_m":0.012,"gas":{"sf6":0.5,"krypton":0.5}},
        {"width_m":0.012}],"outside":{"film_w_m2k":25},"inside":{"film_w_m2k":7.7}})"},
    Seed{"section", R"({"width_m":0.5,"height_m":0.0475,"airs":{"outside":{"air_c":0,
        "film_w_m2k":25},"inside":{"air_c":20,"film_w_m2k":7.7},"ice":{"surface_c":0}},
        "regions":[{"x0_m":0,"y0_m":0,"x1_m":0.5,"y1_m":0.0475,"conductivity_w_mk":0.029},
        {"x0_m":0.1,"y0_m":0,"x1_m":0.5,"y1_m":0.01,"air":"inside"},
        {"x0_m":0.2,"y0_m":0.02,"x1_m":0.25,"y1_m":0.04,
        "cavity":{"emissivity":0.9,"ventilation":"none","flow":"y"}}],
        "edges":[{"side":"left","from_m":0,"to_m":0.0475,"air":"outside"}],
        "probes":[[0.25,0.02]],"accuracy":"draft"})"},
    Seed{"comfort", R"({"air_c":22,"radiant_c":22,"speed_m_s":0.1,"rh":0.6,"met":1.2,"clo":0.5,
        "turbulence_pct":40,"ankle":{"air_c":19,"speed_m_s":0.2}})"},
    Seed{"room", R"({"window":{"width_m":1.2,"height_m":1.5,"sill_m":0.6,"surface_c":6.5,
        "frame_c":8},"room":{"air_c":21,"rh":0.4,"width_m":4,"depth_m":4,"height_m":2.5,
        "surfaces_c":20},"person":{"distance_m":1,"posture":"seated","met":1.1,"clo":0.9},
        "leaks":[{"where":"shim_left","flow_m3_s":0.001,"air_c":-5,"gap_m":0.004,"length_m":1.5,
        "height_m":1.3}]})"},
    Seed{"leak", R"({"cracks":[{"gap_m":0.002,"depth_m":0.1,"length_m":3,"bends":2},
        {"coefficient_m3_s_pan":0.0002,"exponent":0.65},
        {"rating_l_s_m2":1.5,"area_m2":1.8,"rating_pa":75}],"drive":{"inside_c":21,
        "outside_c":-10,"wind_m_s":4,"height_above_neutral_m":-2.5,"pressure_coefficient":0.6,
        "shelter":0.5}})"},
    Seed{"leak", R"({"cracks":[{"gap_m":0.002,"depth_m":0.1,"length_m":3}],"pressure_pa":4,
        "air_c":0})"},
    Seed{"moisture", R"({"air_c":21,"rh":0.4,"surface_c":6.5,"outside_c":-10})"},
    Seed{"thermography", R"({"reading_c":10,"set_emissivity":0.95,"surface_emissivity":0.84,
        "reflected_c":20,"inside_c":21,"outside_c":-5,"error_k":2,"height_m":1,"angle_deg":30,
        "side":"inside","wind_m_s":4,"emissivity_error":0.03,"inside_error_k":0.5,
        "window":{"glazing":{"panes":2,"gas":"argon","coating":"face3"}}})"},
    Seed{"thermography", R"({"reading_c":-3,"reflected_c":-20,"inside_c":21,"outside_c":-5,
        "side":"outside","sky":"clear","wind_error_m_s":1,"outside_error_k":2,
        "reflected_error_k":5})"},
    Seed{"thermography", R"({"reading_c":2,"inside_c":21,"outside_c":-5,"part":"casing",
        "window":{"shim":{"fill":"foamed"},"pockets":"empty"}})"},
    Seed{"thermography", R"({"reading_c":2,"inside_c":21,"outside_c":-5,"sky":"clear",
        "window":{"covering":"curtain","glazing":{"storm":"clear"}}})"},
    Seed{"find_out", R"({"prediction":{"cold_glass":0.5,"sash_leak":0.3,"shim_leak":0.2},
        "answers":{"lock_home":"same","wind":"yes","tissue_pane":"yes","tissue_sash":"no",
        "tissue_casing":"yes","fans":"grows","shade":"no","paper":"no","flame":"yes",
        "tape_sash":"same","tape_casing":"weaker","glass_reading":"colder"},
        "thermometer":true})"},
    Seed{"find_out", R"({"case":{"today":{"shim":{"fill":"open"}},"room":{"rh":0.35},
        "weather":{"outside_c":-12},"running":{"efficiency":0.9}},"remedy":"foam_joint","hour":70,
        "readings":{"glass_c":-2,"frame_c":5,"casing_c":9,"error_k":1}})"},
    Seed{"year", R"({"climate":"Boston MA","window":{"conduction_w_k":6,"facing_deg":200,
        "tilt_deg":45,"glass":{"area_m2":0.9,"shgc":0.75,"by_angle":[1,1,1,1,0.9,0.9,0.8,0.6,0.3,0],
        "diffuse":0.88},"shade":0.2,"leak":{"coefficient_m3_s_pan":0.0006,"exponent":0.65,
        "height_above_neutral_m":-1.5,"shelter":0.5}},"remedy":{"conduction_w_k":2.4,
        "glass":{"shgc":0.35}},"house":{"heating_c":20,"cooling_c":25,"conductance_w_k":250,
        "gains_w":500,"sun_area_m2":6,"capacity_j_k":25000000,"air_elsewhere":0.5},
        "degree_day_base_c":18,"day_of_month":1,"thermostat_lower_k":1,"money":{"fuel":"natural gas",
        "price_per_unit":1.9,"kg_co2_per_unit":5.3,"efficiency":0.8,"cooling":{
        "price_per_kwh":0.3,"cop":3,"kg_co2_per_kwh":0.4},"hours":5,"rate_per_h":85,
        "material":700,"life_years":25,"discount":0.04,"escalation":0.02,"seed":7,"spread":{
        "conduction":0.15,"leakage_factor":2.5,"sun":0.25,"cooling":0.4,"house":0.15,
        "price_of_fuel":0.15,"price_of_work":0.15,"escalation":0.02}}})"},
    Seed{"year", R"({"climate":{"latitude_deg":45,"elevation_m":300,"months":[
        {"mean_c":-5,"swing_k":8,"wind_m_s":4,"sun_wh_m2":1500},{"mean_c":-4,"sun_wh_m2":2300,
        "wall_sun_wh_m2":{"north":700,"east":1400,"south":3000,"west":1500}},
        {"mean_c":1,"sun_wh_m2":3300},{"mean_c":7,"sun_wh_m2":4200},{"mean_c":13,"sun_wh_m2":5000},
        {"mean_c":18,"sun_wh_m2":5600},{"mean_c":21,"sun_wh_m2":5700},{"mean_c":20,
        "sun_wh_m2":4900},{"mean_c":16,"sun_wh_m2":3800},{"mean_c":9,"sun_wh_m2":2500},
        {"mean_c":3,"sun_wh_m2":1500},{"mean_c":-2,"sun_wh_m2":1200}]},"window":{
        "conduction_w_k":3,"facing_deg":90,"glass":{"area_m2":1,"shgc":0.5}}})"},
    Seed{"label", R"({"units":"us","u":0.3,"shgc":0.3,"light":0.5,"air":0.2,"frame":"vinyl",
        "panes":2,"builds":1})"},
    Seed{"words", R"({"text":"old wood hung window, single glass, no storm, loose, 36 x 60 in"})"},
    Seed{"house", R"({"kind":"shimlight-house","version":1,"name":"a","currency":"$","units":"si",
        "weather":{"outside_c":-12,"wind_m_s":4},"openings":[{"name":"b","room_name":"r",
        "notes":"n","observations":{"frost":"yes","sill":"no"},"answers":{"light":"yes"},
        "photos":[{"id":"0123456789abcdef","words":"w"}],"today":{"frame":"vinyl",
        "shim":{"width_m":0.0127,"fill":"open"},"tilt_deg":60,
        "glazing":{"panes":2,"coating":"faces2and4","coating_kind_2":"hard","emissivity_2":0.2}},
        "room":{"rh":0.35,"storey":"attic","storeys":3},
        "remedies":[{"name":"c","hours":1,"material_cost":9,"changes":{"shim.fill":"foamed"}}],
        "chosen":0}],"selected":0})"},
};

} // namespace shimlight::fuzz
