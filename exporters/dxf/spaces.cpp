#include "exporters/dxf/spaces.hpp"

namespace lamwright::dxf {
namespace {

void write_block(Groups& groups, Handle space, const char* name) {
  const auto entity = [&](const char* type) {
    groups.record(type, space).subclass("AcDbEntity");
    if (space == kPaperSpace) groups.whole(67, 1);
    groups.text(8, "0");
  };
  entity("BLOCK");
  groups.subclass("AcDbBlockBegin").text(2, name).whole(70, 0).spatial(10, {0, 0}).text(3, name).text(1, "");
  entity("ENDBLK");
  groups.subclass("AcDbBlockEnd");
}

Groups& dictionary(Groups& groups, const char* type, Handle own, Handle owner) {
  return groups.record(type, owner, own).subclass("AcDbDictionary").whole(281, 1);
}

void write_dictionaries(Groups& groups) {
  Groups& root = dictionary(groups, "DICTIONARY", kRoot, kNobody);
  root.text(3, "ACAD_GROUP").handle(350, kGroupTable).text(3, "ACAD_LAYOUT").handle(350, kLayouts);
  root.text(3, "ACAD_PLOTSTYLENAME").handle(350, kPlotStyles);
  dictionary(groups, "DICTIONARY", kGroupTable, kRoot);
  dictionary(groups, "DICTIONARY", kLayouts, kRoot)
      .text(3, "Model")
      .handle(350, kModelLayout)
      .text(3, "Layout1")
      .handle(350, kPaperLayout);
  dictionary(groups, "ACDBDICTIONARYWDFLT", kPlotStyles, kRoot)
      .text(3, "Normal")
      .handle(350, kPlainPlotStyle)
      .subclass("AcDbDictionaryWithDefault")
      .handle(340, kPlainPlotStyle);
  groups.record("ACDBPLACEHOLDER", kPlotStyles, kPlainPlotStyle);
}

// No printer, no paper, one to one.
void write_plot_settings(Groups& groups, bool model) {
  groups.subclass("AcDbPlotSettings").text(1, "").text(2, "none_device").text(4, "").text(6, "");
  for (const int code : {40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141}) groups.real(code, 0);
  groups.real(142, 1).real(143, 1).whole(70, model ? 1024 : 0).whole(72, 1).whole(73, 0).whole(74, 5);
  groups.text(7, "").whole(75, 16).real(147, 1).real(148, 0).real(149, 0);
}

void write_layout(Groups& groups, bool model, const Box2& shown) {
  groups.record("LAYOUT", kLayouts, model ? kModelLayout : kPaperLayout);
  write_plot_settings(groups, model);
  groups.subclass("AcDbLayout").text(1, model ? "Model" : "Layout1").whole(70, 1).whole(71, model ? 0 : 1);
  groups.point(10, shown.low).point(11, shown.high).spatial(12, {0, 0});
  groups.spatial(14, shown.low).spatial(15, shown.high).real(146, 0);
  groups.spatial(13, {0, 0}).spatial(16, {1, 0}).spatial(17, {0, 1}).whole(76, 0);
  groups.handle(330, model ? kModelSpace : kPaperSpace);
}

}  // namespace

void write_blocks(Groups& groups) {
  groups.begin_section("BLOCKS");
  if (groups.r2000()) {
    write_block(groups, kModelSpace, "*Model_Space");
    write_block(groups, kPaperSpace, "*Paper_Space");
  }
  groups.end_section();
}

void write_objects(Groups& groups, const Box2& shown) {
  groups.begin_section("OBJECTS");
  write_dictionaries(groups);
  write_layout(groups, true, shown);
  write_layout(groups, false, shown);
  groups.end_section();
}

}  // namespace lamwright::dxf
