#include <utility>

#include "tools/results/celsius.hpp"
#include "tools/results/eft_view.hpp"

namespace stillground::results {

present::Table hour_table(const record::Header& header, std::span<const record::Hour> hours) {
  using record::Hour;
  std::vector<std::pair<present::Column, double Hour::*>> means = {{{"flow", "kg s-1"}, &Hour::flow},
                                                                   {{"heat_to_ground", "W"}, &Hour::heat_to_ground}};
  if (header.has_heat_pump) {
    means.insert(means.end(), {{{"heating", "W"}, &Hour::heating},
                               {{"hot_water", "W"}, &Hour::hot_water},
                               {{"cooling", "W"}, &Hour::cooling},
                               {{"cooling_direct", "W"}, &Hour::cooling_direct},
                               {{"power", "W"}, &Hour::power},
                               {{"power_hot_water", "W"}, &Hour::power_hot_water},
                               {{"power_cooling", "W"}, &Hour::power_cooling}});
  }
  present::Table table{{{"from"}, {"time", "h"}, {"eft", "degC"}, {"lft", "degC"}}, {}};
  for (const auto& [column, member] : means) table.columns.push_back(column);
  table.rows.reserve(hours.size());
  for (std::size_t h = 0; h < hours.size(); ++h) {
    auto& row = table.rows.emplace_back();
    row.reserve(table.columns.size());
    row = {iso_hour(header.start, static_cast<double>(h)), static_cast<long>(h + 1), celsius(hours[h].eft),
           celsius(hours[h].lft)};
    for (const auto& [column, member] : means) row.emplace_back(hours[h].*member);
  }
  return table;
}

}  // namespace stillground::results
