#pragma once

#include <fstream>
#include <string>

#include "tests/cli/broken/cases.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tools/sweep/plan.hpp"

namespace stillground::testing {

/// The good scenario of tests/cli/broken, and a plan beside it that begins with `scenario: site.yaml`.
struct Planned : Scratch {
  std::filesystem::path file;

  explicit Planned(const std::string& rest) : file(folder / "plan.yaml") {
    make_broken({"", {}, ""}, folder);
    std::ofstream(file) << "scenario: site.yaml\n" << rest;
  }
  sweep::Plan read() const { return sweep::read_plan(file); }
};

}  // namespace stillground::testing
