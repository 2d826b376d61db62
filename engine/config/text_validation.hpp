#pragma once

#include <string>
#include <string_view>

namespace stillground::config {

/// Refuses what is not plain UTF-8 text: other encodings, binary files, control characters. InputError with line and
/// column in `file`.
void check_plain_text(std::string_view text, const std::string& file);

/// Refuses in a YAML text what the parser would pass over in silence or blame on another line: tabs that indent, `%`
/// directives. To be called on plain text.
void check_yaml_lines(std::string_view text, const std::string& file);

/// The text without a byte-order mark.
std::string_view without_mark(std::string_view text);

}  // namespace stillground::config
