#include "tools/results/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <limits>

#include "tools/results/notices.hpp"
#include "tools/results/phases.hpp"

namespace stillground::results {

Layout layout_of(const record::read::Result& result) {
  const record::Header& header = result.header();
  const FluidSummary fluid = summarise(header, result.hours(), result.minutes());
  const std::vector<double> nearest = nearest_distances(header.bores);
  Layout layout;
  layout.file = result.file().string();
  layout.title = header.title;
  layout.method = header.method;
  layout.notices = notices_of(header);
  layout.years = header.years;
  layout.start = header.start;
  layout.bores = static_cast<long>(header.bores.size());
  const auto [least, most] = std::minmax_element(header.bores.begin(), header.bores.end(),
                                                 [](const auto& a, const auto& b) { return a.depth < b.depth; });
  layout.least_depth = least->depth;
  layout.most_depth = most->depth;
  layout.phases = later_starts(header.bores);
  layout.drill_length = header.drill_length;
  layout.spacing =
      nearest.empty() ? std::numeric_limits<double>::quiet_NaN() : *std::min_element(nearest.begin(), nearest.end());
  layout.land_area = ground_block(header.bores).area();
  layout.fluid = fluid.years;
  layout.energy = fluid.energy;
  layout.limits = fluid.limits;
  layout.minutes = fluid.minutes;
  layout.minute_years_beyond = minute_years_beyond(fluid.limits);
  layout.hours_beyond = periods_beyond(header, result.hours(), false);
  layout.months_beyond = periods_beyond(header, result.hours(), true);
  if (has_fields(result)) layout.drift = drift_of(result);
  return layout;
}

std::vector<std::string> short_names(const std::vector<std::string>& files) {
  std::vector<std::string> stems;
  for (const std::string& file : files) stems.push_back(std::filesystem::path(file).stem().string());
  std::vector<std::string> names = stems;
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (std::count(stems.begin(), stems.end(), stems[i]) < 2) continue;
    const std::string folder = std::filesystem::absolute(files[i]).parent_path().filename().string();
    names[i] = folder + "/" + stems[i];
  }
  const std::vector<std::string> in_folders = names;
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (std::count(in_folders.begin(), in_folders.end(), in_folders[i]) > 1) names[i] += fmt::format(" ({})", i + 1);
  }
  return names;
}

}  // namespace stillground::results
