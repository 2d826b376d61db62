#include "engine/record/hdf5/handle.hpp"
