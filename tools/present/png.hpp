#pragma once

#include <string>

namespace stillground::present {

/// Renders an SVG picture as the bytes of a PNG file, `scale` pixels per unit. Throws SystemError if the renderer
/// (librsvg) refuses.
std::string png(const std::string& svg, double scale = 2);

}  // namespace stillground::present
