#pragma once

#include <cvode/cvode.h>

#include <memory>
#include <vector>

#include "validation/reference_solutions/field_equations.hpp"

namespace stillground::reference_solutions {

/// Integrates the equations of a field by CVODE (SUNDIALS): BDF of variable order and step, error control, Newton with
/// an exact band Jacobian. Nothing of it knows of stages, hours or refreshes.
class FieldIntegrator {
 public:
  /// From rest at time 0. `tolerance`: relative; absolute [K] as well. `equations` must outlive it. Throws
  /// std::runtime_error if CVODE fails, here and below.
  FieldIntegrator(const FieldEquations& equations, double tolerance);

  /// From now until `until` [s] the field takes `heat` [W] at this flow, which must live as long. Starts afresh: no
  /// memory of slopes is carried over the jump.
  void begin(double heat, const Flow& flow, double until);

  /// Goes on to `time` and returns the mean outlet temperature since the last call [K].
  double mean_outlet(double time);

  const double* state() const;

 private:
  static int on_rate(double time, N_Vector y, N_Vector rate, void* self);
  static int on_jacobian(double time, N_Vector y, N_Vector rate, SUNMatrix jacobian, void* self, N_Vector, N_Vector,
                         N_Vector);
  void form_jacobian(const Flow& flow);

  struct FreeContext {
    void operator()(SUNContext context) const { SUNContext_Free(&context); }
  };
  struct FreeVector {
    void operator()(N_Vector v) const { N_VDestroy(v); }
  };
  struct FreeMatrix {
    void operator()(SUNMatrix matrix) const { SUNMatDestroy(matrix); }
  };
  struct FreeSolver {
    void operator()(SUNLinearSolver solver) const { SUNLinSolFree(solver); }
  };
  struct FreeIntegrator {
    void operator()(void* cvode) const { CVodeFree(&cvode); }
  };
  template <class T, class Free>
  using Owned = std::unique_ptr<std::remove_pointer_t<T>, Free>;

  const FieldEquations& equations_;
  double time_ = 0, heat_ = 0;
  const Flow* flow_ = nullptr;
  const Flow* jacobian_of_ = nullptr;
  Owned<SUNContext, FreeContext> context_;
  Owned<N_Vector, FreeVector> y_;
  Owned<SUNMatrix, FreeMatrix> matrix_, jacobian_;
  Owned<SUNLinearSolver, FreeSolver> solver_;
  std::unique_ptr<void, FreeIntegrator> cvode_;
};

}  // namespace stillground::reference_solutions
