// The group pairs that a DXF file is made of: a code on one line, its value on the next.
#pragma once
#include <string>
#include <string_view>

#include "exporters/dxf/dxf_writer.hpp"
#include "kernel/profile/vector.hpp"

namespace lamwright::dxf {

// Handles of what every R2000 file holds, so that one record can name another before it is written.
enum Handle : unsigned {
  kNobody = 0,
  kBlockRecords,
  kLayers,
  kStyles,
  kLinetypes,
  kViews,
  kCoordinateSystems,
  kViewports,
  kApplications,
  kDimensionStyles,
  kRoot,
  kGroupTable,
  kLayouts,
  kPlotStyles,
  kPlainPlotStyle,
  kModelSpace,
  kPaperSpace,
  kModelLayout,
  kPaperLayout,
  kFirstFree = 0x20
};

// Grows by adding. Handles, owners and subclass markers are written in R2000 only: R12 has none.
class Groups {
 public:
  explicit Groups(DxfVersion version) : version_(version) {}

  Groups& text(int code, std::string_view value);
  Groups& whole(int code, long value);
  Groups& real(int code, double value, int decimals = 6);
  Groups& point(int code, const Vec2& p);                  // codes c and c + 10
  Groups& spatial(int code, const Vec2& p, double z = 0);  // and c + 20
  Groups& handle(int code, unsigned handle);

  // Begins a record with the next free handle, or with a handle of its own.
  Groups& record(std::string_view type, unsigned owner);
  Groups& record(std::string_view type, unsigned owner, unsigned own, int handle_code = 5);
  Groups& subclass(std::string_view name);

  void begin_section(std::string_view name);
  void end_section() { text(0, "ENDSEC"); }

  bool r2000() const { return version_ == DxfVersion::r2000; }
  unsigned next_handle() const { return next_; }
  unsigned taken_handle() { return next_++; }
  const std::string& bytes() const { return bytes_; }

 private:
  DxfVersion version_;
  unsigned next_ = kFirstFree;
  std::string bytes_;
};

}  // namespace lamwright::dxf
