// Source: validation/reference_solutions/loop_streams.py (the legs' balances by a matrix exponential, scipy); Carslaw &
// Jaeger 1959
#include "validation/loop_types/claims.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  validation::judge_resistances(check);
  validation::judge_outlets(check);
  validation::judge_profiles(check);
  validation::judge_limits(check);
  return check.finish();
}
