// Source: line segments on each other (Cimmino & Bernier 2014)
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <map>
#include <numbers>

#include "engine/assembly/assembly.hpp"
#include "engine/base/calendar.hpp"
#include "validation/harness/claim.hpp"
#include "validation/harness/traces.hpp"
#include "validation/harness/uniform_bore.hpp"
#include "validation/reference_solutions/reference_table.hpp"

using namespace stillground;

namespace {

using Row = std::map<std::string, std::string>;

double number(const Row& row, const char* key) {
  return std::stod(row.at(key));
}

/// What one bore does to one other, of another depth: rows of all distances and times.
void compare(const std::vector<Row>& rows, validation::Claim& claim) {
  const model::Solid rock{2, 2e6};
  const ground::DepthInterval warmed{number(rows[0], "D_i"), number(rows[0], "D_i") + number(rows[0], "H_i")};
  const ground::DepthInterval source{number(rows[0], "D_j"), number(rows[0], "D_j") + number(rows[0], "H_j")};
  const double radius = 0.075, far = 4 * std::sqrt(4 * rock.diffusivity() * 25 * seconds_per_year);
  const int rings = static_cast<int>(std::ceil(std::log(far / radius) / std::log(assembly::ring_ratio)));
  validation::UniformBore bore({radius, far, rings, 0.5, 1.2, 8, far}, rock, source, {warmed});
  validation::Traces traces;
  bore.march({seconds_per_year, 5 * seconds_per_year, 25 * seconds_per_year}, 60, 43200, [&](double time) {
    for (const Row& row : rows) {
      if (std::abs(number(row, "years") * seconds_per_year - time) > 1) continue;
      const double r = number(row, "r"), g = number(row, "g");
      const double ours = 2 * std::numbers::pi * rock.conductivity * bore.at_distance(r, warmed);
      const std::string at = fmt::format("{:g} m apart, {} years", r, row.at("years"));
      traces.add(fmt::format("{:g} m apart", r), number(row, "years"), g, ours);
      if (g > 0.3) {
        claim.relative(at, g, ours, 0.005);
      } else {
        claim.absolute(at, g, ours, 0.003);
      }
    }
  });
  claim.plot(traces.on({"Rise of one bore by the other", "years", "g = 2 pi k rise/q'", true, false, {}}));
}

}  // namespace

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::field);
  std::map<std::array<std::string, 4>, std::vector<Row>> pairs;
  for (const auto& row : reference_solutions::reference_table("finite_line_pairs.csv"))
    pairs[{row.at("D_i"), row.at("H_i"), row.at("D_j"), row.at("H_j")}].push_back(row);
  for (const auto& [pair, rows] : pairs) {
    const auto& [top, height, source_top, source_height] = pair;
    compare(rows, check.claim(
                      {fmt::format("line-pair-{}-{}-by-{}-{}", top, height, source_top, source_height),
                       fmt::format("a bore of {} m from {} m down warms one of {} m from {} m down as line sources say",
                                   source_height, source_top, height, top),
                       validation::Origin::computed,
                       "Cimmino & Bernier 2014, Int. J. Heat Mass Transfer 70, 641-650 (segment on segment); "
                       "tests/reference/finite_line_pairs.csv",
                       "g = 2 pi k rise/q', mean over the bore that is warmed, 3 to 20 m off, after 1, 5 and 25 years "
                       "of uniform heat; one grid for both, layer by layer, weighted by the part of each layer that "
                       "the bore fills",
                       "0.5 % where g > 0.3, as the reference's README asks of a march at neighbours; 0.003 in g "
                       "elsewhere, as at points"}));
  }
  return check.finish();
}
