#pragma once

#include <map>

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
  double even_share = 0;  ///< see bore::NetworkParts
  double odd_share = 0;
};

Resistances resistances(const model::Scenario& scenario, double ground_conductivity, double film_resistance);

/// Flow regimes of the run, built when first needed and then at a fixed address: standing fluid, and flowing fluid by
/// bands of its temperature 1 K wide (film coefficients follow viscosity; within a band they change by less than 4 %).
class Regimes {
 public:
  Regimes(const model::Scenario& scenario, const LoopFluid& fluid, const ground::Grid& grid);

  struct Band {
    march::FlowRegime march;
    materials::Regime film = materials::Regime::standing;
  };

  const Band& standing();
  /// Of fluid at `temperature` [K]; the band's middle counts.
  const Band& flowing(double temperature);

 private:
  Band make(double flow_per_bore, double temperature) const;

  const model::Scenario& scenario_;
  LoopFluid fluid_;
  const ground::Grid& grid_;
  std::map<int, Band> bands_;
};

}  // namespace stillground::run
