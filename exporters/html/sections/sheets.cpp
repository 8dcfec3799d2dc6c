#include "exporters/html/image.hpp"
#include "exporters/html/sections/section.hpp"
#include "exporters/html/sheet_picture.hpp"
#include "exporters/html/table.hpp"

namespace lamwright::html {
namespace {

Markup sheet_figure(const Told& told, const CutSheet& sheet, std::size_t index) {
  const std::string pointer = "/sheets/" + std::to_string(index);
  const Markup caption =
      words("Sheet ", std::to_string(index + 1), ": ", sheet.board, ", ", told.length(pointer + "/size/0"),
            " × ", told.length(pointer + "/size/1"), ", ", told.entries(pointer + "/pieces"), " pieces, ",
            told.share(pointer + "/yield"), " used");
  return element("figure", words(image(sheet_picture(sheet), "Pieces on a sheet of board", "sheet"),
                                 element("figcaption", caption)));
}

// Equal pieces that follow one another are told once, with their number.
Markup pieces_of(const Told& told, const std::string& bar) {
  const Json& pieces = told.at(bar + "/pieces");
  Markup out;
  for (std::size_t from = 0, to; from < pieces.size(); from = to) {
    for (to = from + 1; to < pieces.size() && pieces[to] == pieces[from];) ++to;
    const std::string piece = bar + "/pieces/" + std::to_string(from);
    out += words(from == 0 ? "" : " + ", to - from > 1 ? std::to_string(to - from) + " × " : "",
                 told.text(piece + "/part"), " ", told.length(piece + "/length"));
  }
  return out;
}

Markup lengths_table(const Told& told) {
  std::vector<std::vector<Markup>> rows;
  for (std::size_t i = 0; i < told.size("/timber"); ++i) {
    const std::string cut = "/timber/" + std::to_string(i);
    for (std::size_t k = 0; k < told.size(cut + "/lengths"); ++k) {
      const std::string bar = cut + "/lengths/" + std::to_string(k);
      rows.push_back({told.text(cut + "/stock"), told.length(bar + "/length"), pieces_of(told, bar),
                      told.length(bar + "/rest")});
    }
  }
  if (rows.empty()) return {};
  return words(element("h3", "Timber"),
               table({{"section"}, {"length", true}, {"cut into"}, {"rest", true}}, rows));
}

}  // namespace

Section sheets_section(const PageInput& page) {
  Markup body;
  const auto& sheets = page.input.supply.sheets;
  for (std::size_t i = 0; i < sheets.size(); ++i) body += sheet_figure(page.told, sheets[i], i);
  body += lengths_table(page.told);
  return {"cutting", "Boards and timber to cut", body};
}

}  // namespace lamwright::html
