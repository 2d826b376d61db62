#include <stillground/scenario.hpp>

#include <utility>

#include "engine/config/read.hpp"
#include "engine/library/content.hpp"

namespace stillground {

Scenario::Scenario(std::shared_ptr<const Content> content) : content_(std::move(content)) {}

const Scenario::Content& Scenario::content() const {
  return *content_;
}

const std::string& Scenario::title() const {
  return content_->scenario.title;
}

Date Scenario::start() const {
  return content_->scenario.run.start;
}

int Scenario::years() const {
  return content_->scenario.run.years;
}

bool Scenario::screens() const {
  return content_->scenario.run.screens();
}

const std::vector<Warning>& Scenario::warnings() const {
  return content_->scenario.warnings;
}

Scenario read_scenario(const std::filesystem::path& file, const std::filesystem::path& catalogues) {
  return Scenario(std::make_shared<Scenario::Content>(config::read_scenario(file, std::nullopt, catalogues)));
}

}  // namespace stillground
