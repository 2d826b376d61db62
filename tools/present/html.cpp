#include "tools/present/html.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "engine/units/display.hpp"
#include "tools/present/canvas.hpp"

namespace stillground::present {

namespace {

std::string text_of(const Cell& cell, const Column& column) {
  if (const auto* word = std::get_if<std::string>(&cell)) return *word;
  if (const auto* count = std::get_if<long>(&cell)) return fmt::format("{}", *count);
  const auto* number = std::get_if<double>(&cell);
  return number != nullptr ? fixed(*number, column.digits) : "-";
}

bool holds_words(const Table& table, std::size_t c) {
  return !table.columns[c].to_the_right && std::any_of(table.rows.begin(), table.rows.end(), [c](const auto& row) {
    return std::holds_alternative<std::string>(row[c]);
  });
}

std::string unit_of(const Column& column) {
  if (column.units == "degC" || column.units == "degF") return "°" + column.units.substr(3);
  return std::string(units::printed_unit(column.units));
}

std::string head_of(const Table& table, const std::vector<bool>& words) {
  std::string head;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    const std::string unit = unit_of(column);
    head += fmt::format("<th scope=\"col\"{}>{}{}</th>", words[c] ? " class=\"word\"" : "",
                        xml_text(column.heading.empty() ? column.name : column.heading),
                        unit.empty() || unit == " " ? "" : "<span class=\"unit\">" + xml_text(unit) + "</span>");
  }
  return head;
}

}  // namespace

std::string html(const Table& table, const std::string& caption) {
  std::vector<bool> words;
  for (std::size_t c = 0; c < table.columns.size(); ++c) words.push_back(holds_words(table, c));
  std::string rows;
  for (const auto& row : table.rows) {
    rows += "<tr>";
    for (std::size_t c = 0; c < row.size(); ++c) {
      const char* kind = c == 0 ? "th scope=\"row\"" : "td";
      rows += fmt::format("<{}{}>{}</{}>", kind, words[c] ? " class=\"word\"" : "",
                          xml_text(text_of(row[c], table.columns[c])), c == 0 ? "th" : "td");
    }
    rows += "</tr>\n";
  }
  return fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"{0}\"><table><caption>{0}</caption>\n"
      "<thead><tr>{1}</tr></thead>\n<tbody>\n{2}</tbody></table></div>\n",
      xml_text(caption), head_of(table, words), rows);
}

std::string html(const std::vector<FactLine>& facts) {
  std::string lines;
  for (const FactLine& fact : facts) {
    if (!fact.is.empty()) lines += fmt::format("<dt>{}</dt><dd>{}</dd>\n", xml_text(fact.what), xml_text(fact.is));
  }
  return "<dl class=\"facts\">\n" + lines + "</dl>\n";
}

std::string html_list(const std::vector<std::string>& texts) {
  if (texts.empty()) return "";
  std::string items;
  for (const std::string& text : texts) items += "<li>" + xml_text(text) + "</li>\n";
  return "<ul>\n" + items + "</ul>\n";
}

std::string xml_lines(const std::string& utf8) {
  std::string out;
  std::istringstream lines(utf8);
  for (std::string line; std::getline(lines, line);) out += xml_text(line) + "\n";
  return out;
}

std::string html_paragraph(const std::string& text) {
  return "<p>" + xml_text(text) + "</p>\n";
}

std::string html_figure(const std::string& svg) {
  return "<figure>\n" + svg + "</figure>\n";
}

}  // namespace stillground::present
