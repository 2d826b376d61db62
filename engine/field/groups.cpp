#include "engine/field/groups.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "engine/field/layout.hpp"

namespace stillground::field {

namespace {

constexpr double same_length = 1e-3;  // [m]

bool same(double a, double b) {
  return std::abs(a - b) <= same_length;
}

/// A bore's signature in the refinement: its distances to the bores of each group, rising.
using Signature = std::vector<std::vector<double>>;

Signature signature(std::size_t from, const std::vector<model::BoreSite>& bores, const Groups& groups) {
  Signature found(groups.size());
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (const std::size_t i : groups.members[g]) {
      if (i != from) found[g].push_back(distance(bores[from], bores[i]));
    }
    std::sort(found[g].begin(), found[g].end());
  }
  return found;
}

bool same_signature(const Signature& a, const Signature& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& p, const auto& q) {
    return std::equal(p.begin(), p.end(), q.begin(), q.end(), same);
  });
}

/// An invariant of signatures that is cheap: bores that differ in it differ in their signatures.
struct Invariant {
  double nearest = std::numeric_limits<double>::infinity();  ///< [m]
  double mean = 0;                                           ///< distance of all others [m]
};

std::vector<Invariant> invariants(const std::vector<model::BoreSite>& bores) {
  std::vector<Invariant> result(bores.size());
  const double each = 1 / static_cast<double>(bores.size());
  for (std::size_t i = 0; i < bores.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const double apart = distance(bores[i], bores[j]);
      for (const std::size_t bore : {i, j}) {
        result[bore].nearest = std::min(result[bore].nearest, apart);
        result[bore].mean += each * apart;
      }
    }
  }
  return result;
}

bool same_invariant(const Invariant& a, const Invariant& b) {
  // Round-off of the means, which add in another order, is far below half a millimetre.
  return same(a.nearest, b.nearest) && std::abs(a.mean - b.mean) <= 1.5 * same_length;
}

/// Signatures of a layout's bores, made when first needed: most bores of an irregular field differ in the invariant.
class Signatures {
 public:
  Signatures(const std::vector<model::BoreSite>& bores, const Groups& groups)
      : bores_(bores), groups_(groups), signatures_(bores.size()) {}

  bool same(std::size_t a, std::size_t b) { return same_signature(of(a), of(b)); }
  void forget(std::size_t bore) { signatures_[bore] = {}; }

 private:
  const Signature& of(std::size_t bore) {
    if (signatures_[bore].empty()) signatures_[bore] = signature(bore, bores_, groups_);
    return signatures_[bore];
  }

  const std::vector<model::BoreSite>& bores_;
  const Groups& groups_;
  std::vector<Signature> signatures_;
};

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

/// Splits by any equivalence `alike(first bore of a class, bore)`, numbering classes by their first bore. Calls
/// `joined(bore)` for each bore that is not the first of its class.
template <class Alike, class Joined>
std::vector<std::size_t> classes(std::size_t bores, Alike&& alike, Joined&& joined) {
  std::vector<std::size_t> firsts;
  std::vector<std::size_t> of_bore(bores);
  for (std::size_t i = 0; i < bores; ++i) {
    const auto found = std::find_if(firsts.begin(), firsts.end(), [&](std::size_t first) { return alike(first, i); });
    of_bore[i] = static_cast<std::size_t>(found - firsts.begin());
    if (found == firsts.end()) {
      firsts.push_back(i);
    } else {
      joined(i);
    }
  }
  return of_bore;
}

}  // namespace

bool same_make(const model::BoreSite& a, const model::BoreSite& b) {
  return same(a.depth, b.depth) && same(a.top, b.top) && a.start == b.start && a.stop == b.stop &&
         a.flow_weight == b.flow_weight;
}

Groups numbered(const std::vector<std::size_t>& alike) {
  constexpr std::size_t none = std::numeric_limits<std::size_t>::max();
  std::vector<std::size_t> number;  // [shared number]: of its group
  Groups groups;
  for (std::size_t i = 0; i < alike.size(); ++i) {
    if (alike[i] >= number.size()) number.resize(alike[i] + 1, none);
    std::size_t& group = number[alike[i]];
    if (group == none) {
      group = groups.size();
      groups.members.emplace_back();
    }
    groups.of_bore.push_back(group);
    groups.members[group].push_back(i);
  }
  return groups;
}

Groups lone_groups(std::size_t bores) {
  std::vector<std::size_t> of_bore(bores);
  for (std::size_t i = 0; i < bores; ++i) of_bore[i] = i;
  return numbered(of_bore);
}

Groups equal_groups(const std::vector<model::BoreSite>& bores, const Upstream& upstream) {
  Groups groups = numbered(classes(
      bores.size(), [&](std::size_t a, std::size_t b) { return same_make(bores[a], bores[b]); }, [](std::size_t) {}));
  const std::vector<Invariant> invariant = invariants(bores);
  while (groups.size() < bores.size()) {
    const std::vector<std::size_t>& of_bore = groups.of_bore;
    const std::vector<Place> place = places(upstream, of_bore);
    Signatures signatures(bores, groups);
    auto finer = classes(
        bores.size(),
        [&](std::size_t a, std::size_t b) {
          return of_bore[a] == of_bore[b] && place[a] == place[b] && same_invariant(invariant[a], invariant[b]) &&
                 signatures.same(a, b);
        },
        [&](std::size_t found_its_class) { signatures.forget(found_its_class); });
    if (finer == of_bore) break;
    groups = numbered(finer);
  }
  return groups;
}

}  // namespace stillground::field
