#include <pty.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

struct winsize of_width(int columns) {
  return {.ws_row = 24, .ws_col = static_cast<unsigned short>(columns), .ws_xpixel = 0, .ws_ypixel = 0};
}

/// A run on a terminal of its own.
class Terminal {
 public:
  Terminal(const std::string& scenario, const std::filesystem::path& folder, int columns) {
    const auto size = of_width(columns);
    child_ = ::forkpty(&terminal_, nullptr, nullptr, &size);
    REQUIRE(child_ >= 0);
    if (child_ > 0) return;
    if (::chdir(folder.c_str()) == 0) {
      ::execl(PROGRAM_FOLDER "/stillground", "stillground", "run", scenario.c_str(), static_cast<char*>(nullptr));
    }
    ::_exit(127);
  }
  ~Terminal() {
    ::kill(child_, SIGKILL);
    ::close(terminal_);
    ::waitpid(child_, nullptr, 0);
  }
  Terminal(const Terminal&) = delete;
  Terminal& operator=(const Terminal&) = delete;

  void resize(int columns) const {
    const auto size = of_width(columns);
    REQUIRE(::ioctl(terminal_, TIOCSWINSZ, &size) == 0);
  }

  /// What it shows next; empty when the run has ended.
  std::string read() const {
    std::string text(4096, '\0');
    const auto n = ::read(terminal_, text.data(), text.size());
    text.resize(static_cast<std::size_t>(std::max<ssize_t>(n, 0)));
    return text;
  }

 private:
  int terminal_ = -1;
  pid_t child_ = -1;
};

/// The lengths of the progress lines in what a terminal was sent: each is drawn over the one before.
std::vector<std::size_t> drawn(const std::string& text) {
  const std::string start = "\r\033[K";
  std::vector<std::size_t> lengths;
  for (auto at = text.find(start); at != text.npos; at = text.find(start, at)) {
    at += start.size();
    const std::string line = text.substr(at, text.find_first_of("\r\n", at) - at);
    if (line.find('%') != line.npos) lengths.push_back(line.size());
  }
  return lengths;
}

std::size_t longest(const std::vector<std::size_t>& lengths) {
  REQUIRE(!lengths.empty());
  return *std::max_element(lengths.begin(), lengths.end());
}

/// What a terminal is sent until it has drawn the progress `times` times, and once wider than `wide`.
std::vector<std::size_t> drawn_on(const Terminal& terminal, std::size_t times, std::size_t wide = 0) {
  std::string shown;
  for (std::string more = terminal.read(); !more.empty(); more = terminal.read()) {
    shown += more;
    const auto lengths = drawn(shown);
    if (lengths.size() >= times && longest(lengths) > wide) return lengths;
  }
  FAIL("the run ended before that");
  return {};
}

/// Long enough to be looked at on any machine; ended when that is done.
struct LongPair : PairCase {
  LongPair() { write_variant("long.yaml", "years: 2", "years: 200"); }
};

}  // namespace

TEST_CASE("The progress fits into a terminal of any width") {
  const LongPair pair;
  for (const int columns : {8, 20, 40, 60}) {
    INFO(columns);
    constexpr std::size_t second = 10;  // draws: by then speed and time left are known
    CHECK(longest(drawn_on(Terminal("long.yaml", pair.folder, columns), second)) < static_cast<std::size_t>(columns));
  }
}

TEST_CASE("The progress has speed and time left where there is room") {
  const LongPair pair;
  CHECK(longest(drawn_on(Terminal("long.yaml", pair.folder, 200), 2, 60)) < 200);
}

TEST_CASE("The progress fits again when the terminal has been made narrower") {
  const LongPair pair;
  const Terminal terminal("long.yaml", pair.folder, 100);
  CHECK(longest(drawn_on(terminal, 2)) > 30);
  terminal.resize(30);
  auto after = drawn_on(terminal, 6);
  after.erase(after.begin());  // on its way while the width changed
  CHECK(longest(after) < 30);
}
