#include "engine/response/pieces.hpp"

#include <numeric>

#include "engine/assembly/assembly.hpp"
#include "engine/response/field_response.hpp"
#include "tests/catch.hpp"
#include "tests/march_scenario.hpp"

using namespace stillground;

namespace {

const std::vector<double> parts{0.1, 0.3, 0.6};

}  // namespace

TEST_CASE("The pieces of a bore's wall hold all its metres, each its part") {
  const assembly::Assembly assembly = assembly::assemble(test::scenario(1, 1));  // 90 m
  const auto metres = response::metres_of_pieces(assembly.problem.groups.front(), assembly.problem.grid, parts);
  for (std::size_t piece = 0; piece < parts.size(); ++piece)
    CHECK(std::accumulate(metres[piece].begin(), metres[piece].end(), 0.0) == Approx(90 * parts[piece]));
}

TEST_CASE("A mean over pieces leaves what is even as it is, and what rises with depth rises from piece to piece") {
  auto s = test::scenario(1, 1);
  s.layout = model::Positions{{{0, 0, 1.8, 90, 0}, {6, 0, 1.8, 60, 0}}};
  const assembly::Assembly assembly = assembly::assemble(s);
  const auto weights = response::mean_over_pieces(assembly.problem, parts);
  const auto mean = [&](const std::vector<double>& of_piece, const std::vector<double>& values) {
    return std::inner_product(of_piece.begin(), of_piece.end(), values.begin(), 0.0);
  };
  const std::vector<double> even(assembly.problem.nz(), 7.0);
  CHECK(mean(weights[1], even) == Approx(7));
  // Of the lowest piece, 0.4 to 1 of the depth, the middle lies at 1.8 m + 0.7 x (90 x 90 + 60 x 60)/150 m.
  CHECK(mean(weights[2], assembly.problem.grid.z) == Approx(1.8 + 0.7 * 78).margin(0.05));
  CHECK(mean(weights[0], assembly.problem.grid.z) < mean(weights[1], assembly.problem.grid.z));
}

TEST_CASE("Pieces in the better ground take more heat for the same rise") {
  auto s = test::scenario(1, 1);  // clay of 1.3 down to 9 m, limestone of 2.5 W/(m K) below
  s.run.years = 1;
  const response::FieldResponse response = response::field_response(assembly::assemble(s), {parts});
  const response::Sample &clay = response[0].back(), &limestone = response[1].back();
  CHECK(clay.heat > 0);
  CHECK(limestone.heat > 1.2 * clay.heat);
  double sum = 0;  // of a watt over 90 m
  for (std::size_t piece = 0; piece < parts.size(); ++piece) sum += parts[piece] * response[piece].back().heat;
  CHECK(sum == Approx(1.0 / 90).epsilon(0.01));
}
