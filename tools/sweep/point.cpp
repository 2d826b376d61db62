#include "tools/sweep/point.hpp"

#include <fmt/format.h>

#include <stillground/version.hpp>
#include "engine/base/digest.hpp"
#include "engine/config/read.hpp"
#include "engine/job/cautions.hpp"
#include "tools/points/decide.hpp"
#include "tools/sweep/failure.hpp"

namespace stillground::sweep {

namespace {

/// All that decides a scenario's figures. The scenario's own file counts by what it says, not by its bytes.
std::string digest_of(const model::Scenario& scenario) {
  std::string all = version() + '\n' + scenario.text + '\n';
  for (std::size_t i = 1; i < scenario.inputs.size(); ++i) {
    all += scenario.inputs[i].name + ' ' + scenario.inputs[i].sha256 + '\n';
  }
  return sha256(all);
}

std::string name_of(const std::string& all) {
  constexpr std::size_t letters = 16;
  return sha256(all).substr(0, letters);
}

}  // namespace

Points::Points(const Plan& plan, const Folder& folder)
    : plan_(plan),
      folder_(folder),
      walk_(plan),
      middle_digests_(walk_.count()),
      sections_(std::make_shared<screen::SectionsByBore>()) {}

model::Scenario Points::scenario(std::size_t number) const {
  return config::read_scenario(plan_.scenario, std::nullopt, {}, walk_.overrides(walk_.choice(number)));
}

std::string Points::middle_digest(std::size_t middle) const {
  {
    const std::lock_guard lock(guard_);
    if (!middle_digests_[middle - 1].empty()) return middle_digests_[middle - 1];
  }
  std::string digest = "none";
  try {
    digest = digest_of(scenario(middle));
  } catch (const InputError&) {  // it serves nobody, see batch()
  }
  const std::lock_guard lock(guard_);
  return middle_digests_[middle - 1] = digest;
}

Digests Points::digests(std::size_t number, const model::Scenario& own) const {
  const std::string digest = digest_of(own);
  const std::size_t middle = walk_.middle(number);
  const std::string response = walk_.served_by(middle) < 2 ? "its own"
                               : middle == number          ? digest
                                                           : middle_digest(middle);
  return {name_of("screening " + digest + " by " + response), name_of("march " + digest)};
}

Identity Points::look(std::size_t number) const {
  Identity point;
  try {
    const model::Scenario own = scenario(number);
    point.digests = digests(number, own);
    point.cautions = job::cautions(own);
  } catch (const InputError& error) {
    point.failed = reason_of(error);
  }
  return point;
}

std::shared_ptr<const screen::Batch> Points::batch(std::size_t middle) const {
  if (walk_.served_by(middle) < 2) return nullptr;
  constexpr double no_faster = 1;  // they all lie in the middle's ground
  try {
    model::Scenario scenario = this->scenario(middle);
    scenario.run.method = model::Run::Method::screening;
    return std::make_shared<const screen::Batch>(scenario, no_faster, sections_);
  } catch (const InputError&) {
    return nullptr;
  } catch (const NumericsError&) {
    return nullptr;
  }
}

void Points::screen(std::size_t number, const screen::Batch* batch) const {
  const model::Scenario own = scenario(number);
  const std::string digest = digests(number, own).screening;
  const bool minutes = plan_.keep_results || stillground::points::judges_minutes(own);
  const auto screened = [&](const screen::Batch* by) {
    const job::Screened run = job::screened(own, by, minutes);
    if (plan_.keep_results) job::write_result(run, folder_.result(digest));
    return record_of(stillground::points::decision_of(run), own);
  };
  Record record = fenced("screening", [&] { return screened(batch); });
  // What one geometry cannot serve after all may have a response of its own.
  if (!record.failed.empty() && batch != nullptr) record = fenced("screening", [&] { return screened(nullptr); });
  folder_.write(digest, record);
}

}  // namespace stillground::sweep
