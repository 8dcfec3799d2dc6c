#include "exporters/html/table.hpp"

#include "shared/error.hpp"

namespace lamwright::html {
namespace {

constexpr const char* kFigures = "class=\"figures\"";

Markup cell(const char* name, const Column& column, const Markup& content) {
  return element(name, content, column.figures ? kFigures : "");
}

}  // namespace

Markup table(const std::vector<Column>& columns, const std::vector<std::vector<Markup>>& rows) {
  if (rows.empty()) return {};
  Markup head, body;
  for (const Column& column : columns) head += cell("th", column, column.title);
  for (const auto& row : rows) {
    ensure(row.size() == columns.size(), "a table's row has as many cells as there are columns");
    Markup cells;
    for (std::size_t i = 0; i < row.size(); ++i) cells += cell("td", columns[i], row[i]);
    body += element("tr", cells);
  }
  const Markup whole = words(element("thead", element("tr", head)), element("tbody", body));
  return element("div", element("table", whole), "class=\"wide\"");
}

Markup facts(const std::vector<Fact>& all) {
  Markup out;
  for (const Fact& fact : all)
    out += element("div", words(element("dt", fact.term), element("dd", fact.told)));
  return element("dl", out);
}

}  // namespace lamwright::html
