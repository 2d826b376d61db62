#pragma once

#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"
#include "engine/screen/flow_propagators.hpp"
#include "engine/screen/walls_ambient.hpp"
#include "engine/simulation/plausible.hpp"
#include "engine/simulation/statistics.hpp"

namespace stillground::screen {

/// How a layout's walls answer heat, whatever the loads.
struct LayoutAnswers {
  std::vector<double> parts;  ///< pieces of a bore's wall, see response/pieces.hpp
  WallAnswers field;
  WallAnswers lone;  ///< of one of its bores alone; empty unless bores are in series
};

/// One circuit, which stands for all, on its way through a run's hours: the near ground within it, the ground of all
/// hours before as its walls' ambient.
class Screening {
 public:
  /// `assembly` must outlive it.
  Screening(const assembly::Assembly& assembly, const LayoutAnswers& answers);

  /// The run's next hour. Throws NumericsError for what cannot be (simulation::Plausible).
  record::Hour hour();

  const simulation::Statistics& statistics() const { return statistics_; }
  double largest_rise() const { return largest_rise_; }  ///< of the mean wall by any earlier heat [K]

 private:
  record::Hour any_hour(double fluid);
  void give_load(const FlowPropagators::Flowing& now, const loop::Demand& demand, record::Hour& hour);
  void remember_heat(double mean_wall, const record::Hour& hour);
  double after(std::size_t row) const { return after_[row / Pack::width].values[row % Pack::width]; }
  double* driven() { return driven_.front().values; }
  double of_state(const std::vector<Pack>& parts) const { return dot(parts.data(), driven_.data(), parts.size()); }

  const assembly::Assembly& assembly_;
  simulation::Plausible plausible_;
  CircuitShape shape_;
  NearGround ground_;
  WallsAmbient walls_;
  FlowPropagators propagators_;
  HourlyPropagator::Places places_;
  double circuits_;
  double peak_;               // largest load of any hour [W]
  std::vector<Pack> driven_;  // the state's amplitudes and what drives them
  std::vector<Pack> after_;
  std::vector<Pack> heat_;           // [bore], of the hour [W/m]
  std::vector<Pack> fluid_, terms_;  // what adds up to the mean fluid, and to the near ground's terms
  simulation::Statistics statistics_;
  double largest_rise_ = 0;  // [K]
};

}  // namespace stillground::screen
