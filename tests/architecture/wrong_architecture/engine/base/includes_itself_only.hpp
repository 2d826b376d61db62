#include "engine/base/upward.hpp"
#include <vector>
