// Source: Eskilson & Claesson 1988, Hellstrom 1991 (two streams in a bore whose wall has one temperature)
#include <fmt/format.h>

#include "validation/fluid_profile/two_streams.hpp"
#include "validation/harness/steady_bore.hpp"
#include "validation/harness/worst_case.hpp"

using namespace stillground;
using validation::SteadyBore;
using validation::TwoStreams;

namespace {

struct Case {
  std::string name;
  double depth = 0;  ///< [m]
  double flow = 0;   ///< [kg/s]
  std::vector<bore::NetworkParts> parts;
  double largest_cell = 0;  ///< [m]; 0: the engine's choice
};

const bore::NetworkParts common{.bore_resistance = 0.11,
                                .internal_resistance = 0.42,
                                .even_share = 0.4,
                                .odd_share = 0.3,
                                .grout_capacity = 4.5e4,
                                .fluid_capacity = 3900};
const bore::NetworkParts leaky{.bore_resistance = 0.08,
                               .internal_resistance = 0.17,
                               .even_share = 0.4,
                               .odd_share = 0.3,
                               .grout_capacity = 4.5e4,
                               .fluid_capacity = 3900};
const bore::NetworkParts poor{.bore_resistance = 0.20,
                              .internal_resistance = 0.55,
                              .even_share = 0.4,
                              .odd_share = 0.3,
                              .grout_capacity = 4.5e4,
                              .fluid_capacity = 3900};

constexpr double specific_heat = 4190;  // [J/(kg K)]

TwoStreams closed_form(const Case& c) {
  std::vector<TwoStreams::Reach> reaches;
  for (const auto& parts : c.parts) {
    reaches.push_back(
        {c.depth / static_cast<double>(c.parts.size()), parts.bore_resistance, parts.internal_resistance});
  }
  return {reaches, c.flow * specific_heat};
}

SteadyBore::Make make_of(const Case& c) {
  SteadyBore::Make make;
  make.depth = c.depth;
  make.grid.largest_cell = c.largest_cell;
  for (const auto& parts : c.parts) make.networks.push_back(bore::make_network(parts));
  make.heat_rate = c.flow * specific_heat;
  return make;
}

/// Largest misses of what a result records at its cells' centres [K], the inlet 10 K above the wall.
void compare_recorded(const Case& c, validation::Claim& claim, double allowed) {
  constexpr double excess = 10;
  const SteadyBore bore(make_of(c));
  const TwoStreams exact = closed_form(c);
  validation::WorstCase down, up;
  for (const auto& centre : bore.recorded()) {
    const auto reference = exact.at(centre.depth);
    const std::string where = fmt::format("{:.1f} m down", centre.depth);
    down.compare_absolute(where, excess * reference.down, excess * centre.down / bore.inlet());
    up.compare_absolute(where, excess * reference.up, excess * centre.up / bore.inlet());
  }
  down.row(claim, c.name + ", down", allowed);
  up.row(claim, c.name + ", up", allowed);
}

/// Largest misses down and up of all passages from layer to layer, over the inlet's excess.
void compare(const Case& c, validation::Claim& claim, double allowed, bool drawn) {
  const SteadyBore bore(make_of(c));
  const TwoStreams exact = closed_form(c);
  validation::WorstCase down, up;
  validation::Curve ours_down{"ours, down", {}, false}, ours_up{"ours, up", {}, false};
  validation::Curve exact_down{"closed form, down", {}, true}, exact_up{"closed form, up", {}, true};
  for (const auto& passage : bore.passages()) {
    const auto reference = exact.at(passage.depth);
    const std::string where = fmt::format("{:.1f} m down", passage.depth);
    const double ours_d = passage.down / bore.inlet(), ours_u = passage.up / bore.inlet();
    down.compare_absolute(where, reference.down, ours_d);
    up.compare_absolute(where, reference.up, ours_u);
    ours_down.points.emplace_back(passage.depth, ours_d);
    ours_up.points.emplace_back(passage.depth, ours_u);
    exact_down.points.emplace_back(passage.depth, reference.down);
    exact_up.points.emplace_back(passage.depth, reference.up);
  }
  down.row(claim, fmt::format("{}, {} layers, down", c.name, bore.layers()), allowed);
  up.row(claim, fmt::format("{}, {} layers, up", c.name, bore.layers()), allowed);
  if (drawn) {
    claim.plot({c.name,
                "depth below the bore's top [m]",
                "temperature over the inlet's [-]",
                false,
                false,
                {exact_down, exact_up, ours_down, ours_up}});
  }
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  const std::string source =
      "the streams' balances with R_b and R_a, solved by the exponential of a 2 x 2 matrix (derived beside this check; "
      "the same balances: Eskilson & Claesson 1988, Hellstrom 1991)";
  auto& own = check.claim(
      {"fluid-profile", "down and up a U whose bore wall has one temperature the fluid follows the closed form",
       validation::Origin::computed, source,
       "temperatures over the inlet's, both above the wall, at every passage between the engine's own layers (0.5 m at "
       "the ends, up to 8 m between), steady; common U: R_b 0.11, R_a 0.42 K m/W; legs close: 0.08, 0.17; two grouts: "
       "the lower half 0.20, 0.55, a passage where they meet as at any boundary of layers",
       "0.001 of the inlet's excess over the wall: 0.01 K at 10 K, what a calibrated sensor tells apart"});
  compare({"common U, 100 m, 0.2 kg/s", 100, 0.2, {common}, 0}, own, 1e-3, false);
  compare({"common U, 150 m, 0.35 kg/s", 150, 0.35, {common}, 0}, own, 1e-3, false);
  compare({"common U, 150 m, 0.6 kg/s", 150, 0.6, {common}, 0}, own, 1e-3, false);
  compare({"legs close, 200 m, 0.25 kg/s", 200, 0.25, {leaky}, 0}, own, 1e-3, true);
  compare({"legs close, 200 m, 0.1 kg/s", 200, 0.1, {leaky}, 0}, own, 1e-3, false);
  compare({"legs close, 300 m, 0.5 kg/s", 300, 0.5, {leaky}, 0}, own, 1e-3, false);
  compare({"two grouts, 120 m, 0.2 kg/s", 120, 0.2, {common, poor}, 0}, own, 1e-3, false);

  auto& metres = check.claim({"fluid-profile-metres",
                              "on layers of a metre the fluid's profile is the closed form's to the ten-thousandth",
                              validation::Origin::computed, source, "the same on layers of no more than 1 m",
                              "1e-4 of the inlet's excess: exchange at the mean of a layer's inlet and outlet errs by "
                              "a third of (kappa dz/2)^2 "
                              "over the bore at most, below 1e-4 for all flows here"});
  compare({"common U, 100 m, 0.2 kg/s", 100, 0.2, {common}, 1}, metres, 1e-4, false);
  compare({"common U, 150 m, 0.6 kg/s", 150, 0.6, {common}, 1}, metres, 1e-4, false);
  compare({"legs close, 200 m, 0.1 kg/s", 200, 0.1, {leaky}, 1}, metres, 1e-4, false);
  compare({"two grouts, 120 m, 0.2 kg/s", 120, 0.2, {common, poor}, 1}, metres, 1e-4, true);

  auto& recorded = check.claim(
      {"fluid-profile-recorded", "a result's fluid_down and fluid_up hold at its z", validation::Origin::computed,
       source,
       "temperatures that a result records, at the depths of its cells' centres, on the "
       "engine's own layers, steady, the "
       "inlet 10 K above the wall [K]",
       "0.01 K: what a passage may miss; within a layer of 8 m the closed form bends by (kappa dz)^2/8 of the excess "
       "over the wall, 0.07 % at the slowest flow here"});
  compare_recorded({"common U, 120 m, 0.35 kg/s", 120, 0.35, {common}, 0}, recorded, 0.01);
  compare_recorded({"common U, 250 m, 0.12 kg/s", 250, 0.12, {common}, 0}, recorded, 0.01);
  compare_recorded({"common U, 250 m, 0.5 kg/s", 250, 0.5, {common}, 0}, recorded, 0.01);
  compare_recorded({"legs close, 200 m, 0.25 kg/s", 200, 0.25, {leaky}, 0}, recorded, 0.01);
  compare_recorded({"two grouts, 120 m, 0.2 kg/s", 120, 0.2, {common, poor}, 0}, recorded, 0.01);
  return check.finish();
}
