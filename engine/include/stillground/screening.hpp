#pragma once

#include <stillground/export.hpp>
#include <stillground/frames.hpp>
#include <stillground/scenario.hpp>

#include <cstddef>
#include <functional>
#include <memory>
#include <span>
#include <vector>

namespace stillground {

/// Many variants of one layout, estimated without a march and without a file: the layout's step response is found once
/// and serves all of them.
class STILLGROUND_EXPORT ScreeningBatch {
 public:
  /// Takes some tenths of a second. `faster` >= 1: how many times as diffusive as `middle`'s a variant's ground may be.
  /// Throws as `run` does before anything is written.
  explicit ScreeningBatch(const Scenario& middle, double faster = 1.5);
  ~ScreeningBatch();
  ScreeningBatch(ScreeningBatch&&) noexcept;
  ScreeningBatch& operator=(ScreeningBatch&&) noexcept;

  /// Is given the 8760 hours of a variant's run-year, from any thread; a variant's years come in order.
  using TakeYear = std::function<void(std::size_t variant, std::span<const Hour> hours)>;

  /// Screens scenarios of the middle's geometry: its bores, their diameter, its layers with conductivity and heat
  /// capacity by one factor each, no more years. All else may be another: loads, flow, heat pumps, fluid, pipes, grout,
  /// undisturbed ground. On `threads` threads (0: as many as the machine has), with the same hours at any number.
  /// Throws InputError at the key where a variant is of another geometry, NumericsError where one cannot be, after all
  /// others have ended.
  void run(std::span<const Scenario> variants, const TakeYear& take, int threads = 0) const;

 private:
  struct Content;
  std::unique_ptr<const Content> content_;
};

}  // namespace stillground
