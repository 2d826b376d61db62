// Source: Gnielinski 1976, Petukhov 1970, Colebrook 1939; other authors' correlations within their stated accuracy
#include "validation/film_and_friction/claims.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::fluid);
  validation::judge_nusselt(check);
  validation::judge_standing(check);
  validation::judge_annulus(check);
  validation::judge_friction(check);
  return check.finish();
}
