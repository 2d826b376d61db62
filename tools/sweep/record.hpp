#pragma once

#include <optional>
#include <string>

#include "tools/points/amounts.hpp"
#include "tools/results/decision.hpp"

namespace stillground::sweep {

/// What is kept of a point by one method; the limits' outcomes are not.
struct Record {
  results::Decision decision;
  points::Amounts amounts;
  bool kept = false;   ///< every limit was kept
  bool sure = false;   ///< and stays so, or not so, within the decision's own error
  double error = 0;    ///< that which may move the margin [K]; 0 of a march
  std::string failed;  ///< the reason, if it did; the figures then say nothing
  bool unfit = false;  ///< it failed since the method is not for such a scenario: another may do
};

/// Of a run that did not fail.
Record record_of(const results::Decision& decision, const model::Scenario& scenario);

/// As a file holds it, SI and kelvin, every digit; and back. Throws SystemError, naming `file`, for what is no record.
std::string text_of(const Record& record);
Record record_from(const std::string& text, const std::string& file);

}  // namespace stillground::sweep
