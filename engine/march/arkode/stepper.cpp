#include "engine/march/arkode/stepper.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <exception>
#include <string>
#include <utility>

#include "engine/base/calendar.hpp"
#include "engine/base/errors.hpp"
#include "engine/march/arkode/sundials.hpp"
#include "engine/march/arkode/vector.hpp"
#include "engine/march/radial.hpp"
#include "engine/march/stage.hpp"
#include "engine/march/tableau.hpp"

namespace stillground::march {

namespace {

/// Keeps a callback's exception from unwinding through C; rethrown as soon as ARKODE has returned.
template <class Body>
int fenced(std::exception_ptr& held, Body&& body) noexcept {
  try {
    body();
    return 0;
  } catch (...) {
    held = std::current_exception();
    return -1;  // unrecoverable: ARKODE gives up at once
  }
}

struct FreeContext {
  void operator()(SUNContext context) const { SUNContext_Free(&context); }
};
struct FreeVector {
  void operator()(N_Vector v) const { N_VDestroy(v); }
};
struct FreeSolver {
  void operator()(SUNNonlinearSolver solver) const { SUNNonlinSolFree(solver); }
};
struct FreeIntegrator {
  void operator()(void* arkode) const { ARKodeFree(&arkode); }
};

void require(int flag, const char* call, const std::string& reason = "") {
  if (flag < 0)
    throw SystemError(fmt::format("SUNDIALS: {} failed with {}{}", call, flag, reason.empty() ? "" : ": " + reason));
}

SUNContext make_context() {
  SUNContext context = nullptr;
  require(SUNContext_Create(no_communicator(), &context), "SUNContext_Create");
  return context;
}

class ArkodeStepper final : public Stepper {
 public:
  ArkodeStepper(const Problem& problem, const Multirate& multirate, Workers& workers);
  HourMeans advance(State& state, const Forcing& forcing, Vector& wall_heat) override;

 private:
  void explicit_rate(double time, N_Vector y, N_Vector rate);
  void solve_stage(N_Vector correction);
  void collect_stage(double weight, const loop::OperatingPoint& point);
  void set_tables();

  static ArkodeStepper& self(void* user) { return *static_cast<ArkodeStepper*>(user); }
  static int on_explicit(double t, N_Vector y, N_Vector rate, void* user);
  static int on_implicit(double t, N_Vector y, N_Vector rate, void* user);
  static int on_solve(SUNNonlinearSolver solver, N_Vector y0, N_Vector correction, N_Vector weight, double tolerance,
                      Boolean call_setup, void* memory);

  const Problem& problem_;
  Multirate multirate_;
  StateLayout layout_;
  Workers& workers_;
  StageSolver stages_;
  AxialFactors axial_;
  std::unique_ptr<std::remove_pointer_t<SUNContext>, FreeContext> context_;
  std::unique_ptr<std::remove_pointer_t<N_Vector>, FreeVector> y_;
  std::unique_ptr<std::remove_pointer_t<SUNNonlinearSolver>, FreeSolver> solver_;
  std::unique_ptr<void, FreeIntegrator> arkode_;

