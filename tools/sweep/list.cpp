#include "tools/sweep/list.hpp"

#include <fmt/format.h>

#include "engine/program/program.hpp"
#include "tools/present/json.hpp"
#include "tools/present/table.hpp"
#include "tools/sweep/walk.hpp"

namespace stillground::sweep {

namespace {

present::Table table_of(const Plan& plan, const Walk& walk) {
  present::Table table{{{"point"}}, {}};
  for (const Axis& axis : plan.axes) table.columns.push_back({.name = axis.path, .to_the_right = true});
  for (std::size_t number = 1; number <= walk.count(); ++number) {
    std::vector<present::Cell>& row = table.rows.emplace_back();
    row.emplace_back(static_cast<long>(number));
    const auto choice = walk.choice(number);
    for (std::size_t axis = 0; axis < choice.size(); ++axis)
      row.emplace_back(plan.axes[axis].values[choice[axis]].name);
  }
  return table;
}

}  // namespace

Standing standing_of(const Points& points, std::size_t number) {
  Standing standing;
  standing.point = points.look(number);
  if (standing.point.failed.empty()) {
    standing.screening = points.folder().read(standing.point.digests.screening);
    standing.march = points.folder().read(standing.point.digests.march);
  }
  return standing;
}

std::string standing_text(const Standing& standing) {
  if (!standing.point.failed.empty()) return "failed: " + standing.point.failed;
  const Record* record = standing.shown();
  if (record == nullptr) return "missing";
  if (!record->failed.empty()) return "failed: " + record->failed;
  return standing.march ? "marched" : "screened";
}

void list_points(const Plan& plan, const Command& command) {
  const Walk walk(plan);
  present::Table table = table_of(plan, walk);
  if (!command.folder.empty()) {
    if (!std::filesystem::is_directory(command.folder))
      throw InputError({}, "-o", fmt::format("there is no folder {}", command.folder.string()));
    const Folder folder(command.folder);
    const Points points(plan, folder);
    table.columns.push_back({"standing"});
    for (std::size_t i = 0; i < table.rows.size(); ++i)
      table.rows[i].emplace_back(standing_text(standing_of(points, i + 1)));
  }
  if (command.json) {
    program::deliver("-",
                     present::dump({{"verb", "sweep"}, {"points", walk.count()}, {"list", present::columns(table)}}));
  } else {
    program::deliver("-", fmt::format("{} points\n{}", walk.count(), present::text(table)));
  }
}

}  // namespace stillground::sweep
