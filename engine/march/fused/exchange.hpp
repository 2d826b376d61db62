#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "engine/march/fused/inlet_response.hpp"
#include "engine/march/rates.hpp"
#include "engine/march/state.hpp"
#include "engine/march/workers.hpp"

namespace stillground::march::fused {

/// Bytes that keep apart what different threads write: cache lines are fetched in pairs.
inline constexpr std::size_t apart = 128;

/// What a group's hour came to.
struct GroupHour {
  double surface = 0;                  ///< heat that left through the surface [J]
  Fluid fluid;                         ///< in its loops at the hour's end
  std::array<double, 2> topmost = {};  ///< of stagnant fluid: hour's mean at the top, going down and coming up [K]
};

/// What threads tell each other within an hour. Each writes the slots of its own groups, between two barriers; all read
/// all slots after the second. Outlets alternate between two buffers, so that one barrier a span is enough: the buffer
/// that a span is written to was last read before the barrier that ended the span before.
class ExchangeBuffer {
 public:
  ExchangeBuffer() = default;

  /// `span`: stages between two barriers.
  ExchangeBuffer(std::size_t groups, std::size_t span, const Workers& workers);

  /// A thread's outlets of the span that `first` begins, [group from `group` on][stage of the span], all at once:
  /// whoever writes to a line that others have read waits for it.
  void publish_outlets(std::size_t first, std::size_t group, const Vector& outlets);

  /// The outlet of a group at the linearisation inlet in stage `first` + `stage` [K].
  double outlet(std::size_t first, std::size_t stage, std::size_t group) const {
    return outlets_[first / span_ % 2][slot_[group] * span_ + stage];
  }

  /// A group's response; null: no flow in it, or not drilled yet.
  const InletResponse*& response(std::size_t group) { return responses_[slot_[group]]; }
  const InletResponse* response(std::size_t group) const { return responses_[slot_[group]]; }

  GroupHour& hour(std::size_t group) { return hours_[slot_[group]]; }
  const GroupHour& hour(std::size_t group) const { return hours_[slot_[group]]; }

 private:
  std::size_t span_ = 1;
  std::vector<std::size_t> slot_;  // [group]; those of different threads stand apart
  std::array<Vector, 2> outlets_;  // [slot][stage of the span], of odd and of even spans
  std::vector<const InletResponse*, Aligned<const InletResponse*>> responses_;
  std::vector<GroupHour, Aligned<GroupHour>> hours_;
};

}  // namespace stillground::march::fused
