#include "engine/base/temperature.hpp"
#include "engine/materials/mixture.hpp"

namespace stillground::materials {

// Source of the numbers: liquid MKA of the library, fractions there in per cent. A salt: there is no liquid of its own
// for fractions by volume. Zinc: Material compatibility of potassium acetate runway deicers, technical bulletin 5
// (1998, revised 2000), read on p2infohouse.org.
const Mixture potassium_acetate = {
    .base_temperature = 279.9257,
    .base_fraction = 0.256757,
    .density = {{
        {1138, 579.6, 130.6, -1427, 935.3, 22850},
        {-0.3565, -0.79, 0.6845, 0.8304, 2.322, 0},
        {-0.00202, 0.002753, -0.0113, 0.01303, 0, 0},
        {4.205e-06, 5.14e-06, 0.0002433, 0, 0, 0},
    }},
    .heat_capacity = {{
        {3327, -2895, 466.3, -1249, 16590, -4612},
        {1.806, 4.131, 7.775, 51.15, -519.3, 0},
        {-0.001766, 0.04429, 0.3463, -2.987, 0, 0},
        {4.357e-05, 0.001125, -0.007261, 0, 0, 0},
    }},
    .conductivity = {{
        {0.4958, -0.2931, 0.1032, -0.2024, -0.2371, 5.515},
        {0.00134, -0.001477, -0.002396, -0.005541, 0.05573, 0},
        {6.837e-08, 4.659e-06, -4.352e-05, 8.984e-05, 0, 0},
        {2.637e-09, 2.886e-08, -2.23e-07, 0, 0, 0},
    }},
    .ln_viscosity = {{
        {-5.865755, 3.405, 5.017, 5.637, -29.22, -79.6},
        {-0.03071, -0.01511, -0.07779, 0.02534, 0.4601, 0},
        {0.0002819, 0.0001172, 0.0009125, 0.001596, 0, 0},
        {-2.19e-06, -2.379e-06, -1.888e-05, 0, 0, 0},
    }},
    .freezing_point = {256.11, -122.8, -386.2, -457.1, 2969, 8690},
    .warmest = 313.15,
    .largest_fraction = 0.45,
    .pure_density = 0,
    .boiling_point = zero_celsius + 100,  // water's; salts raise it
    .caution =
        "Antifreeze: potassium acetate in water slowly dissolves zinc and gives off hydrogen there: no galvanised "
        "pipe or fitting; ask the makers of pumps, seals and other metal parts; it needs a permit in many "
        "places; keep its safety sheet at hand.",
};

}  // namespace stillground::materials
