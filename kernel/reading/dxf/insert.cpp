#include "kernel/reading/dxf/insert.hpp"

#include <algorithm>

#include "kernel/reading/dxf/plane.hpp"
#include "shared/units.hpp"

namespace lamwright::dxf_reading {

// Rows and columns are laid out in the turned axes and not scaled (DXF reference, INSERT, groups 44 and 45).
Insert insert(const Record& entity) {
  const double x = entity.number(41, 1), y = entity.number(42, 1);
  if (x == 0 || y == 0) throw entity.fault("the block is scaled to nothing", "give it a scale other than 0");
  const Affine own = own_axes(entity);
  const Affine axes = own * turned(radians(entity.number(50, 0)));
  Insert out;
  out.block = entity.name(2);
  out.place = own * moved(entity.point(10).head<2>()) * turned(radians(entity.number(50, 0))) * scaled(x, y);
  out.columns = std::max(1, entity.whole(70, 1));
  out.rows = std::max(1, entity.whole(71, 1));
  out.step_x = axes.linear.col(0) * entity.number(44, 0);
  out.step_y = axes.linear.col(1) * entity.number(45, 0);
  return out;
}

}  // namespace lamwright::dxf_reading
