#pragma once

/// What a shared library shows of itself; everything else in it is hidden.
#define STILLGROUND_EXPORT __attribute__((visibility("default")))
