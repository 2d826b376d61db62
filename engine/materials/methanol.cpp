#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"

namespace stillground::materials {

// Source of the numbers: liquid MMA of the library, read in its table of fluids and in a version of its data file,
// which agree. (Another version of that file takes the viscosity's exponent for the viscosity itself, a third of the
// value in the library's own tables.) Pure density at 15 degC: 799.1 by Perry's Handbook (8th ed., table 2-32), 796.8
// by the VDI Heat Atlas (PPDS equation), both read in the open property library `chemicals`; the second is nearer to
// what handbooks give at 20 degC [from memory].
const Mixture methanol = {
    .base_temperature = 276.6859,
    .base_fraction = 0.305128,
    .density = {{
        {958.1, -139.1, -110.5, -120.8, 492.7, -772.7},
        {-0.4151, -1.51, 1.828, 2.992, -13.25, 0},
        {-0.002261, 0.01113, -0.01641, 0.001455, 0, 0},
        {2.998e-07, -3.264e-05, 0.000151, 0, 0, 0},
    }},
    .heat_capacity = {{
        {3887, -1850, -376.9, -3776, -15040, 64330},
        {7.201, 29.84, -119.6, -56.11, 737.3, 0},
        {-0.08979, -0.1865, 0.9801, -0.7811, 0, 0},
        {-0.000439, -0.001718, 0.00666, 0, 0, 0},
    }},
    .conductivity = {{
        {0.4175, -0.4421, 0.2044, 0.2943, -0.08666, -2.033},
        {0.0007271, -0.002952, 0.003413, -0.0009646, -4.573e-05, 0},
        {2.823e-07, 7.336e-06, -3.665e-05, 3.174e-05, 0, 0},
        {9.718e-09, 4.328e-08, -2.791e-07, 0, 0, 0},
    }},
    .ln_viscosity = {{
        {-5.754755, 0.5448, -5.552, 3.038, 6.669, -8.472},
        {-0.03866, 0.01008, 0.08384, -0.07435, -0.09105, 0},
        {0.0002779, -0.0002809, -0.0003997, 0.0007442, 0, 0},
        {-1.543e-06, 9.811e-07, -3.466e-06, 0, 0, 0},
    }},
    .freezing_point = {246.86, -118.7, -121.8, -68.23, 12.97, 236.3},
    .warmest = 313.15,
    .largest_fraction = 0.6,
    .pure_density = 797,
    .boiling_point = zero_celsius + 64.6,  // its own, below which no mixture of it boils: CRC Handbook [from memory]
    .caution =
        "Antifreeze: methanol burns with a flame hard to see and is poisonous, also through skin and lungs; it is "
        "forbidden or needs a permit in many places; keep its safety sheet at hand.",
};

}  // namespace stillground::materials
