#include <fmt/format.h>

#include <algorithm>

#include "validation/dossier/dossier.hpp"

namespace stillground::validation {

namespace {

/// A cell's text must not end the cell.
std::string cell(std::string text) {
  for (std::size_t i = text.find('|'); i != std::string::npos; i = text.find('|', i + 2)) text.replace(i, 1, "\\|");
  return text;
}

std::string overview(const Dossier& dossier, Kind of) {
  std::string text =
      "| entry | against | comparisons | known misses | largest other miss, of what is allowed |\n"
      "| --- | --- | ---: | ---: | ---: |\n";
  for (const auto& [topic, entries] : dossier) {
    for (const Entry& entry : entries) {
      if (kind(entry.heading.origin) != of) continue;
      const Verdict v = verdict(entry);
      text += fmt::format("| {} | {} | {} | {} | {:.0f} % |\n", entry.heading.id, mark(entry.heading.origin), v.rows,
                          v.known, 100 * v.worst);
    }
  }
  return text;
}

std::string known_misses(const Dossier& dossier) {
  std::string rows;
  for (const auto& [topic, entries] : dossier) {
    for (const Entry& entry : entries) {
      for (const Row& row : entry.rows) {
        if (!row.known) continue;
        const RowText text = row_text(row);
        rows += fmt::format("| {} | {} | {} | {} | {} |\n", entry.heading.id, cell(row.at), text.miss, text.allowed,
                            cell(row.known->reason));
      }
    }
  }
  if (rows.empty()) return "None.\n";
  return "| entry | at | miss | allowed | reason |\n| --- | --- | ---: | ---: | --- |\n" + rows;
}

std::string section(const Entry& entry) {
  const Heading& h = entry.heading;
  std::string text = fmt::format("### {}\n\n{}.\n\n- {}: {}\n- set-up: {}\n- tolerance: {}\n\n{}\n\n", h.id, h.claim,
                                 mark(h.origin), h.source, h.setup, h.tolerance, summary(entry));
  text += "| at | reference | ours | miss | allowed |\n| --- | ---: | ---: | ---: | ---: |\n";
  for (const Row& row : entry.rows) {
    const RowText cells = row_text(row);
    text += fmt::format("| {} | {} | {} | {}{} | {} |\n", cell(cells.at), cells.reference, cells.ours, cells.miss,
                        row.known ? " (known)" : "", cells.allowed);
  }
  return text + "\n";
}

}  // namespace

std::string markdown(const Dossier& dossier) {
  std::string text = "# Dossier\n\nMade by `validation/run`; do not edit. What stillground says of the physics.\n\n";
  for (const Kind kind : {Kind::outside, Kind::self_consistency}) {
    text += fmt::format("## {}\n\n{}: {}.\n\n{}\n", heading(kind), explanation(kind), in_words(sums(dossier, kind)),
                        overview(dossier, kind));
  }
  text += fmt::format("## Known misses\n\n{}\n", known_misses(dossier));
  for (const auto& [topic, entries] : dossier) {
    text += fmt::format("## {}\n\n", title(topic));
    for (const Entry& entry : entries) text += section(entry);
  }
  text.pop_back();
  return text;
}

}  // namespace stillground::validation
