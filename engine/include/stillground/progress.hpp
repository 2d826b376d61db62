#pragma once

#include <stillground/date.hpp>

namespace stillground {

/// How far a run has come; given once a simulated day, of a screening estimate once a run-year.
struct Progress {
  Date start;             ///< of the run
  double hours_done = 0;  ///< simulated
  double hours_total = 0;
  bool year_finished = false;  ///< the last hour closed a run-year; the figures below are of that year
  int year = 0;                ///< that run-year, from 1
  double eft_least = 0;        ///< of its hours with flow [K]
  double eft_most = 0;         ///< the same [K]
};

}  // namespace stillground
