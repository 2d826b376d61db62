#include "tools/results/ground.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "tools/results/drift.hpp"

namespace stillground::results {

namespace {

constexpr double longest_gap = 32 * seconds_per_day;

InputError refuse(const record::read::Result& result, const std::string& key, const std::string& why) {
  return {{result.file().string(), 0, 0}, key, why};
}

std::string date_of(const record::Header& header, double time) {
  return iso_hour(header.start, time / seconds_per_hour);
}

void check_fields(const record::read::Result& result) {
  if (result.header().method == "screening") {
    throw refuse(result, "run.method",
                 "a screening estimate has no ground temperatures; run the scenario with method: march");
  }
  if (!has_fields(result)) {
    throw refuse(result, "record.fields",
                 "the run recorded no ground temperatures (fields: none); run the scenario with fields: monthly");
  }
}

DepthWeights between(std::span<const double> z, double depth) {
  const auto above = std::upper_bound(z.begin(), z.end(), depth) - z.begin();
  const auto lower = std::clamp<std::size_t>(static_cast<std::size_t>(above), 1, z.size() - 1);
  const double part = (depth - z[lower - 1]) / (z[lower] - z[lower - 1]);
  return {{lower - 1, lower}, {1 - part, part}};
}

}  // namespace

GroundState ground_at(const record::read::Result& result, double time) {
  check_fields(result);
  const std::vector<double>& times = result.snapshot_times();
  const record::Header& header = result.header();
  if (time < times.front() || time > times.back()) {
    throw refuse(result, "--at",
                 fmt::format("{} is outside the run, {} to {}", date_of(header, time), date_of(header, times.front()),
                             date_of(header, times.back())));
  }
  const auto after = static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), time) - times.begin());
  const record::Snapshot later = result.snapshot(after);
  GroundState state{time, {later.rise.begin(), later.rise.end()}, later.undisturbed};
  if (times[after] == time) return state;
  if (times[after] - times[after - 1] > longest_gap) {
    throw refuse(
        result, "--at",
        fmt::format("{} lies between two instants that the run kept (fields: {}): {} and {}", date_of(header, time),
                    header.fields, date_of(header, times[after - 1]), date_of(header, times[after])));
  }
  const record::Snapshot earlier = result.snapshot(after - 1);
  const double part = (times[after] - time) / (times[after] - times[after - 1]);
  for (std::size_t i = 0; i < state.rise.size(); ++i) {
    state.rise[i] += part * (static_cast<double>(earlier.rise[i]) - state.rise[i]);
  }
  for (std::size_t z = 0; z < state.undisturbed.size(); ++z) {
    state.undisturbed[z] += part * (earlier.undisturbed[z] - state.undisturbed[z]);
  }
  return state;
}

DepthWeights rise_weights(std::span<const double> z, double depth) {
  if (depth <= z.front()) return {{0, 1}, {std::max(0.0, depth) / z.front(), 0}};
  if (depth >= z.back()) return {{z.size() - 1, z.size() - 2}, {1, 0}};
  return between(z, depth);
}

DepthWeights column_weights(std::span<const double> z, double depth) {
  return between(z, std::min(depth, z.back()));
}

double undisturbed_at(const record::Header& header, const GroundState& state, double depth) {
  const DepthWeights w = column_weights(header.z, depth);
  return w.weight[0] * state.undisturbed[w.layer[0]] + w.weight[1] * state.undisturbed[w.layer[1]];
}

std::vector<double> rise_at_depth(const record::Header& header, const GroundState& state, double depth) {
  const DepthWeights w = rise_weights(header.z, depth);
  const std::size_t nr = header.r.size(), nz = header.z.size(), groups = static_cast<std::size_t>(header.groups);
  std::vector<double> level(groups * nr);
  for (std::size_t g = 0; g < groups; ++g) {
    for (std::size_t i = 0; i < nr; ++i) {
      for (const int side : {0, 1}) {
        const auto s = static_cast<std::size_t>(side);
        level[g * nr + i] += w.weight.at(s) * state.rise[(g * nz + w.layer.at(s)) * nr + i];
      }
    }
  }
  return level;
}

PlaceWeights place_weights(const record::Header& header, const PlanPoint& place) {
  const field::RadialReader reader(header.r);
  PlaceWeights weights;
  for (const record::BoreRow& bore : header.bores) {
    for (const field::RadialWeight& w : reader.weights(std::hypot(place.x - bore.x, place.y - bore.y))) {
      weights.cell.push_back(static_cast<std::size_t>(bore.group) * header.r.size() + w.cell);
      weights.weight.push_back(w.weight);
    }
  }
  return weights;
}

double rise_at(const PlaceWeights& place, std::span<const double> groups) {
  double sum = 0;
  for (std::size_t i = 0; i < place.cell.size(); ++i) sum += place.weight[i] * groups[place.cell[i]];
  return sum;
}

std::vector<double> rise_profile(const record::Header& header, const PlaceWeights& place,
                                 std::span<const double> rise) {
  const std::size_t nr = header.r.size(), nz = header.z.size();
  std::vector<double> profile(nz);
  for (std::size_t i = 0; i < place.cell.size(); ++i) {
    const std::size_t group = place.cell[i] / nr, cell = place.cell[i] % nr;
    for (std::size_t z = 0; z < nz; ++z) profile[z] += place.weight[i] * rise[(group * nz + z) * nr + cell];
  }
  return profile;
}

}  // namespace stillground::results
