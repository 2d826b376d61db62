#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "engine/bore/resistance.hpp"
#include "engine/march/problem.hpp"
#include "engine/materials/film.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::run {

/// The fluid as marched: its capacity is held at one temperature, so that a change of the film never changes what the
/// fluid has stored; the film follows the fluid's temperature.
struct LoopFluid {
  double reference = 0;          ///< temperature at which flow and capacity are taken [K]
  double density = 0;            ///< [kg/m3]
  double heat_capacity = 0;      ///< [J/(kg K)]
  double flow_per_bore = 0;      ///< when it runs [kg/s]
  double storage_per_metre = 0;  ///< of one leg [J/(m K)]
  double grout_per_metre = 0;    ///< grout and pipe walls of a bore [J/(m K)]
};

LoopFluid loop_fluid(const model::Scenario& scenario, double bores, double reference);

/// What flows how in the legs at one temperature, and what that makes of the resistances.
struct Film {
  double reynolds = 0;
  materials::Regime regime = materials::Regime::standing;
  double resistance = 0;  ///< of one leg's film [K m/W]
};

Film film(const model::Scenario& scenario, const LoopFluid& fluid, double flow_per_bore, double temperature);

/// Steady R_b and R_a [K m/W] in ground of one conductivity; a measured R_b replaces the computed one.
struct Resistances {
  double bore = 0;
  double internal = 0;
  bore::StorageShares shares;
};

Resistances resistances(const model::Scenario& scenario, double ground_conductivity, double film_resistance);

/// The flow regimes of a run: standing fluid, and flowing fluid at any temperature. Film coefficients follow viscosity,
/// and through them R_b, most steeply between laminar and turbulent flow: the resistances are computed at whole kelvins
/// when first needed and are linear between them, so that they never jump.
class Regimes {
 public:
  Regimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid);

  struct Regime {
    march::FlowRegime march;
    materials::Regime film = materials::Regime::standing;
  };

  const Regime& standing() const { return standing_; }

  /// Of fluid at `temperature` [K]; holds until the next call.
  const Regime& flowing(double temperature);

 private:
  std::vector<Resistances> at_film(double film_resistance) const;
  const std::vector<Resistances>& at_kelvin(int kelvin);
  std::vector<bore::Network> networks(const std::vector<Resistances>& of_solid) const;

  const model::Scenario& scenario_;
  LoopFluid fluid_;
  std::vector<model::Solid> solids_;                 // of the ground, each once
  std::vector<std::size_t> of_layer_;                // [z]: which of them
  std::map<int, std::vector<Resistances>> kelvins_;  // [solid]
  Regime standing_;
  Regime flowing_;
};

}  // namespace stillground::run
