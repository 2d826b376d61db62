#pragma once

#include <string>

namespace stillground::present {

/// A page of its own: no network, one column that fits a telephone, and A4 or Letter when printed. `title` is plain
/// text, `body` is HTML whose texts have gone through xml_text; `script` may be empty.
std::string page(const std::string& title, const std::string& body, const std::string& script = {});

}  // namespace stillground::present
