#include "validation/reference_solutions/field_integrator.hpp"

#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

#include <algorithm>
#include <stdexcept>
#include <string>

#include "validation/reference_solutions/sundials.hpp"

namespace stillground::reference_solutions {

namespace {

void require(int flag, const char* call) {
  if (flag < 0) throw std::runtime_error(std::string(call) + " failed with " + std::to_string(flag));
}

SUNContext make_context() {
  SUNContext context = nullptr;
  require(SUNContext_Create(no_communicator(), &context), "SUNContext_Create");
  return context;
}

}  // namespace

FieldIntegrator::FieldIntegrator(const FieldEquations& equations, double tolerance)
    : equations_(equations), context_(make_context()) {
  const auto n = static_cast<sunindextype>(equations.size());
  const auto band = static_cast<sunindextype>(equations.band());
  y_.reset(N_VNew_Serial(n, context_.get()));
  const auto start = equations.at_rest(0);
  std::copy(start.begin(), start.end(), N_VGetArrayPointer(y_.get()));
  matrix_.reset(SUNBandMatrix(n, band, band, context_.get()));
  jacobian_.reset(SUNBandMatrix(n, band, band, context_.get()));
  solver_.reset(SUNLinSol_Band(y_.get(), matrix_.get(), context_.get()));
  cvode_.reset(CVodeCreate(CV_BDF, context_.get()));
  require(CVodeInit(cvode_.get(), on_rate, 0, y_.get()), "CVodeInit");
  require(CVodeSetUserData(cvode_.get(), this), "CVodeSetUserData");
  require(CVodeSStolerances(cvode_.get(), tolerance, tolerance), "CVodeSStolerances");
  require(CVodeSetLinearSolver(cvode_.get(), solver_.get(), matrix_.get()), "CVodeSetLinearSolver");
  require(CVodeSetJacFn(cvode_.get(), on_jacobian), "CVodeSetJacFn");
  require(CVodeSetMaxNumSteps(cvode_.get(), 1000000), "CVodeSetMaxNumSteps");
}

void FieldIntegrator::begin(double heat, const Flow& flow, double until) {
  heat_ = heat;
  flow_ = &flow;
  if (jacobian_of_ != flow_) form_jacobian(flow);
  N_VGetArrayPointer(y_.get())[equations_.integral()] = 0;  // small numbers, small errors
  require(CVodeReInit(cvode_.get(), time_, y_.get()), "CVodeReInit");
  require(CVodeSetStopTime(cvode_.get(), until), "CVodeSetStopTime");
}

double FieldIntegrator::mean_outlet(double time) {
  const double from = time_;
  const double before = N_VGetArrayPointer(y_.get())[equations_.integral()];
  require(CVode(cvode_.get(), time, y_.get(), &time_, CV_NORMAL), "CVode");
  return (N_VGetArrayPointer(y_.get())[equations_.integral()] - before) / (time_ - from);
}

const double* FieldIntegrator::state() const {
  return N_VGetArrayPointer(y_.get());
}

int FieldIntegrator::on_rate(double time, N_Vector y, N_Vector rate, void* self) {
  const auto& own = *static_cast<FieldIntegrator*>(self);
  own.equations_.rate(time, N_VGetArrayPointer(y), own.heat_, *own.flow_, N_VGetArrayPointer(rate));
  return 0;
}

int FieldIntegrator::on_jacobian(double, N_Vector, N_Vector, SUNMatrix jacobian, void* self, N_Vector, N_Vector,
                                 N_Vector) {
  return SUNMatCopy(static_cast<FieldIntegrator*>(self)->jacobian_.get(), jacobian);
}

/// The equations are linear in y: columns that share no row are read off together by setting them to one.
void FieldIntegrator::form_jacobian(const Flow& flow) {
  const std::size_t n = equations_.size(), band = equations_.band(), apart = 2 * band + 1;
  require(SUNMatZero(jacobian_.get()), "SUNMatZero");
  std::vector<double> y(n), rate(n);
  for (std::size_t start = 0; start < apart; ++start) {
    std::fill(y.begin(), y.end(), 0.0);
    for (std::size_t j = start; j < n; j += apart) y[j] = 1;
    equations_.rate(0, y.data(), 0, flow, rate.data(), true);
    for (std::size_t j = start; j < n; j += apart) {
      for (std::size_t i = j < band ? 0 : j - band; i <= std::min(n - 1, j + band); ++i) {
        SM_ELEMENT_B(jacobian_.get(), static_cast<sunindextype>(i), static_cast<sunindextype>(j)) = rate[i];
      }
    }
  }
  jacobian_of_ = &flow;
}

}  // namespace stillground::reference_solutions
