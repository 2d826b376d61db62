#pragma once

#include <functional>
#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"
#include "engine/screen/screening.hpp"
#include "engine/simulation/statistics.hpp"

namespace stillground::screen {

/// What is left to say when the hours are told.
struct Estimate {
  simulation::Statistics statistics;  ///< what warnings are made of; the coldest wall is that of the mean wall
  double misfit = 0;                  ///< largest relative error of the fitted step responses
  double largest_rise = 0;            ///< of the mean wall against the undisturbed ground, by any earlier heat [K]
};

/// Takes the 8760 hours of a run-year, one year after the other; they hold until it returns.
using TakeYear = std::function<void(std::span<const record::Hour>)>;

/// The whole run's hours without a march: the layout's step response, superposed over the heat through the bore walls;
/// in the bores one circuit that stands for all, by the march's own network, film, steps and heat pumps, its walls cut
/// into pieces that answer their own heat. Throws InputError, at run.method, for what one step response cannot say:
/// bores that start or stop or have flows of their own.
Estimate estimate(const assembly::Assembly& assembly, const TakeYear& take);

/// The two halves of it. Throw the same; what takes seconds is in the first.
LayoutAnswers layout_answers(const assembly::Assembly& assembly);
Estimate superposed(const assembly::Assembly& assembly, const LayoutAnswers& answers, const TakeYear& take);

}  // namespace stillground::screen
