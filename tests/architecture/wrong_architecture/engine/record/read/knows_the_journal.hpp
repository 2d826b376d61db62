#include "engine/record/journal/journal.hpp"
