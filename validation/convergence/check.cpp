// Source: Ascher, Ruuth & Spiteri 1997 (the order in time), Roache 1998 (observed orders, manufactured solutions)
// Tier:      full
#include "validation/convergence/claims.hpp"

int main(int argc, char** argv) {
  stillground::validation::Check check(argc, argv, stillground::validation::Topic::march);
  stillground::validation::order_in_time(check);
  stillground::validation::order_in_space(check);
  stillground::validation::manufactured(check);
  return check.finish();
}
