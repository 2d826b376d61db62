#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/response/field_response.hpp"

namespace stillground::screen {

/// The field's own undisturbed temperature: the sum over all layers of theirs times the part of the heat that each
/// takes, by as long as it has been so: what has stood there since the start by the time gone by, a season as the wave
/// that it is, a warming of the surface by what a season's time makes of it.
class FieldsUndisturbed {
 public:
  FieldsUndisturbed(const assembly::Assembly& assembly, const response::FieldResponse& response);

  /// At the start of an hour of the run, or its end [K]; straight between midnights.
  double at(long hour) const {
    const auto day = static_cast<std::size_t>(hour / 24);
    const double part = static_cast<double>(hour % 24) / 24;
    return midnight_[day] + part * (midnight_[day + 1] - midnight_[day]);
  }

 private:
  std::vector<double> midnight_;
};

}  // namespace stillground::screen
