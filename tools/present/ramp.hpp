#pragma once

#include <cstddef>
#include <string>

namespace stillground::present {

/// The colour of a band of a map, from dark (0, below all levels) to light (`levels`, above them): slate, sea, sage,
/// straw, cream. Lightness alone tells bands apart, so that grey prints and colour-blind eyes lose nothing.
std::string ramp_colour(std::size_t band, std::size_t levels);

}  // namespace stillground::present
