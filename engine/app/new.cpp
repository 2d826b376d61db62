#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <map>
#include <string>

#include "engine/app/scenario_schema.hpp"
#include "engine/app/starting_scenario.hpp"
#include "engine/program/program.hpp"

namespace stillground::app {

namespace {

/// O_EXCL decides whether the file is new: a look beforehand could be overtaken.
void write_new(const std::filesystem::path& file, const std::string& text) {
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (descriptor < 0 && errno == EEXIST) {
    throw InputError(fmt::format("{} exists already and is left as it is", file.string()));
  }
  if (descriptor < 0) throw InputError(fmt::format("{}: {}", file.string(), std::strerror(errno)));
  const bool written = ::write(descriptor, text.data(), text.size()) == static_cast<ssize_t>(text.size());
  const int error = errno;
  ::close(descriptor);
  if (written) return;
  std::filesystem::remove(file);
  throw SystemError(fmt::format("{}: {}", file.string(), std::strerror(error)));
}

const std::map<std::string, Like> kinds{
    {"grid", Like::grid}, {"plot", Like::plot}, {"coaxial", Like::coaxial}, {"us", Like::us}};

std::string wrong_kind(const std::string& word) {
  return kinds.contains(word) ? "" : fmt::format("\"{}\" is none of grid, plot, coaxial, us", word);
}

/// Beside the scenario, for a plot's corners.
std::filesystem::path outline_beside(const std::filesystem::path& scenario) {
  return scenario.parent_path() / (scenario.stem().string() + "_plot.csv");
}

/// The scenario, and the outline of its plot before it: neither over a file that is there.
void write_kind(const std::filesystem::path& file, Like like) {
  if (like != Like::plot) return write_new(file, starting_scenario(like));
  const std::filesystem::path outline = outline_beside(file);
  if (std::filesystem::exists(file)) throw InputError(file.string() + " exists already and is left as it is");
  write_new(outline, starting_outline());
  write_new(file, starting_scenario(like, outline.filename().string()));
}

}  // namespace

}  // namespace stillground::app

int main(int argc, char** argv) {
  using namespace stillground;
  std::filesystem::path file;
  bool schema = false;
  std::string like = "grid";
  return program::guarded_main(
      argc, argv, {"new", "writes a small starting scenario with a comment beside every key", ""},
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", file, "the file to write; \"-\" for standard output")
            ->type_name("")
            ->required();
        app.add_option("--like", like,
                       "what it is to be like: rows and columns (if not given), a plot of land that bores fill, a pipe "
                       "within a pipe, or the units of the United States")
            ->type_name("grid|plot|coaxial|us")
            ->check(CLI::Validator(app::wrong_kind, ""));
        app.add_flag("--schema", schema, "write the keys for editors instead, as a JSON Schema");
      },
      [&] {
        if (file == "-") {
          const std::string outline = app::kinds.at(like) == app::Like::plot ? "plot.csv" : "";
          program::deliver("-", schema ? app::scenario_schema() : app::starting_scenario(app::kinds.at(like), outline));
        } else if (schema) {
          app::write_new(file, app::scenario_schema());
        } else {
          app::write_kind(file, app::kinds.at(like));
        }
      });
}
