#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// The least of a rising list of values that keeps all limits. A value is known by its place in the list; the margin
/// to the nearest limit is negative beyond it, and rises nearly as minus the value's reciprocal.
namespace stillground::scenarios {

/// A place of the list that was looked at.
struct Tried {
  std::size_t place = 0;
  double margin = 0;  ///< [K]; keeping a limit exactly is keeping it
};

/// The margins [K] at some places, each different, looked at side by side.
using Margins = std::function<std::vector<double>(const std::vector<std::size_t>&)>;

enum class Shape {
  crosses,   ///< beyond the limits up to some place, within them from the next on
  none,      ///< no place keeps them
  all,       ///< every place keeps them
  no_order,  ///< a smaller value keeps what a greater one breaks: there is no least one to speak of
};

/// Of places in rising order.
Shape shape_of(std::span<const Tried> tried);

struct SearchOptions {
  std::size_t start = 0;    ///< where to look first, besides the list's two ends
  std::size_t most = 8;     ///< looks
  double close = 0.005;     ///< a margin so near to naught ends the search for a fine list [K]
  bool neighbours = false;  ///< the places on both sides of the answer are looked at
};

struct Searched {
  Shape shape = Shape::no_order;
  std::vector<Tried> tried;  ///< in the order of places
  std::size_t answer = 0;    ///< of `crosses`, as the line between the nearest two places has it; of `all` the first
};

/// Looks at the list's ends and its start, then at secants in the reciprocal between the nearest two places with
/// unlike signs, of which the end that stays twice counts half (Illinois; Dowell & Jarratt 1971 [from memory]), until
/// these are neighbours or a margin is close. `values`: rising, > 0, at least one.
Searched search_least(std::span<const double> values, const Margins& margins, const SearchOptions& options);

struct Confirmed {
  std::vector<Tried> tried;          ///< in the order of places
  std::optional<std::size_t> least;  ///< the least place that was found to keep the limits
  std::optional<std::size_t> below;  ///< the greatest place that was found not to
  bool ordered = true;               ///< no place that keeps stands below one that does not
};

struct ConfirmOptions {
  std::size_t usual = 4;  ///< looks, after which places need not be neighbours if the margin is close
  std::size_t most = 8;   ///< looks
  double close = 0.03;    ///< [K]
};

/// Looks again, by a dearer method, at the answer and the place before it, both at once, and again at two where these
/// do not stand on both sides of the limits: nearer between places that do, else where the line of `searched` points
/// once it is shifted by what the two methods differ in.
Confirmed confirm_least(std::span<const double> values, const Searched& searched, const Margins& margins,
                        const ConfirmOptions& options = {});

/// What a unit more of the value brings to the margin at `place`, by the line between the nearest two places tried;
/// 0 where only one was.
double slope_at(std::span<const double> values, std::span<const Tried> tried, std::size_t place);

}  // namespace stillground::scenarios
