#include "engine/simulation/make_stepper.hpp"

#include "engine/base/where.hpp"
#include "engine/march/arkode/stepper.hpp"
#include "engine/march/fused/stepper.hpp"

namespace stillground::simulation {

namespace {

constexpr bool built_in = STILLGROUND_REFERENCE_STEPPER;

bool wants_reference(const model::Scenario& scenario) {
  return scenario.run.stepper == model::Run::Stepper::reference;
}

}  // namespace

const bool has_reference_stepper = built_in;

void refuse_missing_stepper(const model::Scenario& scenario, bool has_reference) {
  if (has_reference || !wants_reference(scenario)) return;
  Where{scenario.place("run.stepper"), "run.stepper"}.refuse(
      "this stillground is built without the reference stepper (SUNDIALS); \"automatic\" is allowed");
}

std::unique_ptr<march::Stepper> make_stepper(const assembly::Assembly& assembly, march::Workers& workers) {
  refuse_missing_stepper(assembly.scenario);
  // Where it is not built in, this names nothing that would have to be linked.
  if constexpr (built_in) {
    if (wants_reference(assembly.scenario))
      return march::make_arkode_stepper(assembly.problem, assembly.multirate, workers);
  }
  return march::make_fused_stepper(assembly.problem, assembly.multirate, workers, *assembly.kernels);
}

}  // namespace stillground::simulation
