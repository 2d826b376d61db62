#include <fmt/format.h>
#include <string>
#include <stillground/errors.hpp>

#include "engine/base/errors.hpp"
