#include "engine/screen/estimate.hpp"
