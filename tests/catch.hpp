#pragma once

/// The one place that names the headers of the test framework: Catch2 2 (Debian 12, one header) or 3 (Debian 13).
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_approx.hpp>
#include <catch2/catch_message.hpp>
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/matchers/catch_matchers.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif

#include <string>

/// Matchers of text, under names that both know.
namespace stillground::testing {

using Catch::Matchers::EndsWith;
using Catch::Matchers::Equals;
using Catch::Matchers::StartsWith;

/// Text that has `part` in it.
inline auto Contains(const std::string& part) {
#if __has_include(<catch2/catch_all.hpp>)
  return Catch::Matchers::ContainsSubstring(part);
#else
  return Catch::Matchers::Contains(part);
#endif
}

}  // namespace stillground::testing
