#pragma once

#include <CLI/CLI.hpp>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "engine/base/errors.hpp"
#include "engine/base/unit_system.hpp"

/// What every main shares, so that a program is only its arguments and its work.
///
///   int main(int argc, char** argv) {
///     std::filesystem::path file;
///     bool json = false;
///     return program::guarded_main(
///         argc, argv, {"eft", "shows the curve of entering fluid temperature"},
///         [&](CLI::App& app) {
///           app.add_option("RESULT.h5", file, "a finished result file")->required();
///           program::add_json(app, json);
///         },
///         [&] { program::deliver("-", json ? as_json(file) : as_table(file)); });
///   }
namespace stillground::program {

/// Who the program is.
struct Info {
  std::string verb;     ///< "run"; the program calls itself "stillground run"
  std::string purpose;  ///< one line, what it does, without a full stop
  std::string closing;  ///< last paragraph of --help: examples, remarks; may be empty
};

/// Runs a main: declares the arguments, parses them, works, and turns whatever happens into one line on stderr and an
/// exit status. The only place where errors are caught for good.
///
/// - --help and --version go to standard output: 0. So do --purpose, the one line by which `stillground` lists its
/// verbs, and --options, of which completion in shells is made (options_list.hpp).
/// - A wrong command line: 2.
/// - Error: its own status (2 input, 3 system or numerics, 130 interrupted). A text that starts with its place in a
/// file
///   ("site.yaml:14:19: key: ...") stays at the start of the line, so that editors can jump there; any other is
///   preceded by the program's name.
/// - No memory left: 3. Any other exception is a bug of ours, and says so: 3.
/// - Standard output that cannot be written (full disk, closed): 3. A reader that has gone away (`| head`) ends the
///   program without a word, also 3, since not everything was delivered.
int guarded_main(int argc, char** argv, const Info& info, const std::function<void(CLI::App&)>& declare,
                 const std::function<void()>& work);

/// One line on stderr: place, "warning", text, range.
void warn(const Warning& warning);

/// Writes `text` to the file, whole or not at all; "-" is standard output. Throws SystemError.
void deliver(const std::filesystem::path& target, const std::string& text);

/// --json: one object on standard output instead of tables.
void add_json(CLI::App& app, bool& json);

/// --units si|us: in which people are shown figures, whatever the scenario says.
void add_units(CLI::App& app, std::optional<UnitSystem>& units);

/// --threads N; 0, the default, takes as many as the machine has.
void add_threads(CLI::App& app, int& threads);

}  // namespace stillground::program
