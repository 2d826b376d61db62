#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/calendar.hpp"
#include "engine/base/where.hpp"
#include "engine/config/keys.hpp"
#include "engine/config/tree.hpp"
#include "engine/keys/reader.hpp"

namespace stillground::config {

/// A map of the scenario as the table of keys sees it. Its shape has been checked; values are read, judged by their
/// row's range and turned to SI here. Every function throws InputError at the value, or at the map where a needed key
/// is absent.
class Section final : public keys::Reader {
 public:
  /// `pattern` is the map's path in the table, `path` in messages, `place` where its absence is noted.
  Section(const Node& map, std::string pattern, std::string path, Place place);

  /// The same map with values of `entry`, a map of the same kind, where it has none itself.
  Section over(const Node& entry) const;

  /// True if the map has the key itself.
  bool has(std::string_view leaf) const override;

  double quantity(std::string_view leaf) const override;  ///< its row's preset if absent
  std::optional<double> optional_quantity(std::string_view leaf) const;
  double number(std::string_view leaf) const;     ///< its row's preset if absent
  int whole(std::string_view leaf) const;         ///< the same
  std::string text(std::string_view leaf) const;  ///< one line, not empty
  std::optional<std::string> optional_text(std::string_view leaf) const;
  std::string word(std::string_view leaf) const override;  ///< its row's preset if absent
  Date date(std::string_view leaf) const;
  Section section(std::string_view leaf) const;
  std::optional<Section> optional_section(std::string_view leaf) const;
  const Node& node(std::string_view leaf) const;  ///< as it stands in the file

  /// The one key of `leaves` that is given; refused if there are several or none.
  std::string one_of(std::initializer_list<std::string_view> leaves) const override;

  /// Refuses `leaf` if it is given.
  void forbid(std::string_view leaf, const std::string& why) const;

  /// Where a key stands, or the map if it is absent.
  Where where(std::string_view leaf) const override;
  Where where() const { return {place_, path_}; }
  const Key& row(std::string_view leaf) const;

 private:
  const Entry* find(std::string_view leaf) const;
  const Entry& need(std::string_view leaf) const;
  std::string text_or_preset(std::string_view leaf) const;

  const Node* map_;
  const Node* under_ = nullptr;
  std::string pattern_;
  std::string path_;
  Place place_;
};

/// Refuses an SI value outside its row's range. `shown` is the value as it was written.
void check_range(double value, std::string_view shown, const Key& row, const Where& where);

/// A finite number without a unit; InputError otherwise.
double plain_number(std::string_view text, const Where& where, std::string_view example);

}  // namespace stillground::config
