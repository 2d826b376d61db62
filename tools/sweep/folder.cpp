#include "tools/sweep/folder.hpp"

#include <fmt/format.h>

#include "engine/base/files.hpp"
#include "engine/base/pending_file.hpp"

namespace stillground::sweep {

namespace fs = std::filesystem;

namespace {

constexpr const char* mark = "sweep.txt";
constexpr const char* mark_text =
    "This folder is a sweep's: points/ holds what each point decided, results/ the result files.\n";

void make_folder(const fs::path& path) {
  std::error_code fault;
  fs::create_directories(path, fault);
  if (fault) throw SystemError(fmt::format("{}: cannot be made: {}", path.string(), fault.message()));
}

}  // namespace

Folder::Folder(fs::path path) : path_(std::move(path)) {
  std::error_code ignored;
  const auto refuse = [&](const char* text) { throw InputError({}, "-o", fmt::format("{} {}", path_.string(), text)); };
  if (fs::exists(path_, ignored) && !fs::is_directory(path_, ignored)) refuse("is a file; a sweep needs a folder");
  make_folder(path_);
  if (fs::exists(path_ / mark, ignored)) return;
  for (const auto& entry : fs::directory_iterator(path_)) {
    // Another process of the same sweep may be about to leave its mark.
    if (entry.path().filename().string().starts_with(mark)) continue;
    if (fs::exists(path_ / mark, ignored)) return;
    refuse("holds files that are no sweep's; give a new or an empty folder");
  }
  write_whole_by_many(path_ / mark, mark_text);
}

fs::path Folder::record_file(const std::string& digest) const {
  return path_ / "points" / digest.substr(0, 2) / (digest + ".json");
}

std::optional<Record> Folder::read(const std::string& digest) const {
  const fs::path file = record_file(digest);
  std::error_code ignored;
  if (!fs::exists(file, ignored)) return std::nullopt;
  return record_from(read_file(file), file.string());
}

void Folder::write(const std::string& digest, const Record& record) const {
  const fs::path file = record_file(digest);
  make_folder(file.parent_path());
  write_whole_by_many(file, text_of(record));
}

fs::path Folder::result(const std::string& digest) const {
  const fs::path file = path_ / "results" / digest.substr(0, 2) / (digest + ".h5");
  make_folder(file.parent_path());
  return file;
}

std::string Folder::kept_result(const std::string& digest) const {
  const fs::path below = fs::path("results") / digest.substr(0, 2) / (digest + ".h5");
  std::error_code ignored;
  return fs::exists(path_ / below, ignored) ? below.string() : "";
}

}  // namespace stillground::sweep
