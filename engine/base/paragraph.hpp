#pragma once

#include <string>

namespace stillground {

/// Columns of a terminal that a UTF-8 text takes: its code points.
std::size_t width(const std::string& utf8);

/// Words of `paragraph` on lines of at most `columns` code points where the words allow it, each but the first after
/// `indent`; no line end at the last one.
std::string wrapped(const std::string& paragraph, std::size_t columns, const std::string& indent = "");

}  // namespace stillground
