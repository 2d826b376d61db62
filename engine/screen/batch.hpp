#pragma once

#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "engine/assembly/assembly.hpp"
#include "engine/record/frames.hpp"
#include "engine/screen/estimate.hpp"
#include "engine/screen/sections_by_bore.hpp"

namespace stillground::screen {

/// One layout, many variants: its step response is marched once and serves every scenario of the same geometry. In
/// ground of k' and c' for k and c everywhere it is the same but for scale (similarity of the equation of heat
/// conduction: Carslaw & Jaeger 1959, 1.6 [section from memory]),
///   U'(t) = k/k' U(t k'/k c/c'),
/// exactly so but for the little that the bores' resistance does to how heat is shared out. Nothing is written; all
/// calls but the constructor may come from any thread.
class Batch {
 public:
  /// Marches the middle's layout to the run's end. `faster` >= 1: how many times as diffusive as the middle's a
  /// variant's ground may be. `sections`: what batches of other layouts have solved for the same bores; its own if
  /// none is given. Throws as assemble() and layout_answers().
  explicit Batch(const model::Scenario& middle, double faster = 1.5,
                 std::shared_ptr<SectionsByBore> sections = std::make_shared<SectionsByBore>());

  /// Of one variant: other loads, flow, heat pumps, fluid, pipes, grout, undisturbed ground, start and years (not more
  /// than the middle's); conductivities and heat capacities of all layers by one factor each. Throws InputError, at the
  /// key, where its geometry is another or its ground too fast.
  Estimate screen(const model::Scenario& variant, const TakeYear& take) const;

  /// The variant made ready, but for the coupling (assembly::coupled): what is solved for its bores is kept for others
  /// of the same make. Throws as screen().
  assembly::Assembly assembled(const model::Scenario& variant) const;

  /// The same of a variant that is assembled() already.
  Estimate screen(const assembly::Assembly& variant, const TakeYear& take) const;

  /// How far it may lie from the march of an assembled() variant, as own_error(); `estimate`: what screen() has made of
  /// it.
  record::ScreeningError own_error(const assembly::Assembly& variant, const Estimate& estimate) const;

  /// Takes 8760 hours of a variant's run-year, from any thread; a variant's years come in order.
  using TakeVariantsYear = std::function<void(std::size_t variant, std::span<const record::Hour>)>;

  /// Of all, on `threads` threads (0: as many as the machine has). The same at any number of them. What a variant
  /// throws is thrown again, the first one's by number, after the others have ended.
  std::vector<Estimate> screen(std::span<const model::Scenario> variants, const TakeVariantsYear& take,
                               int threads = 0) const;

 private:
  struct Factors {
    double conductivity = 1, heat_capacity = 1;
  };

  Factors factors(const model::Scenario& variant) const;
  void refuse_other_geometry(const assembly::Assembly& variant) const;

  assembly::Assembly middle_;
  double faster_;
  LayoutAnswers answers_;
  LayoutAnswers lone_;  // of the circuit that the own error looks at
  std::shared_ptr<SectionsByBore> sections_;
};

}  // namespace stillground::screen
