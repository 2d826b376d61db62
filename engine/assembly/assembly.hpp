#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "engine/assembly/flow_regimes.hpp"
#include "engine/assembly/response_test.hpp"
#include "engine/field/groups.hpp"
#include "engine/loop/load_series.hpp"
#include "engine/march/fused/instruction_sets.hpp"
#include "engine/march/multirate.hpp"
#include "engine/march/problem.hpp"
#include "engine/model/scenario.hpp"

namespace stillground::assembly {

/// Ratio of a ring's radii on the engine's own grid: 36 rings from a common bore to 300 m. Against the infinite
/// cylinder the rings alone err by less than 0.1 % at the wall and where neighbours stand:
/// validation/infinite_cylinder.
inline constexpr double ring_ratio = 1.26;

/// A scenario made ready to march: grid, groups, loads, fluid. Const for the whole run and shared by the threads.
struct Assembly {
  model::Scenario scenario;  ///< its own: whoever gave it may change or drop theirs
  std::vector<model::BoreSite> bores;
  field::Groups groups;
  std::size_t equal_groups = 0;  ///< groups before any were merged
  ground::GridSpec grid_spec;    ///< what the problem's grid was made from
  march::Problem problem;
  march::Multirate multirate;
  loop::LoadSeries loads;
  LoopFluid fluid;
  double surface_film = 0;                         ///< [W/(m2 K)], 0: none
  std::vector<Warning> warnings;                   ///< found while assembling
  std::shared_ptr<SolvedSections> sections;        ///< of the bore; the only member that grows while it is shared
  std::optional<ResponseTest> response_test;       ///< what a measured resistance says
  const march::fused::Kernels* kernels = nullptr;  ///< it is marched with; never null

  bool merges() const;      ///< whether groups may hold bores that are only nearly alike
  double duration() const;  ///< [s]
  long hours() const;
};

/// Builds the assembly, which keeps the scenario. Groups hold equal bores only: who wants those merged that are nearly
/// alike calls forecast::assemble. Throws InputError, with the key's place, for what only the physics can judge: a step
/// that the thin layers do not allow, a COP curve too steep to meet, a fluid outside its data.
Assembly assemble(model::Scenario scenario, const march::fused::Kernels& kernels = march::fused::best_kernels());

/// The same for another scenario of `like`'s bore, to be marched with its kernels: what is solved for one is kept for
/// both.
Assembly assemble(model::Scenario scenario, const Assembly& like);

/// assemble() in its two steps, between which other groups may be given. Without the coupling nothing can be marched;
/// with it stand the groups and all that hangs on them: the refresh and whether the heat pumps can be met.
Assembly uncoupled(model::Scenario scenario, const march::fused::Kernels& kernels = march::fused::best_kernels());
Assembly uncoupled(model::Scenario scenario, const Assembly& like);  ///< as assemble() of the same
Assembly regrouped(Assembly uncoupled, field::Groups groups);
Assembly coupled(Assembly uncoupled);

/// Mean over the bores' active length of a per-layer quantity [z].
double mean_over_bores(const march::Problem& problem, const std::vector<double>& per_layer);

/// The ground's mean over the bores' active length.
model::Solid mean_solid(const march::Problem& problem);

/// Metres to drill for all bores, as the scenario counts them [m].
double drill_length(const Assembly& assembly);

}  // namespace stillground::assembly
