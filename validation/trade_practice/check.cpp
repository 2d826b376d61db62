// Source: common practice of the trade, no source; sanity of whole results, not of digits
#include "validation/trade_practice/claims.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::practice);
  validation::judge_temperatures(check);
  validation::judge_resistances(check);
  validation::judge_flow(check);
  validation::judge_ground(check);
  validation::judge_time_scales(check);
  return check.finish();
}
