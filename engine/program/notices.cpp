#include "engine/program/notices.hpp"

#include <fmt/format.h>

#include "engine/base/paragraph.hpp"

namespace stillground::program {

std::string footer(const Notices& notices) {
  constexpr std::size_t columns = 100;
  std::string out = notices.warnings.empty() ? "\nNo warnings from the model.\n" : "\nWarnings\n";
  // A warning stays on one line, so that its place can be jumped to.
  for (const std::string& warning : notices.warnings) out += fmt::format("  {}\n", warning);
  if (notices.cautions.empty()) return out;
  out += "\nCautions\n";
  for (const std::string& caution : notices.cautions)
    out += fmt::format("  {}\n", wrapped(caution, columns - 2, "    "));
  return out;
}

std::vector<std::string> footnotes(const Notices& notices) {
  std::vector<std::string> lines;
  if (notices.warnings.empty()) {
    lines.emplace_back("No warnings from the model.");
  } else if (notices.warnings.size() == 1) {
    lines.push_back("Warning: " + notices.warnings.front());
  } else {
    lines.push_back(fmt::format("{} warnings: see the table.", notices.warnings.size()));
  }
  if (!notices.cautions.empty()) lines.push_back("Caution: " + notices.cautions.front());
  return lines;
}

}  // namespace stillground::program
