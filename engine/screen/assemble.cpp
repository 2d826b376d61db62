#include "engine/screen/assemble.hpp"

#include <cmath>
#include <utility>

#include "engine/field/alike_circuits.hpp"

namespace stillground::screen {

assembly::Assembly assemble(model::Scenario scenario, const march::fused::Kernels& kernels) {
  constexpr std::size_t most_classes = 32;
  scenario.run.groups = model::Run::Groups::none;
  assembly::Assembly plain = assembly::uncoupled(std::move(scenario), kernels);
  // What a line source that has given heat for half the run makes at a distance: E1(r^2/(4 alpha t)) (Carslaw & Jaeger
  // 1959, 10.4 [section from memory]).
  const double reach = 4 * assembly::mean_solid(plain.problem).diffusivity() * plain.duration() / 2;
  const auto line_source = [&](double r) { return -std::expint(-r * r / reach); };
  field::Groups few = field::alike_circuits(plain.bores, static_cast<std::size_t>(plain.scenario.flow.in_series),
                                            most_classes, line_source);
  return assembly::coupled(assembly::regrouped(std::move(plain), std::move(few)));
}

}  // namespace stillground::screen
