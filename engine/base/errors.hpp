#pragma once

// The errors and warnings of the engine are those that whoever links it meets.
#include <stillground/errors.hpp>  // IWYU pragma: export
