#pragma once

#include <string>
#include <vector>

#include "engine/base/calendar.hpp"
#include "engine/record/frames.hpp"
#include "tools/present/figure.hpp"

/// Bores that begin to work after the run's start.
namespace stillground::results {

/// The instants at which they do, each once, in their order; since the run's start [s].
std::vector<double> later_starts(const std::vector<record::BoreRow>& bores);

/// "phase from 2031-09-01".
std::string phase_name(double phase, const Date& start);

/// Marks on an axis of run-years for the phases that begin within them.
std::vector<present::Mark> phase_marks(const std::vector<double>& phases, const Date& start, int years);

}  // namespace stillground::results
