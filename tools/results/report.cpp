#include "tools/results/report.hpp"

#include <fmt/format.h>

#include "engine/base/paragraph.hpp"
#include "tools/present/canvas.hpp"
#include "tools/present/html.hpp"
#include "tools/present/page.hpp"
#include "tools/results/boundary.hpp"
#include "tools/results/compare_view.hpp"
#include "tools/results/drift_view.hpp"
#include "tools/results/method_note.hpp"
#include "tools/results/notices.hpp"
#include "tools/results/report_parts.hpp"

namespace stillground::results {

namespace {

using present::html_list;
using present::html_paragraph;
using present::xml_text;

std::string heading(const std::string& id, const std::string& text) {
  return fmt::format("<h2 id=\"{}\">{}</h2>\n", id, xml_text(text));
}

std::string verdict_box(const Reported& one, bool named, UnitSystem units) {
  const bool beyond = first_broken(one.summary.limits) != nullptr;
  std::string box = fmt::format("<div class=\"verdict{}\">\n", beyond ? " beyond" : "");
  if (named) box += "<h3>" + xml_text(one.layout.name + ": " + one.source.title) + "</h3>\n";
  box +=
      "<p class=\"say\">" + xml_text(with_degree_signs(verdict_on_limits(one.summary, one.source, units))) + "</p>\n";
  box += html_paragraph(one.layout.drift
                            ? with_degree_signs(verdict(*one.layout.drift, units))
                            : "No ground temperatures were recorded, so whether the ground drifts cannot be told.");
  if (const std::string note = method_note(one.source.method); !note.empty()) box += html_paragraph(note);
  if (!one.header.warnings.empty()) {
    box += fmt::format("<p><a href=\"#warnings\">{} warning{}</a></p>\n", one.header.warnings.size(),
                       one.header.warnings.size() == 1 ? "" : "s");
  }
  return box + "</div>\n";
}

std::string title_of(const std::vector<Reported>& results, const ReportHead& head) {
  if (!head.title.empty()) return head.title;
  if (results.size() == 1) return results.front().source.title;
  return fmt::format("{} layouts side by side", results.size());
}

std::string page_head(const std::string& title, const ReportHead& head, const std::vector<Reported>& results) {
  const record::Header& first = results.front().header;
  return "<a class=\"skip\" href=\"#verdict\">To the verdict</a>\n<header>\n<h1>" + xml_text(title) + "</h1>\n" +
         present::html({{"Ground-loop field over", fmt::format("{} years from {}", first.years, iso(first.start))},
                        {"For", head.client},
                        {"Prepared by", head.by},
                        {"Date", head.date},
                        {"Edition", head.edition},
                        {"Computed with", "stillground " + first.engine_version}}) +
         "</header>\n";
}

std::string comparison(const std::vector<Reported>& results, UnitSystem units) {
  std::vector<Layout> layouts;
  for (const Reported& one : results) layouts.push_back(one.layout);
  present::Table figures = compare_columns(layouts, units);
  for (auto& row : figures.rows) row[1] = with_degree_signs(std::get<std::string>(row[1]));
  return heading("comparison", "The layouts side by side") +
         picture(compare_figure(layouts, {.units = units, .footnotes = {}}), "") + "<div class=\"keep\">" +
         present::html(figures, "Figures of the layouts") + "</div>\n";
}

program::Notices all_notices(const std::vector<Reported>& results) {
  if (results.size() == 1) return notices_of(results.front().header);
  std::vector<std::pair<std::string, program::Notices>> named;
  for (const Reported& one : results) named.emplace_back(one.layout.name, notices_of(one.header));
  return notices_of(named);
}

std::string what_limits_it(const std::vector<Reported>& results, UnitSystem units) {
  const program::Notices notices = all_notices(results);
  std::string html = heading("limits-of-it", "What the model does not do") + html_list(left_out());
  html += heading("errors", "How far the figures may be off");
  for (const Reported& one : results) {
    if (results.size() > 1) html += "<h3>" + xml_text(one.layout.name) + "</h3>\n";
    html += html_list(error_sentences(one.header, units));
  }
  html += heading("warnings", "Warnings");
  html += notices.warnings.empty() ? html_paragraph("No warnings from the model.") : html_list(notices.warnings);
  return html + heading("cautions", "Cautions") + html_list(notices.cautions);
}

/// Where to go; for the screen.
std::string contents(const std::vector<Reported>& results) {
  const auto link = [](const std::string& id, const std::string& text) {
    return fmt::format("<li><a href=\"#{}\">{}</a></li>\n", id, xml_text(text));
  };
  std::string html = "<nav aria-label=\"Contents\"><ul>\n";
  if (results.size() > 1) html += link("comparison", "The layouts side by side");
  for (std::size_t n = 0; n < results.size(); ++n) {
    const std::string of = results.size() > 1 ? results[n].layout.name + ": " : "";
    html += link(fmt::format("fluid-{}", n + 1), of + "fluid, electricity, ground, plan, inputs");
  }
  return html + link("limits-of-it", "What the model does not do, errors, warnings, cautions") + "</ul></nav>\n";
}

}  // namespace

Reported reported(const record::read::Result& result, const std::string& name, UnitSystem system) {
  const record::Header& header = result.header();
  Reported one{source_of(header, name), header, summarise(header, result.hours(), result.minutes()),
               layout_of(result),       {},     {}};
  if (!has_fields(result)) return one;
  const Block block = block_of(header.bores);
  const Slice empty = empty_slice(header, {.depth = (block.top + block.toe) / 2, .from = {}, .to = {}});
  one.change = slice_of(header, ground_at(result, header.years * seconds_per_year), empty);
  one.boundary = boundary_verdict(header, boundary_of(result, boundary_line(header), {}), system);
  return one;
}

std::string report_page(const std::vector<Reported>& results, const ReportHead& head, UnitSystem units) {
  const std::string title = title_of(results, head);
  std::string body = page_head(title, head, results) + "<main>\n<h2 id=\"verdict\">Verdict</h2>\n";
  for (const Reported& one : results) body += verdict_box(one, results.size() > 1, units);
  body += contents(results);
  if (results.size() > 1) body += comparison(results, units);
  for (std::size_t n = 0; n < results.size(); ++n) {
    const std::string number = fmt::format("{}", n + 1);
    const std::string of = results.size() > 1 ? ", " + results[n].layout.name : "";
    body += fluid_part(results[n], number, of, units) + energy_part(results[n], number, of, units) +
            ground_part(results[n], number, of, units) + plan_part(results[n], number, of, units) +
            input_part(results[n], number, of);
  }
  body += what_limits_it(results, units) + "</main>\n<footer>\n";
  if (!head.by.empty()) {
    body += html_paragraph(fmt::format("Prepared by {}{}. Signature: ______________________________", head.by,
                                       head.date.empty() ? "" : ", " + head.date));
  }
  return present::page(title, body + "</footer>\n");
}

std::string report_text(const std::vector<Reported>& results, UnitSystem units) {
  std::string out;
  for (const Reported& one : results) {
    out += one.source.title + "\n" + one.source.file + "\n\n";
    out += wrapped(verdict_on_limits(one.summary, one.source, units), 100) + "\n\n";
    if (one.layout.drift) out += wrapped(verdict(*one.layout.drift, units), 100) + "\n\n";
    if (const std::string note = method_note(one.source.method); !note.empty()) out += note + "\n\n";
  }
  out.pop_back();
  return out + program::footer(all_notices(results));
}

present::Json report_json(const std::vector<Reported>& results, const ReportHead& head) {
  present::Json list = present::Json::array();
  for (const Reported& one : results) {
    present::Json json = {
        {"file", one.source.file},
        {"title", one.source.title},
        {"verdict", verdict_on_limits(one.summary, one.source, UnitSystem::si)},
        {"kept", first_broken(one.summary.limits) == nullptr},
        {"drift", one.layout.drift ? present::Json(verdict(*one.layout.drift)) : present::Json(nullptr)},
        {"fluid", eft_json(one.source, one.summary)}};
    list.push_back(std::move(json));
  }
  const program::Notices notices = all_notices(results);
  return {{"verb", "report"},
          {"title", title_of(results, head)},
          {"by", head.by},
          {"client", head.client},
          {"date", head.date},
          {"edition", head.edition},
          {"results", list},
          {"warnings", notices.warnings},
          {"cautions", notices.cautions}};
}

}  // namespace stillground::results
