#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"

namespace stillground::materials {

// Source of the numbers: liquid MPG of the library; the freezing point is fitted in x alone.
// Pure density at 15 degC: 1040.1 by the DIPPR 105 correlation of Perry's Handbook (8th ed., table 2-32), read in the
// open property library `chemicals`.
const Mixture propylene_glycol = {
    .base_temperature = 305.8583,
    .base_fraction = 0.307031,
    .density = {{
        {1018, 76.04, -24.98, -155, -113.1, 234.2},
        {-0.5406, -0.945, 0.27, 2.829, -2.221, 0},
        {-0.002666, 0.005541, -0.004018, -0.007175, 0, 0},
        {1.347e-05, -1.343e-05, 3.376e-05, 0, 0, 0},
    }},
    .heat_capacity = {{
        {3882, -1304, -1598, 353.9, 5000, -4959},
        {2.699, 5.07, 0.9534, 31.02, -71.35, 0},
        {-0.001659, -0.004752, 0.1167, -0.295, 0, 0},
        {-1.032e-05, 0.0001522, -0.000487, 0, 0, 0},
    }},
    .conductivity = {{
        {0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104},
        {0.0007955, -0.001678, 0.001563, -0.002518, -0.003605, 0},
        {3.482e-08, 8.941e-06, -4.615e-05, 6.543e-05, 0, 0},
        {-5.966e-09, 1.493e-08, 9.897e-08, 0, 0, 0},
    }},
    .ln_viscosity = {{
        {-6.224055, 3.328, 0.5453, -3.9, -1.587, 35.64},
        {-0.03045, -0.03984, -0.00086, 0.1054, 0.04475, 0},
        {0.0002525, 0.0004332, -0.0001593, -0.001589, 0, 0},
        {-1.399e-06, -1.86e-06, -4.465e-07, 0, 0, 0},
    }},
    .freezing_point = {259.9, -66.31, -109.4, -228.3, -340.9, 146.5},
    .warmest = 373.15,
    .largest_fraction = 0.6,
    .pure_density = 1040,
    .boiling_point = zero_celsius + 100,  // water's; glycols raise it
    .caution =
        "Antifreeze: propylene glycol needs a permit in many places; keep its safety sheet at hand and spills out of "
        "ground and drains.",
};

}  // namespace stillground::materials
