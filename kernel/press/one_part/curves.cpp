#include "kernel/press/one_part/curves.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::one_part {
namespace {

bool is_flat(const Run& run) { return run.straight() && run.length >= kLeastFlat - kAtLeast; }

std::vector<double> on_parallel(const Profile& neutral, const std::vector<double>& stations, double d) {
  std::vector<double> out;
  for (const double s : stations) out.push_back(offset_station(neutral, s, d));
  return out;
}

std::vector<Slat> top_slats(const CaulSpec& caul, const Panel& panel, const Curves& c) {
  const double d = panel.thickness + panel.cover - panel.neutral_height;
  return whole_slats(slat_spec(caul, c.over.girth(), offset_station(c.neutral, c.datum, d),
                               on_parallel(c.neutral, c.neutral.shape_changes(), d)));
}

bool covers(const std::vector<Slat>& slats, double girth, double trim) {
  return !slats.empty() && slats.front().from <= trim + kAtLeast &&
         girth - slats.back().to <= trim + kAtLeast;
}

// Radius of the described face of the released panel whose pressed inner face has a given radius.
double described_radius(const Panel& panel, double inner_pressed) {
  const double neutral = (inner_pressed + panel.neutral_height) / (1 - panel.springback.share);
  return neutral - panel.neutral_height + panel.face_height();
}

// The contact edge must exist; where springback makes the pressed radius another than the job's, both are
// told.
void refuse_collapse(const Panel& panel, const Profile& inner, double bed) {
  for (std::size_t i = 0; i < inner.runs().size(); ++i) {
    const double radius = 1 / inner.runs()[i].curvature;
    if (inner.runs()[i].curvature <= 0 || radius > bed) continue;
    const double given = described_radius(panel, radius);
    const std::string radii = std::abs(given - radius) < kSamePoint
                                  ? "radius " + number(radius)
                                  : "radius " + number(given) + ", pressed at " + number(radius) + " inside";
    throw geometry_error(run_name(inner, i) + " (" + radii + ")",
                         "the lower contact edge lies " + number(bed) + " inside it and collapses",
                         "thickest stack that fits is " + number(tenth_below(radius)) +
                             ", or raise the radius to " + number(tenth_above(described_radius(panel, bed))));
  }
}

void lay_top(const Job& job, const Panel& panel, Curves& c) {
  c.top_from = 0;
  c.top_to = c.over.girth();
  if (!job.caul.pitch) return;
  c.top_slats = top_slats(job.caul, panel, c);
  if (c.top_slats.empty())
    throw geometry_error("caul",
                         "not one slat of " + number(*job.caul.pitch * job.caul.coverage) +
                             " fits on a pack " + number(c.over.girth()) + " round the curve",
                         "use a caul with narrower slats");
  c.top_from = c.top_slats.front().from;
  c.top_to = c.top_slats.back().to;
}

}  // namespace

double datum_station(const Profile& neutral) {
  const double middle = neutral.girth() / 2;
  const auto inflections = neutral.inflections();
  if (!inflections.empty())
    return *std::min_element(inflections.begin(), inflections.end(), [&](double a, double b) {
      return std::abs(a - middle) < std::abs(b - middle) - kSamePoint;
    });
  const auto& runs = neutral.runs();
  if (runs.size() == 3 && is_flat(runs[0]) && !runs[1].straight() && is_flat(runs[2]))
    return (neutral.station(1) + neutral.station(2)) / 2;
  return middle;
}

SlatSpec slat_spec(const CaulSpec& caul, double girth, double datum, std::vector<double> changes) {
  const double width = *caul.pitch * caul.coverage;
  return {girth, datum, width, *caul.pitch - width, kPin, kPinGap, caul.lagging, std::move(changes)};
}

std::optional<double> fitting_pitch(const Job& job, const Panel& panel, const Curves& c) {
  if (!job.caul.pitch || covers(c.top_slats, c.over.girth(), panel.trim)) return std::nullopt;
  CaulSpec caul = job.caul;
  for (double step = 0.5; step <= *job.caul.pitch / 10; step += 0.5)
    for (const double pitch : {*job.caul.pitch - step, *job.caul.pitch + step}) {
      caul.pitch = pitch;
      if (covers(top_slats(caul, panel, c), c.over.girth(), panel.trim)) return pitch;
    }
  return std::nullopt;
}

Curves curves(const Job& job, const Panel& panel) {
  const CaulSpec& caul = job.caul;
  const double bed = panel.cover + caul.thickness + caul.liner;
  const double top =
      caul.kind == CaulSpec::Kind::slatted ? caul.thickness : 0;  // sheathing is on the formers alone
  const Profile inner = line_at(panel, panel.pressed, 0, "inner face");
  const Profile outer = line_at(panel, panel.pressed, panel.thickness, "outer face");
  refuse_collapse(panel, inner, bed);
  Curves c{panel.pressed,
           inner,
           outer,
           offset(inner, -bed, "lower contact edge"),
           offset(outer, panel.cover, "outer cover sheet"),
           bed,
           top,
           {},
           0,
           0,
           caul.pitch ? datum_station(panel.pressed) : panel.pressed.girth() / 2};
  offset(c.over, top, "top caul");
  refuse_crossing(c.contact, "lower contact edge");
  refuse_crossing(offset(c.over, top, "top caul"), "top caul");
  lay_top(job, panel, c);
  return c;
}

Curves moved(const Curves& c, const Vec2& by) {
  Curves out = c;
  for (Profile* line : {&out.neutral, &out.inner, &out.outer, &out.contact, &out.over})
    *line = line->moved(by);
  return out;
}

}  // namespace lamwright::one_part
