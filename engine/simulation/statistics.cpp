#include "engine/simulation/statistics.hpp"

#include <algorithm>
#include <cstring>

#include "engine/base/errors.hpp"

namespace stillground::simulation {

namespace {

/// Calls each(span of bytes) for everything that makes up a checkpoint, in one order for saving and restoring.
template <class State, class Statistics, class Each>
void parts(State& state, Statistics& statistics, Each&& each) {
  const auto one = [&](auto& value) { each(std::as_writable_bytes(std::span(const_cast<double*>(&value), 1))); };
  const auto count = [&](auto& value) { each(std::as_writable_bytes(std::span(const_cast<long*>(&value), 1))); };
  const auto many = [&](auto& values) {
    each(std::as_writable_bytes(std::span(const_cast<double*>(values.data()), values.size())));
  };
  one(state.time);
  many(state.y);
  many(state.neighbours);
  many(state.neighbours_before);
  one(state.updated);
  many(state.amplitudes);
  many(state.shell_sums);
  many(state.shell_rates);
  many(state.shells_formed);
  count(statistics.hour);
  one(statistics.put_in);
  one(statistics.surface);
  one(statistics.turned_over);
  one(statistics.stored_at_start);
  one(statistics.eft_least);
  one(statistics.eft_most);
  many(statistics.wall_heat);
  many(statistics.rise_sum);
  count(statistics.flowing_hours);
  count(statistics.laminar_hours);
  count(statistics.beyond_heating_curve);
  count(statistics.beyond_hot_water_curve);
  count(statistics.beyond_cooling_curve);
  one(statistics.design.eft);
  count(statistics.design.hour);
  one(statistics.design.reynolds);
  one(statistics.coldest_fluid);
  one(statistics.warmest_fluid);
  one(statistics.coldest_wall);
  one(statistics.group_deviation);
}

template <class State, class Statistics>
std::size_t checkpoint_size(State& state, Statistics& statistics) {
  std::size_t total = 0;
  parts(state, statistics, [&](std::span<std::byte> part) { total += part.size(); });
  return total;
}

}  // namespace

void Statistics::start_year(double stored) {
  put_in = surface = turned_over = 0;
  stored_at_start = stored;
  eft_least = std::numeric_limits<double>::infinity();
  eft_most = -eft_least;
  std::fill(wall_heat.begin(), wall_heat.end(), 0.0);
  std::fill(rise_sum.begin(), rise_sum.end(), 0.0);
}

std::vector<std::byte> save(const march::State& state, const Statistics& statistics) {
  std::vector<std::byte> bytes(checkpoint_size(state, statistics));
  std::size_t at = 0;
  parts(state, statistics, [&](std::span<std::byte> part) {
    std::copy(part.begin(), part.end(), bytes.begin() + static_cast<std::ptrdiff_t>(at));
    at += part.size();
  });
  return bytes;
}

void restore(std::span<const std::byte> bytes, march::State& state, Statistics& statistics) {
  if (checkpoint_size(state, statistics) != bytes.size()) {
    throw InputError("the checkpoint belongs to a run with another grid; start the run afresh");
  }
  std::size_t at = 0;
  parts(state, statistics, [&](std::span<std::byte> part) {
    if (!part.empty()) std::memcpy(part.data(), bytes.data() + at, part.size());
    at += part.size();
  });
}

}  // namespace stillground::simulation
