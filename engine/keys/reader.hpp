#pragma once

#include <initializer_list>
#include <string>
#include <string_view>

#include "engine/base/where.hpp"

namespace stillground::keys {

/// A section of the scenario, as the file that owns some of its keys reads them: values in SI, judged by their rows'
/// ranges. Every function throws InputError at the value, or at the section where a needed key is absent.
class Reader {
 public:
  virtual ~Reader() = default;

  virtual bool has(std::string_view leaf) const = 0;         ///< given, not merely preset
  virtual double quantity(std::string_view leaf) const = 0;  ///< its row's preset if absent
  virtual std::string word(std::string_view leaf) const = 0;

  /// The one key of `leaves` that is given; refused if there are several or none.
  virtual std::string one_of(std::initializer_list<std::string_view> leaves) const = 0;

  /// Where a key stands, or the section if it is absent.
  virtual Where where(std::string_view leaf) const = 0;

 protected:
  Reader() = default;
  Reader(const Reader&) = default;
  Reader& operator=(const Reader&) = default;
};

}  // namespace stillground::keys
