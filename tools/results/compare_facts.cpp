#include "tools/results/compare_facts.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <string>

#include "tools/results/celsius.hpp"
#include "tools/results/energy_view.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/minutes.hpp"
#include "tools/results/months.hpp"

namespace stillground::results {

namespace {

using present::Cell;
using present::Column;

template <class Get>
Fact fact(const std::vector<Layout>& layouts, const Column& column, Get get) {
  Fact one{column, {}};
  for (const Layout& layout : layouts) one.cells.push_back(get(layout));
  return one;
}

Cell eft_of(const Layout& layout, int run_year, double Spread::*which) {
  if (run_year > layout.years) return {};
  return celsius(layout.fluid[static_cast<std::size_t>(run_year - 1)].eft.*which);
}

Cell drift_figure_of(const Layout& layout, double Drift::*which) {
  return layout.drift ? Cell((*layout.drift).*which) : Cell();
}

Cell over_run(const Layout& layout, double Spread::*which, bool least) {
  double found = std::numeric_limits<double>::quiet_NaN();
  for (const YearFluid& year : layout.fluid) {
    const double value = celsius(year.eft.*which);
    if (!(least ? value >= found : value <= found)) found = value;  // also takes the first, found being NaN
  }
  return found;
}

Cell first_year_beyond(const Layout& layout) {
  const std::optional<int> year = results::first_year_beyond(layout.limits);
  return year ? Cell(static_cast<long>(*year)) : Cell();
}

bool has_limit(const Layout& layout, const std::string& over) {
  return results::has_limit(layout.limits, over);
}

bool any_has_limit(const std::vector<Layout>& layouts, const std::string& over) {
  return std::any_of(layouts.begin(), layouts.end(), [&](const Layout& l) { return has_limit(l, over); });
}

/// The farthest minute of all years.
Cell minute_of(const Layout& layout, bool least) {
  const auto farthest = farthest_minute(layout.minutes, least);
  return farthest ? Cell(celsius(farthest->eft)) : Cell();
}

std::string limit_cell(const Layout& layout, const std::string& name) {
  for (const LimitOutcome& outcome : layout.limits) {
    if (outcome.limit.name == name) return first_beyond_text(outcome, layout.start);
  }
  return "no limit";
}

/// The names of all layouts' limits, in their order.
std::vector<std::string> limit_names(const std::vector<Layout>& layouts) {
  std::vector<std::string> names;
  for (const Layout& layout : layouts) {
    for (const LimitOutcome& outcome : layout.limits) {
      if (std::find(names.begin(), names.end(), outcome.limit.name) == names.end()) names.push_back(outcome.limit.name);
    }
  }
  return names;
}

void add_extremes(std::vector<Fact>& facts, const std::vector<Layout>& layouts) {
  int longest = 0;
  for (const Layout& layout : layouts) longest = std::max(longest, layout.years);
  const auto add = [&](const std::string& end, const std::string& when, auto year_of) {
    facts.push_back(fact(layouts, {"eft_min_" + end, "degC", "least EFT, " + when, 2},
                         [&](const Layout& l) { return eft_of(l, year_of(l), &Spread::least); }));
    facts.push_back(fact(layouts, {"eft_max_" + end, "degC", "greatest EFT, " + when, 2},
                         [&](const Layout& l) { return eft_of(l, year_of(l), &Spread::most); }));
  };
  add("first_year", "year 1", [](const Layout&) { return 1; });
  if (longest >= 10) add("tenth_year", "year 10", [](const Layout&) { return 10; });
  if (longest > 1) add("last_year", "last year", [](const Layout& l) { return l.years; });
}

/// Active lengths, one where all bores are alike.
Fact depths_of(const std::vector<Layout>& layouts) {
  const auto end = [](double Layout::*which) { return [which](const Layout& l) { return Cell(l.*which); }; };
  Fact depths = fact(layouts, {"depth_min", "m", "bore depth", 1}, end(&Layout::least_depth));
  Fact most = fact(layouts, {"depth_max", "m"}, end(&Layout::most_depth));
  depths.upper = most.column;
  depths.to = most.cells;
  return depths;
}

void add_limits(std::vector<Fact>& facts, const std::vector<Layout>& layouts) {
  const auto add = [&](const Column& column, auto get) { facts.push_back(fact(layouts, column, get)); };
  add({"margin", "K", "margin to nearest limit", 2}, [](const Layout& l) { return Cell(margin_of(l.limits)); });
  add({"hours_beyond", "h", "hours beyond a limit"},
      [](const Layout& l) { return has_limit(l, "hour") ? Cell(l.hours_beyond) : Cell(); });
  if (any_has_limit(layouts, "month")) {
    add({"months_beyond", "months", "months beyond a limit"},
        [](const Layout& l) { return has_limit(l, "month") ? Cell(l.months_beyond) : Cell(); });
  }
  if (any_has_limit(layouts, "minute")) {
    add({"minute_years_beyond", "year", "years beyond, in a minute"},
        [](const Layout& l) { return has_limit(l, "minute") ? Cell(l.minute_years_beyond) : Cell(); });
  }
  add({"first_year_beyond", "", "first year beyond a limit"}, first_year_beyond);
  for (const std::string& name : limit_names(layouts)) {
    add({name + "_first_beyond", "", name + ", first beyond"},
        [&](const Layout& l) { return Cell(limit_cell(l, name)); });
  }
}

/// Sums as means of a year; what some layout has none of is told only where another has it.
void add_energy(std::vector<Fact>& facts, const std::vector<Layout>& layouts) {
  const auto any = [&](auto has) {
    return std::any_of(layouts.begin(), layouts.end(), [&](const Layout& l) { return has(l.energy); });
  };
  const auto add = [&](const Column& column, auto get) {
    facts.push_back(fact(layouts, column, [&](const Layout& l) { return Cell(get(l.energy.all, l.years)); }));
  };
  using energy::Sum;
  if (any([](const EnergySummary& e) { return e.has_heat_pump; })) {
    const auto pumps = [&](const Column& column, auto get) {
      facts.push_back(fact(layouts, column,
                           [&](const Layout& l) { return l.energy.has_heat_pump ? Cell(get(l.energy.all)) : Cell(); }));
    };
    facts.push_back(fact(layouts, {"power", "kWh", "electricity, a year", 0}, [](const Layout& l) {
      return l.energy.has_heat_pump ? Cell(l.energy.all.power / joules_per_kwh / l.years) : Cell();
    }));
    pumps({"performance", "", "seasonal performance", 2}, [](const Sum& s) { return s.performance(); });
    pumps({"performance_heating", "", "of heating", 2}, [](const Sum& s) { return s.performance_heating(); });
    pumps({"performance_cooling", "", "of cooling", 2}, [](const Sum& s) { return s.performance_cooling(); });
    if (any([](const EnergySummary& e) { return e.all.cooling_direct > 0; })) {
      pumps({"direct_share", "1", "cooled without heat pump", 0}, [](const Sum& s) { return s.direct_share(); });
    }
    facts.push_back(fact(layouts, {"hours_held", "h", "hours beyond a COP curve"}, [](const Layout& l) {
      const Sum& all = l.energy.all;
      return all.curves_known ? Cell(all.heating_held + all.hot_water_held + all.cooling_held) : Cell();
    }));
  }
  add({"from_ground", "MWh", "from ground, a year", 1},
      [](const Sum& s, int years) { return s.from_ground / joules_per_mwh / years; });
  add({"into_ground", "MWh", "into ground, a year", 1},
      [](const Sum& s, int years) { return s.into_ground / joules_per_mwh / years; });
}

}  // namespace

std::vector<Fact> facts_of(const std::vector<Layout>& layouts) {
  std::vector<Fact> facts;
  const auto add = [&](const Column& column, auto get) { facts.push_back(fact(layouts, column, get)); };
  add({"years", "year", "run-years"}, [](const Layout& l) { return Cell(static_cast<long>(l.years)); });
  add({"bores", "", "bores"}, [](const Layout& l) { return Cell(l.bores); });
  facts.push_back(depths_of(layouts));
  add({"length", "m", "to drill", 0}, [](const Layout& l) { return Cell(l.drill_length); });
  add({"spacing", "m", "nearest two bores", 2}, [](const Layout& l) { return Cell(l.spacing); });
  add({"land_area", "m2", "ground block on the plan", 0}, [](const Layout& l) { return Cell(l.land_area); });
  add({"eft_min", "degC", "least EFT, all years", 2},
      [](const Layout& l) { return over_run(l, &Spread::least, true); });
  add({"eft_max", "degC", "greatest EFT, all years", 2},
      [](const Layout& l) { return over_run(l, &Spread::most, false); });
  add({"eft_minute_min", "degC", "least EFT, any minute", 2}, [](const Layout& l) { return minute_of(l, true); });
  add({"eft_minute_max", "degC", "greatest EFT, any minute", 2}, [](const Layout& l) { return minute_of(l, false); });
  add_extremes(facts, layouts);
  add({"drift", "K/decade", "ground block's trend", 3},
      [](const Layout& l) { return drift_figure_of(l, &Drift::trend); });
  add({"share_reached", "1", "of its final change", 0},
      [](const Layout& l) { return drift_figure_of(l, &Drift::share); });
  add_limits(facts, layouts);
  add_energy(facts, layouts);
  add({"method", "", "method"}, [](const Layout& l) { return Cell(l.method); });
  return facts;
}

}  // namespace stillground::results
