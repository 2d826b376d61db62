#include "engine/record/read/result.hpp"
