#pragma once

namespace stillground::program {

/// Makes standard streams that the caller has closed fail cleanly (otherwise the next file opened would take their
/// number and be written into), and a broken pipe an error instead of a signal.
void prepare_streams();

/// How standard output fared.
enum class Output { delivered, reader_gone, failed };

/// Flushes standard output and tells how that went. `reason` holds the system's word where it failed.
Output finish_output(const char*& reason);

}  // namespace stillground::program
