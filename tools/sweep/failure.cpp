#include "tools/sweep/failure.hpp"

#include <filesystem>

namespace stillground::sweep {

std::string reason_of(const Error& error) {
  const auto* input = dynamic_cast<const InputError*>(&error);
  const std::string whole = error.what();
  if (input == nullptr || input->place().file.empty()) return whole;
  const std::string& file = input->place().file;
  return whole.starts_with(file) ? std::filesystem::path(file).filename().string() + whole.substr(file.size()) : whole;
}

Record failure(const Error& error, const std::string& method) {
  Record record;
  record.decision.method = method;
  record.failed = reason_of(error);
  const auto* input = dynamic_cast<const InputError*>(&error);
  record.unfit = input != nullptr && input->key() == "run.method";
  return record;
}

}  // namespace stillground::sweep
