#include "tools/sweep/command.hpp"

#include <fmt/format.h>

#include "engine/base/pending_file.hpp"
#include "engine/program/program.hpp"
#include "engine/program/shown_json.hpp"
#include "engine/program/signals.hpp"
#include "tools/present/csv.hpp"
#include "tools/present/svg.hpp"
#include "tools/sweep/disk.hpp"
#include "tools/sweep/list.hpp"
#include "tools/sweep/night.hpp"
#include "tools/sweep/pictures.hpp"
#include "tools/sweep/ranking.hpp"

namespace stillground::sweep {

namespace {

/// The points that a summary says nothing of yet, and those whose screening is to be followed by a march.
struct Missing {
  std::vector<std::size_t> points, marches;
};

Missing missing_of(const Plan& plan, const State& state) {
  Missing missing;
  for (std::size_t i = 0; i < state.size(); ++i) {
    if (state[i].point.failed.empty() && state[i].shown() == nullptr) missing.points.push_back(i + 1);
  }
  if (plan.method == Method::both && to_screen(plan, state).empty()) missing.marches = to_march(plan, state);
  return missing;
}

std::string missing_text(const Missing& missing) {
  std::string text;
  if (!missing.points.empty())
    text += fmt::format("Missing: {} points: {}\n", missing.points.size(), listed(missing.points));
  if (!missing.marches.empty()) {
    text += fmt::format("To be marched yet, by --point for each, then --gather again: {}\n", listed(missing.marches));
  }
  return text;
}

UnitSystem units_of(const Command& command, const Points& points, const State& state) {
  for (std::size_t i = 0; i < state.size() && !command.units; ++i) {
    if (state[i].point.failed.empty()) return points.scenario(i + 1).units;
  }
  return command.units.value_or(UnitSystem::si);
}

void write_files(const Told& told, const outputs::Drawing& drawing) {
  const std::filesystem::path& folder = told.points.folder().path();
  write_whole(folder / "summary.csv", summary_csv(told));
  for (const Picture& picture : pictures_of(told, drawing))
    write_whole(folder / picture.file, present::svg(picture.figure));
}

void tell(const Command& command, const Points& points, const State& state) {
  const Told told{points, state, ranked(points.plan(), state)};
  const UnitSystem units = units_of(command, points, state);
  const program::Notices notices = notices_of(told, command.json);
  write_files(told, {units, program::footnotes(notices)});
  const Missing missing = missing_of(points.plan(), state);
  if (command.json) {
    present::Json json = summary_json(told);
    json["missing"] = missing.points;
    json["to_march"] = missing.marches;
    if (command.units) json = program::in_system(json, *command.units);
    json["warnings"] = notices.warnings;
    json["cautions"] = notices.cautions;
    program::deliver("-", present::dump(json));
    return;
  }
  program::deliver("-", fmt::format("{}{}\n{} holds summary.csv and the pictures\n{}", summary_text(told, units),
                                    missing_text(missing), points.folder().path().string(), program::footer(notices)));
}

std::size_t point_asked_for(const Command& command, const Points& points) {
  const std::size_t number = *command.point;
  if (number >= 1 && number <= points.walk().count()) return number;
  throw InputError({}, "--point",
                   fmt::format("{} is none of the plan's points (1 to {})", number, points.walk().count()));
}

void one_point(const Command& command, const Points& points) {
  const std::size_t number = point_asked_for(command, points);
  Hands hands{command.threads, program::stop_on_signals, nullptr};
  work_on(points, number, hands);
  const State state{standing_of(points, number)};
  const std::string words = standing_text(state.front());
  if (command.json) {
    program::deliver("-", present::dump({{"verb", "sweep"}, {"point", number}, {"standing", words}}));
  } else {
    program::deliver("-", fmt::format("point {}: {}\n", number, words));
  }
}

}  // namespace

void execute(const Command& command) {
  const Plan plan = read_plan(command.plan);
  if (command.list) return list_points(plan, command);
  if (command.folder.empty()) throw InputError("-o FOLDER is needed");
  const Folder folder(command.folder);
  const Points points(plan, folder);
  if (command.point) return one_point(command, points);
  if (command.gather) {
    std::atomic<bool> never{false};
    return tell(command, points, look_at_all(points, command.threads, never));
  }
  announce(points);
  State state;
  {
    Display display;
    state = work_through(points, {command.threads, program::stop_on_signals, &display});
  }
  tell(command, points, state);
}

}  // namespace stillground::sweep
