#pragma once

#include <string>
#include <vector>

#include "tools/outputs/outputs.hpp"
#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/compare.hpp"

namespace stillground::results {

/// One row a layout.
present::Table compare_table(const std::vector<Layout>& layouts);

/// The layouts as columns, as people read them.
present::Table compare_columns(const std::vector<Layout>& layouts, UnitSystem system);

/// The layouts as columns, four side by side.
std::string compare_text(const std::vector<Layout>& layouts, UnitSystem system = UnitSystem::si);

present::Json compare_json(const std::vector<Layout>& layouts);

/// Every layout's greatest and least EFT by run-year, with the limits.
present::Figure compare_figure(const std::vector<Layout>& layouts, const outputs::Drawing& drawing = {});

}  // namespace stillground::results
