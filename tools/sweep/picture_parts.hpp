#pragma once

#include <vector>

#include "tools/present/axis.hpp"
#include "tools/present/figure.hpp"
#include "tools/present/panel.hpp"
#include "tools/results/temperature_scale.hpp"
#include "tools/sweep/pictures.hpp"

/// What the pictures of a sweep share.
namespace stillground::sweep {

/// A point on the plot: filled where it was marched, hollow where it was screened.
present::Line point_line(const present::Point& at, const Record& record);

/// What these signs mean, of those that occur.
std::vector<present::Key> method_keys(const Told& told);

/// The limits on hourly EFT on this side, those of the first point that can be read; none where limits are varied.
std::vector<present::Level> eft_levels(const Told& told, bool least, const results::TemperatureScale& scale,
                                       present::Range& range);

}  // namespace stillground::sweep
