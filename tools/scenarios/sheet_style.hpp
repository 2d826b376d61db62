#pragma once

#include <string>

namespace stillground::scenarios {

/// The sheet's look: one column on a phone, figures beside what they are on anything wider; on paper black on white,
/// with room for handwriting and no row parted by a page's end.
std::string sheet_style();

}  // namespace stillground::scenarios