  // The hour and the step that is being taken.
  const State* state_ = nullptr;
  const Forcing* forcing_ = nullptr;
  Vector* wall_heat_ = nullptr;
  double step_start_ = 0;
  std::size_t stage_ = 0;               // the last explicit stage evaluated
  HourMeans sums_;                      // weighted by the steps' share of the hour
  std::vector<double> surface_;         // [group] [W]
  std::array<double, 3> stage_loss_{};  // through the surface at each stage [W]
  std::exception_ptr held_;
  std::string error_text_;
};

int ArkodeStepper::on_explicit(double t, N_Vector y, N_Vector rate, void* user) {
  return fenced(self(user).held_, [&] { self(user).explicit_rate(t, y, rate); });
}

/// ARKODE asks for the implicit slope at stage 0 only, where the tables give it no weight; at the others it deduces the
/// slope from the stage's solution. The vector stays as it was made: zero.
int ArkodeStepper::on_implicit(double, N_Vector, N_Vector, void*) {
  return 0;
}

int ArkodeStepper::on_solve(SUNNonlinearSolver solver, N_Vector, N_Vector correction, N_Vector, double, Boolean,
                            void*) {
  auto& stepper = self(solver->content);
  return fenced(stepper.held_, [&] { stepper.solve_stage(correction); });
}

ArkodeStepper::ArkodeStepper(const Problem& problem, const Multirate& multirate, Workers& workers)
    : problem_(problem),
      multirate_(multirate),
      layout_(problem),
      workers_(workers),
      stages_(problem, multirate, ars222::gamma * multirate.step, workers),
      axial_(problem),
      context_(make_context()),
      y_(make_vector(layout_.groups, layout_.block(), workers, context_.get())),
      solver_(SUNNonlinSolNewEmpty(context_.get())),
      arkode_(ARKStepCreate(on_explicit, on_implicit, 0.0, y_.get(), context_.get())),
      surface_(problem.groups.size()) {
  if (!solver_ || !arkode_) throw SystemError("SUNDIALS: no memory for the integrator");
  solver_->content = this;
  solver_->ops->gettype = [](SUNNonlinearSolver) { return SUNNONLINEARSOLVER_FIXEDPOINT; };
  solver_->ops->initialize = [](SUNNonlinearSolver) { return 0; };
  solver_->ops->setsysfn = [](SUNNonlinearSolver, SUNNonlinSolSysFn) { return 0; };
  solver_->ops->solve = on_solve;
  solver_->ops->free = [](SUNNonlinearSolver s) {
    s->content = nullptr;  // the stepper itself: not the solver's to free
    SUNNonlinSolFreeEmpty(s);
    return 0;
  };
  void* arkode = arkode_.get();
  require(keep_errors_in(error_text_, context_.get(), arkode), "setting the error handler");
  require(ARKodeSetUserData(arkode, this), "ARKodeSetUserData");
  set_tables();
  require(ARKodeSetNonlinearSolver(arkode, solver_.get()), "ARKodeSetNonlinearSolver");
  require(ARKodeSetDeduceImplicitRhs(arkode, SUNTRUE), "ARKodeSetDeduceImplicitRhs");
  require(ARKodeSetPredictorMethod(arkode, 0), "ARKodeSetPredictorMethod");
  require(ARKodeSetInterpolantType(arkode, ARK_INTERP_LAGRANGE), "ARKodeSetInterpolantType");
  require(ARKodeSetInterpolantDegree(arkode, 0), "ARKodeSetInterpolantDegree");
  require(ARKodeSetFixedStep(arkode, multirate.step), "ARKodeSetFixedStep");
  require(ARKodeSetMaxNumSteps(arkode, -1), "ARKodeSetMaxNumSteps");
}

void ArkodeStepper::set_tables() {
  std::array<double, 9> implicit{}, explicit_{};
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      implicit[3 * i + j] = ars222::implicit[i][j];
      explicit_[3 * i + j] = ars222::explicit_[i][j];
    }
  }
  auto c = ars222::c;
  auto b_implicit = ars222::implicit_weight;
  auto b_explicit = ars222::explicit_weight;
  ARKodeButcherTable bi = ARKodeButcherTable_Create(3, 2, 0, c.data(), implicit.data(), b_implicit.data(), nullptr);
  ARKodeButcherTable be = ARKodeButcherTable_Create(3, 2, 0, c.data(), explicit_.data(), b_explicit.data(), nullptr);
  const int flag = bi && be ? ARKStepSetTables(arkode_.get(), 2, 0, bi, be) : -1;
  ARKodeButcherTable_Free(bi);
  ARKodeButcherTable_Free(be);
  require(flag, "ARKStepSetTables");
}

