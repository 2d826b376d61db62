#include <fstream>
#include <random>

#include "tests/catch.hpp"
#include "tests/unit/config/edited.hpp"

using namespace stillground;

namespace {

/// One random change: a byte, a removed or doubled stretch, a line elsewhere, a strange token.
void mutate(std::string& text, std::mt19937& random) {
  static const std::string tokens[] = {"\t",     ": ", "- ",   "{",      "}",     "[",    "]",  "\"", "'", "&a ", "*a",
                                       "!!str ", "|",  ">",    "~",      "1e999", "nan",  "-1", "0",  "%", "#",   "\n",
                                       "\r",     "\0", "\xff", "\u00b0", "?",     "<<: ", ",",  "(",  "^"};
  const auto pick = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random); };
  if (text.empty()) return;
  const std::size_t at = pick(text.size());
  switch (pick(5)) {
    case 0:
      text[at] = static_cast<char>(pick(256));
      break;
    case 1:
      text.erase(at, 1 + pick(20));
      break;
    case 2:
      text.insert(at, text.substr(pick(text.size()), 1 + pick(40)));
      break;
    case 3:
      text.insert(at, tokens[pick(std::size(tokens))]);
      break;
    default:
      text.resize(at);
      break;
  }
}

}  // namespace

// Fixed seed: the same texts on every machine.
TEST_CASE("A scenario that was changed at random is read or refused, never worse", "[config]") {
  const testing::Scratch scratch;
  const auto site = testing::make_broken({}, scratch.folder);
  const std::string good = testing::slurp(site);
  std::mt19937 random(20270701);
  int refused = 0;
  for (int i = 0; i < 1500; ++i) {
    std::string text = good;
    for (int n = 1 + i % 3; n > 0; --n) mutate(text, random);
    std::ofstream(site, std::ios::binary) << text;
    CAPTURE(i, text);
    try {
      config::read_scenario(site);
    } catch (const InputError& error) {
      ++refused;
      CHECK(std::string(error.what()).size() < 2000);
    }
  }
  CHECK(refused > 750);  // most changes break something
}
