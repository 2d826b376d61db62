#pragma once

#include <string>

#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/results/drift.hpp"
#include "tools/results/eft_view.hpp"

namespace stillground::results {

/// All run-years: rise, temperature and trend of the ground block, the same of the mid-points, the undisturbed ground.
present::Table drift_table(const Source& source, const Drift& drift);

std::string drift_text(const Source& source, const Block& block, const Drift& drift,
                       UnitSystem system = UnitSystem::si);
present::Json drift_json(const Source& source, const Block& block, const Drift& drift);

/// Yearly means of block and mid-points, the trend, the undisturbed ground and the final state.
present::Figure drift_figure(const Source& source, const Drift& drift, const outputs::Drawing& drawing = {});

}  // namespace stillground::results
