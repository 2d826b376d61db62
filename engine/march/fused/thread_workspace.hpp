#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "engine/march/bore_cache.hpp"
#include "engine/march/fused/exchange.hpp"
#include "engine/march/fused/inlet_response.hpp"
#include "engine/march/fused/packed_bore.hpp"
#include "engine/march/fused/span_closure.hpp"
#include "engine/march/state_layout.hpp"
#include "engine/march/stepper.hpp"

namespace stillground::march::fused {

/// A stage of a group once the bore has been eliminated up to its top.
struct PartialStage {
  double* innermost = nullptr;    ///< ring, what Ground::inwards gave
  std::array<double, 2> up = {};  ///< what each pass brings up at inlets of 0 [K]
};

/// A bore's factors, and its response over a span.
struct Bore {
  PackedBore line;
  InletResponse response;  ///< of flowing fluid
};

/// A group within an hour.
struct GroupProgress {
  PartialStage partial;
  GroupHour hour;
};

/// What each thread has for itself.
struct alignas(apart) ThreadWorkspace {
  Workers::Part part;                 ///< its groups
  BoreCache<Bore> bores;              ///< of its groups
  std::vector<GroupProgress> groups;  ///< [own group]
  SpanClosure closure;                ///< of all groups
  HourMeans sums;                     ///< of the field, each thread's the same
  Vector undisturbed;                 ///< [stage of the hour][z]
  Vector outlets;                     ///< [own group][stage of the span]: at the linearisation inlet
  Vector work;                        ///< of a bore, see work_rows; of each own group where stages are left half done
  Vector scratch;                     ///< of a group's ground; of each, likewise
  Vector at_rest;                     ///< block, amplitudes and wall heat of a group that starts from 0
  Vector zeros;                       ///< [z]
  std::vector<const double*> ends;    ///< [stage of the span]: responses that are superposed
};

}  // namespace stillground::march::fused
