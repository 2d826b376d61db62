#include "engine/field/groups.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/field/layout.hpp"

namespace stillground::field {

namespace {

constexpr double same_length = 1e-3;  // [m]

bool same(double a, double b) {
  return std::abs(a - b) <= same_length;
}

/// What a bore sees: each other bore's group and distance, in order.
using View = std::vector<std::pair<std::size_t, double>>;

View view(std::size_t from, const std::vector<model::BoreSite>& bores, const std::vector<std::size_t>& group) {
  View seen;
  for (std::size_t i = 0; i < bores.size(); ++i) {
    if (i != from) seen.emplace_back(group[i], distance(bores[from], bores[i]));
  }
  std::sort(seen.begin(), seen.end());
  return seen;
}

bool same_view(const View& a, const View& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const auto& p, const auto& q) { return p.first == q.first && same(p.second, q.second); });
}

/// The groups of the bores before and after a bore on its circuit.
using Place = std::pair<std::size_t, std::size_t>;

std::vector<Place> places(const Upstream& upstream, const std::vector<std::size_t>& group) {
  std::vector<Place> result(group.size(), {no_bore, no_bore});
  for (std::size_t i = 0; i < group.size(); ++i) {
    if (upstream[i] == no_bore) continue;
    result[i].first = group[upstream[i]];
    result[upstream[i]].second = group[i];
  }
  return result;
}

bool same_make(const model::BoreSite& a, const model::BoreSite& b) {
  return same(a.depth, b.depth) && same(a.top, b.top) && a.start == b.start && a.stop == b.stop &&
         a.flow_weight == b.flow_weight;
}

Groups collect(const std::vector<std::size_t>& of_bore) {
  Groups groups{of_bore, {}};
  groups.members.resize(of_bore.empty() ? 0 : *std::max_element(of_bore.begin(), of_bore.end()) + 1);
  for (std::size_t i = 0; i < of_bore.size(); ++i) groups.members[of_bore[i]].push_back(i);
  return groups;
}

/// Splits by any equivalence `alike(first bore of a class, bore)`, numbering classes by their first bore.
template <class Alike>
std::vector<std::size_t> classes(std::size_t bores, Alike&& alike) {
  std::vector<std::size_t> firsts;
  std::vector<std::size_t> of_bore(bores);
  for (std::size_t i = 0; i < bores; ++i) {
    const auto found = std::find_if(firsts.begin(), firsts.end(), [&](std::size_t first) { return alike(first, i); });
    of_bore[i] = static_cast<std::size_t>(found - firsts.begin());
    if (found == firsts.end()) firsts.push_back(i);
  }
  return of_bore;
}

}  // namespace

Groups lone_groups(std::size_t bores) {
  std::vector<std::size_t> of_bore(bores);
  for (std::size_t i = 0; i < bores; ++i) of_bore[i] = i;
  return collect(of_bore);
}

Groups equal_groups(const std::vector<model::BoreSite>& bores, const Upstream& upstream) {
  std::vector<std::size_t> of_bore =
      classes(bores.size(), [&](std::size_t a, std::size_t b) { return same_make(bores[a], bores[b]); });
  for (;;) {
    std::vector<View> views(bores.size());
    for (std::size_t i = 0; i < bores.size(); ++i) views[i] = view(i, bores, of_bore);
    const std::vector<Place> place = places(upstream, of_bore);
    auto finer = classes(bores.size(), [&](std::size_t a, std::size_t b) {
      return of_bore[a] == of_bore[b] && place[a] == place[b] && same_view(views[a], views[b]);
    });
    if (finer == of_bore) return collect(of_bore);
    of_bore = std::move(finer);
  }
}

}  // namespace stillground::field
