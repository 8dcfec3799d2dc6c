#include "exporters/json/supply_json.hpp"

#include <cmath>

#include "shared/units.hpp"

namespace lamwright {
namespace {

Json piece_json(const SheetPiece& piece) {
  Box2 box;
  for (const Segment& s : piece.part.outline().segments()) box.add(lamwright::box(piece.placing.segment(s)));
  return {{"name", piece.name},
          {"part", piece.part.name()},
          {"at", json_point(box.low)},
          {"turn_deg", 90 * (piece.placing.quarters & 3)}};
}

Json bar_json(const TimberCut& cut, const CutBar& bar) {
  Json pieces = Json::array();
  for (const std::size_t i : bar.pieces)
    pieces.push_back({{"part", cut.wanted[i].name}, {"length", json_number(cut.wanted[i].length)}});
  return {{"length", json_number(bar.stock)}, {"pieces", pieces}, {"rest", json_number(bar.rest)}};
}

Json run_json(const ScheduledRun& run) {
  Json pieces = Json::array();
  for (const SlatPiece& piece : run.pieces)
    pieces.push_back(Json::array({json_number(piece.from), json_number(piece.to)}));
  return {{"girth", Json::array({json_number(run.run.slat.from), json_number(run.run.slat.to)})},
          {"through", run.run.through},
          {"fixing", run.run.fixing},
          {"pieces", pieces}};
}

Json stock_json(const PlannedCaul& caul) {
  Json out = Json::array();
  for (std::size_t i = 0; i < caul.stock.size(); ++i)
    out.push_back({{"length", json_number(caul.stock[i].length)},
                   {"width", json_number(caul.stock[i].width)},
                   {"count", caul.stock[i].count ? Json(*caul.stock[i].count) : Json(nullptr)},
                   {"used", caul.schedule.used[i]}});
  return out;
}

Json pack_sheet_json(const PackSheet& sheet) {
  return {{"use", sheet.use},
          {"stock", sheet.stock},
          {"thickness", json_number(sheet.thickness)},
          {"grain_deg", sheet.grain ? json_number(degrees(*sheet.grain)) : Json(nullptr)},
          {"girth", json_number(sheet.girth)},
          {"cut", json_number(sheet.cut)},
          {"width", json_number(sheet.width)},
          {"one_panel", sheet.count},
          {"all_panels", sheet.total}};
}

Json if_finite(double value) { return std::isfinite(value) ? json_number(value) : Json(nullptr); }

}  // namespace

Json sheets_json(const Supply& supply) {
  Json out = Json::array();
  for (const CutSheet& sheet : supply.sheets) {
    Json pieces = Json::array();
    for (const SheetPiece& piece : sheet.pieces) pieces.push_back(piece_json(piece));
    out.push_back({{"board", sheet.board},
                   {"size", json_point(sheet.size)},
                   {"used", json_number(sheet.used)},
                   {"yield", json_number(sheet.yield)},
                   {"pieces", pieces}});
  }
  return out;
}

Json pack_json(const Supply& supply) {
  Json out = Json::array();
  for (const PackSheet& sheet : supply.pack) out.push_back(pack_sheet_json(sheet));
  return out;
}

Json timber_json(const Supply& supply) {
  Json out = Json::array();
  for (const TimberCut& cut : supply.timber) {
    Json bars = Json::array();
    for (const CutBar& bar : cut.plan.bars) bars.push_back(bar_json(cut, bar));
    out.push_back({{"stock", cut.stock}, {"proven", cut.plan.proven}, {"lengths", bars}});
  }
  return out;
}

Json cauls_json(const PressPlan& plan) {
  Json out = Json::array();
  for (const PlannedCaul& caul : plan.cauls) {
    Json runs = Json::array();
    for (const ScheduledRun& run : caul.schedule.runs) runs.push_back(run_json(run));
    out.push_back({{"caul", to_text(caul.kind)},
                   {"length", json_number(caul.length)},
                   {"runs", runs},
                   {"stock", stock_json(caul)},
                   {"cuts", caul.schedule.cuts},
                   {"proven", caul.schedule.proven},
                   {"missing", caul.schedule.missing},
                   {"covers_close", if_finite(caul.schedule.covers_close)},
                   {"covers_open", if_finite(caul.schedule.covers_open)}});
  }
  return out;
}

Json items_json(const std::vector<SupplyItem>& items) {
  Json out = Json::array();
  for (const SupplyItem& item : items)
    out.push_back({{"name", item.name},
                   {"use", item.use},
                   {"one_panel", json_number(item.one)},
                   {"all_panels", json_number(item.all)},
                   {"unit", item.unit}});
  return out;
}

}  // namespace lamwright
