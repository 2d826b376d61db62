#include "engine/program/program.hpp"

#include <fmt/format.h>
#include <spdlog/sinks/stdout_color_sinks.h>
#include <spdlog/spdlog.h>

#include <cstdio>
#include <new>
#include <string_view>

#include <stillground/version.hpp>
#include "engine/base/pending_file.hpp"
#include "engine/program/options_list.hpp"
#include "engine/program/streams.hpp"

namespace stillground::program {

namespace {

constexpr int wrong_input = 2;
constexpr int failed = 3;

std::string name_of(const Info& info) {
  return info.verb.empty() ? "stillground" : "stillground " + info.verb;
}

/// Errors never go through the log's levels: they are the program's last word.
int last_word(int status, const std::string& line) {
  fmt::print(stderr, "{}\n", line);
  return status;
}

void open_log(const std::string& name) {
  auto log = spdlog::stderr_color_mt(name);
  log->set_pattern("%n: %v");
  log->flush_on(spdlog::level::info);
  spdlog::set_default_logger(log);
}

int report(const std::string& name, const Error& error) {
  const auto* input = dynamic_cast<const InputError*>(&error);
  const bool placed = input != nullptr && !input->place().file.empty();
  return last_word(error.exit_status(), placed ? error.what() : fmt::format("{}: {}", name, error.what()));
}

int parse_and_work(int argc, char** argv, const Info& info, const std::function<void(CLI::App&)>& declare,
                   const std::function<void()>& work) {
  const std::string name = name_of(info);
  CLI::App app(info.purpose, name);
  app.set_help_flag("-h,--help", "print this and exit");
  app.set_version_flag("--version", fmt::format("{} {}\n{}", name, version(), build()),
                       "print version and build, and exit");
  app.footer(info.closing);
  declare(app);
  if (argc == 2 && std::string_view(argv[1]) == "--options") {
    fmt::print("{}", options_list(app));
    return 0;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::CallForHelp&) {
    fmt::print("{}", app.help());
    return 0;
  } catch (const CLI::CallForVersion&) {
    fmt::print("{}\n", app.version());
    return 0;
  } catch (const CLI::ParseError& error) {
    return last_word(wrong_input, fmt::format("{}: {} (see {} --help)", name, error.what(), name));
  }
  work();
  return 0;
}

/// What `body` did, as a status; says the reason where that is not 0.
int caught(const std::string& name, const std::function<int()>& body) {
  try {
    return body();
  } catch (const Error& error) {
    return report(name, error);
  } catch (const std::bad_alloc&) {
    return last_word(failed, fmt::format("{}: out of memory", name));
  } catch (const std::exception& error) {
    if (std::ferror(stdout)) return failed;  // fmt and iostreams throw when they cannot write; said by finish_output
    return last_word(failed, fmt::format("{}: internal error, please report it: {}", name, error.what()));
  }
}

}  // namespace

int guarded_main(int argc, char** argv, const Info& info, const std::function<void(CLI::App&)>& declare,
                 const std::function<void()>& work) {
  prepare_streams();
  const std::string name = name_of(info);
  const int status = caught(name, [&] {
    if (argc == 2 && std::string_view(argv[1]) == "--purpose") {
      fmt::print("{}\n", info.purpose);
      return 0;
    }
    open_log(name);
    return parse_and_work(argc, argv, info, declare, work);
  });
  const char* reason = "";
  switch (finish_output(reason)) {
    case Output::delivered:
      return status;
    case Output::reader_gone:
      return status == 0 ? failed : status;
    case Output::failed:
      break;
  }
  return last_word(status == 0 ? failed : status, fmt::format("{}: standard output: {}", name, reason));
}

void warn(const Warning& warning) {
  const std::string place = warning.place.text();
  const std::string start = place.empty() ? spdlog::default_logger()->name() : place;
  const std::string range = warning.range.empty() ? "" : fmt::format(" ({})", warning.range);
  fmt::print(stderr, "{}: warning: {}{}\n", start, warning.text, range);
}

void deliver(const std::filesystem::path& target, const std::string& text) {
  if (target == "-") {
    fmt::print("{}", text);
  } else {
    write_whole(target, text);
  }
}

void add_json(CLI::App& app, bool& json) {
  app.add_flag("--json", json, "print one JSON object instead of tables");
}

void add_units(CLI::App& app, std::optional<UnitSystem>& units) {
  const auto wrong = [](const std::string& word) {
    return unit_system(word) ? std::string() : fmt::format("\"{}\" is neither si nor us", word);
  };
  app.add_option_function<std::string>(
         "--units", [&units](const std::string& word) { units = unit_system(word); },
         "show figures in these units, whatever the scenario asks for")
      ->type_name("si|us")
      ->check(CLI::Validator(wrong, ""));
}

void add_threads(CLI::App& app, int& threads) {
  app.add_option("--threads", threads, "threads to compute with; 0 takes as many as the machine has")
      ->check(CLI::Range(0, 1024).description(""))
      ->type_name("N");
}

}  // namespace stillground::program
