#include <fmt/format.h>

#include <optional>
#include <stdexcept>

#include "engine/record/read/result.hpp"
#include "tools/outputs/outputs.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/boundary.hpp"
#include "tools/results/lengths.hpp"
#include "tools/results/notices.hpp"
#include "tools/results/slice_animation.hpp"
#include "tools/results/slice_view.hpp"

using namespace stillground;

namespace {

struct Asked {
  std::string file, at, depth, section, outline, animate;
  bool rise = false, boundary = false;
  outputs::Outputs targets;
};

void declare(CLI::App& app, Asked& asked) {
  app.add_option("RESULT", asked.file, "a finished result file (.h5) with fields")->required();
  app.add_option("--at", asked.at, "midnight of this day, 2047-02-11; the run's end if it is not given")
      ->type_name("DATE");
  auto* depth = app.add_option("--depth", asked.depth, "cut level at this depth: 60, 60 m or 200 ft")->type_name("Z");
  auto* section =
      app.add_option("--section", asked.section, "cut upright along this line of the plan, in metres or with units")
          ->type_name("x0,y0,x1,y1")
          ->excludes(depth);
  app.add_flag("--rise", asked.rise, "draw the change against the undisturbed ground instead of the temperature");
  auto* boundary =
      app.add_flag("--boundary", asked.boundary,
                   "tell the highest change along the plot's outline and its date, at all depths or at --depth")
          ->excludes(section)
          ->excludes("--at")
          ->excludes("--rise");
  app.add_option("--outline", asked.outline, "the outline for --boundary: \"0,0; 40,0; 40,30\"")
      ->type_name("x,y;...")
      ->needs(boundary);
  app.add_option("--animate", asked.animate,
                 "write a page that shows the cut year by year, .html; - is standard output")
      ->type_name("FILE")
      ->excludes(boundary)
      ->excludes("--at");
  outputs::add_outputs(app, asked.targets);
}

void check(const Asked& asked) {
  outputs::check_outputs(asked.targets);
  const outputs::Outputs& to = asked.targets;
  if (asked.animate == "-" && (to.json || to.csv == "-" || to.plot == "-")) {
    throw InputError("only one of --animate -, --csv -, --plot - and --json can have standard output");
  }
  if (!asked.boundary && asked.depth.empty() && asked.section.empty()) {
    throw InputError("where is the ground to be cut? Give --depth Z, --section x0,y0,x1,y1 or --boundary");
  }
}

results::Cut cut_of(const Asked& asked) {
  results::Cut cut;
  if (!asked.depth.empty()) {
    cut.depth = results::read_length(asked.depth, "--depth");
  } else {
    std::tie(cut.from, cut.to) = results::read_section(asked.section, "--section");
  }
  return cut;
}

double instant_of(const Asked& asked, const record::read::Result& result) {
  const record::Header& header = result.header();
  if (asked.at.empty()) return header.years * seconds_per_year;
  try {
    return static_cast<double>(days_between(header.start, parse_date(asked.at))) * seconds_per_day;
  } catch (const std::invalid_argument& fault) {
    throw InputError({}, "--at", fmt::format("\"{}\" is {}", asked.at, fault.what()));
  }
}

void show_boundary(const Asked& asked, const record::read::Result& result, const results::Source& source) {
  const record::Header& header = result.header();
  results::BoundaryLine line = results::boundary_line(header);
  if (!asked.outline.empty()) {
    line = {results::read_places(asked.outline, "--outline"), "the given outline"};
    if (line.corners.size() < 3) throw InputError({}, "--outline", "needs at least three places");
  }
  std::optional<double> depth;
  if (!asked.depth.empty()) {
    depth = results::read_length(asked.depth, "--depth");
    results::empty_slice(header, {depth, {}, {}}, 2);  // refuses a depth outside the grid
  }
  const results::Boundary boundary = results::boundary_of(result, line, depth);
  outputs::deliver(
      asked.targets,
      {.units = header.units,
       .notices = results::notices_of(header),
       .text = [&](UnitSystem units) { return results::boundary_text(source, header, boundary, units); },
       .csv =
           [&] {
             return outputs::CsvTable{results::boundary_table(header, boundary), {source.title, line.what}};
           },
       .json = [&] { return results::boundary_json(source, header, boundary); },
       .picture =
           [&](const outputs::Drawing& drawing) {
             return present::svg(results::boundary_figure(source, header, boundary, drawing));
           }});
}

void show_cut(const Asked& asked, const record::read::Result& result, const results::Source& source) {
  const record::Header& header = result.header();
  const program::Notices notices = results::notices_of(header);
  const results::Cut cut = cut_of(asked);
  const results::Slice empty = results::empty_slice(header, cut);
  if (!asked.animate.empty()) {
    const outputs::Drawing drawing{asked.targets.units.value_or(header.units), program::footnotes(notices)};
    program::deliver(asked.animate, results::slice_animation(source, result, cut, asked.rise, drawing, notices));
    if (asked.animate == "-") return;
  }
  const results::Slice slice = results::slice_of(header, results::ground_at(result, instant_of(asked, result)), empty);
  outputs::deliver(
      asked.targets,
      {.units = header.units,
       .notices = notices,
       .text = [&](UnitSystem units) { return results::slice_text(source, header, slice, units); },
       .csv =
           [&] {
             return outputs::CsvTable{results::slice_table(slice),
                                      {source.title, "ground temperature " + results::cut_text(cut, UnitSystem::si) +
                                                         " on " + results::instant_text(header, slice.time)}};
           },
       .json = [&] { return results::slice_json(source, header, slice); },
       .picture =
           [&](const outputs::Drawing& drawing) {
             const std::vector<double> values = results::map_values(slice, asked.rise, drawing.units);
             const present::GroundMap map = results::slice_map(source, header, slice, asked.rise, values, drawing);
             return present::svg(map, present::map_layer(map, values));
           }});
}

}  // namespace

int main(int argc, char** argv) {
  Asked asked;
  const program::Info info{
      "slice", "shows the ground temperature of a finished run on a cut through it, by superposition of all bores",
      "Half way down at the run's end, and the change that a neighbour sees:\n"
      "  stillground slice library.h5 --depth 60 --plot map.svg\n"
      "  stillground slice library.h5 --boundary\n"
      "A section between two rows of bores, year by year as a page:\n"
      "  stillground slice library.h5 --section=-10,2.5,40,2.5 --rise --animate years.html"};
  return program::guarded_main(
      argc, argv, info, [&](CLI::App& app) { declare(app, asked); },
      [&] {
        check(asked);
        const record::read::Result result(asked.file);
        const results::Source source = results::source_of(result.header(), asked.file);
        if (asked.boundary) {
          show_boundary(asked, result, source);
        } else {
          show_cut(asked, result, source);
        }
      });
}
