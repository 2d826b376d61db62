#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "validation/harness/entry.hpp"

namespace stillground::validation {

/// All entries by topic, within a topic by the check's name and in the check's own order.
using Dossier = std::map<Topic, std::vector<Entry>>;

/// Reads every .json that the checks left in `folder`. Throws std::runtime_error if there is none, or if two entries
/// share an id.
Dossier read_dossier(const std::filesystem::path& folder);

/// What all entries of one kind come to.
struct Sums {
  std::size_t entries = 0;
  std::size_t rows = 0;
  std::size_t missed = 0;
  std::size_t known = 0;
};
Sums sums(const Dossier& dossier, Kind kind);

/// "17 entries, 215 comparisons, 0 missed, 3 known to miss".
std::string in_words(const Sums& sums);

/// What the page and the list say of a kind above its entries.
const char* heading(Kind kind);
const char* explanation(Kind kind);

/// "finite-line-wall: 15 comparisons, 0 missed, 0 known to miss"; behind the id "(self-consistency)" where it is that.
std::string summary(const Entry& entry);

/// A row's cells for people: at, reference, ours, miss, allowed. Misses below 1e-9 are round-off and say so, so that
/// the text does not change with a compiler's last bits.
struct RowText {
  std::string at, reference, ours, miss, allowed;
};
RowText row_text(const Row& row);

/// The list that is committed, so that a changed figure shows in review.
std::string markdown(const Dossier& dossier);

/// The page that a reviewer reads: one self-contained HTML file with its pictures inside.
std::string page(const Dossier& dossier);

/// A plot as SVG; `id` is unique in the page.
std::string picture(const Plot& plot, const std::string& id);

/// What of `dossier` the committed list does not say, one line an entry; empty if it says all of it.
std::vector<std::string> not_in_list(const Dossier& dossier, const std::string& list);

}  // namespace stillground::validation
