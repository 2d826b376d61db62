#include "engine/march/stepper.hpp"
