#pragma once

#include <string>
#include <vector>

#include "tools/present/table.hpp"

/// Parts of a page; every text goes through xml_text.
namespace stillground::present {

/// A table with its caption, units under the headings, in a box that scrolls where it is wider than the page. The first
/// column heads its rows.
std::string html(const Table& table, const std::string& caption);

/// What is what, one a line.
struct FactLine {
  std::string what, is;
};
std::string html(const std::vector<FactLine>& facts);

/// <ul>; empty without texts.
std::string html_list(const std::vector<std::string>& texts);

/// A text of several lines that may stand in HTML: as xml_text, its line ends kept.
std::string xml_lines(const std::string& utf8);

/// <p>
std::string html_paragraph(const std::string& text);

/// An SVG element as a figure.
std::string html_figure(const std::string& svg);

}  // namespace stillground::present
