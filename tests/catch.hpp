#pragma once

/// The one place that names the header of the test framework, Catch2.
#include <catch2/catch.hpp>
