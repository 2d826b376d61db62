#include "engine/loop/closure.hpp"
