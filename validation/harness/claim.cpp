#include "validation/harness/claim.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace stillground::validation {

namespace {

void print(const Row& row) {
  const std::string expected = row.range ? fmt::format("{:.5g} .. {:.5g}", row.range->first, row.range->second)
                                         : fmt::format("{:.6g}", row.reference);
  fmt::print("{:>44} {:>18} {:14.6g} {:10.2e} {:10.1e}{}{}\n", row.at, expected, row.ours, row.miss, row.allowed,
             row.known ? fmt::format("  known miss (bound {:.1e}): {}", row.known->bound, row.known->reason) : "",
             row.held() ? "" : (row.known ? "  NO LONGER AS KNOWN" : "  MISSED"));
}

void print(const Entry& entry) {
  const Heading& h = entry.heading;
  fmt::print("{}: {}\n  {}: {}\n  set-up: {}\n  tolerance: {}\n", h.id, h.claim, mark(h.origin), h.source, h.setup,
             h.tolerance);
  fmt::print("{:>44} {:>18} {:>14} {:>10} {:>10}\n", "at", "reference", "ours", "miss", "allowed");
  for (const Row& row : entry.rows) print(row);
  const Verdict v = verdict(entry);
  fmt::print("{} comparisons, {} missed, {} known to miss; the others' largest miss is {:.4g} of what is allowed\n\n",
             v.rows, v.missed, v.known, v.worst);
}

}  // namespace

void Claim::row(Row row) {
  entry_.rows.push_back(std::move(row));
}

void Claim::relative(const std::string& at, double reference, double ours, double allowed) {
  row({at, reference, ours, ours / reference - 1, allowed, true, {}, {}});
}

void Claim::absolute(const std::string& at, double reference, double ours, double allowed) {
  row({at, reference, ours, ours - reference, allowed, false, {}, {}});
}

void Claim::between(const std::string& at, double low, double high, double ours) {
  const double miss = ours < low ? ours - low : std::max(0.0, ours - high);
  // max() would hide a NaN.
  row({at, (low + high) / 2, ours, std::isnan(ours) ? ours : miss, 0, false, std::pair{low, high}, {}});
}

void Claim::known_miss(const std::string& at, double reference, double ours, double allowed, double bound,
                       const std::string& reason) {
  row({at, reference, ours, ours / reference - 1, allowed, true, {}, KnownMiss{bound, reason}});
}

void Claim::known_absolute_miss(const std::string& at, double reference, double ours, double allowed, double bound,
                                const std::string& reason) {
  row({at, reference, ours, ours - reference, allowed, false, {}, KnownMiss{bound, reason}});
}

Check::Check(int argc, char** argv, Topic topic) : topic_(topic) {
  if (argc == 1) return;
  if (argc != 3 || std::string(argv[1]) != "--entries") {
    throw std::runtime_error("usage: validation_NAME [--entries FILE]");
  }
  entries_ = argv[2];
}

int Check::finish() const {
  Entries all{topic_, {}};
  bool held = !claims_.empty();
  for (const Claim& claim : claims_) {
    print(claim.entry());
    held = held && verdict(claim.entry()).held();
    all.entries.push_back(claim.entry());
  }
  if (!entries_.empty()) write_entries(entries_, all);
  return held ? 0 : 1;
}

}  // namespace stillground::validation
