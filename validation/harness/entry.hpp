#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// An entry of the dossier as data: what is claimed, against what, and how it went.
namespace stillground::validation {

/// The page's sections, in their order.
enum class Topic { fluid, bore, ground, field, march, estimate, practice };

/// Where the expected value comes from.
enum class Origin {
  published,  ///< a table or a figure that was printed
  computed,   ///< from a published formula
  library,    ///< by a general-purpose library
  practice,   ///< common practice, no source
  memory,     ///< recalled
  engine      ///< another figure of the engine: finer, by another of its methods, or its own books
};

/// What a comparison can show: that the engine is right, or that two of its figures agree.
enum class Kind { outside, self_consistency };
constexpr Kind kind(Origin origin) {
  return origin == Origin::engine ? Kind::self_consistency : Kind::outside;
}

/// An origin that somebody has stated: without one no heading compiles.
class StatedOrigin {
 public:
  StatedOrigin(Origin origin) : origin_(origin) {}
  operator Origin() const { return origin_; }

 private:
  Origin origin_;
};

struct Heading {
  std::string id;     ///< small letters, digits and hyphens; names the entry and stays
  std::string claim;  ///< one sentence
  StatedOrigin origin;
  std::string source;     ///< author, year, equation; the file that holds the figures; of the engine: which figure
  std::string setup;      ///< what is computed, of what, between which bounds
  std::string tolerance;  ///< why just that tolerance
};

/// A miss that is known, with its reason.
struct KnownMiss {
  double bound = 0;  ///< in the unit of `allowed`
  std::string reason;
};

/// One comparison.
struct Row {
  std::string at;
  double reference = 0;
  double ours = 0;
  double miss = 0;     ///< signed, relative or in the value's own unit
  double allowed = 0;  ///< of |miss|
  bool is_relative = false;
  std::optional<std::pair<double, double>> range;  ///< instead of a reference: any value between is right
  std::optional<KnownMiss> known;

  /// Within what is allowed, or just as far off as is known. False for NaN.
  bool held() const;
};

/// Points of one curve, in the plot's units.
struct Curve {
  std::string label;
  std::vector<std::pair<double, double>> points;
  bool is_reference = false;  ///< drawn as marks, ours as lines
};

struct Plot {
  std::string title;
  std::string x;  ///< what it is, with its unit
  std::string y;
  bool log_x = false;
  bool log_y = false;
  std::vector<Curve> curves;
};

struct Entry {
  Heading heading;
  std::vector<Row> rows;
  std::vector<Plot> plots;
};

/// How a claim went.
struct Verdict {
  std::size_t rows = 0;
  std::size_t missed = 0;
  std::size_t known = 0;
  double worst = 0;  ///< largest |miss| over what is allowed, known misses left out

  bool held() const { return rows > 0 && missed == 0; }
};
Verdict verdict(const Entry& entry);

const char* title(Topic topic);
const char* mark(Origin origin);  ///< as the page shows it

/// The entries of one check, kept between the check and the page as JSON.
struct Entries {
  Topic topic = Topic::ground;
  std::vector<Entry> entries;
};
void write_entries(const std::filesystem::path& file, const Entries& entries);
Entries read_entries(const std::filesystem::path& file);  ///< throws std::runtime_error

}  // namespace stillground::validation
