#include "engine/march/arkode/stepper.hpp"
