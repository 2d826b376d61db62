// Source: CVODE (SUNDIALS 6.4.1, BDF of variable order, a general-purpose library) on the grid's own equations
// Tier:      full
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "validation/cvode/cases.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/fixed_flow_march.hpp"
#include "validation/reference_solutions/field_integrator.hpp"

using namespace stillground;

namespace {

constexpr double tight = 1e-10;
constexpr double hour = seconds_per_hour;

/// Flows and networks held at the reference temperature: the reference solution is to judge time, not the film.
struct Flows {
  explicit Flows(const assembly::Assembly& assembly)
      : regimes(assembly.scenario, assembly.fluid, assembly.problem.grid),
        flowing(regimes.flowing(assembly.fluid.reference).march),
        standing(regimes.standing().march) {}

  assembly::FlowRegimes regimes;
  march::FlowRegime flowing, standing;
};

/// Hourly mean EFT by the engine's stepper. An hour without load stands if `idle`.
std::vector<double> marched(model::Scenario s, const std::vector<double>& load, bool idle) {
  const assembly::Assembly assembly = assembly::assemble(s);
  const Flows flows(assembly);
  validation::FixedFlowMarch march(assembly.problem, assembly.multirate);
  std::vector<double> eft;
  for (const double heat : load)
    eft.push_back(march.hour(heat, idle && heat == 0 ? flows.standing : flows.flowing).eft);
  return eft;
}

/// The same by CVODE; hours of equal load in a row are one piece.
std::vector<double> integrated(const model::Scenario& s, const std::vector<double>& load, bool idle, double tolerance) {
  const assembly::Assembly assembly = assembly::assemble(s);
  const Flows flows(assembly);
  const reference_solutions::Flow flowing = validation::flow_of(flows.flowing),
                                  standing = validation::flow_of(flows.standing);
  const reference_solutions::FieldEquations equations(validation::field_of(assembly.problem));
  reference_solutions::FieldIntegrator integrator(equations, tolerance);
  std::vector<double> eft;
  for (std::size_t i = 0; i < load.size(); ++i) {
    if (i == 0 || load[i] != load[i - 1]) {
      const auto from = load.begin() + static_cast<std::ptrdiff_t>(i);
      const auto next = std::find_if(from, load.end(), [&](double heat) { return heat != load[i]; });
      integrator.begin(load[i], idle && load[i] == 0 ? standing : flowing,
                       static_cast<double>(next - load.begin()) * hour);
    }
    eft.push_back(integrator.mean_outlet(static_cast<double>(i + 1) * hour));
  }
  return eft;
}

const std::string fast_node =
    "the grout's inner node answers within minutes; a tenth of what one node in its place errs by (section-hours)";

struct Misses {
  double largest = 0, rms = 0;
};

Misses misses(const std::vector<double>& ours, const std::vector<double>& truth) {
  Misses e;
  double squares = 0;
  for (std::size_t i = 0; i < truth.size(); ++i) {
    const double miss = std::abs(ours[i] - truth[i]);
    if (!(miss <= e.largest)) e.largest = miss;
    squares += miss * miss;
  }
  e.rms = std::sqrt(squares / static_cast<double>(truth.size()));
  return e;
}

const std::string library =
    "CVODE (SUNDIALS 6.4.1: Hindmarsh et al. 2005, ACM Trans. Math. Softw. 31 [from memory]); "
    "validation/reference_solutions/field_equations.hpp";

/// Entry by entry: the EFT of the first two days.
validation::Plot picture(const std::vector<double>& truth, const std::vector<double>& ours) {
  validation::Plot plot{"Hourly mean EFT under a load that jumps every hour", "hour", "EFT [K]", false, false, {}};
  validation::Curve reference{"CVODE", {}, true}, engine{"stepper at 1800 s", {}, false};
  for (std::size_t i = 0; i < 48; ++i) {
    reference.points.emplace_back(static_cast<double>(i), truth[i]);
    engine.points.emplace_back(static_cast<double>(i), ours[i]);
  }
  plot.curves = {reference, engine};
  return plot;
}

void jumping(validation::Check& check) {
  auto s = validation::lone_bore();
  const auto load = validation::jumping_load(72, 4000, false);
  const auto truth = integrated(s, load, false, tight);
  auto& claim = check.claim(
      {"cvode-jumping", "under loads that jump every hour the reference stepper follows CVODE on the same grid",
       validation::Origin::library, library,
       "hourly mean EFT [K] of a 60 m bore in two layers, yearly wave of the surface included, 72 hours at random "
       "between -67 and +67 W/m, flow and network held; CVODE at 1e-10 relative and 1e-10 K, started afresh each hour",
       "0.03 K, 0.01 K rms at 1800 s: what hourly loads need, stated for this load per metre before the "
       "comparison (measured against the stepper's own fine steps); 0.001 K at 225 s; 1e-5 K for CVODE's own error"});
  const std::vector<double> first_day(load.begin(), load.begin() + 24);
  const auto looser = integrated(s, first_day, false, 10 * tight);
  claim.absolute("CVODE at 1e-9 against 1e-10, largest", 0, misses(looser, {truth.begin(), truth.begin() + 24}).largest,
                 1e-5);
  validation::Plot fall{"Error against the step", "step [s]", "EFT, ours - CVODE [K]", true, true, {}};
  fall.curves = {{"largest", {}, false}, {"rms", {}, false}};
  for (const double step : {1800.0, 900.0, 450.0, 225.0}) {
    s.run.step = step;
    const auto ours = marched(s, load, false);
    const Misses e = misses(ours, truth);
    if (step == 1800) {
      claim.known_absolute_miss("1800 s, largest", 0, e.largest, 0.03, 0.05, fast_node);
      claim.known_absolute_miss("1800 s, rms", 0, e.rms, 0.01, 0.02, fast_node);
      claim.plot(picture(truth, ours));
    }
    if (step == 225) claim.absolute("225 s, largest", 0, e.largest, 0.001);
    fall.curves[0].points.emplace_back(step, e.largest);
    fall.curves[1].points.emplace_back(step, e.rms);
  }
  claim.plot(fall);
}

void standing(validation::Check& check) {
  auto s = validation::lone_bore();
  const auto load = validation::jumping_load(48, 4000, true);
  const auto truth = integrated(s, load, true, tight);
  auto& claim = check.claim(
      {"cvode-standing", "with a pump that stops in idle hours the reference stepper follows CVODE on the same grid",
       validation::Origin::library, library,
       "as before for 48 hours, but every fourth hour or so is without load: the pump stops, the fluid stands and its "
       "topmost cell "
       "is compared",
       "as before: 0.03 K, 0.01 K rms at 1800 s, 0.001 K at 225 s"});
  Misses e = misses(marched(s, load, true), truth);
  claim.known_absolute_miss("1800 s, largest", 0, e.largest, 0.03, 0.05, fast_node);
  claim.known_absolute_miss("1800 s, rms", 0, e.rms, 0.01, 0.02, fast_node);
  s.run.step = 225;
  claim.absolute("225 s, largest", 0, misses(marched(s, load, true), truth).largest, 0.001);
}

void refreshed(validation::Check& check) {
  auto s = validation::three_bores(3);
  std::vector<double> load;
  for (const double heat : validation::jumping_load(10, 12000, false)) load.insert(load.end(), 72, heat);
  const auto truth = integrated(s, load, false, 10 * tight);
  auto& claim = check.claim(
      {"cvode-refresh", "bores act on each other as CVODE says, which adds them up at every instant",
       validation::Origin::library, library,
       "hourly mean EFT [K] of three 60 m bores in a row at 3 m (two groups), 30 days under heat that jumps at random "
       "every three days between -67 and +67 W/m; the stepper at 150 s, so that what is left is the refresh of the "
       "neighbours' sum",
       "0.025 K at 24 h: what a sum held constant was seen to err by; 0.001 K at 1 h, so that the error is the refresh "
       "and nothing else"});
  s.run.step = 150;  // at 450 s the jumps' first hours err by 0.0014 K however often the sum is formed
  validation::Plot fall{"Error against the refresh", "refresh [h]", "EFT, ours - CVODE [K]", true, true, {}};
  fall.curves = {{"largest", {}, false}, {"rms", {}, false}};
  for (const double hours : {24.0, 12.0, 6.0, 3.0, 1.0}) {
    s.run.refresh = hours * hour;
    const Misses e = misses(marched(s, load, false), truth);
    claim.absolute(fmt::format("refresh every {:g} h, largest", hours), 0, e.largest, hours > 1 ? 0.025 : 0.001);
    fall.curves[0].points.emplace_back(hours, e.largest);
    fall.curves[1].points.emplace_back(hours, e.rms);
  }
  claim.plot(fall);
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::march);
  jumping(check);
  standing(check);
  refreshed(check);
  return check.finish();
}
