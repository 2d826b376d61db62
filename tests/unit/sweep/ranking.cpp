#include "tools/sweep/ranking.hpp"

#include <cmath>

#include "tests/catch.hpp"

using namespace stillground;
using namespace stillground::sweep;

using Numbers = std::vector<std::size_t>;

namespace {

Record decided(double length, double margin, double error = 0.1) {
  Record one;
  one.decision.length = length;
  one.decision.margin = margin;
  one.decision.method = "screening";
  one.kept = margin >= 0;
  one.sure = std::abs(margin) > error;
  one.error = error;
  return one;
}

Record failed(bool unfit = false) {
  Record one;
  one.failed = "no";
  one.unfit = unfit;
  return one;
}

State screened(const std::vector<Record>& records) {
  State state;
  for (const Record& one : records) state.push_back({{}, one, {}});
  return state;
}

const State five = screened({decided(100, -1), decided(300, 1), decided(200, 0.5), failed(), decided(150, -0.3)});

}  // namespace

TEST_CASE("Those that keep their limits rank by length, the others by how near they are, failed ones last") {
  CHECK(ranked({}, five) == Numbers{3, 2, 5, 1, 4});
}

TEST_CASE("Of equal lengths the one with more margin comes first, then the earlier") {
  CHECK(ranked({}, screened({decided(200, 0.5), decided(200, 0.7), decided(200, 0.5)})) == Numbers{2, 1, 3});
}

TEST_CASE("Prices turn the ranking") {
  Plan plan;
  plan.prices = Prices{.drilling = 1, .bore = 100, .grout = 0, .pipe = 0, .trench = 0};
  plan.rank = Rank::cost;
  Record few = decided(300, 1), many = decided(200, 1);
  few.amounts.bores = 2;
  many.amounts.bores = 4;
  CHECK(*cost_of(plan, few) == Approx(500));
  CHECK(ranked(plan, screened({many, few})) == Numbers{2, 1});
  CHECK(ranked({}, screened({many, few})) == Numbers{1, 2});
}

TEST_CASE("Unbeaten are those with more margin than all that take less, by rising margin") {
  const State state =
      screened({decided(100, -1), decided(300, 1), decided(200, 0.5), failed(), decided(250, 0.4), decided(200, 0.2)});
  CHECK(unbeaten({}, state) == Numbers{1, 3, 2});
}

TEST_CASE("What a screening is not sure of, or not for, is marched first, then the best until they all are") {
  Plan plan;
  plan.best = 1;
  State state = screened({decided(100, -1), decided(300, 1), decided(200, 0.05), failed(), failed(true)});
  CHECK(to_march(plan, state) == Numbers{3, 5});
  state[2].march = decided(200, -0.01);  // it does not keep them after all
  state[4].march = decided(400, 1);
  CHECK(to_march(plan, state) == Numbers{2});
  state[1].march = decided(300, 1);
  CHECK(to_march(plan, state).empty());
  plan.method = Method::screening;
  CHECK(to_march(plan, screened({decided(200, 0.05)})).empty());
}

TEST_CASE("A record is read as it was written, what is unknown stays unknown") {
  Record one = decided(123.456789012345, 0.1 + 0.2);
  one.decision.limit = "eft_min";
  one.decision.warnings = {"a \"b\"", "c"};
  one.decision.first_year_beyond = 7;
  one.decision.own_error = {0.01, 0.1};
  one.amounts = {30, 1.5, 200, 60};
  const Record again = record_from(text_of(one), "x");
  CHECK(text_of(again) == text_of(one));
  CHECK(again.decision.margin == one.decision.margin);
  CHECK(again.decision.first_year_beyond == 7);
  CHECK(again.decision.own_error.hour == 0.1);
  CHECK(again.decision.warnings == one.decision.warnings);
  CHECK(again.decision.limit == "eft_min");
  CHECK(again.kept);
  CHECK(again.sure);
  CHECK(again.error == one.error);
  CHECK(again.amounts.trench == 60);
  CHECK(std::isnan(again.decision.power));
  CHECK_FALSE(again.decision.hours_beyond);
  CHECK_THROWS_AS(record_from("{}", "x"), SystemError);
  CHECK_THROWS_AS(record_from("half a fi", "x"), SystemError);
}
