#pragma once

#include <atomic>
#include <functional>
#include <vector>

#include "engine/model/scenario.hpp"
#include "engine/record/frames.hpp"

namespace stillground::job {

/// A march of a whole run in memory, for who wants its hours and no fields.
struct Marched {
  record::Header header;  ///< with all warnings
  std::vector<record::Hour> hours;
  std::vector<record::MinuteExtremes> minutes;  ///< if asked for
};

struct MarchedOptions {
  int threads = 0;                          ///< 0: as many as the machine has
  bool minutes = false;                     ///< whether minutes are estimated; a limit on them needs it
  const std::atomic<bool>* stop = nullptr;  ///< looked at each day; may be null
  std::function<void(double)> progress;     ///< told each day which part is done; may be empty
};

/// Marches the scenario, whatever method it asks for. Writes nothing, so that several may march side by side on threads
/// of their own. Throws as run() of a march; Interrupted leaves nothing.
Marched marched(model::Scenario scenario, const MarchedOptions& options);

}  // namespace stillground::job
