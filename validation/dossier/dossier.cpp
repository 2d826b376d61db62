#include "validation/dossier/dossier.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

namespace stillground::validation {

namespace {

constexpr double round_off = 1e-9;

std::string size_text(double value, bool relative) {
  if (std::isnan(value)) return "not a number";
  const double shown = relative ? 100 * value : value;
  return fmt::format("{:.2g}{}", shown, relative ? " %" : "");
}

}  // namespace

Dossier read_dossier(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& file : std::filesystem::directory_iterator(folder)) {
    if (file.path().extension() == ".json") files.push_back(file.path());
  }
  std::sort(files.begin(), files.end());
  Dossier dossier;
  std::set<std::string> ids;
  for (const auto& file : files) {
    Entries read = read_entries(file);
    for (Entry& entry : read.entries) {
      if (!ids.insert(entry.heading.id).second) {
        throw std::runtime_error("two entries are called " + entry.heading.id);
      }
      dossier[read.topic].push_back(std::move(entry));
    }
  }
  if (ids.empty()) throw std::runtime_error("no entries in " + folder.string());
  return dossier;
}

Sums sums(const Dossier& dossier, Kind of) {
  Sums all;
  for (const auto& [topic, entries] : dossier) {
    for (const Entry& entry : entries) {
      if (kind(entry.heading.origin) != of) continue;
      const Verdict v = verdict(entry);
      ++all.entries;
      all.rows += v.rows;
      all.missed += v.missed;
      all.known += v.known;
    }
  }
  return all;
}

std::string in_words(const Sums& sums) {
  return fmt::format("{} entries, {} comparisons, {} missed, {} known to miss", sums.entries, sums.rows, sums.missed,
                     sums.known);
}

const char* heading(Kind kind) {
  return kind == Kind::outside ? "Against something outside the engine" : "Self-consistency";
}

const char* explanation(Kind kind) {
  return kind == Kind::outside
             ? "Papers, published formulas, tables, independent solutions by general-purpose libraries, common practice"
             : "The engine against itself: finer steps and cells, another of its methods, its own books. That shows "
               "that two of its figures agree, and not that they are right";
}

std::string summary(const Entry& entry) {
  const Verdict v = verdict(entry);
  return fmt::format("{}{}: {} comparisons, {} missed, {} known to miss", entry.heading.id,
                     kind(entry.heading.origin) == Kind::outside ? "" : " (self-consistency)", v.rows, v.missed,
                     v.known);
}

RowText row_text(const Row& row) {
  RowText text{row.at, fmt::format("{:.5g}", row.reference), fmt::format("{:.5g}", row.ours),
               size_text(row.miss, row.is_relative), size_text(row.allowed, row.is_relative)};
  if (std::abs(row.miss) < round_off) text.miss = row.is_relative ? "below 1e-7 %" : "below 1e-9";
  if (std::abs(row.ours) < round_off) text.ours = "below 1e-9";
  if (std::abs(row.reference) < round_off) text.reference = row.reference == 0 ? "0" : "below 1e-9";
  if (row.range) {
    text.reference = fmt::format("{:.5g} to {:.5g}", row.range->first, row.range->second);
    text.miss = row.miss == 0 ? "within" : size_text(row.miss, false);
    text.allowed = "";
  }
  return text;
}

std::vector<std::string> not_in_list(const Dossier& dossier, const std::string& list) {
  std::vector<std::string> missing;
  for (const auto& [topic, entries] : dossier) {
    for (const Entry& entry : entries) {
      if (list.find("\n" + summary(entry) + "\n") == std::string::npos) missing.push_back(summary(entry));
    }
  }
  return missing;
}

}  // namespace stillground::validation
