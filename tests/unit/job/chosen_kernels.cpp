#include "engine/job/chosen_kernels.hpp"

#include "engine/record/journal/journal.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"

using namespace stillground;
using stillground::testing::Contains;

namespace {

/// What an old processor can run, whatever this one can.
const std::vector<const march::fused::Kernels*> baseline_alone{march::fused::available_kernels().back()};

/// A checkpoint of a run that was marched with `set`.
void leave_checkpoint(const std::filesystem::path& result, const std::string& set) {
  record::Header header;
  header.instruction_set = set;
  record::Journal::create(result, header).checkpoint({});
}

}  // namespace

TEST_CASE("A run takes the best kernels there are, or those asked for, or says which there are") {
  job::Options options;
  CHECK(job::chosen_kernels(options).name == march::fused::best_kernels().name);
  options.instruction_set = "baseline";
  CHECK(job::chosen_kernels(options).name == std::string("baseline"));
  options.instruction_set = "avx512";
  CHECK_THROWS_WITH(job::chosen_kernels(options, baseline_alone),
                    "--instruction-set: this processor cannot run avx512 (it can run: baseline)");
  CHECK_THROWS_AS(job::chosen_kernels(options, baseline_alone), InputError);
}

TEST_CASE("A resumed run takes its checkpoint's kernels, and is refused where the processor lacks them") {
  const testing::Scratch scratch;
  job::Options options;
  options.result = scratch.folder / "a.h5";
  options.resume = true;
  CHECK(job::chosen_kernels(options).name == march::fused::best_kernels().name);  // there is none: said by the journal
  leave_checkpoint(options.result, "baseline");
  CHECK(job::chosen_kernels(options).name == std::string("baseline"));
  leave_checkpoint(options.result, "avx512");
  CHECK_THROWS_WITH(job::chosen_kernels(options, baseline_alone),
                    Contains("a.h5.spool: was begun with the instruction set avx512") && Contains("can run: baseline"));
  options.instruction_set = "baseline";
  CHECK_THROWS_WITH(job::chosen_kernels(options),
                    Contains("begun with avx512") && Contains("--instruction-set avx512"));
}
