#include "tests/march_scenario.hpp"
#include "validation/convergence/claims.hpp"
#include "validation/convergence/refinement.hpp"

namespace stillground::validation {

namespace {

constexpr long hours = 30 * 24;

/// One bore under a direct load, the fluid always flowing; its R_b is told, so that only the step changes.
model::Scenario lone_bore(const model::HourlySeries& load, double step) {
  auto s = test::scenario(1, 1);
  s.run.clocks = model::Run::Clocks::one;  // the second clock keeps an error of its own, see validation/two_clocks
  s.ground.undisturbed = model::MeanOverBore{285};
  s.heat_pump.reset();
  s.flow.runs = model::Flow::Runs::always;
  s.bore.resistance = model::MeasuredResistance{0.1, {}, {}};
  s.loads = model::GroundLoads{load};
  s.run.step = step;
  return s;
}

/// Hourly EFT from hour `from` on.
Refinement refine(const model::HourlySeries& load, std::size_t from) {
  Refinement result{{1800, 900, 450, 225, 112.5}, {}};
  for (const double step : result.sizes) {
    const auto marched = test::march(lone_bore(load, step), hours);
    std::vector<double> eft;
    for (std::size_t i = from; i < marched.size(); ++i) eft.push_back(marched[i].eft);
    result.answers.push_back(eft);
  }
  return result;
}

}  // namespace

void order_in_time(Check& check) {
  const std::string setup =
      "hourly means of the EFT over 30 days, one bore of 90 m in two layers, real march with steps of 1800 to 112.5 "
      "s; ";
  auto& smooth =
      check.claim({"order-time-smooth", "for a smooth load the error falls with the square of the step", Origin::engine,
                   "marches of ours at finer steps; what order to expect: Ascher, Ruuth & Spiteri 1997, 2.6: "
                   "ARS(2,2,2) is of order two",
                   setup + "constant -5 kW from rest, after the first day",
                   "1.8 to 2.2: two, and what the next order adds at an hour's steps; 0.001 K at the preset "
                   "step, a tenth of what jumping loads may err by"});
  const model::HourlySeries constant{std::vector<double>(hours_per_year, -5000.0), 0};
  refine(constant, 24)
      .rows(smooth, "constant load", "s", 1.8, 2.2, 0, 0.001, "K",
            {{0,
              {0.4,
               "the grout's inner node answers within minutes, which steps of 1800 s do not resolve; the "
               "error itself is microkelvins"}}});

  auto& jumps = check.claim(
      {"order-time-jumps", "for loads that jump every hour the order falls, as theory says, and the error stays small",
       Origin::engine,
       "marches of ours at finer steps; what order to expect: Thomee 2006, Galerkin Finite Element Methods for "
       "Parabolic Problems, chapter 7 (a stiffly stable method keeps "
       "its "
       "order away from jumps; from memory); a jump of the flux leaves sqrt(t) behind, whose mean over an hour is hit "
       "to "
       "order 1.5",
       setup + "loads drawn evenly from -6 to 6 kW each hour",
       "order 1.4 to 2.2: between 1.5 and 2, and the scatter of three grids; 0.01 K rms at the preset step: what the "
       "design asks"});
  test::Noise noise;
  model::HourlySeries jumping;
  for (int hour = 0; hour < hours_per_year; ++hour) jumping.values.push_back(12000 * (noise() - 0.5));
  const std::string transit =
      "the fluid's ten minutes down and up the bore: where the steps begin to resolve them the error falls faster than "
      "its order";
  const Refinement refined = refine(jumping, 0);
  refined.rows(jumps, "jumping load", "s", 1.4, 2.2, 1, 0.01, "K", {{2, {1.0, transit}}});
  jumps.known_absolute_miss("jumping load: Richardson's error at 1800 s [K]", 0, refined.error(0), 0.01, 0.025,
                            "the grout's inner node answers within minutes; a tenth of what one node in its place errs "
                            "by (section-hours)");
}

}  // namespace stillground::validation
