#include "kernel/reading/dxf/items.hpp"

#include <array>

#include "kernel/reading/dxf/arcs.hpp"
#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"
#include "kernel/reading/dxf/polyline.hpp"
#include "kernel/reading/dxf/spline.hpp"

namespace lamwright::dxf_reading {
namespace {

struct Kind {
  std::string_view type;
  Outline (*outline)(const Record&);
};

constexpr std::array kKinds{Kind{"LINE", line_outline},
                            Kind{"ARC", arc_outline},
                            Kind{"CIRCLE", circle_outline},
                            Kind{"ELLIPSE", ellipse_outline},
                            Kind{"LWPOLYLINE", light_polyline_outline},
                            Kind{"SPLINE", spline_outline}};

const Kind* kind_of(std::string_view type) {
  for (const Kind& kind : kKinds)
    if (kind.type == type) return &kind;
  return nullptr;
}

bool draws(std::string_view type) { return kind_of(type) || type == "POLYLINE" || type == "INSERT"; }

// Parts of the entity before them, and windows of paper space.
bool is_passed_over(std::string_view type) {
  return type == "VERTEX" || type == "SEQEND" || type == "ATTRIB" || type == "VIEWPORT";
}

bool ends_section(std::string_view type) { return type == "ENDSEC" || type == "SECTION" || type == "EOF"; }

class ItemReader {
 public:
  ItemReader(Records& records, const Layers& layers, Tally& tally, std::size_t& pieces)
      : records_(records), layers_(layers), tally_(tally), pieces_(pieces) {}

  std::vector<Item> read(std::string_view end) && {
    while (!records_.at_end() && records_.type() != end && !ends_section(records_.type())) take();
    if (records_.at_end() || records_.type() != end)
      throw fault(records_.file(), records_.line(), "the file ends before " + std::string(end),
                  "it is cut short; save the drawing again");
    return std::move(items_);
  }

 private:
  void take() {
    if (is_passed_over(records_.type())) return records_.skip();
    const Record record = records_.next();
    if (record.whole(67, 0) == 1)
      ++tally_.on_paper;
    else if (!draws(record.type))
      count(tally_.kinds, shown(record.type));
    else if (record.whole(60, 0) == 1)
      ++tally_.invisible;
    else if (!shows(record))
      count(tally_.hidden, record.name(8));
    else
      draw(record);
  }

  // Layer 0 of a block is the layer it is inserted on, which is not known here. What is inserted on a layer
  // that is off shows, unless it lies on layer 0.
  bool shows(const Record& record) const {
    const std::string layer = record.name(8, "0");
    const LayerState state = layers_.state(layer);
    return layer == "0" || state == LayerState::shown ||
           (record.type == "INSERT" && state == LayerState::off);
  }

  void draw(const Record& record) {
    if (record.too_long) throw record.fault("is too long", "save only the curves of the profile");
    if (record.type == "INSERT") return add(record, insert(record), 1);
    if (record.type == "POLYLINE" && is_mesh(record)) return count(tally_.kinds, "POLYLINE (mesh)");
    const Kind* kind = kind_of(record.type);
    Outline outline = kind ? kind->outline(record) : polyline_outline(record, records_);
    if (record.type == "SPLINE" && has_only_fit_points(record)) ++tally_.fit_points_only;
    const std::size_t pieces = outline.pieces.size();
    add(record, std::move(outline), pieces);
  }

  void add(const Record& record, std::variant<Outline, Insert> content, std::size_t pieces) {
    pieces_ += pieces;
    ensure_pieces(pieces_, *record.file, record.line);
    items_.push_back(
        {std::string(record.type), record.name(8, "0"), record.handle(), record.line, std::move(content)});
  }

  Records& records_;
  const Layers& layers_;
  Tally& tally_;
  std::size_t& pieces_;
  std::vector<Item> items_;
};

}  // namespace

std::vector<Item> read_items(Records& records, std::string_view end, const Layers& layers, Tally& tally,
                             std::size_t& pieces) {
  return ItemReader(records, layers, tally, pieces).read(end);
}

}  // namespace lamwright::dxf_reading
