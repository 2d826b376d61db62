#include "tools/scenarios/least_search.hpp"

#include <algorithm>
#include <cmath>

namespace stillground::scenarios {

namespace {

bool keeps(const Tried& tried) {
  return tried.margin >= 0;
}

/// The line in the reciprocal through two places.
struct ReciprocalLine {
  double at = 0, margin = 0, slope = 0;  ///< margin(1/v) = margin + slope (1/v - at)

  double operator()(double value) const { return margin + slope * (1 / value - at); }

  /// The value at which the margin, raised by `shift`, is naught; infinite where it never is.
  double root(double shift = 0) const {
    const double reciprocal = at - (margin + shift) / slope;
    return slope < 0 && reciprocal > 0 ? 1 / reciprocal : INFINITY;
  }
};

ReciprocalLine line_through(std::span<const double> values, const Tried& a, const Tried& b) {
  const double from = 1 / values[a.place], to = 1 / values[b.place];
  return {from, a.margin, (b.margin - a.margin) / (to - from)};
}

/// The line through the two tried places nearest to `place`, of those next to each other in the order.
ReciprocalLine line_at(std::span<const double> values, std::span<const Tried> tried, std::size_t place) {
  if (tried.size() < 2) return {1 / values[tried.front().place], tried.front().margin, 0};
  std::size_t upper = 1;
  while (upper + 1 < tried.size() && tried[upper].place < place) ++upper;
  return line_through(values, tried[upper - 1], tried[upper]);
}

/// The first place whose value is not below `value`; the list's size where there is none.
std::size_t place_of(std::span<const double> values, double value) {
  const double round_off = 1e-9 * value;
  return static_cast<std::size_t>(std::lower_bound(values.begin(), values.end(), value - round_off) - values.begin());
}

/// Looks at those places that were not looked at, and keeps them in order.
void look(const Margins& margins, std::vector<std::size_t> places, std::vector<Tried>& tried) {
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::erase_if(places, [&](std::size_t place) {
    return std::any_of(tried.begin(), tried.end(), [&](const Tried& one) { return one.place == place; });
  });
  const std::vector<double> found = margins(places);
  for (std::size_t i = 0; i < places.size(); ++i) tried.push_back({places[i], found[i]});
  std::sort(tried.begin(), tried.end(), [](const Tried& a, const Tried& b) { return a.place < b.place; });
}

/// Of an ordered list that crosses: the last that breaks the limits.
std::size_t last_beyond(std::span<const Tried> tried) {
  std::size_t last = 0;
  while (last + 1 < tried.size() && !keeps(tried[last + 1])) ++last;
  return last;
}

/// The next secant's place, strictly between two tried ones.
class Illinois {
 public:
  std::size_t next(std::span<const double> values, Tried low, Tried high) {
    if (low_ && *low_ == low.place) {
      high_weight_ = 1;
      low.margin *= low_weight_ /= 2;
    } else if (high_ && *high_ == high.place) {
      low_weight_ = 1;
      high.margin *= high_weight_ /= 2;
    }
    low_ = low.place;
    high_ = high.place;
    const double root = line_through(values, low, high).root();
    return std::clamp(place_of(values, root), low.place + 1, high.place - 1);
  }

