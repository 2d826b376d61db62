#include <algorithm>

#include "engine/record/write/contents.hpp"

namespace stillground::record {

namespace {

/// Rows of one variable, gathered until they fill its chunks, so that every chunk is packed once and never read back.
template <class T>
class Column {
 public:
  Column(Draft& draft, const schema::Variable& variable)
      : dataset_(draft.define(variable)),
        offset_(variable.unit == "degC" ? static_cast<T>(schema::zero_celsius) : T{0}) {
    const hdf5::Shape chunk = dataset_.chunk();
    rows_at_once_ = chunk.empty() ? 1 : chunk[0];
  }

  void add(const std::vector<T>& row) {
    std::transform(row.begin(), row.end(), std::back_inserter(pending_), [&](T value) { return value - offset_; });
    if (++rows_ == rows_at_once_) flush();
  }

  void flush() {
    if (rows_ > 0) dataset_.write_rows(first_, rows_, std::span<const T>(pending_));
    first_ += rows_;
    rows_ = 0;
    pending_.clear();
  }

 private:
  hdf5::Dataset dataset_;
  T offset_;
  hsize_t rows_at_once_ = 1, first_ = 0, rows_ = 0;
  std::vector<T> pending_;
};

void put_snapshots(Draft& draft, const Spool& spool) {
  Column<double> time(draft, schema::snapshot);
  Column<float> rise(draft, schema::ground_rise);
  Column<double> undisturbed(draft, schema::undisturbed);
  Column<double> wall(draft, schema::wall_temperature);
  Column<double> down(draft, schema::fluid_down);
  Column<double> up(draft, schema::fluid_up);
  Column<double> grout(draft, schema::grout_temperature);
  for (std::size_t s = 0; s < spool.snapshot_count(); ++s) {
    const Snapshot snapshot = spool.snapshot(s);
    time.add({snapshot.time / seconds_per_hour});
    rise.add(snapshot.rise);
    undisturbed.add(snapshot.undisturbed);
    wall.add(snapshot.wall_temperature);
    down.add(snapshot.fluid_down);
    up.add(snapshot.fluid_up);
    grout.add(snapshot.grout);
  }
  rise.flush();
  for (Column<double>* column : {&time, &undisturbed, &wall, &down, &up, &grout}) column->flush();
}

void put_year_means(Draft& draft, const Spool& spool) {
  Column<float> rise(draft, schema::ground_rise_year_mean);
  for (std::size_t y = 0; y < spool.year_mean_count(); ++y) rise.add(spool.year_mean(y).rise);
  rise.flush();
}

}  // namespace

void put_fields(Draft& draft, const Spool& spool, const Closing& closing) {
  if (spool.snapshot_count() > 0) put_snapshots(draft, spool);
  if (spool.year_mean_count() > 0) put_year_means(draft, spool);
  if (!closing.steady_rise.empty()) draft.put(schema::ground_rise_steady, closing.steady_rise);
}

}  // namespace stillground::record
