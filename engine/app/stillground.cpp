#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "engine/base/own_file.hpp"
#include "engine/base/spelling.hpp"
#include "engine/program/program.hpp"

/// The front program: finds the verbs that stand beside it and hands over to one of them.
namespace stillground::app {

namespace {

namespace fs = std::filesystem;

constexpr const char* prefix = "stillground-";

/// Verbs in the order of the work; any other follows in alphabetical order.
const std::vector<std::string> usual_order = {"new", "check", "run", "eft", "drift", "compare", "slice", "report"};

fs::path own_folder() {
  return own_file().parent_path();
}

fs::path program_of(const std::string& verb) {
  return own_folder() / (prefix + verb);
}

auto place_in_order(const std::string& verb) {
  return std::make_pair(std::find(usual_order.begin(), usual_order.end(), verb), verb);
}

std::vector<std::string> verbs() {
  std::vector<std::string> found;
  for (const auto& entry : fs::directory_iterator(own_folder())) {
    const std::string name = entry.path().filename().string();
    if (name.starts_with(prefix) && ::access(entry.path().c_str(), X_OK) == 0) found.push_back(name.substr(12));
  }
  std::sort(found.begin(), found.end(),
            [](const auto& a, const auto& b) { return place_in_order(a) < place_in_order(b); });
  return found;
}

/// As one word of the shell, whatever the folder is called.
std::string quoted(const fs::path& path) {
  std::string text = "'";
  for (const char c : path.string()) text += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return text + "'";
}

/// What the verb's program says of itself: a new tool is then listed without being named here.
std::string purpose(const std::string& verb) {
  const std::string command = "exec " + quoted(program_of(verb)) + " --purpose 2>/dev/null";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(::popen(command.c_str(), "r"), ::pclose);
  std::string text;
  for (int c = 0; pipe && (c = std::fgetc(pipe.get())) != EOF && c != '\n';) text += static_cast<char>(c);
  return text;
}

std::string overview() {
  std::string text = "Verbs:\n";
  for (const std::string& verb : verbs()) text += fmt::format("  {:10}{}\n", verb, purpose(verb));
  return text + "\nstillground VERB --help tells the arguments of each.";
}

[[noreturn]] void hand_over(char** arguments) {
  const std::string verb = arguments[0];
  const fs::path program = program_of(verb);
  if (::access(program.c_str(), X_OK) != 0) {
    const auto meant = nearest_word(verb, verbs());
    throw InputError(fmt::format("there is no verb \"{}\" ({}stillground --help lists them)", verb,
                                 meant ? fmt::format("did you mean \"{}\"? ", *meant) : ""));
  }
  // The verb's program parses and answers for everything after the verb.
  const std::string name = program.filename().string();
  std::vector<char*> passed{const_cast<char*>(name.c_str())};
  for (char** a = arguments + 1; *a != nullptr; ++a) passed.push_back(*a);
  passed.push_back(nullptr);
  ::execv(program.c_str(), passed.data());
  throw SystemError(fmt::format("{}: cannot be started: {}", program.string(), std::strerror(errno)));
}

}  // namespace

}  // namespace stillground::app

int main(int argc, char** argv) {
  using namespace stillground;
  const bool verb_given = argc > 1 && argv[1][0] != '-';
  std::vector<std::string> shown_in_help;
  return program::guarded_main(
      verb_given ? 1 : argc, argv,
      {"", "computes the ground temperature around vertical bores, hour by hour for decades", ""},
      [&](CLI::App& app) {
        app.add_option("VERB", shown_in_help, "what to do, and its arguments")->type_name("");
        app.footer([] { return app::overview(); });
      },
      [&] {
        if (!verb_given) throw InputError("a verb is missing\n\n" + app::overview());
        app::hand_over(argv + 1);
      });
}
