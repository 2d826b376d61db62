#pragma once

#include <optional>
#include <string>

#include "tools/scenarios/sizing_view.hpp"

/// What text, table, JSON and picture of a search say in the same words.
namespace stillground::scenarios {

/// The limit that came nearest to being left, and when.
struct Binding {
  std::string limit;
  double value = 0;    ///< [K]
  double came_to = 0;  ///< [K]
  std::string hour;    ///< "2052-02-11 07:00-08:00", or the month where months are judged
  std::string month;   ///< "February"
  int run_year = 0;
};

std::optional<Binding> binding_of(const Look& look, const Date& start);

/// "m", or "bores".
std::string value_units(const Variation& variation);

/// "a least value", "none keeps the limits", "all keep the limits", "no order".
const char* shape_word(Shape shape);

/// The march that is told of: the answer's, or that of the greatest value; null where there is none.
const Look* shown_look(const Sized& sized);

/// "122.5 m", "401.9 ft", "32 bores".
std::string value_text(const Sized& sized, std::size_t place, UnitSystem system);

}  // namespace stillground::scenarios
