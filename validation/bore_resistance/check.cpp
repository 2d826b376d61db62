// Source: Claesson & Hellstrom 2011 (multipoles), Hellstrom 1991 (closed forms, effective resistance)
#include "validation/bore_resistance/claims.hpp"

using namespace stillground;

int main(int argc, char** argv) {
  validation::Check check(argc, argv, validation::Topic::bore);
  validation::judge_single_u(check);
  validation::judge_double_u(check);
  validation::judge_exact_sections(check);
  validation::judge_effective(check);
  validation::judge_run(check);
  return check.finish();
}
