#include "tests/unit/record/recorded.hpp"

#include "engine/record/write/result_file.hpp"

namespace stillground::testing {

namespace {

template <class... Kinds>
struct Each : Kinds... {
  using Kinds::operator()...;
};
template <class... Kinds>
Each(Kinds...) -> Each<Kinds...>;

}  // namespace

Recorded recorded(record::Journal& journal) {
  Recorded all;
  journal.replay([&](const record::Frame& frame) {
    std::visit(Each{[&](const std::vector<record::Hour>& hours) {
                      all.hours.insert(all.hours.end(), hours.begin(), hours.end());
                    },
                    [&](const record::Snapshot& snapshot) { all.snapshots.push_back(snapshot); },
                    [&](const record::YearMean& mean) { all.year_means.push_back(mean); },
                    [&](const record::YearBalance& balance) { all.balances.push_back(balance); }},
               frame);
  });
  return all;
}

void write_result(const std::filesystem::path& file, const record::Header& header, record::Journal& journal,
                  const record::Closing& closing) {
  record::ResultFile result(file, header, recorded(journal).snapshots.size());
  journal.replay([&](const record::Frame& frame) { std::visit([&](const auto& kept) { result.add(kept); }, frame); });
  result.finish(closing);
}

}  // namespace stillground::testing
