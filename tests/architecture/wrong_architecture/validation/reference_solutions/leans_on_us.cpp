#include "engine/base/errors.hpp"
