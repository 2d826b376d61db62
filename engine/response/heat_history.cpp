#include "engine/response/heat_history.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "engine/response/superposition.hpp"

namespace stillground::response {

namespace {

/// R_b's part that follows the fluid's temperature, at full flow; linear between whole kelvins.
class FilmPart {
 public:
  explicit FilmPart(const assembly::Assembly& assembly)
      : assembly_(assembly), laminar_(film_at(0, assembly.fluid.reference)) {}

  double at(double temperature) {
    temperature = within(temperature);
    const int below = static_cast<int>(std::floor(temperature));
    return std::lerp(at_kelvin(below), at_kelvin(below + 1), temperature - below);
  }

  /// Steepest fall per kelvin within 1 K.
  double steepest_fall(double temperature) {
    const int below = static_cast<int>(std::floor(within(temperature)));
    double steepest = 0;
    for (int kelvin = below - 1; kelvin <= below + 1; ++kelvin) {
      steepest = std::max(steepest, at_kelvin(kelvin) - at_kelvin(kelvin + 1));
    }
    return steepest;
  }

  double laminar() const { return laminar_; }

 private:
  /// No fluid's data reach beyond; what absurd loads predict does.
  static double within(double temperature) { return std::clamp(temperature, 200.0, 500.0); }

  double film_at(double flow, double temperature) const {
    if (assembly_.fluid.bore_resistance) return 0;
    const bore::PipeFlow at = assembly::pipe_flow(assembly_.scenario, flow, temperature);
    return bore::loop_type(assembly_.scenario.bore.loop).film_part(at.films);
  }

  double at_kelvin(int kelvin) {
    const auto found = kelvins_.find(kelvin);
    if (found != kelvins_.end()) return found->second;
    return kelvins_.emplace(kelvin, film_at(assembly_.fluid.flow_per_bore, kelvin)).first->second;
  }

  const assembly::Assembly& assembly_;
  double laminar_;
  std::map<int, double> kelvins_;
};

loop::Demand per_bore(const loop::Demand& demand, double bores) {
  return {demand.heating / bores, demand.cooling / bores, demand.cooling_direct / bores, demand.to_ground / bores,
          demand.hot_water / bores};
}

}  // namespace

HeatHistory predict_heat(const assembly::Assembly& assembly, const StepResponse& rise) {
  const double bores = assembly.problem.bores(), reference = assembly.fluid.reference;
  double metres = 0;
  for (const auto& bore : assembly.bores) metres += bore.depth / bores;
  const double heat_rate = assembly.fluid.flow_per_bore * assembly.fluid.heat_capacity;
  const bool always = assembly.scenario.flow.runs == model::Flow::Runs::always;
  FilmPart film_part(assembly);
  const double at_reference = film_part.at(reference);

  HeatHistory history;
  history.before.push_back(0);
  double heat = 0, fluid = reference;
  for (long hour = 0; hour < assembly.hours(); ++hour) {
    const loop::Demand demand = per_bore(assembly.loads.hour(hour), bores);
    const double film_change = film_part.at(fluid) - at_reference;
    const double history_part = history_term(rise, history.before, hour);
    const auto eft_under = [&](double watts) {
      return reference + history_part + watts * rise.after(0) + watts / metres * film_change;
    };
    heat = loop::exchange(demand, assembly.problem.pumps, eft_under(heat)).to_ground;
    const double drawn = std::max(0.0, -heat / metres);
    history.feedback.push_back(static_cast<float>(drawn * film_part.steepest_fall(fluid)));
    history.feedback_limit.push_back(
        static_cast<float>(drawn * std::max(0.0, film_part.laminar() - film_part.at(fluid + 2))));
    fluid = eft_under(heat) + heat / (2 * heat_rate);
    history.before.push_back(history.before.back() + heat);
    history.flows.push_back(always || demand.any());
  }
  return history;
}

}  // namespace stillground::response
