#include "tools/scenarios/sizing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <thread>

#include "engine/job/marched.hpp"
#include "tools/points/decide.hpp"

namespace stillground::scenarios {

namespace {

constexpr double impossible = -50;  ///< the margin of what cannot be: far beyond [K]

results::Decision march(const model::Scenario& scenario, const SizingOptions& options, int threads) {
  const job::Marched marched = job::marched(
      scenario,
      {.threads = threads, .minutes = points::judges_minutes(scenario), .stop = options.stop, .progress = {}});
  return results::decision_of(marched.header, marched.hours, marched.minutes);
}

const Look* found_in(const std::vector<Look>& looks, std::size_t place) {
  const auto found = std::find_if(looks.begin(), looks.end(), [&](const Look& look) { return look.place == place; });
  return found == looks.end() ? nullptr : &*found;
}

/// Looks at values by one method and keeps what it saw.
class Looks {
 public:
  Looks(const Variation& variation, const SizingOptions& options, bool screens)
      : variation_(variation), options_(options), screens_(screens) {}

  std::vector<double> operator()(const std::vector<std::size_t>& places) {
    std::vector<std::size_t> unseen;
    for (const std::size_t place : places) {
      if (!found_in(seen_, place)) unseen.push_back(place);
    }
    announce(unseen);
    std::vector<model::Scenario> scenarios;
    for (const std::size_t place : unseen) scenarios.push_back(variation_.scenario(place));
    for (Look& look : side_by_side(unseen, scenarios)) seen_.push_back(std::move(look));
    std::vector<double> margins;
    for (const std::size_t place : places) {
      const Look& look = *found_in(seen_, place);
      margins.push_back(look.failure.empty() ? look.decision.margin : impossible);
    }
    return margins;
  }

  std::vector<Look> in_order() {
    std::sort(seen_.begin(), seen_.end(), [](const Look& a, const Look& b) { return a.place < b.place; });
    return seen_;
  }

 private:
  void announce(const std::vector<std::size_t>& places) const {
    if (!options_.began || places.empty()) return;
    std::string values;
    for (const std::size_t place : places) {
      values += fmt::format("{}{:.6g}", values.empty() ? "" : ", ", variation_.values[place]);
    }
    options_.began(fmt::format("{} {} {}", screens_ ? "screening" : "marching", values,
                               variation_.units.empty() ? "bores" : variation_.units));
  }

  Look look_at(std::size_t place, const model::Scenario& scenario, int threads) const {
    try {
      return {place, screens_ ? points::screen(scenario) : march(scenario, options_, threads)};
    } catch (const NumericsError& error) {
      return {place, {}, error.what()};
    }
  }

  /// As many at once as there are threads; a march that is alone takes all of them.
  std::vector<Look> side_by_side(const std::vector<std::size_t>& places,
                                 const std::vector<model::Scenario>& scenarios) const {
    const auto all = static_cast<std::size_t>(options_.threads > 0 ? options_.threads
                                                                   : std::max(1U, std::thread::hardware_concurrency()));
    std::vector<Look> found(places.size());
    std::vector<std::exception_ptr> thrown(places.size());
    std::atomic<std::size_t> next = 0;
    const int each = static_cast<int>(std::max<std::size_t>(1, all / std::max<std::size_t>(1, places.size())));
    const auto work = [&] {
      for (std::size_t i = next++; i < places.size(); i = next++) {
        if (options_.stop && options_.stop->load()) return;
        try {
          found[i] = look_at(places[i], scenarios[i], each);
        } catch (...) {
          thrown[i] = std::current_exception();
        }
      }
    };
    {
      std::vector<std::jthread> team;
      for (std::size_t t = 1; t < std::min(all, places.size()); ++t) team.emplace_back(work);
      work();
    }
    for (const std::exception_ptr& one : thrown) {
      if (one) std::rethrow_exception(one);
    }
    if (options_.stop && options_.stop->load()) throw Interrupted("interrupted; nothing is kept of this search");
    return found;
  }

  const Variation& variation_;
  const SizingOptions& options_;
  bool screens_;
  std::vector<Look> seen_;
};

/// Whether one step response can speak for the scenario: no bores that start or stop or have flows of their own.
bool can_be_screened(const model::Scenario& scenario) {
  const auto sites = std::get_if<model::Positions>(&scenario.layout);
  if (!sites) return true;
  return std::none_of(sites->sites.begin(), sites->sites.end(), [](const model::BoreSite& site) {
    return site.start > 0 || site.stop < 1e30 || site.flow_weight != 1;
  });
}

}  // namespace

const Look* Sizing::marched(std::size_t place) const {
  return found_in(marches, place);
}

const Look* Sizing::screened(std::size_t place) const {
  return found_in(screenings, place);
}

const Look* Sizing::screened_nearest() const {
  const auto off = [&](const Look& look) {
    return std::max(look.place, screened_answer) - std::min(look.place, screened_answer);
  };
  const auto nearest = std::min_element(screenings.begin(), screenings.end(),
                                        [&](const Look& a, const Look& b) { return off(a) < off(b); });
  return nearest == screenings.end() ? nullptr : &*nearest;
}

Sizing find_least(const Variation& variation, const SizingOptions& options) {
  Sizing sizing;
  sizing.screens = can_be_screened(variation.scenario(variation.start));
  Looks first(variation, options, sizing.screens);
  const Searched searched =
      search_least(variation.values, std::ref(first), {.start = variation.start, .neighbours = !variation.fine});
  sizing.shape = searched.shape;
  (sizing.screens ? sizing.screenings : sizing.marches) = first.in_order();
  sizing.screened_answer = searched.answer;
  if (searched.shape == Shape::no_order) return sizing;
  Searched start = searched;
  if (searched.shape == Shape::none) start.answer = variation.values.size() - 1;
  sizing.slope = slope_at(variation.values, searched.tried, start.answer);
  Looks again(variation, options, false);
  Looks& marches = sizing.screens ? again : first;
  const Confirmed confirmed = confirm_least(variation.values, start, std::ref(marches));
  sizing.marches = marches.in_order();
  if (!confirmed.ordered) sizing.shape = Shape::no_order;
  if (confirmed.ordered) sizing.answer = confirmed.least;
  sizing.below = confirmed.below;
  if (sizing.shape != Shape::no_order && !sizing.answer) sizing.shape = Shape::none;
  if (sizing.answer == std::size_t{0}) sizing.shape = Shape::all;
  return sizing;
}

}  // namespace stillground::scenarios
