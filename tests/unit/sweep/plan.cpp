#include "tools/sweep/plan.hpp"

#include "tests/catch.hpp"
#include "tests/unit/sweep/planned.hpp"

using namespace stillground;
using namespace stillground::sweep;
using stillground::testing::Contains;
using stillground::testing::Planned;

namespace {

std::vector<std::string> names(const Axis& axis) {
  std::vector<std::string> names;
  for (const Value& value : axis.values) names.push_back(value.name);
  return names;
}

std::string refusal(const std::string& rest) {
  const Planned planned(rest);
  try {
    planned.read();
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("Lists, ranges and named blocks become values, as written") {
  const Plan plan = Planned(
                        "vary:\n"
                        "  field.grid.spacing: [5 m, 20 ft]\n"
                        "  bore.depth: {from: 90 m, to: 150 m, step: 15 m}\n"
                        "  bore.grout.conductivity: {from: 2.0 W/(m K), to: 0.9 W/(m K), step: -0.55 W/(m K)}\n"
                        "  fluid: [{name: water, base: water}, {base: ethanol, mass_fraction: 20 %}]\n")
                        .read();
  REQUIRE(plan.axes.size() == 4);
  CHECK(names(plan.axes[0]) == Names{"5 m", "20 ft"});
  CHECK(names(plan.axes[1]) == Names{"90 m", "105 m", "120 m", "135 m", "150 m"});
  CHECK(names(plan.axes[2]) == Names{"2.00 W/(m K)", "1.45 W/(m K)", "0.90 W/(m K)"});
  CHECK(names(plan.axes[3]) == Names{"water", "{base: ethanol, mass_fraction: 20 %}"});
  CHECK(plan.axes[3].values[0].node.entries.size() == 1);
  CHECK(plan.method == Method::both);
  CHECK(plan.best == 3);
  CHECK(plan.rank == Rank::length);
}

TEST_CASE("Method, rank and prices are read, prices in any unit of length") {
  const Plan plan = Planned(
                        "vary: {bore.depth: [90 m]}\nmethod: screening, then march the best 12\n"
                        "prices: {drilling: 12 /ft, bore: 350, grout: 410 /m3, trench: 60 / m}\nkeep: results\n")
                        .read();
  CHECK(plan.best == 12);
  CHECK(plan.rank == Rank::cost);
  CHECK(plan.prices->drilling == Approx(12 / 0.3048));
  CHECK(plan.prices->bore == 350);
  CHECK(plan.prices->grout == Approx(410));
  CHECK(plan.prices->trench == Approx(60));
  CHECK(plan.keep_results);
  CHECK(Planned("vary: {bore.depth: [90 m]}\nmethod: march\nrank: power\n").read().rank == Rank::power);
}

TEST_CASE("A plan that says what it cannot mean is refused at the place") {
  const std::string vary = "vary: {bore.depth: [90 m]}\n";
  CHECK_THAT(refusal("varry: {}\n"), Contains("plan.yaml:2:1: unknown key \"varry\" (did you mean \"vary\"?)"));
  CHECK_THAT(refusal("paired: true\n"), Contains("vary: missing"));
  CHECK_THAT(refusal("vary: {bore.dept: [90 m]}\n"),
             Contains("plan.yaml:2:8: bore.dept: unknown key (did you mean \"depth\"?)"));
  CHECK_THAT(refusal("vary: {bore.depth: []}\n"), Contains("vary.bore.depth: the list is empty"));
  CHECK_THAT(refusal("vary: {bore.depth: 90 m}\n"), Contains("a list of values is expected, or a range"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 90 m, to: 150 m}}\n"), Contains("step is missing"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 90 m, to: 150 m, step: -5 m}}\n"), Contains("the range is empty"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 90 m, to: 150 m, step: 0 m}}\n"), Contains("the range is empty"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 90 m, to: 500 ft, step: 5 m}}\n"), Contains("need one unit"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 90 m, to: 150 m, step: 5 m, by: 3}}\n"),
             Contains("unknown key \"by\""));
  CHECK_THAT(refusal("vary: {bore: [90 m]}\n"), Contains("a map of keys is expected"));
  CHECK_THAT(refusal(vary + "method: guess\n"),
             Contains("allowed: march; screening; screening, then march the best 3"));
  CHECK_THAT(refusal(vary + "method: screening, then march the best few\n"), Contains("is not known here"));
  CHECK_THAT(refusal(vary + "rank: cost\n"), Contains("a cost needs prices"));
  CHECK_THAT(refusal(vary + "rank: beauty\n"), Contains("least length that keeps the limits"));
  CHECK_THAT(refusal(vary + "prices: {drilling: 48}\n"),
             Contains("prices.drilling: \"48\" is not a price here (for example \"48 /m\")"));
  CHECK_THAT(refusal(vary + "prices: {grout: 410 /m}\n"), Contains("prices.grout"));
  CHECK_THAT(refusal(vary + "prices: {bores: 3}\n"), Contains("did you mean \"bore\"?"));
  CHECK_THAT(refusal(vary + "keep: all\n"), Contains("allowed: results"));
  CHECK_THAT(refusal(vary + "paired: maybe\n"), Contains("neither true nor false"));
}

TEST_CASE("A million points are refused with their number") {
  const std::string hundred = "{from: 1 m, to: 100 m, step: 1 m}";
  CHECK_THAT(
      refusal("vary: {bore.depth: " + hundred + ", bore.top: " + hundred + ", field.grid.spacing: " + hundred + "}\n"),
      Contains("vary: makes 1000000 points (allowed: up to 100000)"));
  CHECK_THAT(refusal("vary: {bore.depth: {from: 1 m, to: 1000000 m, step: 1 m}}\n"), Contains("1000000 values"));
}
