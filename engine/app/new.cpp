#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
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

}  // namespace

}  // namespace stillground::app

int main(int argc, char** argv) {
  using namespace stillground;
  std::filesystem::path file;
  bool schema = false;
  return program::guarded_main(
      argc, argv, {"new", "writes a small starting scenario with a comment beside every key", ""},
      [&](CLI::App& app) {
        app.add_option("SCENARIO.yaml", file, "the file to write; \"-\" for standard output")
            ->type_name("")
            ->required();
        app.add_flag("--schema", schema, "write the keys for editors instead, as a JSON Schema");
      },
      [&] {
        const std::string text = schema ? app::scenario_schema() : app::starting_scenario();
        if (file == "-") {
          program::deliver("-", text);
        } else {
          app::write_new(file, text);
        }
      });
}
