#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "validation/harness/worst_case.hpp"
#include "validation/loop_types/claims.hpp"
#include "validation/loop_types/steady.hpp"

namespace stillground::validation {

namespace {

/// One bore of each section of a loop, 150 m, with a flow of our choice.
std::vector<TableRow> bores(const std::string& limit, const std::string& loop, double heat_rate) {
  std::vector<TableRow> rows;
  for (TableRow row : streams_table(limit, loop)) {
    if (row.at("loop") != loop || row.at("length") != "150") continue;
    row["heat_rate"] = fmt::format("{:g}", heat_rate);
    rows.push_back(row);
  }
  return rows;
}

const std::vector<std::string> loops = {"parallel",       "parallel crossed",     "series",
                                        "series crossed", "coaxial annulus down", "coaxial inner down"};

/// What R_b* comes to with plenty of flow. In a coaxial loop too: annulus and inner stream are then equally warm.
void judge_plenty(Check& check) {
  auto& claim = check.claim(
      {"loop-plenty-of-flow",
       "with plenty of flow the effective resistance is R_b, and what short circuit adds grows as "
       "(H/(m c))^2",
       Origin::engine,
       "our own R_b and our own R_b* at half the flow; what ratio to expect: Hellstrom 1991, Ground heat storage [from "
       "memory]: R_b + (H/(m c))^2/(3 R_a) for one U of even heat; for any loop the first order in (H/(m c))^2 of its "
       "legs' equations, by their symmetry when the flow is turned round",
       "150 m marched to its steady state; R_b* over R_b at 1e6 W/K, then (R_b* - R_b) over that at twice the flow "
       "(2e4 and 4e4 W/K), wall of one temperature and even heat; per loop the worst section",
       "1e-5 of R_b at 1e6 W/K: the square of 150/1e6 over resistances of some 0.1 K m/W is 1e-6; 1 % of the factor "
       "4: the next order is as much smaller again as the first is than R_b"});
  for (const std::string& loop : loops) {
    WorstCase plenty, square;
    for (const std::string limit : {"wall", "heat"}) {
      for (const TableRow& row : bores(limit, loop, 1e6)) {
        const double rb = network(row).modes[0].resistance();
        plenty.compare(row.at("section"), rb, marched(row)->effective_resistance());
        TableRow slow = row, fast = row;
        slow["heat_rate"] = "2e4";
        fast["heat_rate"] = "4e4";
        square.compare(fmt::format("section {}, {}", row.at("section"), limit), 4,
                       (marched(slow)->effective_resistance() - rb) / (marched(fast)->effective_resistance() - rb));
      }
    }
    plenty.row(claim, loop + ", R_b* at 1e6 W/K", 1e-5);
    square.row(claim, loop + ", short circuit at half the flow over that at full flow", 0.01);
  }
}

void judge_turned(Check& check) {
  auto& claim = check.claim(
      {"loop-turned-round", "turning a coaxial loop's flow round leaves the outlet as it is and changes the toe",
       Origin::engine,
       "our own outlet with the flow reversed, by reciprocity: the streams' exchange is symmetric, and so the outlet's "
       "answer to the inlet is the same (derived: the reversed problem is the transposed one)",
       "outlet over inlet with the annulus down against the inner pipe down, wall of one temperature; layers of "
       "a metre, worst of all sections and flows; the least change of the toe is above 0.001",
       "1e-9: the box scheme keeps the symmetry"});
  auto& change_of_toe = check.claim(
      {"loop-turned-toe", "turning a coaxial loop's flow round changes the toe as its streams' equations say",
       Origin::library, "as loop-profiles: validation/reference_solutions/loop_streams.csv",
       "toe with the annulus down less that with the inner pipe down, over the inlet's excess; the same bores",
       "2e-4 as the profiles"});
  WorstCase outlet, toe;
  double least = 1;
  const auto down = streams_table("wall", "coaxial annulus down"), up = streams_table("wall", "coaxial inner down");
  for (std::size_t i = 0; i < down.size(); ++i) {
    const auto annulus = marched(down[i], 1), inner = marched(up[i], 1);
    outlet.compare(describe(down[i]), annulus->outlet() / annulus->inlet(), inner->outlet() / inner->inlet());
    const double change =
        annulus->passages().back().down / annulus->inlet() - inner->passages().back().down / inner->inlet();
    toe.compare_absolute(describe(down[i]), number(down[i], "leg0_at_1") - number(up[i], "leg0_at_1"), change);
    least = std::min(least, std::abs(change));
  }
  outlet.row(claim, "outlet", 1e-9);
  toe.row(change_of_toe, "toe, annulus down less inner pipe down", 2e-4);
  claim.between("least change of the toe", 0.001, 1, least);
}

}  // namespace

void judge_limits(Check& check) {
  judge_plenty(check);
  judge_turned(check);
}

}  // namespace stillground::validation
