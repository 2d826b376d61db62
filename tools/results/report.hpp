#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/results/compare.hpp"
#include "tools/results/report_words.hpp"
#include "tools/results/slice_view.hpp"

/// One page for whoever signs a design and whoever reads it: verdict first.
namespace stillground::results {

/// What the user says about the report itself; empty parts are left out.
struct ReportHead {
  std::string title;    ///< the first scenario's if empty
  std::string by;       ///< who answers for it
  std::string client;   ///< for whom it is
  std::string date;     ///< as given
  std::string edition;  ///< as given: "2", "draft B"
};

/// All that a report tells of one result, read once.
struct Reported {
  Source source;
  record::Header header;
  FluidSummary summary;
  Layout layout;                ///< with its drift
  std::optional<Slice> change;  ///< half way down at the run's end; none without fields
  std::string boundary;         ///< what changes along the plot's outline; empty without fields
};

Reported reported(const record::read::Result& result, const std::string& name, UnitSystem system);

/// The page. `units`: of all figures.
std::string report_page(const std::vector<Reported>& results, const ReportHead& head, UnitSystem units);

/// The verdicts alone, with warnings and cautions: what a terminal is shown when the page is written.
std::string report_text(const std::vector<Reported>& results, UnitSystem units);

/// What the page says, for machines; with warnings and cautions.
present::Json report_json(const std::vector<Reported>& results, const ReportHead& head);

}  // namespace stillground::results
