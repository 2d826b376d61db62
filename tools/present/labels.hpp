#pragma once

#include <string>
#include <vector>

namespace stillground::present {

/// Width [px] of a text in a common sans-serif face at `size` [px]: the widest line, an estimate on the wide side
/// (DejaVu Sans), since nobody knows which face the reader has.
double text_width(const std::string& utf8, double size);

/// The text if it is at most `room` [px] wide at `size`, else as much of it as fits and an ellipsis.
std::string fitted(const std::string& utf8, double size, double room);

/// The words of a paragraph on lines of at most `room` [px] at `size`, where the words allow it.
std::vector<std::string> lines_within(const std::string& paragraph, double size, double room);

/// Lines of a text separated by '\n'.
std::vector<std::string> lines_of(const std::string& text);

/// A label that wants to be centred at `wish` and needs `height`.
struct Wanted {
  double wish = 0;
  double height = 0;
};

/// Centres of the labels, in the order given, so that none overlap, all stay within [from, to] if they fit, and the sum
/// of the squared shifts is least (isotonic regression by pooling: Ayer et al., Ann. Math. Stat. 26, 1955 [from
/// memory]).
std::vector<double> spread(const std::vector<Wanted>& labels, double from, double to);

}  // namespace stillground::present
