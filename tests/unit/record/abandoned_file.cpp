#include <filesystem>
#include <optional>
#include <vector>

#include "engine/record/hdf5/dataset.hpp"
#include "engine/record/hdf5/file.hpp"
#include "tests/catch.hpp"
#include "tests/unit/base/scratch.hpp"
#include "tests/unit/record/file_size_limit.hpp"

using namespace stillground::record;
using namespace stillground::testing;

TEST_CASE("A file that is given up is closed, and nothing more of it is written", "[record][result]") {
  const Scratch scratch;
  const auto path = scratch.folder / "a.h5";
  const std::vector<double> values(100'000, 1.5);
  std::optional<hdf5::File> file = hdf5::File::create(path);
  {
    const FileSizeLimit limit(4096);
    hdf5::Dataset dataset = hdf5::Dataset::create<double>(*file, "x", {values.size()}, {});
    CHECK_THROWS_AS(dataset.write(std::span<const double>(values)), hdf5::Failure);
  }
  const auto size = std::filesystem::file_size(path);
  file.reset();  // the disk is no longer full: a plain close would write the rest
  CHECK(std::filesystem::file_size(path) == size);
  CHECK(H5Fget_obj_count(static_cast<hid_t>(H5F_OBJ_ALL), H5F_OBJ_ALL) == 0);
}

TEST_CASE("A file that was closed holds what was written", "[record][result]") {
  const Scratch scratch;
  const std::vector<double> values = {1, 2, 3};
  hdf5::File file = hdf5::File::create(scratch.folder / "a.h5");
  hdf5::Dataset::create<double>(file, "x", {3}, {}).write(std::span<const double>(values));
  file.close();
  const hdf5::File again = hdf5::File::open(scratch.folder / "a.h5");
  CHECK(hdf5::Dataset::open(again, "x").read<double>() == values);
}
