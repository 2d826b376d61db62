// Source: Hellstrom 1991 (effective resistance of both limits; modes of two equal legs)
#include <fmt/format.h>

#include <map>

#include "validation/harness/steady_bore.hpp"
#include "validation/harness/worst_case.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;
using validation::SteadyBore;
using validation::WallHeld;

namespace {

using TableRow = std::map<std::string, std::string>;

double number(const TableRow& row, const std::string& name) {
  return std::stod(row.at(name));
}

SteadyBore::Make make(const TableRow& row, model::GridChoice::Level level, WallHeld wall) {
  SteadyBore::Make made;
  made.depth = number(row, "length");
  made.grid.level = level;
  // Shares and capacities of common size: in steady state they may not matter.
  made.networks = {bore::make_network(bore::NetworkParts{.bore_resistance = number(row, "Rb"),
                                                         .internal_resistance = number(row, "Ra"),
                                                         .even_share = 0.4,
                                                         .odd_share = 0.3,
                                                         .grout_capacity = 4.5e4,
                                                         .fluid_capacity = 3900})};
  made.heat_rate = number(row, "mass_flow") * number(row, "heat_capacity");
  made.wall = wall;
  return made;
}

std::string describe(const TableRow& row) {
  return fmt::format("R_b {:.4f}, R_a {:.4f}", number(row, "Rb"), number(row, "Ra"));
}

const char* name(WallHeld wall) {
  return wall == WallHeld::at_one_temperature ? "equal wall temperature" : "equal heat";
}

void judge_effective(validation::Check& check) {
  auto& claim = check.claim(
      {"network-effective-resistance", "the marched network comes to the effective resistance of both closed forms",
       validation::Origin::computed,
       "Hellstrom 1991, Ground heat storage; proved against a matrix exponential of the legs' balance; "
       "tests/reference/effective_resistance.csv",
       "R_b* [K m/W] = ((T_in + T_out)/2 - mean wall)/q' of a U marched to its steady state on the layers that the "
       "engine "
       "chooses (normal and fine grid), wall of one temperature or of even heat by the ground's making; for each bore "
       "and flow the worst of seven sections",
       "0.3 %, as the reference's README asks of a march on 24 layers; beside R_b itself, known to a few per cent"});
  const auto table = reference_solutions::reference_table("effective_resistance.csv");
  for (const auto wall : {WallHeld::at_one_temperature, WallHeld::at_one_heat}) {
    for (const auto level : {model::GridChoice::Level::normal, model::GridChoice::Level::fine}) {
      std::map<std::pair<double, double>, validation::WorstCase> worst;
      std::map<std::pair<double, double>, std::size_t> layers;
      for (const auto& row : table) {
        const SteadyBore bore(make(row, level, wall));
        const std::pair at{number(row, "length"), number(row, "mass_flow")};
        const bool one = wall == WallHeld::at_one_temperature;
        worst[at].compare(describe(row), number(row, one ? "Rb_eff_equal_wall" : "Rb_eff_equal_flux"),
                          bore.effective_resistance());
        layers[at] = bore.layers();
      }
      for (const auto& [at, cases] : worst) {
        cases.row(claim,
                  fmt::format("{}, {:g} m, {:g} kg/s, {} layers", name(wall), at.first, at.second, layers.at(at)),
                  0.003);
      }
    }
  }
}

/// R_b and R_a as a layer's streams show them: by what each loses between its two passages, M and D of both ends' mean.
void compare_modes(const TableRow& row, validation::WorstCase& rb, validation::WorstCase& ra) {
  const SteadyBore::Make made = make(row, model::GridChoice::Level::normal, WallHeld::at_one_temperature);
  const SteadyBore bore(made);
  const auto passages = bore.passages();
  const auto walls = bore.walls();
  for (std::size_t n = 0; n < walls.size(); ++n) {
    const auto &above = passages[n], &below = passages[n + 1];
    const double height = below.depth - above.depth;
    const double lost_down = made.heat_rate * (above.down - below.down) / height;
    const double lost_up = made.heat_rate * (below.up - above.up) / height;
    const double mean = (above.down + below.down + above.up + below.up) / 4;
    const double difference = (above.down + below.down - above.up - below.up) / 2;
    const std::string where = fmt::format("{}, {:.1f} m below the top", describe(row), (above.depth + below.depth) / 2);
    rb.compare(where, number(row, "Rb"), (mean - walls[n]) / (lost_down + lost_up));
    ra.compare(where, number(row, "Ra"), difference / ((lost_down - lost_up) / 2));
  }
}

void judge_modes(validation::Check& check) {
  auto& claim = check.claim(
      {"network-modes", "in steady state every layer of the marched network has the R_b and R_a that it was made of",
       validation::Origin::computed,
       "definition of R_b and R_a by the legs' even and odd modes (Hellstrom 1991): both legs at one temperature above "
       "the wall, or +q and -q; sections of tests/reference/effective_resistance.csv",
       "R_b and R_a [K m/W] read off the streams alone: mean temperature, half difference and losses of each of the "
       "layers of 21 bores; the worst layer of all; wall of one temperature (by even heat the ground rises by 1e5 K, "
       "whose round-off hides the legs' difference at the toe)",
       "1e-6: exact but for round-off, which grows where the legs' difference dies out at the toe"});
  validation::WorstCase rb, ra;
  for (const auto& row : reference_solutions::reference_table("effective_resistance.csv")) compare_modes(row, rb, ra);
  rb.row(claim, "R_b", 1e-6);
  ra.row(claim, "R_a", 1e-6);
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  judge_effective(check);
  judge_modes(check);
  return check.finish();
}
