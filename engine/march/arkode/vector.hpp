#pragma once

#include <sundials/sundials_nvector.h>

#include <cstddef>

#include "engine/march/workers.hpp"

namespace stillground::march {

/// An N_Vector over the field's blocks, with operations of our own: the packaged library's are compiled without
/// optimisation and one pass at a time. Passes run block by block on the workers; sums are formed in the order of the
/// blocks, so their bits do not depend on the threads. Owns its memory (zero at first); N_VDestroy frees it. `workers`
/// must outlive the vector and its clones. Throws std::bad_alloc.
N_Vector make_vector(std::size_t blocks, std::size_t block, Workers& workers, SUNContext context);

/// The vector's numbers.
double* data(N_Vector v);

}  // namespace stillground::march
