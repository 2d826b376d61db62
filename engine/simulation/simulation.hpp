#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/assembly/flow_regimes.hpp"
#include "engine/assembly/phases.hpp"
#include "engine/march/stepper.hpp"
#include "engine/march/workers.hpp"
#include "engine/record/frames.hpp"
#include "engine/simulation/observe.hpp"
#include "engine/simulation/statistics.hpp"

namespace stillground::simulation {

/// A scenario on the march: hands out frames, knows nothing of files. `assembly` must outlive it.
class Simulation {
 public:
  /// `deviation_hours`: after which it is seen how far merged groups stand from their bores (Statistics), rising.
  Simulation(const assembly::Assembly& assembly, int threads, std::vector<long> deviation_hours = {});
  Simulation(const assembly::Assembly&& gone_too_soon, int threads, std::vector<long> deviation_hours = {}) = delete;

  /// Marches one hour and says what it brought.
  record::Hour march_hour();

  record::Snapshot snapshot();
  record::YearMean year_mean() const;        ///< of the run-year that has just ended
  record::YearBalance year_balance() const;  ///< the same
  void start_year();                         ///< call after the year's frames have been taken

  WallExtremes walls() const;  ///< now

  /// Steady rise under the mean heat of the run-year that has just ended: [group][z][r].
  std::vector<float> steady_rise() const;

  std::vector<std::byte> save() const { return simulation::save(state_, statistics_); }
  void restore(std::span<const std::byte> bytes) {
    simulation::restore(bytes, state_, statistics_);
    fluid_.reset();
    last_ = {};
  }

  const Statistics& statistics() const { return statistics_; }
  bool finished() const { return statistics_.hour >= assembly_.hours(); }

 private:
  /// An hour's forcing and flow.
  struct Hour {
    march::Forcing forcing;
    double reynolds = 0;  ///< of the group that is worst off; 0: the fluid stands
    double flow = 0;      ///< of the whole field [kg/s]
  };

  Hour prepare_hour();
  void open_bores();
  std::vector<bool> drilled() const;  ///< [group], now
  double fluid_temperature();         ///< mean of the fluid in the loops, now [K]
  const assembly::FlowRegimes::Regime* flow_of(std::size_t group, double flow, double temperature, Hour& hour);
  void add_up(const Hour& hour, const march::HourMeans& means);

  const assembly::Assembly& assembly_;
  march::Workers workers_;
  assembly::Phases phases_;
  assembly::FlowRegimes regimes_;
  std::unique_ptr<march::Stepper> stepper_;
  march::State state_;
  double peak_;                                              // largest load of any hour [W]
  std::vector<const assembly::FlowRegimes::Regime*> flows_;  // [flow class], of this hour
  march::Forcing last_;          // the hour that led to state_; after a restore as if the fluid stood
  std::optional<double> fluid_;  // mean temperature in the loops [K], where the last hour left it
  std::vector<long> deviation_hours_;
  Statistics statistics_;
};

/// Threads that are of use: as many as asked for, never more than groups. 0: as the machine has, but no more than have
/// sixteen groups each.
int useful_threads(const assembly::Assembly& assembly, int asked);

}  // namespace stillground::simulation
