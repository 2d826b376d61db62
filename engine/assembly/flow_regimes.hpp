#pragma once

#include <cstddef>
#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <utility>
#include <vector>

#include "engine/bore/loop_type.hpp"
#include "engine/march/problem.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// The fluid as marched: its capacity is held at one temperature, so that a change of the film never changes what the
/// fluid has stored; the film follows the fluid's temperature.
struct LoopFluid {
  double reference = 0;                   ///< temperature at which flow and capacity are taken [K]
  double density = 0;                     ///< [kg/m3]
  double heat_capacity = 0;               ///< [J/(kg K)]
  double flow_per_bore = 0;               ///< full flow through a bore of weight 1 when all bores work [kg/s]
  bore::Capacities capacities;            ///< of a bore, its streams filled with it
  std::optional<double> bore_resistance;  ///< local R_b that a response test leaves [K m/W]: for the computed one
};

/// `weights`: of all circuits together, each by its bores' flow weight.
LoopFluid loop_fluid(const model::Scenario& scenario, double weights, double reference);

/// `flow_per_bore`: kg/s; 0: the fluid stands. `temperature` [K].
bore::PipeFlow pipe_flow(const model::Scenario& scenario, double flow_per_bore, double temperature);

/// Steady resistances of the modes in ground of one conductivity, as pipes and grout make them.
bore::ModeResistances resistances(const model::Scenario& scenario, double ground_conductivity,
                                  const bore::Films& films);

/// The same as marched: with the local R_b that a response test leaves, where there is one.
bore::ModeResistances with_measured(bore::ModeResistances modes, const LoopFluid& fluid);

/// Multipole solutions of one scenario's bore, made when first needed and kept: shared by all who march that bore in
/// whatever ground, on any thread. Of loop types for which it is worth_keeping().
class SolvedSections {
 public:
  /// As resistances() above; `film` [K m/W]: films[0]. `scenario` is that of the bore at every call.
  bore::ModeResistances at(const model::Scenario& scenario, double ground_conductivity, double film);

 private:
  std::mutex mutex_;
  std::map<std::pair<double, double>, bore::ModeResistances> solved_;  // [conductivity, film]
};

/// The flow regimes of a run: standing fluid, and flowing fluid at any temperature and flow. Film coefficients follow
/// both, and through them R_b, most steeply between laminar and turbulent flow. The films are those of the moment. Of a
/// U's legs the multipole solutions are made when first needed, at film resistances 2 % apart, and are linear between
/// them: R_b is so nearly linear in the film's resistance that this errs by less than 1e-5 of it. The scenario must
/// outlive it.
class FlowRegimes {
 public:
  FlowRegimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid,
              std::shared_ptr<SolvedSections> sections = std::make_shared<SolvedSections>());

  struct Regime {
    march::FlowRegime march;
    double reynolds = 0;  ///< as of bore::PipeFlow
  };

  const Regime& standing() const { return standing_; }

  /// Of fluid at `temperature` [K] that flows at `flow` [kg/s, > 0] through a bore. Holds until the next call with the
  /// same `slot`, of which there is one for each flow that runs at a time.
  const Regime& flowing(double temperature, double flow, std::size_t slot = 0);

  /// The same at full flow.
  const Regime& flowing(double temperature) { return flowing(temperature, fluid_.flow_per_bore); }

 private:
  std::vector<bore::ModeResistances> at_films(const bore::Films& films);
  std::vector<bore::ModeResistances> computed(const bore::Films& films) const;
  const std::vector<bore::ModeResistances>& at_node(int node);
  void fill(march::FlowRegime& regime, const std::vector<bore::ModeResistances>& of_solid) const;

  const model::Scenario& scenario_;
  LoopFluid fluid_;
  std::shared_ptr<SolvedSections> sections_;
  std::vector<model::Solid> solids_;                         // of the ground, each once
  std::vector<std::size_t> of_layer_;                        // [z]: which of them
  std::map<int, std::vector<bore::ModeResistances>> nodes_;  // [solid]
  Regime standing_;
  std::deque<Regime> flowing_;  // [slot]; stay where they are
  long versions_ = 0;
};

}  // namespace stillground::assembly
