#include "kernel/nest/sheet_row.hpp"

#include <cmath>

namespace lamwright::nesting {

int SheetRow::sheet(GridPoint at) const {
  const double from_first = static_cast<double>(at.x) + board_.x() / 2;
  return std::clamp(static_cast<int>(std::floor(from_first / static_cast<double>(pitch_))), 0, count_ - 1);
}

Room SheetRow::room(const Vec2& size, int sheet) const {
  const double end = sheet + 1 == count_ ? end_ : board_.x();
  return {static_cast<Grid>(std::floor(end - size.x() + kFits)),
          static_cast<Grid>(std::floor(board_.y() - size.y() + kFits))};
}

GridPoint SheetRow::clamped(const Vec2& size, GridPoint at) const {
  const int on = sheet(at);
  const Room r = room(size, on);
  return {left(on) + std::clamp<Grid>(at.x - left(on), 0, std::max<Grid>(r.right, 0)),
          std::clamp<Grid>(at.y, 0, std::max<Grid>(r.top, 0))};
}

std::vector<Laid> side_by_side(const Sheets& sheets, const SheetRow& row) {
  std::vector<Laid> out;
  for (std::size_t s = 0; s < sheets.size(); ++s)
    for (Laid l : sheets[s]) {
      l.at.x += row.left(static_cast<int>(s));
      out.push_back(l);
    }
  return out;
}

Sheets apart(const std::vector<Laid>& laid, const SheetRow& row) {
  Sheets out(static_cast<std::size_t>(row.count()));
  for (Laid l : laid) {
    const int on = row.sheet(l.at);
    l.at.x -= row.left(on);
    out[static_cast<std::size_t>(on)].push_back(l);
  }
  out.erase(std::remove_if(out.begin(), out.end(), [](const auto& sheet) { return sheet.empty(); }),
            out.end());
  return out;
}

}  // namespace lamwright::nesting
