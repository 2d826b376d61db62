#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "engine/config/overrides.hpp"

/// One scenario in many variants: a plan, its points, what each decided.
namespace stillground::sweep {

/// More points than this are a slip, or no night's work.
inline constexpr std::size_t most_points = 100'000;

/// What one key of the scenario may be.
struct Value {
  std::string name;  ///< as written, or the name of a block
  config::Node node;
};

/// A varied key.
struct Axis {
  std::string path;  ///< of the scenario's key: "field.grid.spacing"
  Place place;       ///< in the plan
  std::vector<Value> values;
};

enum class Method {
  march,
  screening,
  both,  ///< screening, then a march of the best and of all that the screening is not sure of
};

/// Which of the points that keep their limits comes first: that with the least of this.
enum class Rank { length, cost, power };

/// In a currency of the user's.
struct Prices {
  double drilling = 0;  ///< a metre to drill
  double bore = 0;      ///< a bore, whatever its depth
  double grout = 0;     ///< a cubic metre
  double pipe = 0;      ///< a metre in the bores, all legs
  double trench = 0;    ///< a metre
};

struct Plan {
  std::filesystem::path file;
  std::filesystem::path scenario;
  std::vector<Axis> axes;
  bool paired = false;  ///< the axes' values walk together, else each meets each
  Method method = Method::both;
  std::size_t best = 3;  ///< so many are marched whatever their margin
  Rank rank = Rank::length;
  std::optional<Prices> prices;
  bool keep_results = false;  ///< of screened points too
};

/// Reads a plan and judges all of it that can be judged without a scenario's physics: its keys, its ranges, how many
/// points it has, and whether each varied key is one of the scenario. Throws InputError at the fault.
Plan read_plan(const std::filesystem::path& file);

/// The words of a plan for them.
std::string text_of(Rank rank);
std::string text_of(Method method, std::size_t best);

}  // namespace stillground::sweep
