#include "tools/results/report_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "tools/present/canvas.hpp"
#include "tools/present/html.hpp"
#include "tools/present/svg.hpp"
#include "tools/results/drift_view.hpp"
#include "tools/results/energy_view.hpp"
#include "tools/results/limit_view.hpp"
#include "tools/results/minutes.hpp"
#include "tools/results/phases.hpp"
#include "tools/results/report_figures.hpp"

namespace stillground::results {

namespace {

using present::html;
using present::html_figure;
using present::html_list;
using present::html_paragraph;
using present::xml_text;

constexpr std::size_t bores_listed = 200;

std::string heading(const char* part, const std::string& number, const std::string& text, const std::string& of) {
  return fmt::format("<h2{} id=\"{}-{}\">{}</h2>\n", std::string_view(part) == "fluid" ? " class=\"fresh\"" : "", part,
                     number, xml_text(text + of));
}

std::string kept(const std::string& what) {
  return "<div class=\"keep\">" + what + "</div>\n";
}

std::string shown(const present::Table& table, const std::string& caption, UnitSystem units) {
  return kept(html(present::in_system(table, units), caption));
}

present::Table bore_table(const record::Header& header) {
  present::Table table{{{"number", "", "bore"}, {"x", "m"}, {"y", "m"}, {"top", "m"}, {"depth", "m", "active length"}},
                       {}};
  const bool later = !later_starts(header.bores).empty();
  if (later) table.columns.push_back({"start", "", "works from"});
  for (std::size_t b = 0; b < std::min(header.bores.size(), bores_listed); ++b) {
    const record::BoreRow& bore = header.bores[b];
    table.rows.push_back({static_cast<long>(b + 1), bore.x, bore.y, bore.top, bore.depth});
    if (later) table.rows.back().emplace_back(instant_text(header, bore.start).substr(0, 10));
  }
  return table;
}

}  // namespace

std::string picture(present::Figure figure, const std::string& number) {
  if (!number.empty()) figure.id += "-" + number;
  return html_figure(present::svg(figure));
}

std::string fluid_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units) {
  const outputs::Drawing drawing{units, {}};
  const FluidSummary& summary = one.summary;
  std::string part = heading("fluid", number, "The fluid that comes back", of);
  part += html_paragraph(
      "EFT is the temperature of the fluid that enters the heat pumps: hourly means of the hours with flow.");
  part += picture(eft_figure(one.source, summary, drawing), number);
  if (!summary.limits.empty()) {
    part += shown(limit_table(summary.limits, one.source.start), "Limits, and how often they were left", units);
  }
  part += html_paragraph(with_degree_signs(minute_text(summary.minutes, one.source.start, units)));
  part += shown(named_year_table(summary), "EFT in the named run-years", units);
  part += shown(two_year_table(summary), "The first run-year against the last, month by month", units);
  return part + picture(duration_figure(one.source, summary, drawing), number);
}

std::string energy_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units) {
  const FluidSummary& summary = one.summary;
  const bool pumps = summary.energy.has_heat_pump;
  std::string part = heading("energy", number, pumps ? "Heat and electricity" : "Heat", of);
  if (pumps) part += picture(energy_figure(one.source, summary, {units, {}}), number);
  part +=
      kept(html(energy_year_table(summary, units), "Heat and electricity of the named run-years, and the mean of all"));
  part += kept(html(energy_month_table(summary, units),
                    fmt::format("The same month by month, run-year {}", summary.years.back().run_year)));
  if (!pumps) return part;
  part += html_paragraph(
      "SPF: seasonal performance factor, heat over electricity of the heat pumps; SPF heat with hot water, SPF cool of "
      "what "
      "the heat pumps cooled, SPF of everything, direct cooling included. Circulation pumps are not counted.");
  return part + html_paragraph(held_text(summary.energy));
}

std::string ground_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units) {
  std::string part = heading("ground", number, "The ground", of);
  if (!one.layout.drift) {
    return part + html_paragraph("This run kept no ground temperatures: neither drift nor map can be shown.");
  }
  part += picture(drift_figure(one.source, *one.layout.drift, {units, {}}), number);
  if (one.change) {
    const std::vector<double> values = map_values(*one.change, true, units);
    present::GroundMap map = slice_map(one.source, one.header, *one.change, true, values, {units, {}});
    map.id += "-" + number;
    part += html_figure(present::svg(map, present::map_layer(map, values)));
  }
  if (!one.boundary.empty()) part += html_paragraph(with_degree_signs(one.boundary));
  return part;
}

std::string plan_part(const Reported& one, const std::string& number, const std::string& of, UnitSystem units) {
  present::SitePlan plan = result_plan(one.header, {units, {}});
  plan.id += "-" + number;
  std::string part = heading("plan", number, "The bores", of) + html_figure(present::svg(plan));
  part += html(present::in_system(bore_table(one.header), units), "Places and lengths of the bores");
  if (one.header.bores.size() > bores_listed) {
    part += html_paragraph(
        fmt::format("... and {} more: stillground plan --csv lists all.", one.header.bores.size() - bores_listed));
  }
  return part;
}

std::string input_part(const Reported& one, const std::string& number, const std::string& of) {
  const record::Header& header = one.header;
  std::string part = heading("inputs", number, "What it was computed from", of);
  part += html({{"Result", one.source.file},
                {"Method", header.method},
                {"Program", "stillground " + header.engine_version},
                {"Build", header.build},
                {"Instruction set", header.instruction_set},
                {"Time step", fmt::format("{:g} min", header.step / 60)},
                {"Ground grid", fmt::format("{} layers of {} rings, {} group{} of bores", header.z.size(),
                                            header.r.size(), header.groups, header.groups == 1 ? "" : "s")}});
  present::Table files{{{"name", "", "input file"}, {"sha256", "", "SHA-256"}}, {}};
  for (const auto& [name, digest] : header.inputs) files.rows.push_back({name, digest});
  if (!files.rows.empty()) part += html(files, "Files, and the digests by which they can be told again");
  if (!header.sources.empty())
    part += "<h3>Values taken from catalogues, and their sources</h3>\n" + html_list(header.sources);
  return part + "<h3>The scenario</h3>\n<pre>" + present::xml_lines(header.scenario_text) + "</pre>\n";
}

}  // namespace stillground::results
