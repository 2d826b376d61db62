#include "engine/job/run.hpp"
