// Turns the entries that the checks left into the dossier's page and list, or looks whether the list still says them.
#include <fmt/format.h>

#include <exception>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "validation/dossier/dossier.hpp"

using namespace stillground::validation;

namespace {

void write(const std::filesystem::path& file, const std::string& text) {
  std::ofstream out(file);
  out << text;
  out.close();
  if (!out) throw std::runtime_error("cannot write " + file.string());
}

std::string read(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

int look_up(const Dossier& dossier, const std::filesystem::path& list) {
  const auto missing = not_in_list(dossier, read(list));
  for (const std::string& line : missing) fmt::print("not in the dossier's list: {}\n", line);
  if (!missing.empty()) fmt::print("run validation/run and commit validation/dossier.md\n");
  return missing.empty() ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) try {
  const std::vector<std::string> words(argv + 1, argv + argc);
  if (words.size() == 3 && words[0] == "look-up") return look_up(read_dossier(words[1]), words[2]);
  if (words.size() == 4 && words[0] == "make") {
    const Dossier dossier = read_dossier(words[1]);
    write(words[2], page(dossier));
    write(words[3], markdown(dossier));
    for (const Kind kind : {Kind::outside, Kind::self_consistency}) {
      fmt::print("{}: {}\n", heading(kind), in_words(sums(dossier, kind)));
    }
    return 0;
  }
  fmt::print(stderr, "usage: validation_dossier make ENTRIES PAGE.html LIST.md | look-up ENTRIES LIST.md\n");
  return 2;
} catch (const std::exception& error) {
  fmt::print(stderr, "dossier: {}\n", error.what());
  return 3;
}
