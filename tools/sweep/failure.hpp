#pragma once

#include <string>

#include "engine/base/errors.hpp"
#include "tools/sweep/record.hpp"

namespace stillground::sweep {

/// The reason without the folders of this machine, so that a summary does not depend on where it was made.
std::string reason_of(const Error& error);

/// The record of a point that could not be computed.
Record failure(const Error& error, const std::string& method);

/// The record that `work` makes, or that of its failure. Only what is the point's own counts as one: what the machine
/// fails by is thrown on, and so is an interruption.
template <class Work>
Record fenced(const std::string& method, Work work) {
  try {
    return work();
  } catch (const InputError& error) {
    return failure(error, method);
  } catch (const NumericsError& error) {
    return failure(error, method);
  }
}

}  // namespace stillground::sweep
