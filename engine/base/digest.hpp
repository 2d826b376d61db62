#pragma once

#include <string>
#include <string_view>

namespace stillground {

/// SHA-256 of the bytes, as 64 lower-case hexadecimal digits. Source: FIPS 180-4 (2015), section 6.2.
std::string sha256(std::string_view bytes);

}  // namespace stillground
