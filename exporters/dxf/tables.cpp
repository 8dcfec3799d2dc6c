#include "exporters/dxf/tables.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "exporters/dxf/colours.hpp"

namespace lamwright::dxf {
namespace {

using drawing::Drawing;
using drawing::Pen;

class TableWriter {
 public:
  explicit TableWriter(Groups& groups) : groups_(groups) {}

  Groups& begin(std::string_view name, Handle table, std::size_t records) {
    table_ = table;
    groups_.text(0, "TABLE").text(2, name);
    if (groups_.r2000()) groups_.handle(5, table).handle(330, kNobody);
    return groups_.subclass("AcDbSymbolTable").whole(70, long(records));
  }
  void end() { groups_.text(0, "ENDTAB"); }

  Groups& record(std::string_view type, std::string_view subclass) {
    return groups_.record(type, table_).subclass("AcDbSymbolTableRecord").subclass(subclass);
  }

  void empty(std::string_view name, Handle table) {
    begin(name, table, 0);
    end();
  }

  bool r2000() const { return groups_.r2000(); }

 private:
  Groups& groups_;
  Handle table_ = kNobody;
};

void write_viewport(TableWriter& table, const Box2& shown) {
  constexpr double kMargin = 1.1;
  table.begin("VPORT", kViewports, 1);
  const Vec2 size = kMargin * shown.size().cwiseMax(Vec2(1, 1));
  Groups& record = table.record("VPORT", "AcDbViewportTableRecord");
  record.text(2, "*ACTIVE").whole(70, 0).point(10, {0, 0}).point(11, {1, 1});
  record.point(12, (shown.low + shown.high) / 2).point(13, {0, 0}).point(14, {10, 10}).point(15, {10, 10});
  record.spatial(16, {0, 0}, 1).spatial(17, {0, 0}).real(40, std::max(size.y(), size.x() / 2)).real(41, 2);
  record.real(42, 50).real(43, 0).real(44, 0).real(50, 0).real(51, 0);
  record.whole(71, 0).whole(72, 1000).whole(73, 1).whole(74, 3).whole(75, 0).whole(76, 0).whole(77, 0).whole(
      78, 0);
  table.end();
}

void write_linetype(TableWriter& table, const std::string& name, const std::vector<double>& dashes) {
  Groups& record = table.record("LTYPE", "AcDbLinetypeTableRecord");
  double length = 0;
  for (const double dash : dashes) length += dash;
  record.text(2, name).whole(70, 0).text(3, dashes.empty() ? "" : "dashes").whole(72, 65);
  record.whole(73, long(dashes.size())).real(40, length);
  for (std::size_t i = 0; i < dashes.size(); ++i) {
    record.real(49, i % 2 == 0 ? dashes[i] : -dashes[i]);
    if (table.r2000()) record.whole(74, 0);
  }
}

constexpr const char* kContinuous = "CONTINUOUS";

// Each pattern of dashes that a layer is drawn with, once, in the order of pens.
std::vector<std::vector<double>> patterns(const Drawing& drawing, const std::vector<std::string>& layers) {
  std::vector<std::vector<double>> out;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const std::vector<double>& dashes = drawing.pens()[i].dashes;
    if (!layers[i].empty() && !dashes.empty() && std::find(out.begin(), out.end(), dashes) == out.end())
      out.push_back(dashes);
  }
  return out;
}

std::string linetype_name(const std::vector<std::vector<double>>& all, const std::vector<double>& dashes) {
  if (dashes.empty()) return kContinuous;
  return "DASHES_" + std::to_string(std::find(all.begin(), all.end(), dashes) - all.begin() + 1);
}

void write_linetypes(TableWriter& table, const std::vector<std::vector<double>>& all) {
  const bool named = table.r2000();
  table.begin("LTYPE", kLinetypes, all.size() + (named ? 3 : 1));
  if (named)
    for (const char* name : {"BYBLOCK", "BYLAYER"}) write_linetype(table, name, {});
  write_linetype(table, kContinuous, {});
  for (const auto& dashes : all) write_linetype(table, linetype_name(all, dashes), dashes);
  table.end();
}

// Widths of lines are steps of the format, in hundredths of a millimetre.
int width_step(double width) {
  constexpr std::array<int, 24> kSteps{0,  5,  9,  13, 15, 18,  20,  25,  30,  35,  40,  50,
                                       53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211};
  return *std::min_element(kSteps.begin(), kSteps.end(), [&](int a, int b) {
    return std::abs(a - 100 * width) < std::abs(b - 100 * width);
  });
}

void write_layer(TableWriter& table, const std::string& name, const Pen& pen, const std::string& linetype) {
  Groups& record = table.record("LAYER", "AcDbLayerTableRecord");
  record.text(2, name).whole(70, 0).whole(62, colour_number(pen.colour)).text(6, linetype);
  if (table.r2000()) record.whole(370, width_step(pen.width)).handle(390, kPlainPlotStyle);
}

void write_layers(TableWriter& table, const Drawing& drawing, const std::vector<std::string>& layers,
                  const std::vector<std::vector<double>>& all) {
  const auto own = [](const std::string& name) { return !name.empty() && name != "0"; };
  table.begin("LAYER", kLayers, 1 + std::size_t(std::count_if(layers.begin(), layers.end(), own)));
  write_layer(table, "0", {}, kContinuous);
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (own(layers[i]))
      write_layer(table, layers[i], drawing.pens()[i], linetype_name(all, drawing.pens()[i].dashes));
  table.end();
}

void write_style(TableWriter& table) {
  table.begin("STYLE", kStyles, 1);
  Groups& record = table.record("STYLE", "AcDbTextStyleTableRecord");
  record.text(2, "STANDARD").whole(70, 0).real(40, 0).real(41, 1).real(50, 0).whole(71, 0).real(42, 2.5);
  record.text(3, "txt").text(4, "");
  table.end();
}

void write_application(TableWriter& table) {
  table.begin("APPID", kApplications, 1);
  table.record("APPID", "AcDbRegAppTableRecord").text(2, "ACAD").whole(70, 0);
  table.end();
}

// The one table whose records have their handles elsewhere than all others.
void write_dimension_style(TableWriter& table, Groups& groups) {
  table.begin("DIMSTYLE", kDimensionStyles, 1).subclass("AcDbDimStyleTable").whole(71, 0);
  groups.record("DIMSTYLE", kDimensionStyles, groups.taken_handle(), 105);
  groups.subclass("AcDbSymbolTableRecord").subclass("AcDbDimStyleTableRecord");
  groups.text(2, "STANDARD").whole(70, 0);
  table.end();
}

void write_block_records(TableWriter& table, Groups& groups) {
  table.begin("BLOCK_RECORD", kBlockRecords, 2);
  const auto block = [&](Handle own, const char* name, Handle layout) {
    groups.record("BLOCK_RECORD", kBlockRecords, own).subclass("AcDbSymbolTableRecord");
    groups.subclass("AcDbBlockTableRecord").text(2, name).handle(340, layout);
  };
  block(kModelSpace, "*Model_Space", kModelLayout);
  block(kPaperSpace, "*Paper_Space", kPaperLayout);
  table.end();
}

}  // namespace

void write_tables(Groups& groups, const Drawing& drawing, const std::vector<std::string>& layers,
                  const Box2& shown) {
  const auto all = patterns(drawing, layers);
  TableWriter table(groups);
  groups.begin_section("TABLES");
  write_viewport(table, shown);
  write_linetypes(table, all);
  write_layers(table, drawing, layers, all);
  write_style(table);
  table.empty("VIEW", kViews);
  table.empty("UCS", kCoordinateSystems);
  write_application(table);
  if (groups.r2000()) {
    write_dimension_style(table, groups);
    write_block_records(table, groups);
  }
  groups.end_section();
}

}  // namespace lamwright::dxf
