#include "tools/present/canvas.hpp"
#include "tools/present/labels.hpp"
#include "tools/present/palette.hpp"

namespace stillground::present {

namespace {

constexpr double size = 16;
constexpr double line = 22;
constexpr double margin = 20;  ///< at the left and the right
constexpr double above = 12, below = 10;

std::vector<std::string> broken(const std::vector<std::string>& footnotes, double width) {
  std::vector<std::string> lines;
  for (const std::string& footnote : footnotes) {
    for (const std::string& part : lines_within(footnote, size, width - 2 * margin)) lines.push_back(part);
  }
  return lines;
}

}  // namespace

double footnotes_height(const std::vector<std::string>& footnotes, double width) {
  if (footnotes.empty()) return 0;
  return above + line * static_cast<double>(broken(footnotes, width).size()) + below;
}

void draw_footnotes(Canvas& canvas, const std::vector<std::string>& footnotes, double top, double width) {
  if (footnotes.empty()) return;
  canvas.line({margin, top}, {width - margin, top}, {grid_ink, 1, ""});
  double y = top + above + size / 2;
  for (const std::string& text : broken(footnotes, width)) {
    canvas.text({margin, y}, fitted(text, size, width - 2 * margin), {size, quiet_ink, "start", false});
    y += line;
  }
}

}  // namespace stillground::present
