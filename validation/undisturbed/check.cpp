// Source: Kusuda & Achenbach 1965, Carslaw & Jaeger 1959 (periodic heat flow), Fourier's law in series
#include "validation/undisturbed/claims.hpp"

int main(int argc, char** argv) {
  stillground::validation::Check check(argc, argv, stillground::validation::Topic::ground);
  stillground::validation::yearly_wave(check);
  stillground::validation::geothermal_heat(check);
  return check.finish();
}
