#pragma once

#include <arkode/arkode_arkstep.h>
#include <sundials/sundials_nonlinearsolver.h>
#include <sundials/sundials_types.h>
#include <sundials/sundials_version.h>

/// Bridges SUNDIALS 6.4 (Debian 12) and 7: names that changed, in one place.
namespace stillground::march {

#if SUNDIALS_VERSION_MAJOR >= 7
using Boolean = sunbooleantype;
inline constexpr SUNComm no_communicator = SUN_COMM_NULL;
#else
using Boolean = booleantype;
inline constexpr void* no_communicator = nullptr;
#endif

}  // namespace stillground::march
