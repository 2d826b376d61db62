#include "engine/field/coupling.hpp"

#include <algorithm>

#include "engine/field/layout.hpp"
#include "engine/field/superposition.hpp"

namespace stillground::field {

namespace {

/// Sums weights by source and cell, then hands them out by rising cell and source.
class Collector {
 public:
  Collector(std::size_t sources, std::size_t cells) : cells_(cells), weight_(sources * cells), touched_(sources) {}

  void add(std::size_t source, const std::array<RadialWeight, 4>& weights, double share) {
    auto& [least, most] = touched_[source];
    for (const RadialWeight& w : weights) {
      weight_[source * cells_ + w.cell] += share * w.weight;
      least = std::min(least, w.cell);
      most = std::max(most, w.cell + 1);
    }
  }

  /// All terms so far; starts afresh.
  std::vector<Coupling::Term> take() {
    std::vector<std::size_t> place(cells_ + 1, 0);  // of each cell's next term
    each([&](std::size_t, std::size_t cell, double) { ++place[cell + 1]; });
    for (std::size_t cell = 0; cell < cells_; ++cell) place[cell + 1] += place[cell];
    std::vector<Coupling::Term> terms(place.back());
    each([&](std::size_t source, std::size_t cell, double& weight) {
      terms[place[cell]++] = {static_cast<std::uint32_t>(source), static_cast<std::uint32_t>(cell), weight};
      weight = 0;
    });
    std::fill(touched_.begin(), touched_.end(), Touched{});
    return terms;
  }

 private:
  struct Touched {
    std::size_t least = no_bore, most = 0;  ///< cells
  };

  template <class Each>
  void each(Each&& call) {
    for (std::size_t source = 0; source < touched_.size(); ++source) {
      for (std::size_t cell = touched_[source].least; cell < touched_[source].most; ++cell) {
        if (double& weight = weight_[source * cells_ + cell]; weight != 0) call(source, cell, weight);
      }
    }
  }

  std::size_t cells_;
  std::vector<double> weight_;  // [source][cell]
  std::vector<Touched> touched_;
};

/// The spacing that half of the bores keep from their nearest [m].
double common_spacing(const std::vector<model::BoreSite>& bores) {
  auto nearest = nearest_distances(bores);
  const auto middle = nearest.begin() + static_cast<std::ptrdiff_t>(nearest.size() / 2);
  std::nth_element(nearest.begin(), middle, nearest.end());
  return *middle;
}

/// Shells of the cells before `past`, the first within twice the spacing s. Put all bores under q at once: a shell from
/// r to 2 r holds n = 3 pi (r/s)^2 of them, which add up to n q/(4 pi k) E1(tau/t) at its middle, tau = r^2/(4 alpha)
/// (line source). The curvature in time of that is 0.93 n q/(4 pi k tau^2) at most, and the line through two sums h
/// apart errs by h^2 times it, in proportion to (h/r)^2: with h growing as r every shell errs as much as the nearest.
std::vector<Coupling::Shell> shells_within(double spacing, std::span<const double> r, std::size_t past) {
  std::vector<Coupling::Shell> shells;
  double outer = 2 * spacing;
  long every = 1;
  for (std::size_t first = 0; first < past; outer *= 2, every *= 2) {
    const auto found = std::upper_bound(r.begin(), r.end(), outer) - r.begin();
    const std::size_t until = std::min(past, static_cast<std::size_t>(found));
    if (until > first) shells.push_back({first, until, every});
    first = until;
  }
  return shells;
}

}  // namespace

Coupling::Coupling(const std::vector<model::BoreSite>& bores, const Groups& groups, std::span<const double> r)
    : terms_(groups.size()) {
  if (bores.size() < 2) return;
  const RadialReader reader(r);
  Collector collector(groups.size(), r.size());
  std::size_t past = 0;
  for (std::size_t a = 0; a < groups.size(); ++a) {
    const double share = 1 / static_cast<double>(groups.members[a].size());
    for (const std::size_t member : groups.members[a]) {
      for (std::size_t other = 0; other < bores.size(); ++other) {
        if (other == member) continue;
        collector.add(groups.of_bore[other], reader.weights(distance(bores[member], bores[other])), share);
      }
    }
    terms_[a] = collector.take();
    past = std::max<std::size_t>(past, terms_[a].back().cell + 1);
  }
  shells_ = shells_within(common_spacing(bores), r, past);
}

std::span<const Coupling::Term> Coupling::terms(std::size_t a, const Shell& shell) const {
  const auto before = [](const Term& term, std::size_t cell) { return term.cell < cell; };
  const auto& all = terms_[a];
  const auto from = std::lower_bound(all.begin(), all.end(), shell.first, before);
  return {from, std::lower_bound(from, all.end(), shell.end, before)};
}

}  // namespace stillground::field
