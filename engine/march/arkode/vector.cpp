#include "engine/march/arkode/vector.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <new>

#include "engine/march/instruction_sets.hpp"
#include "engine/march/state.hpp"

namespace stillground::march {

namespace {

struct Content {
  std::size_t blocks;
  std::size_t block;
  Workers* workers;
  Vector values;
  std::vector<double> partial;  // [block], of sums
};

Content& content(N_Vector v) {
  return *static_cast<Content*>(v->content);
}

/// A vector this short is not worth waking another thread.
constexpr std::size_t worth_threads = 16384;

/// Calls pass(from, to) for each block's stretch of the vector: a thread takes its blocks in one go, since a pass over
/// one of them is hardly longer than the handing out of a task.
template <class Pass>
void passes(N_Vector v, Pass&& pass) {
  Content& c = content(v);
  const auto share = [&](std::size_t part, std::size_t parts) {
    for (std::size_t b = c.blocks * part / parts; b < c.blocks * (part + 1) / parts; ++b) {
      pass(b * c.block, (b + 1) * c.block);
    }
  };
  const auto threads = static_cast<std::size_t>(c.workers->threads());
  if (threads == 1 || c.values.size() < worth_threads) {
    share(0, 1);
  } else {
    c.workers->each(threads, [&](std::size_t thread) { share(thread, threads); });
  }
}

/// Joins value(i) over the vector by `join`, block by block, then the blocks in order.
template <class Value, class Join>
double reduce(N_Vector v, double start, Value&& value, Join&& join) {
  Content& c = content(v);
  passes(v, [&](std::size_t from, std::size_t to) {
    double sum = start;
    for (std::size_t i = from; i < to; ++i) sum = join(sum, value(i));
    c.partial[from / c.block] = sum;
  });
  double total = start;
  for (const double part : c.partial) total = join(total, part);
  return total;
}

/// z = a x + b y; z = sum_j a_j x_j of three, of four; z += a x.
STILLGROUND_CLONED void combine2(std::size_t n, double a, const double* x, double b, const double* y, double* z) {
  for (std::size_t i = 0; i < n; ++i) z[i] = a * x[i] + b * y[i];
}
STILLGROUND_CLONED void combine3(std::size_t n, const double* a, const double* const* x, double* z) {
  for (std::size_t i = 0; i < n; ++i) z[i] = a[0] * x[0][i] + a[1] * x[1][i] + a[2] * x[2][i];
}
STILLGROUND_CLONED void combine4(std::size_t n, const double* a, const double* const* x, double* z) {
  for (std::size_t i = 0; i < n; ++i) z[i] = a[0] * x[0][i] + a[1] * x[1][i] + a[2] * x[2][i] + a[3] * x[3][i];
}
STILLGROUND_CLONED void accumulate(std::size_t n, double a, const double* x, double* z) {
  for (std::size_t i = 0; i < n; ++i) z[i] += a * x[i];
}

N_Vector clone(N_Vector v) {
  const Content& c = content(v);
  try {
    N_Vector w = N_VNewEmpty(v->sunctx);
    if (!w) return nullptr;
    N_VCopyOps(v, w);
    w->content = new Content{c.blocks, c.block, c.workers, Vector(c.values.size(), 0.0), std::vector<double>(c.blocks)};
    return w;
  } catch (const std::bad_alloc&) {
    return nullptr;  // ARKODE reports it as a failed allocation
  }
}

void destroy(N_Vector v) {
  if (!v) return;
  delete static_cast<Content*>(v->content);
  N_VFreeEmpty(v);
}

void space(N_Vector v, sunindextype* reals, sunindextype* integers) {
  *reals = static_cast<sunindextype>(content(v).values.size());
  *integers = 0;
}

sunindextype length(N_Vector v) {
  return static_cast<sunindextype>(content(v).values.size());
}

void linear_sum(double a, N_Vector x, double b, N_Vector y, N_Vector z) {
  passes(z, [&](std::size_t from, std::size_t to) {
    combine2(to - from, a, data(x) + from, b, data(y) + from, data(z) + from);
  });
}

int linear_combination(int count, double* a, N_Vector* x, N_Vector z) {
  passes(z, [&](std::size_t from, std::size_t to) {
    // The target may be the first source (SUNDIALS' rule): whole sums of up to four are formed in one pass.
    const double* source[4];
    const int first = std::min(count, 4);
    for (int i = 0; i < first; ++i) source[i] = data(x[i]) + from;
    double* target = data(z) + from;
    const std::size_t n = to - from;
    if (first == 1) combine2(n, a[0], source[0], 0, source[0], target);
    if (first == 2) combine2(n, a[0], source[0], a[1], source[1], target);
    if (first == 3) combine3(n, a, source, target);
    if (first == 4) combine4(n, a, source, target);
    for (int i = 4; i < count; ++i) accumulate(n, a[i], data(x[i]) + from, target);
  });
  return 0;
}

void fill(double a, N_Vector z) {
  passes(z, [&](std::size_t from, std::size_t to) { std::fill(data(z) + from, data(z) + to, a); });
}

template <class Operation>
void map(N_Vector x, N_Vector z, Operation&& operation) {
  passes(z, [&](std::size_t from, std::size_t to) {
    std::transform(data(x) + from, data(x) + to, data(z) + from, operation);
  });
}

template <class Operation>
void map(N_Vector x, N_Vector y, N_Vector z, Operation&& operation) {
  passes(z, [&](std::size_t from, std::size_t to) {
    std::transform(data(x) + from, data(x) + to, data(y) + from, data(z) + from, operation);
  });
}

void scale(double a, N_Vector x, N_Vector z) {
  if (a == 1) {
    if (x != z)
      passes(z, [&](std::size_t from, std::size_t to) { std::copy(data(x) + from, data(x) + to, data(z) + from); });
    return;
  }
  map(x, z, [a](double v) { return a * v; });
}

double wrms(N_Vector x, N_Vector w) {
  const double sum = reduce(
      x, 0, [&](std::size_t i) { return (data(x)[i] * data(w)[i]) * (data(x)[i] * data(w)[i]); },
      [](double p, double q) { return p + q; });
  return std::sqrt(sum / static_cast<double>(content(x).values.size()));
}

double largest(N_Vector x) {
  return reduce(
      x, 0, [&](std::size_t i) { return std::abs(data(x)[i]); }, [](double p, double q) { return std::max(p, q); });
}

double least(N_Vector x) {
  return reduce(
      x, std::numeric_limits<double>::infinity(), [&](std::size_t i) { return data(x)[i]; },
      [](double p, double q) { return std::min(p, q); });
}

double dot(N_Vector x, N_Vector y) {
  return reduce(
      x, 0, [&](std::size_t i) { return data(x)[i] * data(y)[i]; }, [](double p, double q) { return p + q; });
}

}  // namespace

double* data(N_Vector v) {
  return content(v).values.data();
}

N_Vector make_vector(std::size_t blocks, std::size_t block, Workers& workers, SUNContext context) {
  auto made = std::make_unique<Content>(
      Content{blocks, block, &workers, Vector(blocks * block, 0.0), std::vector<double>(blocks)});
  N_Vector v = N_VNewEmpty(context);
  if (!v) throw std::bad_alloc();
  v->content = made.release();
  v->ops->nvgetvectorid = [](N_Vector) { return SUNDIALS_NVEC_CUSTOM; };
  v->ops->nvclone = clone;
  v->ops->nvdestroy = destroy;
  v->ops->nvspace = space;
  v->ops->nvgetlength = length;
  v->ops->nvgetarraypointer = data;
  v->ops->nvlinearsum = linear_sum;
  v->ops->nvlinearcombination = linear_combination;
  v->ops->nvconst = fill;
  v->ops->nvscale = scale;
  v->ops->nvprod = [](N_Vector x, N_Vector y, N_Vector z) { map(x, y, z, [](double p, double q) { return p * q; }); };
  v->ops->nvdiv = [](N_Vector x, N_Vector y, N_Vector z) { map(x, y, z, [](double p, double q) { return p / q; }); };
  v->ops->nvabs = [](N_Vector x, N_Vector z) { map(x, z, [](double p) { return std::abs(p); }); };
  v->ops->nvinv = [](N_Vector x, N_Vector z) { map(x, z, [](double p) { return 1 / p; }); };
  v->ops->nvaddconst = [](N_Vector x, double b, N_Vector z) { map(x, z, [b](double p) { return p + b; }); };
  v->ops->nvdotprod = dot;
  v->ops->nvmaxnorm = largest;
  v->ops->nvwrmsnorm = wrms;
  v->ops->nvmin = least;
  return v;
}

}  // namespace stillground::march
