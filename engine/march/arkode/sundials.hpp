#pragma once

#include <arkode/arkode_arkstep.h>
#include <sundials/sundials_nonlinearsolver.h>
#include <sundials/sundials_types.h>
#include <sundials/sundials_version.h>

#include <string>

/// Bridges SUNDIALS 6.4 (Debian 12) and 7.1 (Debian 13): what changed between them, under the newer names.
namespace stillground::march {

/// Copies an error's function and message into the std::string at `text`.
inline void keep_error_text(void* text, const char* function, const char* message) {
  *static_cast<std::string*>(text) = std::string(function) + ": " + message;
}

#if SUNDIALS_VERSION_MAJOR >= 7

using Boolean = sunbooleantype;

/// The communicator of a program that passes no messages. Not a constant where SUNDIALS is built with MPI.
inline SUNComm no_communicator() {
  return SUN_COMM_NULL;
}

/// From now on the context's errors go to `text`, which must outlive it, and no longer to the standard error stream.
/// Returns SUNDIALS' flag, negative on failure.
inline int keep_errors_in(std::string& text, SUNContext context, void*) {
  const auto keep = [](int, const char* function, const char*, const char* message, SUNErrCode, void* user,
                       SUNContext) { keep_error_text(user, function, message); };
  const SUNErrCode flag = SUNContext_ClearErrHandlers(context);
  return flag < 0 ? flag : SUNContext_PushErrHandler(context, keep, &text);
}

#else

using Boolean = booleantype;

inline void* no_communicator() {
  return nullptr;
}

/// From now on the integrator's errors go to `text`, which must outlive it, and no longer to the standard error stream.
/// Returns SUNDIALS' flag, negative on failure.
inline int keep_errors_in(std::string& text, SUNContext, void* arkode) {
  const auto keep = [](int, const char*, const char* function, char* message, void* user) {
    keep_error_text(user, function, message);
  };
  return ARKStepSetErrHandlerFn(arkode, keep, &text);
}

// Version 7 calls by ARKODE's name what version 6 calls by the stepper's.
inline constexpr auto ARKodeReset = ARKStepReset;
inline constexpr auto ARKodeEvolve = ARKStepEvolve;
inline constexpr auto ARKodeFree = ARKStepFree;
inline constexpr auto ARKodeGetNonlinearSystemData = ARKStepGetNonlinearSystemData;
inline constexpr auto ARKodeSetDeduceImplicitRhs = ARKStepSetDeduceImplicitRhs;
inline constexpr auto ARKodeSetFixedStep = ARKStepSetFixedStep;
inline constexpr auto ARKodeSetInterpolantDegree = ARKStepSetInterpolantDegree;
inline constexpr auto ARKodeSetInterpolantType = ARKStepSetInterpolantType;
inline constexpr auto ARKodeSetMaxNumSteps = ARKStepSetMaxNumSteps;
inline constexpr auto ARKodeSetNonlinearSolver = ARKStepSetNonlinearSolver;
inline constexpr auto ARKodeSetPredictorMethod = ARKStepSetPredictorMethod;
inline constexpr auto ARKodeSetUserData = ARKStepSetUserData;

#endif

}  // namespace stillground::march
