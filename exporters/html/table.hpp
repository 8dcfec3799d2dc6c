// Tables of a page.
#pragma once
#include <vector>

#include "exporters/html/markup.hpp"

namespace lamwright::html {

struct Column {
  Markup title;
  bool figures = false;  // set flush right
};

// Scrolls sideways where the screen is too narrow. Rows have as many cells as there are columns. Empty
// without rows.
Markup table(const std::vector<Column>& columns, const std::vector<std::vector<Markup>>& rows);

// Terms and what they are, in pairs.
struct Fact {
  Markup term;
  Markup told;
};
Markup facts(const std::vector<Fact>& all);

}  // namespace lamwright::html
