#include "engine/field/merged_groups.hpp"

#include <algorithm>
#include <numeric>
#include <queue>
#include <utility>

namespace stillground::field {

namespace {

constexpr std::size_t most_together = 1000;  // pairs of so many fit the caches and take some hundredths of a second

/// Some groups joined.
struct Cluster {
  std::vector<std::size_t> groups;
  double bores = 0;
  std::vector<double> least, most, mean;  ///< [instant], over the bores [K]
};

/// The widest distance between two forecasts of the union [K].
double span_of_union(const Cluster& a, const Cluster& b) {
  double widest = 0;
  for (std::size_t i = 0; i < a.least.size(); ++i) {
    widest = std::max(widest, std::max(a.most[i], b.most[i]) - std::min(a.least[i], b.least[i]));
  }
  return widest;
}

Cluster union_of(const Cluster& a, const Cluster& b) {
  Cluster both = a;
  both.groups.insert(both.groups.end(), b.groups.begin(), b.groups.end());
  both.bores += b.bores;
  for (std::size_t i = 0; i < both.mean.size(); ++i) {
    both.least[i] = std::min(a.least[i], b.least[i]);
    both.most[i] = std::max(a.most[i], b.most[i]);
    both.mean[i] = (a.bores * a.mean[i] + b.bores * b.mean[i]) / both.bores;
  }
  return both;
}

bool within(const Cluster& cluster, double bound) {
  for (std::size_t i = 0; i < cluster.mean.size(); ++i) {
    if (cluster.most[i] - cluster.mean[i] > bound || cluster.mean[i] - cluster.least[i] > bound) return false;
  }
  return true;
}

/// Two clusters that may come together; those of the narrowest union first, then the older ones.
struct Pair {
  double span = 0;
  std::size_t a = 0, b = 0;

  bool operator<(const Pair& other) const {
    return std::pair(span, std::pair(a, b)) > std::pair(other.span, std::pair(other.a, other.b));
  }
};

/// Joins clusters pair by pair; those that have been joined are left empty.
void agglomerate(std::vector<Cluster>& clusters, double bound) {
  std::priority_queue<Pair> pairs;
  const auto consider = [&](std::size_t a, std::size_t b) {
    const double span = span_of_union(clusters[a], clusters[b]);
    if (span <= 2 * bound) pairs.push({span, a, b});  // wider ones cannot keep the bound about any mean
  };
  for (std::size_t b = 0; b < clusters.size(); ++b) {
    for (std::size_t a = 0; a < b; ++a) consider(a, b);
  }
  while (!pairs.empty()) {
    const Pair nearest = pairs.top();
    pairs.pop();
    if (clusters[nearest.a].groups.empty() || clusters[nearest.b].groups.empty()) continue;
    Cluster both = union_of(clusters[nearest.a], clusters[nearest.b]);
    if (!within(both, bound)) continue;
    clusters[nearest.a] = clusters[nearest.b] = {};
    clusters.push_back(std::move(both));
    for (std::size_t other = 0; other + 1 < clusters.size(); ++other) {
      if (!clusters[other].groups.empty()) consider(other, clusters.size() - 1);
    }
  }
}

/// Parts clusters at the middle of the instant at which they spread most, until few enough are left together.
void part(std::vector<Cluster> clusters, std::vector<std::vector<Cluster>>& parts) {
  if (clusters.size() <= most_together) {
    parts.push_back(std::move(clusters));
    return;
  }
  std::size_t widest = 0;
  double spread = -1, middle = 0;
  for (std::size_t i = 0; i < clusters.front().mean.size(); ++i) {
    const auto [least, most] = std::minmax_element(clusters.begin(), clusters.end(),
                                                   [i](const auto& a, const auto& b) { return a.mean[i] < b.mean[i]; });
    if (most->mean[i] - least->mean[i] <= spread) continue;
    spread = most->mean[i] - least->mean[i];
    middle = (most->mean[i] + least->mean[i]) / 2;
    widest = i;
  }
  const auto upper = spread > 0 ? std::stable_partition(clusters.begin(), clusters.end(),
                                                        [&](const auto& c) { return c.mean[widest] <= middle; })
                                : clusters.begin() + most_together;  // all alike: anywhere
  std::vector<Cluster> above(std::make_move_iterator(upper), std::make_move_iterator(clusters.end()));
  clusters.erase(upper, clusters.end());
  part(std::move(clusters), parts);
  part(std::move(above), parts);
}

/// Groups of bores of one make, each a cluster; makes in the order of their first bores.
std::vector<std::vector<Cluster>> by_make(const std::vector<model::BoreSite>& bores, const Groups& groups,
                                          const Forecast& forecast) {
  std::vector<std::vector<Cluster>> makes;
  std::vector<std::size_t> first;  // bore of each make
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const std::size_t bore = groups.members[g].front();
    const auto found = std::find_if(first.begin(), first.end(),
                                    [&](std::size_t other) { return same_make(bores[other], bores[bore]); });
    const auto make = static_cast<std::size_t>(found - first.begin());
    if (found == first.end()) {
      first.push_back(bore);
      makes.emplace_back();
    }
    const double members = static_cast<double>(groups.members[g].size());
    makes[make].push_back({{g}, members, forecast[g], forecast[g], forecast[g]});
  }
  return makes;
}

}  // namespace

Groups merged_groups(const std::vector<model::BoreSite>& bores, const Groups& groups, const Forecast& forecast,
                     double bound) {
  std::vector<std::size_t> joined(groups.size());  // [group]: the lowest of those joined with it
  for (auto& make : by_make(bores, groups, forecast)) {
    std::vector<std::vector<Cluster>> parts;
    part(std::move(make), parts);
    for (auto& clusters : parts) {
      agglomerate(clusters, bound);
      for (const Cluster& cluster : clusters) {
        for (const std::size_t g : cluster.groups) {
          joined[g] = *std::min_element(cluster.groups.begin(), cluster.groups.end());
        }
      }
    }
  }
  std::vector<std::size_t> of_bore;
  for (const std::size_t g : groups.of_bore) of_bore.push_back(joined[g]);
  return numbered(of_bore);
}

}  // namespace stillground::field
