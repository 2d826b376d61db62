#pragma once

#include <sundials/sundials_types.h>
#include <sundials/sundials_version.h>

/// Bridges SUNDIALS 6.4 (Debian 12) and 7.1 (Debian 13) for the reference solutions, which share nothing with the
/// engine.
namespace stillground::reference_solutions {

/// The communicator of a program that passes no messages. Not a constant where SUNDIALS is built with MPI.
#if SUNDIALS_VERSION_MAJOR >= 7
inline SUNComm no_communicator() {
  return SUN_COMM_NULL;
}
#else
inline void* no_communicator() {
  return nullptr;
}
#endif

}  // namespace stillground::reference_solutions
