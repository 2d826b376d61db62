#pragma once

#include <filesystem>
#include <list>
#include <string>

#include "validation/harness/entry.hpp"

namespace stillground::validation {

/// One verification case: an entry of the dossier while its rows are being filled.
class Claim {
 public:
  explicit Claim(Heading heading) : entry_{std::move(heading), {}, {}} {}

  /// Compares one value; `allowed` relative to the reference.
  void relative(const std::string& at, double reference, double ours, double allowed);

  /// Compares one value; `allowed` in its own unit, which `at` or the set-up tells.
  void absolute(const std::string& at, double reference, double ours, double allowed);

  /// The value must lie in [low, high].
  void between(const std::string& at, double low, double high, double ours);

  /// A relative comparison that is known to miss, for the stated reason: fails if it gets worse than `bound`, and if it
  /// is cured and still listed.
  void known_miss(const std::string& at, double reference, double ours, double allowed, double bound,
                  const std::string& reason);

  /// The same with `allowed` and `bound` in the value's own unit.
  void known_absolute_miss(const std::string& at, double reference, double ours, double allowed, double bound,
                           const std::string& reason);

  /// A picture for the page.
  void plot(Plot plot) { entry_.plots.push_back(std::move(plot)); }

  const Entry& entry() const { return entry_; }

 private:
  void row(Row row);

  Entry entry_;
};

/// The program of one check:
///
///   int main(int argc, char** argv) {
///     validation::Check check(argc, argv, validation::Topic::ground);
///     auto& wall = check.claim({"line-wall", "the wall warms as ...", Origin::computed, ...});
///     wall.relative("ln(t/ts) = -2", g, ours, 0.001);
///     return check.finish();
///   }
///
/// With `--entries FILE` the entries are left there for the dossier.
class Check {
 public:
  /// Throws std::runtime_error for arguments that it does not know.
  Check(int argc, char** argv, Topic topic);

  /// Stays where it is until the check ends.
  Claim& claim(Heading heading) { return claims_.emplace_back(std::move(heading)); }

  /// Prints every claim with its rows; 0 if all held and none was empty, 1 otherwise.
  int finish() const;

 private:
  Topic topic_;
  std::filesystem::path entries_;
  std::list<Claim> claims_;
};

}  // namespace stillground::validation