HourMeans ArkodeStepper::advance(State& state, const Forcing& forcing, Vector& wall_heat) {
  state_ = &state;
  forcing_ = &forcing;
  wall_heat_ = &wall_heat;
  sums_ = {};
  const long steps = std::lround(seconds_per_hour / multirate_.step);
  std::copy(state.y.begin(), state.y.end(), data(y_.get()));
  require(ARKodeReset(arkode_.get(), state.time, y_.get()), "ARKodeReset", error_text_);
  for (long step = 0; step < steps; ++step) {
    step_start_ = state.time + static_cast<double>(step) * multirate_.step;
    stage_ = 0;
    // The last stage is the step's end. Its slope has no weight in this step; SUNDIALS 7 takes it as the next one's
    // first, where 6 asks again.
    stage_loss_[0] = stage_loss_[2];
    double reached = 0;
    const int flag = ARKodeEvolve(arkode_.get(), step_start_ + multirate_.step, y_.get(), &reached, ARK_ONE_STEP);
    if (held_) std::rethrow_exception(std::exchange(held_, nullptr));
    if (flag < 0) throw NumericsError(fmt::format("SUNDIALS: step failed with {}: {}", flag, error_text_));
    // Only now: after a reset ARKODE evaluates the first explicit slope twice.
    for (std::size_t i = 0; i < 2; ++i) {
      sums_.surface += multirate_.step / seconds_per_hour * ars222::explicit_weight[i] * stage_loss_[i];
    }
  }
  std::copy(data(y_.get()), data(y_.get()) + state.y.size(), state.y.begin());
  state.time += seconds_per_hour;
  sums_.fluid = mean_fluid(
      problem_.groups.size(), [&](std::size_t g) { return forcing.of(g) != nullptr; },
      [&](std::size_t g) { return fluid_of(problem_, g, state.y.data() + g * layout_.block()); });
  return sums_;
}

void ArkodeStepper::explicit_rate(double time, N_Vector y, N_Vector rate) {
  const double c = (time - step_start_) / multirate_.step;
  stage_ = c < ars222::gamma / 2 ? 0 : c < (1 + ars222::gamma) / 2 ? 1 : 2;
  const std::size_t block = layout_.block();
  workers_.each(problem_.groups.size(), [&](std::size_t g) {
    axial_.rate(data(y) + g * block, data(rate) + g * block);
    surface_[g] = problem_.groups[g].members * axial_.surface_loss(data(y) + g * block);
  });
  stage_loss_[stage_] = 0;
  for (const double loss : surface_) stage_loss_[stage_] += loss;
}

void ArkodeStepper::solve_stage(N_Vector correction) {
  double time = 0, gamma = 0;
  N_Vector predicted = nullptr, z = nullptr, slope = nullptr, known = nullptr;
  void* user = nullptr;
  require(ARKodeGetNonlinearSystemData(arkode_.get(), &time, &predicted, &z, &slope, &gamma, &known, &user),
          "ARKodeGetNonlinearSystemData");
  // Y = predicted + correction solves Y = predicted + known + gamma f_I(t, Y).
  const std::size_t block = layout_.block();
  const auto rhs = [&](std::size_t g) {
    const double* p = data(predicted) + g * block;
    const double* s = data(known) + g * block;
    double* y = data(correction) + g * block;
    for (std::size_t i = 0; i < block; ++i) y[i] = p[i] + s[i];
    return y;
  };
  const auto to_correction = [&](std::size_t g) {
    const double* p = data(predicted) + g * block;
    double* y = data(correction) + g * block;
    for (std::size_t i = 0; i < block; ++i) y[i] -= p[i];
  };
  loop::OperatingPoint point = stages_.solve(*state_, time, *forcing_, rhs, to_correction);
  if (heat_rate(problem_, *forcing_) <= 0) {
    // The stagnant fluid at the field's ends: predicted + correction at the topmost cells.
    point.eft =
        mixed_outlet(problem_, *forcing_, data(predicted)) + mixed_outlet(problem_, *forcing_, data(correction));
    point.lft =
        topmost_down(problem_, *forcing_, data(predicted)) + topmost_down(problem_, *forcing_, data(correction));
  }
  collect_stage(ars222::implicit_weight[stage_ + 1], point);
}

void ArkodeStepper::collect_stage(double weight, const loop::OperatingPoint& point) {
  const double share = multirate_.step / seconds_per_hour * weight;
  sums_.eft += share * point.eft;
  sums_.lft += share * point.lft;
  sums_.power += share * point.power;
  sums_.to_ground += share * heat_rate(problem_, *forcing_) * (point.lft - point.eft);
  const Vector& heat = stages_.wall_heat();
  const double seconds = multirate_.step * weight;
  for (std::size_t i = 0; i < heat.size(); ++i) (*wall_heat_)[i] += seconds * heat[i];
}

}  // namespace

std::unique_ptr<Stepper> make_arkode_stepper(const Problem& problem, const Multirate& multirate, Workers& workers) {
  return std::make_unique<ArkodeStepper>(problem, multirate, workers);
}

}  // namespace stillground::march
