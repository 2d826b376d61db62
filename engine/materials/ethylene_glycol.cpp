#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"

namespace stillground::materials {

// Source of the numbers: liquid MEG of the library.
// Pure density at 15 degC: 1117.2 by Perry's Handbook (8th ed., table 2-32), 1117.0 by the VDI Heat Atlas (PPDS
// equation), both read in the open property library `chemicals`.
const Mixture ethylene_glycol = {
    .base_temperature = 304.878,
    .base_fraction = 0.308462,
    .density = {{
        {1034, 131.1, 0.749, -106.2, -96.23, 489.1},
        {-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0},
        {-0.002692, 0.004805, -0.003995, -0.01153, 0, 0},
        {4.725e-06, 1.69e-06, 4.982e-05, 0, 0, 0},
    }},
    .heat_capacity = {{
        {3737, -1799, -993.3, 2610, 1537, -16180},
        {2.93, 10.46, 3.516, -1.189, -42.72, 0},
        {-0.004675, -0.04147, 0.05109, -0.1643, 0, 0},
        {-1.389e-05, 1.847e-05, -0.0007138, 0, 0, 0},
    }},
    .conductivity = {{
        {0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678},
        {0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555, 0},
        {-1.058e-06, 1.059e-05, -3.612e-05, 4.004e-05, 0, 0},
        {-2.789e-09, -1.142e-08, 2.365e-08, 0, 0, 0},
    }},
    .ln_viscosity = {{
        {-6.437255, 2.471, 0.03328, 1.659, 3.089, -18.65},
        {-0.0255, -0.01171, 0.01086, 0.003157, 0.01831, 0},
        {0.0001782, 0.0001052, 0.0001051, 0.0004063, 0, 0},
        {-7.669e-07, -1.634e-06, -6.475e-06, 0, 0, 0},
    }},
    .freezing_point = {257.9, -80.8, -133.4, -72.93, 100.6, 11.4},
    .warmest = 373.15,
    .largest_fraction = 0.6,
    .pure_density = 1117,
    .boiling_point = zero_celsius + 100,  // water's; glycols raise it
    .caution =
        "Antifreeze: ethylene glycol is poisonous to people, animals and groundwater, and is forbidden or needs a "
        "permit in many places; keep its safety sheet at hand.",
};

}  // namespace stillground::materials
