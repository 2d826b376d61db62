#pragma once

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// The broken scenarios of expected.tsv, made on the spot from one good scenario so that each shows its one fault.
///
/// A row holds: the case's name, its edits parted by " ;; ", and the regular expression that the error must contain.
///   site OLD => NEW    replaces the only OLD in good.yaml
///   loads N => TEXT    replaces line N of the loads file (line 1 is a comment, 2 the heads, 3 the first hour)
///   loads N            removes that line
///   loads + TEXT       adds a line
///   file NAME = TEXT   writes a file; for site.yaml in place of the good one
///   take NAME          the scenario is the file of that name in this folder
///   folder NAME        makes a folder; for site.yaml in place of the good one
///   none NAME          removes the file
/// with \n, \t, \r, \\ and \xHH in OLD, NEW and TEXT.
namespace stillground::testing {

namespace fs = std::filesystem;

struct BrokenCase {
  std::string name;
  std::vector<std::string> edits;
  std::string expected;
};

inline fs::path broken_folder() {
  return fs::path(PROJECT_FOLDER) / "tests/cli/broken";
}

inline std::string slurp(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

inline std::vector<std::string> parted(const std::string& text, const std::string& by) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  for (std::size_t at = text.find(by); at != text.npos; at = text.find(by, from)) {
    parts.push_back(text.substr(from, at - from));
    from = at + by.size();
  }
  parts.push_back(text.substr(from));
  return parts;
}

inline std::vector<BrokenCase> broken_cases() {
  std::vector<BrokenCase> cases;
  for (const std::string& line : parted(slurp(broken_folder() / "expected.tsv"), "\n")) {
    if (line.empty() || line[0] == '#') continue;
    const auto cells = parted(line, "\t");
    if (cells.size() != 3) throw std::runtime_error("expected.tsv: three cells in: " + line);
    cases.push_back({cells[0], parted(cells[1], " ;; "), cells[2]});
  }
  return cases;
}

inline std::string unescaped(const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\\') {
      result += text[i];
      continue;
    }
    const char kind = text.at(++i);
    if (kind == 'x') {
      result += static_cast<char>(std::stoi(text.substr(i + 1, 2), nullptr, 16));
      i += 2;
    } else {
      result += kind == 'n' ? '\n' : kind == 't' ? '\t' : kind == 'r' ? '\r' : kind;
    }
  }
  return result;
}

/// An invented load file of one year: a comment, the heads, 8760 rows.
inline std::vector<std::string> good_loads() {
  std::vector<std::string> lines = {"# invented", "heating_kw [kW],cooling_kw [kW]"};
  for (int hour = 0; hour < 8760; ++hour) {
    const bool winter = hour < 2500 || hour > 7000;
    lines.push_back(fmt::format("{},{}", winter ? 11.5 - hour % 24 * 0.25 : 0, winter ? 0 : hour % 24 * 0.5));
  }
  return lines;
}

/// What the edits of one case change.
struct BrokenFiles {
  fs::path folder;
  std::string site;
  bool site_is_good = true;
  std::vector<std::string> loads = good_loads();

  void edit(const std::string& text) {
    std::istringstream words(text);
    std::string verb, name;
    words >> verb >> name;
    const std::size_t rest = verb.size() + 1;
    if (verb == "site") return edit_site(text.substr(rest));
    if (verb == "loads") return edit_loads(name, text.substr(rest));
    if (verb == "none") return drop(name);
    if (name == "site.yaml") site_is_good = false;
    if (verb == "take") {
      fs::copy_file(broken_folder() / name, folder / "site.yaml");
      site_is_good = false;
    } else if (verb == "folder") {
      fs::create_directory(folder / name);
    } else if (verb == "file") {
      std::ofstream(folder / name, std::ios::binary) << unescaped(text.substr(text.find(" = ") + 3));
    } else {
      throw std::runtime_error("unknown edit: " + text);
    }
  }

  void edit_site(const std::string& text) {
    const auto sides = parted(text, " => ");
    const std::string from = unescaped(sides.at(0));
    const std::size_t at = site.find(from);
    if (at == site.npos || site.find(from, at + 1) != site.npos) throw std::runtime_error("not found once: " + from);
    site.replace(at, from.size(), unescaped(sides.at(1)));
  }

  void edit_loads(const std::string& number, const std::string& text) {
    if (number == "+") {
      loads.push_back(unescaped(text.substr(2)));
      return;
    }
    const auto line = std::stoul(number) - 1;
    const auto sides = parted(text, " => ");
    if (sides.size() == 1) {
      loads.erase(loads.begin() + static_cast<std::ptrdiff_t>(line));
    } else {
      loads.at(line) = unescaped(sides.at(1));
    }
  }

  void drop(const std::string& name) {
    if (name == "site.yaml") site_is_good = false;
    if (name == "loads.csv") loads.clear();
  }
};

/// Makes the case's files in an empty folder and returns the scenario.
inline fs::path make_broken(const BrokenCase& broken, const fs::path& folder) {
  BrokenFiles files{folder, slurp(broken_folder() / "good.yaml")};
  for (const std::string& edit : broken.edits) files.edit(edit);
  if (files.site_is_good) std::ofstream(folder / "site.yaml", std::ios::binary) << files.site;
  if (!files.loads.empty() && !fs::exists(folder / "loads.csv")) {
    std::ofstream out(folder / "loads.csv", std::ios::binary);
    for (const std::string& line : files.loads) out << line << '\n';
  }
  return folder / "site.yaml";
}

}  // namespace stillground::testing
