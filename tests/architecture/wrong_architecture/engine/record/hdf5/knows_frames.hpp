#include "engine/record/frames.hpp"
