#pragma once

#include <atomic>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "engine/model/scenario.hpp"
#include "engine/screen/batch.hpp"
#include "tools/sweep/folder.hpp"
#include "tools/sweep/walk.hpp"

namespace stillground::sweep {

/// What identifies a point by each method: digests of all that decides its figures (the scenario with the plan's
/// values, the files it reads, the engine's version; of a screening also the point whose response it takes).
struct Digests {
  std::string screening, march;
};

/// A point as far as it can be told without running it.
struct Identity {
  Digests digests;
  std::string failed;                 ///< why it cannot be read
  std::vector<std::string> cautions;  ///< see job/cautions.hpp
};

/// How to come to a plan's points, and what is done for one of them. All calls may come from any thread; what is
/// computed does not depend on which other points are, nor on their order.
class Points {
 public:
  /// Both must outlive it.
  Points(const Plan& plan, const Folder& folder);

  const Plan& plan() const { return plan_; }
  const Walk& walk() const { return walk_; }
  const Folder& folder() const { return folder_; }

  /// Throws InputError as config::read_scenario.
  model::Scenario scenario(std::size_t number) const;

  Identity look(std::size_t number) const;

  /// The response that serves this point and others; null where it serves this one alone or cannot be made.
  std::shared_ptr<const screen::Batch> batch(std::size_t middle) const;

  /// Screens a point that can be read and keeps the record. Throws SystemError.
  void screen(std::size_t number, const screen::Batch* batch) const;

  struct March {
    int threads = 0;
    std::function<void(double part)> progress;         ///< 0 to 1
    std::function<const std::atomic<bool>&()> listen;  ///< see job::Options
  };

  /// Marches and keeps result and record; goes on from a checkpoint, waits where another process is at it. Throws
  /// SystemError and Interrupted.
  void march(std::size_t number, const March& how) const;

 private:
  Digests digests(std::size_t number, const model::Scenario& own) const;
  std::string middle_digest(std::size_t middle) const;
  Record march_once(std::size_t number, const std::string& digest, const March& how) const;

  const Plan& plan_;
  const Folder& folder_;
  Walk walk_;
  mutable std::mutex guard_;                         // of what follows
  mutable std::vector<std::string> middle_digests_;  // [number - 1], of those asked for
  std::shared_ptr<screen::SectionsByBore> sections_;
};

}  // namespace stillground::sweep
