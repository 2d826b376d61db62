#pragma once

#include "engine/program/notices.hpp"
#include "tools/present/figure.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/scenarios/sizing.hpp"

namespace stillground::scenarios {

/// A search and what is needed to tell of it.
struct Sized {
  Varied what = Varied::depth;
  Variation variation;
  Sizing sizing;
  model::Scenario scenario;  ///< of the answer, or of the greatest value where there is none
};

/// "depth", "spacing", "count".
const char* word_of(Varied what);

std::string sizing_text(const Sized& sized, UnitSystem system);

/// Every value that was looked at, a row each, by either method.
present::Table looks_table(const Sized& sized);

present::Json sizing_json(const Sized& sized);

/// The margin against the value, screened and marched.
present::Figure sizing_figure(const Sized& sized, UnitSystem system, const std::vector<std::string>& footnotes);

program::Notices sizing_notices(const Sized& sized);

}  // namespace stillground::scenarios
