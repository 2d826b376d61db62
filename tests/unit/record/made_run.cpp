#include "tests/unit/record/made_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "tests/unit/record/recorded.hpp"

namespace stillground::testing {

namespace {

using namespace stillground::record;

constexpr double gap = std::numeric_limits<double>::quiet_NaN();

/// Between -1 and 1, without order.
double noise(std::size_t i) {
  return std::sin(static_cast<double>(i) * 12.9898 + 4.1414) * std::cos(static_cast<double>(i));
}

std::vector<double> geometric_faces(double first, double ratio, std::size_t cells) {
  std::vector<double> faces(cells + 1);
  for (std::size_t i = 0; i <= cells; ++i) faces[i] = first * std::pow(ratio, static_cast<double>(i));
  return faces;
}

std::size_t active_from(const Header& header) {
  return header.z.size() / 4;
}
std::size_t active_to(const Header& header) {
  return header.z.size() - header.z.size() / 4;
}

void make_grid(Header& header, const MadeSize& size) {
  for (std::size_t k = 0; k <= size.nz; ++k) header.z_faces.push_back(4.0 * static_cast<double>(k * (k + 3)));
  for (std::size_t k = 0; k < size.nz; ++k) {
    header.z.push_back((header.z_faces[k] + header.z_faces[k + 1]) / 2);
    header.conductivity.push_back(2.1 + 0.1 * static_cast<double>(k));
    header.heat_capacity.push_back(2.3e6 - 1e4 * static_cast<double>(k));
  }
  header.r_faces = geometric_faces(0.075, std::pow(4000.0, 1 / static_cast<double>(size.nr)), size.nr);
  for (std::size_t i = 0; i < size.nr; ++i) header.r.push_back(std::sqrt(header.r_faces[i] * header.r_faces[i + 1]));
}

void make_bores(Header& header, const MadeSize& size) {
  header.groups = size.groups;
  for (int b = 0; b < size.bores; ++b) {
    const int own = b == size.bores - 1 ? size.groups - 1 : b % std::max(1, size.groups - 1);
    header.bores.push_back({6.0 * b, 1.5 * b, 1.8, 118.25, 0.075, 3600.0 * 24 * b, own});
  }
  for (int g = 0; g < size.groups; ++g) {
    for (std::size_t k = 0; k < size.nz; ++k) {
      const bool active = k >= active_from(header) && k < active_to(header);
      header.active_fraction.push_back(!active ? 0 : k == active_from(header) ? 0.75 : 1);
    }
    header.grout_storage.push_back(45e3 + 100 * g);
    header.fluid_storage_down.push_back(3.4e3 + 10 * g);
    header.fluid_storage_up.push_back(2.9e3 + 10 * g);
  }
}

Header make_header(const MadeSize& size) {
  Header header;
  header.title = "Invented field, 20 °C in the shade";
  header.scenario_text = "title: Invented field\n# \"quoted\", and a tab\there\n";
  header.engine_version = "0.0.1";
  header.build = "no compiler -O9";
  header.instruction_set = "baseline";
  header.start = size.start;
  header.years = size.years;
  header.step = 1800;
  header.eft_error = {0.0123, 0.0345, 0.0067, 0.0456};
  header.group_error = 0.07;
  header.fields = size.fields;
  header.has_heat_pump = size.heat_pump;
  header.drill_length = 360.15;
  header.fluid_heat_capacity = 3970.5;
  if (size.heat_pump) header.cop_curves = {{"heating", {268.15, 283.15}, {3.1, 4.25}}, {"cooling", {283.15}, {6}}};
  header.limits = {{"eft_min", "eft", true, "hour", 271.15}, {"lft_max", "lft", false, "month", 304.85}};
  header.cautions = {"Trench: shored.", "Frost: heaves \"much\""};
  header.units = UnitSystem::us;
  header.warnings = {"site.yaml:3:4: first, with \"quotes\"", "second: 5 m² of\nground"};
  header.inputs = {{"site.yaml", std::string(64, 'a')}, {"loads.csv", std::string(64, 'b')}};
  header.land = {{-3, -2.5}, {40, -2.5}, {40.25, 30}};
  header.sources = {"grout: bentonite. Somebody (1990), \"table\" 3"};
  make_grid(header, size);
  make_bores(header, size);
  return header;
}

std::vector<Hour> make_hours(const MadeSize& size) {
  std::vector<Hour> hours(static_cast<std::size_t>(size.years) * hours_per_year);
  for (std::size_t i = 0; i < hours.size(); ++i) {
    const double season = std::cos(2 * std::numbers::pi * static_cast<double>(i) / hours_per_year);
    const double load = 1e4 * season + 6e3 * noise(i);
    hours[i] = {283.15 + 8 * season + noise(i), 282.15 + 9 * season, 2.5 + noise(i) / 10, load,
                std::max(0.0, -load),           std::max(0.0, load), std::abs(load) / 4};
    if (!size.heat_pump) {
      hours[i].heating = hours[i].cooling = hours[i].power = 0;
      continue;
    }
    hours[i].hot_water = hours[i].heating / 5;
    hours[i].cooling_direct = hours[i].cooling / 3;
    hours[i].power_hot_water = hours[i].power / 7;
    hours[i].power_cooling = hours[i].power / 2;
  }
  return hours;
}

/// A rise that spreads with time, smooth as a marched one, rounded to 32 bits.
std::vector<float> make_rise(const Header& header, double time, double scale) {
  std::vector<float> rise;
  const double reach = std::sqrt(4e-6 * (time + 1));
  for (int g = 0; g < header.groups; ++g) {
    for (std::size_t k = 0; k < header.z.size(); ++k) {
      for (const double r : header.r) {
        const double shape = std::exp(-r / reach) * (1 + 0.1 * g) * std::sin(0.3 + static_cast<double>(k));
        rise.push_back(static_cast<float>(time > 0 ? scale * 4 * shape : 0));
      }
    }
  }
  return rise;
}

std::vector<double> in_bores(const Header& header, double base, double time) {
  std::vector<double> values;
  for (int g = 0; g < header.groups; ++g) {
    for (std::size_t k = 0; k < header.z.size(); ++k) {
      const bool active = k >= active_from(header) && k < active_to(header);
      values.push_back(active ? base + noise(k + static_cast<std::size_t>(time / 86400)) + 0.1 * g : gap);
    }
  }
  return values;
}

/// As the temperatures at the cells' centres make it.
std::vector<double> fluid_heat(const Header& header, const Snapshot& snapshot) {
  std::vector<double> heat(static_cast<std::size_t>(header.groups), 0.0);
  for (std::size_t g = 0; g < heat.size(); ++g) {
    for (std::size_t k = active_from(header); k < active_to(header); ++k) {
      const std::size_t at = g * header.z.size() + k;
      const double length = header.active_fraction[at] * (header.z_faces[k + 1] - header.z_faces[k]);
      heat[g] += length * (header.fluid_storage_down[g] * (snapshot.fluid_down[at] - 273.15) +
                           header.fluid_storage_up[g] * (snapshot.fluid_up[at] - 273.15));
    }
  }
  return heat;
}

Snapshot make_snapshot(const Header& header, double time) {
  Snapshot snapshot;
  snapshot.time = time;
  snapshot.rise = make_rise(header, time, 1);
  for (const double z : header.z)
    snapshot.undisturbed.push_back(283.55 + z / 50 + noise(static_cast<std::size_t>(time / 86400)));
  snapshot.wall_temperature = in_bores(header, 284, time);
  snapshot.fluid_down = in_bores(header, 279, time);
  snapshot.fluid_up = in_bores(header, 281, time);
  snapshot.grout = in_bores(header, 282, time);
  snapshot.fluid_heat = fluid_heat(header, snapshot);
  return snapshot;
}

std::vector<double> snapshot_days(const MadeSize& size) {
  std::vector<double> days = {0};
  const int all = size.years * days_per_year;
  const bool monthly = size.fields == std::string("monthly");
  for (int day = 1; day <= all; ++day) {
    const bool at = monthly ? plus_days(size.start, day).day == 1 : day % days_per_year == 0;
    if (at || day == all) days.push_back(day);
  }
  return days;
}

void make_fields(MadeRun& run, const MadeSize& size) {
  if (size.fields == std::string("none")) return;
  for (const double day : snapshot_days(size))
    run.snapshots.push_back(make_snapshot(run.header, day * seconds_per_day));
  if (size.fields == std::string("yearly")) {
    for (int y = 0; y < size.years; ++y)
      run.year_means.push_back({make_rise(run.header, (y + 0.5) * seconds_per_year, 1)});
  }
  run.closing.steady_rise = make_rise(run.header, 100 * seconds_per_year, 1.5);
}

/// The stored heat of a year needs snapshots at its two ends; without them it is invented as well.
void make_balances(MadeRun& run, const MadeSize& size) {
  const auto at = [&](double time) {
    return std::find_if(run.snapshots.begin(), run.snapshots.end(), [&](const Snapshot& s) { return s.time == time; });
  };
  for (int y = 0; y < size.years; ++y) {
    const auto from = at(y * seconds_per_year), to = at((y + 1) * seconds_per_year);
    const bool known = from != run.snapshots.end() && to != run.snapshots.end();
    const double stored = known ? stored_between(run.header, *from, *to) : 1e9 + y;
    run.balances.push_back({stored + 3e6 + 1e-3, stored, 2e6 + y, 1e6 - y, 1e-3});
  }
}

}  // namespace

double stored_between(const Header& header, const Snapshot& from, const Snapshot& to) {
  const std::size_t nz = header.z.size(), nr = header.r.size();
  double sum = 0;
  for (const BoreRow& bore : header.bores) {
    const auto g = static_cast<std::size_t>(bore.group);
    for (std::size_t k = 0; k < nz; ++k) {
      const double height = header.z_faces[k + 1] - header.z_faces[k];
      for (std::size_t i = 0; i < nr; ++i) {
        const double ring = std::numbers::pi * (std::pow(header.r_faces[i + 1], 2) - std::pow(header.r_faces[i], 2));
        const std::size_t cell = (g * nz + k) * nr + i;
        sum += header.heat_capacity[k] * ring * height *
               (static_cast<double>(to.rise[cell]) - static_cast<double>(from.rise[cell]));
      }
      const std::size_t at = g * nz + k;
      const double length = header.active_fraction[at] * height;
      if (length == 0) continue;
      sum += length * header.grout_storage[g] * (to.grout[at] - from.grout[at]);
    }
    sum += to.fluid_heat[g] - from.fluid_heat[g];
  }
  return sum;
}

MadeRun made_run(const MadeSize& size) {
  MadeRun run;
  run.header = make_header(size);
  run.hours = make_hours(size);
  make_fields(run, size);
  make_balances(run, size);
  run.closing.warnings = {"found while marching"};
  return run;
}

Journal journal_of(const std::filesystem::path& result, const MadeRun& run) {
  Journal journal = Journal::create(result, run.header);
  journal.append(run.hours);
  for (const Snapshot& snapshot : run.snapshots) journal.append(snapshot);
  for (const YearMean& mean : run.year_means) journal.append(mean);
  for (const YearBalance& balance : run.balances) journal.append(balance);
  journal.checkpoint(std::as_bytes(std::span("end")));
  return journal;
}

void write_made(const std::filesystem::path& result, const MadeRun& run) {
  Journal journal = journal_of(result, run);
  write_result(result, run.header, journal, run.closing);
  journal.discard();
}

}  // namespace stillground::testing
