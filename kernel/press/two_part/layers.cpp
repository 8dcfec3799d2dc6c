#include "kernel/press/two_part/layers.hpp"

#include "kernel/profile/offset.hpp"

namespace lamwright::two_part {
namespace {

void add_lower(const CaulSpec& caul, const Halves& h, const LaidCaul& bed, std::vector<Layer>& out) {
  if (caul.liner > 0) out.push_back({Layer::Kind::liner, h.lower, caul.liner, {}});
  double height = caul.liner;
  for (const double sheet : caul.sheathing) {
    out.push_back({Layer::Kind::sheathing, offset(h.lower, height), sheet, {}});
    height += sheet;
  }
  if (caul.kind == CaulSpec::Kind::slatted)
    out.push_back({Layer::Kind::bed_caul, offset(h.lower, height), caul.thickness, bed.slats});
}

// The same sheets in the other order, so that both faces of the pack meet the same one.
void add_upper(const CaulSpec& caul, const Halves& h, std::vector<Layer>& out) {
  if (caul.kind == CaulSpec::Kind::slatted)
    out.push_back({Layer::Kind::top_caul, h.curves.over, caul.thickness, h.curves.top_slats});
  double height = -caul.liner - caul.thickness;
  if (caul.kind == CaulSpec::Kind::sheathed)
    for (auto sheet = caul.sheathing.rbegin(); sheet != caul.sheathing.rend(); ++sheet) {
      out.push_back({Layer::Kind::sheathing, offset(h.upper, height), *sheet, {}});
      height += *sheet;
    }
  if (caul.liner > 0) out.push_back({Layer::Kind::liner, offset(h.upper, -caul.liner), caul.liner, {}});
}

}  // namespace

std::vector<Layer> layers(const Job& job, const Panel& panel, const Halves& h, const LaidCaul& bed) {
  std::vector<Layer> out;
  add_lower(job.caul, h, bed, out);
  const double cover = panel.cover;
  if (cover > 0) out.push_back({Layer::Kind::cover, offset(h.curves.inner, -cover), cover, {}});
  out.push_back({Layer::Kind::panel, h.curves.inner, panel.thickness, {}});
  if (cover > 0) out.push_back({Layer::Kind::cover, h.curves.outer, cover, {}});
  add_upper(job.caul, h, out);
  return out;
}

}  // namespace lamwright::two_part
