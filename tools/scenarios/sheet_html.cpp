#include <fmt/format.h>

#include "tools/present/canvas.hpp"
#include "tools/present/html.hpp"
#include "tools/scenarios/sheet.hpp"
#include "tools/scenarios/sheet_style.hpp"

namespace stillground::scenarios {

namespace {

using present::xml_text;

std::string paragraphs(const std::vector<std::string>& texts) {
  std::string out;
  for (const std::string& text : texts) out += present::html_paragraph(text);
  return out;
}

std::string lines_html(const std::vector<SheetLine>& lines) {
  if (lines.empty()) return "";
  std::string out = "<dl>\n";
  for (const SheetLine& line : lines) {
    out += fmt::format("<div{}><dt>{}</dt><dd>{}", line.below ? " class=\"below\"" : "", xml_text(line.what),
                       xml_text(line.figure));
    if (!line.rule.empty()) out += fmt::format("<span class=\"rule\">{}</span>", xml_text(line.rule));
    out += "</dd></div>\n";
  }
  return out + "</dl>\n";
}

std::string cell_html(const SheetColumn& column, const std::string& text) {
  if (text.empty()) return fmt::format("<td class=\"blank\" style=\"min-width:{}ch\"></td>", column.blank);
  return fmt::format("<td{}>{}</td>", column.number ? " class=\"number\"" : "", xml_text(text));
}

/// A table that is wider than a phone scrolls in its own frame, from the keyboard too.
std::string grid_html(const std::string& of, const SheetGrid& grid) {
  std::string out =
      fmt::format("<div class=\"frame\" tabindex=\"0\" role=\"region\" aria-label=\"{}: table\"><table>\n<thead><tr>",
                  xml_text(of));
  for (const SheetColumn& column : grid.columns) {
    out +=
        fmt::format("<th scope=\"col\"{}>{}</th>", column.number ? " class=\"number\"" : "", xml_text(column.heading));
  }
  out += "</tr></thead>\n<tbody>\n";
  for (const auto& row : grid.rows) {
    out += "<tr>";
    for (std::size_t c = 0; c < row.size(); ++c) out += cell_html(grid.columns[c], row[c]);
    out += "</tr>\n";
  }
  return out + "</tbody></table></div>\n";
}

std::string section_html(const SheetSection& section) {
  std::string out = fmt::format("<section>\n<h2>{}</h2>\n", xml_text(section.heading));
  out += lines_html(section.lines) + paragraphs(section.notes);
  for (const SheetGrid& grid : section.grids) out += grid_html(section.heading, grid);
  return out + "</section>\n";
}

std::string warnings_html(const std::vector<std::string>& warnings) {
  if (warnings.empty()) return "<p>No warnings from the model.</p>\n";
  return "<h2>Warnings</h2>\n" + present::html_list(warnings);
}

}  // namespace

std::string sheet_html(const Sheet& sheet) {
  std::string out = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
      "<title>{0}</title>\n<style>\n{1}</style>\n</head>\n<body>\n<header>\n<p class=\"kind\">Crew sheet</p>\n"
      "<h1>{0}</h1>\n<p>{2}</p>\n</header>\n<main>\n",
      xml_text(sheet.title), sheet_style(), xml_text(sheet.sums));
  out += "<section class=\"cautions\">\n<h2>Cautions</h2>\n" + present::html_list(sheet.notices.cautions) +
         warnings_html(sheet.notices.warnings) + "</section>\n";
  for (const SheetSection& section : sheet.sections) {
    out += section_html(section);
    if (&section == &sheet.sections.front()) out += "<figure>\n" + sheet.plan + "</figure>\n";
  }
  return out + "</main>\n<footer>" + xml_text(sheet.origin) + "</footer>\n</body>\n</html>\n";
}

}  // namespace stillground::scenarios