 private:
  std::optional<std::size_t> low_, high_;
  double low_weight_ = 1, high_weight_ = 1;
};

void narrow(std::span<const double> values, const Margins& margins, const SearchOptions& options,
            std::vector<Tried>& tried) {
  Illinois secants;
  const std::size_t spare = options.neighbours ? 1 : 0;
  while (tried.size() + spare < options.most && shape_of(tried) == Shape::crosses) {
    const std::size_t low = last_beyond(tried), high = low + 1;
    if (tried[high].place == tried[low].place + 1) return;
    const double nearest = std::min(tried[high].margin, -tried[low].margin);
    if (!options.neighbours && nearest <= options.close) return;
    look(margins, {secants.next(values, tried[low], tried[high])}, tried);
  }
}

}  // namespace

Shape shape_of(std::span<const Tried> tried) {
  const auto first = std::find_if(tried.begin(), tried.end(), keeps);
  if (first == tried.end()) return Shape::none;
  if (!std::all_of(first, tried.end(), keeps)) return Shape::no_order;
  return first == tried.begin() ? Shape::all : Shape::crosses;
}

Searched search_least(std::span<const double> values, const Margins& margins, const SearchOptions& options) {
  Searched searched;
  look(margins, {0, options.start, values.size() - 1}, searched.tried);
  narrow(values, margins, options, searched.tried);
  if (shape_of(searched.tried) == Shape::crosses && options.neighbours) {
    const std::size_t after = searched.tried[last_beyond(searched.tried) + 1].place + 1;
    if (after < values.size()) look(margins, {after}, searched.tried);
  }
  searched.shape = shape_of(searched.tried);
  if (searched.shape != Shape::crosses) return searched;
  const std::size_t low = last_beyond(searched.tried);
  const Tried &beyond = searched.tried[low], &within = searched.tried[low + 1];
  searched.answer =
      std::clamp(place_of(values, line_through(values, beyond, within).root()), beyond.place + 1, within.place);
  return searched;
}

namespace {

Tried at_place(std::span<const Tried> tried, std::size_t place) {
  return *std::find_if(tried.begin(), tried.end(), [&](const Tried& one) { return one.place == place; });
}

void sum_up(Confirmed& confirmed) {
  confirmed.ordered = shape_of(confirmed.tried) != Shape::no_order;
  for (const Tried& one : confirmed.tried) {
    if (!keeps(one)) confirmed.below = one.place;
  }
  const auto least = std::find_if(confirmed.tried.begin(), confirmed.tried.end(), keeps);
  if (least != confirmed.tried.end()) confirmed.least = least->place;
}

bool is_settled(const Confirmed& confirmed, std::size_t last, const ConfirmOptions& options) {
  const auto& [tried, least, below, ordered] = confirmed;
  if (!ordered || tried.size() >= options.most || least == std::size_t{0} || below == last) return true;
  if (!least || !below) return false;
  return *least == *below + 1 || (tried.size() >= options.usual && at_place(tried, *least).margin <= options.close);
}

/// Where the next look belongs: between the nearest two of unlike signs, else where the line of the first method points
/// once it is shifted by what the two differ in, which is nearly the same at places so near to each other.
std::size_t pointed(std::span<const double> values, const Searched& searched, const Confirmed& confirmed) {
  const auto& [tried, least, below, ordered] = confirmed;
  if (least && below) {
    const ReciprocalLine line = line_through(values, at_place(tried, *below), at_place(tried, *least));
    return std::clamp(place_of(values, line.root()), *below + 1, *least);
  }
  const Tried& nearest = least ? tried.front() : tried.back();
  const ReciprocalLine line = line_at(values, searched.tried, nearest.place);
  const std::size_t root = place_of(values, line.root(nearest.margin - line(values[nearest.place])));
  return least ? std::clamp(root, std::size_t{0}, nearest.place - 1)
               : std::clamp(root, nearest.place + 1, values.size() - 1);
}

}  // namespace

Confirmed confirm_least(std::span<const double> values, const Searched& searched, const Margins& margins,
                        const ConfirmOptions& options) {
  Confirmed confirmed;
  std::size_t answer = searched.answer;
  while (true) {
    look(margins, answer > 0 ? std::vector{answer - 1, answer} : std::vector{answer}, confirmed.tried);
    sum_up(confirmed);
    if (is_settled(confirmed, values.size() - 1, options)) return confirmed;
    answer = pointed(values, searched, confirmed);
  }
}

double slope_at(std::span<const double> values, std::span<const Tried> tried, std::size_t place) {
  const double value = values[place];
  return -line_at(values, tried, place).slope / (value * value);
}

}  // namespace stillground::scenarios
