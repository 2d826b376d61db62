#include "engine/config/read.hpp"
