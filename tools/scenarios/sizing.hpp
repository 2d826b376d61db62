#pragma once

#include <atomic>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "tools/results/decision.hpp"
#include "tools/scenarios/least_search.hpp"
#include "tools/scenarios/variation.hpp"

namespace stillground::scenarios {

/// One value by one method.
struct Look {
  std::size_t place = 0;
  results::Decision decision;
  std::string failure = {};  ///< why there is no decision: what cannot be; empty otherwise
};

/// What a search found.
struct Sizing {
  Shape shape = Shape::no_order;
  std::optional<std::size_t> answer;  ///< marched, keeps all limits; none where nothing in range does
  std::optional<std::size_t> below;   ///< marched, does not
  std::size_t screened_answer = 0;    ///< where the first method saw it
  double slope = 0;                   ///< what a unit more brings at the answer, of the first method [K/m or K/bore]
  bool screens = true;                ///< the first method is a screening; else a march too
  std::vector<Look> screenings;       ///< in the order of places
  std::vector<Look> marches;

  const Look* marched(std::size_t place) const;
  const Look* screened(std::size_t place) const;
  const Look* screened_nearest() const;  ///< to the place where the screening saw the answer; null without any
};

struct SizingOptions {
  int threads = 0;  ///< 0: as many as the machine has
  const std::atomic<bool>* stop = nullptr;
  std::function<void(const std::string&)> began;  ///< told what is looked at next; may be empty
};

/// Searches by screenings and confirms by marches, side by side. Where the scenario cannot be screened it is marched
/// from the first. Throws what reading and running throw, but takes what cannot be (NumericsError) as far beyond.
Sizing find_least(const Variation& variation, const SizingOptions& options);

}  // namespace stillground::scenarios
