#include <stillground/screening.hpp>

#include "engine/library/content.hpp"
#include "engine/screen/batch.hpp"

namespace stillground {

struct ScreeningBatch::Content {
  screen::Batch batch;
};

ScreeningBatch::ScreeningBatch(const Scenario& middle, double faster)
    : content_(new Content{screen::Batch(middle.content().scenario, faster)}) {}

ScreeningBatch::~ScreeningBatch() = default;
ScreeningBatch::ScreeningBatch(ScreeningBatch&&) noexcept = default;
ScreeningBatch& ScreeningBatch::operator=(ScreeningBatch&&) noexcept = default;

void ScreeningBatch::run(std::span<const Scenario> variants, const TakeYear& take, int threads) const {
  std::vector<model::Scenario> read;
  for (const Scenario& variant : variants) read.push_back(variant.content().scenario);
  content_->batch.screen(read, take, threads);
}

}  // namespace stillground
