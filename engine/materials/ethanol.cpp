#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"

namespace stillground::materials {

// Source of the numbers: liquid MEA of the library.
// Pure density at 15 degC: 794.7 by Perry's Handbook (8th ed., table 2-32), 794.3 by the VDI Heat Atlas (PPDS
// equation), both read in the open property library `chemicals`.
const Mixture ethanol = {
    .base_temperature = 281.3078,
    .base_fraction = 0.292361,
    .density = {{
        {961.9, -143.3, -226, -169, 1291, -831.8},
        {-0.5222, -1.989, 2.281, 8.594, -15.9, 0},
        {-0.003281, 0.0187, -0.0008581, -0.09607, 0, 0},
        {1.569e-05, -9.154e-05, 4.056e-05, 0, 0, 0},
    }},
    .heat_capacity = {{
        {4204, -2102, -3714, 17430, -6292, -82900},
        {2.319, 49.27, -23.35, -296.9, 535.3, 0},
        {-0.03042, -0.3072, -0.196, 1.901, 0, 0},
        {0.000686, -0.00569, 0.007461, 0, 0, 0},
    }},
    .conductivity = {{
        {0.4067, -0.5008, 0.2801, -0.02009, -0.1506, -0.1653},
        {0.0006775, -0.002377, 0.002669, -0.006813, 0.01167, 0},
        {3.105e-07, -3.216e-06, -3.606e-05, 0.0001429, 0, 0},
        {-2e-08, 8.362e-09, 1.552e-07, 0, 0, 0},
    }},
    .ln_viscosity = {{
        {-5.433755, 1.565, -8.435, 7.552, 15.29, -41.3},
        {-0.04745, -0.004106, 0.164, -0.1118, -0.09481, 0},
        {0.0004314, -0.0005135, -0.001091, 0.001899, 0, 0},
        {-3.023e-06, 7.004e-06, -1.967e-05, 0, 0, 0},
    }},
    .freezing_point = {253.74, -95.4, -26.48, 385.1, -28.58, -1670},
    .warmest = 313.15,
    .largest_fraction = 0.6,
    .pure_density = 794.5,
    .boiling_point = zero_celsius + 78.3,  // its own, below which no mixture of it boils: CRC Handbook [from memory]
    .caution =
        "Antifreeze: ethanol burns, pure or mixed strongly: no flame or spark near it, air the room; it needs a permit "
        "in many places; keep its safety sheet at hand.",
};

}  // namespace stillground::materials
