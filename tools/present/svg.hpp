#pragma once

#include <string>

#include "tools/present/figure.hpp"

namespace stillground::present {

/// The picture as one self-contained SVG element: 900 units wide, text of 17 units and more, every series named where
/// it ends, white ground, with a title and a description for readers of screens. It may stand alone or inside a page.
std::string svg(const Figure& figure);

}  // namespace stillground::present
