#include "engine/program/progress_line.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <array>

namespace stillground::program {

namespace {

constexpr std::size_t widest_bar = 24, narrowest_bar = 8;

std::string bar_text(double part, std::size_t width) {
  const auto full = static_cast<std::size_t>(std::clamp(part, 0.0, 1.0) * static_cast<double>(width));
  return "[" + std::string(full, '#') + std::string(width - full, '.') + "]";
}

std::string joined(const std::string& percent, std::initializer_list<std::string> others) {
  std::string line = percent;
  for (const std::string& other : others) line += other.empty() ? "" : "  " + other;
  return line;
}

}  // namespace

std::string progress_line(const ProgressTexts& texts, int columns) {
  const auto room = static_cast<std::size_t>(std::max(columns - 1, 0));
  const std::string percent = fmt::format("{:3.0f} %", 100 * texts.part);
  const std::array<std::string, 4> lines{joined(percent, {texts.done, texts.speed, texts.left}),
                                         joined(percent, {texts.done, texts.left}), joined(percent, {texts.done}),
                                         percent};
  for (const std::string& line : lines) {
    constexpr std::size_t frame = 3;  // the brackets, and a space behind them
    if (line.size() + frame + narrowest_bar > room) continue;
    return bar_text(texts.part, std::min(room - frame - line.size(), widest_bar)) + " " + line;
  }
  for (const std::string& line : lines) {
    if (line.size() <= room) return line;
  }
  return percent.substr(0, room);
}

int terminal_columns() {
  struct winsize size {};
  return ::ioctl(STDERR_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0 ? size.ws_col : 80;
}

}  // namespace stillground::program
