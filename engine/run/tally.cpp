#include "engine/run/tally.hpp"

#include <algorithm>
#include <cstring>

#include "engine/base/errors.hpp"

namespace stillground::run {

namespace {

/// Calls each(span of bytes) for everything that makes up a checkpoint, in one order for saving and restoring.
template <class State, class Tally, class Each>
void parts(State& state, Tally& tally, Each&& each) {
  const auto one = [&](auto& value) { each(std::as_writable_bytes(std::span(const_cast<double*>(&value), 1))); };
  const auto count = [&](auto& value) { each(std::as_writable_bytes(std::span(const_cast<long*>(&value), 1))); };
  const auto many = [&](auto& values) {
    each(std::as_writable_bytes(std::span(const_cast<double*>(values.data()), values.size())));
  };
  one(state.time);
  many(state.y);
  many(state.neighbours);
  many(state.neighbours_before);
  one(state.refreshed);
  many(state.amplitudes);
  many(state.shell_sums);
  many(state.shell_rates);
  many(state.shells_formed);
  count(tally.hour);
  one(tally.put_in);
  one(tally.surface);
  one(tally.turned_over);
  one(tally.stored_at_start);
  one(tally.eft_least);
  one(tally.eft_most);
  many(tally.wall_heat);
  many(tally.rise_sum);
  count(tally.flowing_hours);
  count(tally.laminar_hours);
  count(tally.beyond_heating_curve);
  count(tally.beyond_hot_water_curve);
  count(tally.beyond_cooling_curve);
  one(tally.design.eft);
  count(tally.design.hour);
  one(tally.design.reynolds);
  one(tally.coldest_fluid);
  one(tally.warmest_fluid);
  one(tally.coldest_wall);
  one(tally.group_deviation);
}

template <class State, class Tally>
std::size_t checkpoint_size(State& state, Tally& tally) {
  std::size_t total = 0;
  parts(state, tally, [&](std::span<std::byte> part) { total += part.size(); });
  return total;
}

}  // namespace

void Tally::start_year(double stored) {
  put_in = surface = turned_over = 0;
  stored_at_start = stored;
  eft_least = std::numeric_limits<double>::infinity();
  eft_most = -eft_least;
  std::fill(wall_heat.begin(), wall_heat.end(), 0.0);
  std::fill(rise_sum.begin(), rise_sum.end(), 0.0);
}

std::vector<std::byte> save(const march::State& state, const Tally& tally) {
  std::vector<std::byte> bytes(checkpoint_size(state, tally));
  std::size_t at = 0;
  parts(state, tally, [&](std::span<std::byte> part) {
    std::copy(part.begin(), part.end(), bytes.begin() + static_cast<std::ptrdiff_t>(at));
    at += part.size();
  });
  return bytes;
}

void restore(std::span<const std::byte> bytes, march::State& state, Tally& tally) {
  if (checkpoint_size(state, tally) != bytes.size()) {
    throw InputError("the checkpoint belongs to a run with another grid; start the run afresh");
  }
  std::size_t at = 0;
  parts(state, tally, [&](std::span<std::byte> part) {
    if (!part.empty()) std::memcpy(part.data(), bytes.data() + at, part.size());
    at += part.size();
  });
}

}  // namespace stillground::run
