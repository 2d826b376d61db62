#pragma once

#include <functional>

#include "engine/record/frames.hpp"
#include "engine/record/read/result.hpp"

namespace stillground::testing {

/// A small result file of invented numbers: two bores 6 m apart, 2 m to 102 m deep, in one group.
struct MadeResult {
  int years = 2;
  std::string fields = "monthly";
  std::function<double(double)> rise = [](double) {
    return 0.0;
  };                  ///< each bore's own, everywhere [K]; of the years gone
  double steady = 0;  ///< [K]
  std::vector<record::LimitRow> limits = {};
};

/// Writes the file, opens it and removes its name: the open file lives as long as the result.
record::read::Result made_result(const MadeResult& made);

}  // namespace stillground::testing
