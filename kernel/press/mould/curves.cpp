#include "kernel/press/mould/curves.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/mould/narrow.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

bool is_flat(const Run& run) { return run.straight() && run.length >= kLeastFlat - kAtLeast; }

std::vector<double> on_parallel(const Profile& neutral, const std::vector<double>& stations, double d) {
  std::vector<double> out;
  for (const double s : stations) out.push_back(offset_station(neutral, s, d));
  return out;
}

std::vector<Slat> top_slats(const CaulSpec& caul, const Panel& panel, const PressCurves& c) {
  const double d = panel.thickness + panel.cover - panel.neutral_height;
  SlatSpec spec =
      slat_spec(caul, c.over, offset_station(c.neutral, c.datum, d), offset_station(c.neutral, c.pin, d),
                on_parallel(c.neutral, c.neutral.shape_changes(), d));
  spec.zones = tight_zones(caul, c.over, 0, panel.cover);
  return whole_slats(spec);
}

bool covers(const std::vector<Slat>& slats, double girth, double trim) {
  return !slats.empty() && slats.front().from <= trim + kAtLeast &&
         girth - slats.back().to <= trim + kAtLeast;
}

// Radius of the described face of the released panel whose pressed face at `height` has a given radius, on a
// crown (sense 1) or in a hollow (-1).
double described_radius(const Panel& panel, double pressed, double height, int sense) {
  const double neutral = (pressed + sense * (panel.neutral_height - height)) / (1 - panel.springback.share);
  return neutral + sense * (panel.face_height() - panel.neutral_height);
}

// A contact edge must exist; where springback makes the pressed radius another than the job's, both are
// told. `face` is the pack's face at `height`, the edge lies `distance` from it on the inside of bends of
// that sense.
struct Depth {
  std::string edge, face;
  double height, distance;
  int sense;
};

void refuse_collapse(const Panel& panel, const Profile& line, const Depth& depth) {
  for (std::size_t i = 0; i < line.runs().size(); ++i) {
    const double curvature = line.runs()[i].curvature, radius = 1 / std::abs(curvature);
    if (curvature * depth.sense <= 0 || radius > depth.distance) continue;
    const auto given = [&](double pressed) {
      return described_radius(panel, pressed, depth.height, depth.sense);
    };
    const std::string radii =
        std::abs(given(radius) - radius) < kSamePoint
            ? "radius " + number(radius)
            : "radius " + number(given(radius)) + ", pressed at " + number(radius) + " " + depth.face;
    throw geometry_error(
        run_name(line, i) + " (" + radii + ")",
        "the " + depth.edge + " contact edge lies " + number(depth.distance) + " inside it and collapses",
        "thickest stack that fits is " + number(tenth_below(radius)) + ", or raise the radius to " +
            number(tenth_above(given(depth.distance))));
  }
}

void lay_top(const Job& job, const Panel& panel, PressCurves& c) {
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

// Middles of the stretches at the line's greatest height (sense 1) or least (-1), ends left out, from the
// left.
std::vector<double> level_middles(const Profile& line, int sense) {
  const double most = sense > 0 ? line.box().high.y() : -line.box().low.y();
  std::vector<double> at;
  const auto take = [&](double s) {
    if (most - sense * line.point(s).y() <= kSamePoint) at.push_back(s);
  };
  for (std::size_t i = 0; i < line.runs().size(); ++i) {
    const double k = line.runs()[i].curvature;
    take(line.station(i));
    if (k == 0) continue;
    const double level = line.pose(i).heading / k;
    if (level > 0 && level < line.runs()[i].length) take(line.station(i) + level);
  }
  take(line.girth());
  std::vector<double> out;
  for (std::size_t i = 0; i < at.size();) {
    std::size_t to = i;  // a stretch goes on as long as the line stays level
    const auto level = [&](double s) { return most - sense * line.point(s).y() <= kSamePoint; };
    while (to + 1 < at.size() && level((at[to] + at[to + 1]) / 2)) ++to;
    const bool at_end = at[to] <= kSamePoint || at[i] >= line.girth() - kSamePoint;
    if (!at_end) out.push_back((at[i] + at[to]) / 2);
    i = to + 1;
  }
  return out;
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

std::optional<FirstContact> first_contact(const Profile& line) {
  for (const bool upper : {false, true}) {
    const auto found = level_middles(line, upper ? -1 : 1);
    const double middle = line.girth() / 2;
    const auto nearest = std::min_element(found.begin(), found.end(), [&](double a, double b) {
      return std::abs(a - middle) < std::abs(b - middle) - kSamePoint;
    });
    if (nearest != found.end()) return FirstContact{*nearest, upper};
  }
  return std::nullopt;
}

double closing_up(const CaulSpec& caul, const Profile& line, double station) {
  const double curvature = line.curvature(std::clamp(station, 0.0, line.girth()));
  return curvature < 0 && caul.pitch ? -curvature * *caul.pitch * caul.thickness : 0;
}

SlatSpec slat_spec(const CaulSpec& caul, const Profile& line, double datum, double pin,
                   std::vector<double> changes) {
  const double width = *caul.pitch * caul.coverage, closing = closing_up(caul, line, pin);
  return {
      line.girth(),       datum, width, *caul.pitch - width, kPin + closing, kPinGap + closing, caul.lagging,
      std::move(changes), pin};
}

std::optional<double> fitting_pitch(const Job& job, const Panel& panel, const PressCurves& c) {
  if (!job.caul.pitch || covers(c.top_slats, c.over.girth(), panel.trim)) return std::nullopt;
  CaulSpec caul = job.caul;
  for (double step = 0.5; step <= *job.caul.pitch / 10; step += 0.5)
    for (const double pitch : {*job.caul.pitch - step, *job.caul.pitch + step}) {
      caul.pitch = pitch;
      if (covers(top_slats(caul, panel, c), c.over.girth(), panel.trim)) return pitch;
    }
  return std::nullopt;
}

PressCurves press_curves(const Job& job, const Panel& panel, const Profile& neutral, Moulds moulds) {
  const CaulSpec& caul = job.caul;
  const double bed = panel.cover + caul.thickness + caul.liner;
  // On one mould sheathing and liner lie on the formers alone.
  const bool both = moulds == Moulds::both;
  const double top = both || caul.kind == CaulSpec::Kind::slatted ? caul.thickness : 0;
  const double above = both ? panel.cover + caul.thickness + caul.liner : 0;
  const Profile inner = line_at(panel, neutral, 0, "inner face");
  const Profile outer = line_at(panel, neutral, panel.thickness, "outer face");
  refuse_collapse(panel, inner, {"lower", "inside", 0, bed, 1});
  if (both) refuse_collapse(panel, outer, {"upper", "outside", panel.thickness, above, -1});
  PressCurves c{neutral,
                inner,
                outer,
                offset(inner, -bed, "lower contact edge"),
                offset(outer, panel.cover, "outer cover sheet"),
                both ? std::optional(offset(outer, above, "upper contact edge")) : std::nullopt,
                bed,
                top,
                above,
                {},
                0,
                0,
                caul.pitch ? datum_station(neutral) : neutral.girth() / 2,
                0,
                !both};
  // On one mould the pin stands right beside the datum slat.
  c.pin = c.datum;
  if (const auto first = both ? first_contact(neutral) : std::nullopt) {
    c.pin = first->station;
    c.pin_above = first->upper;
  }
  refuse_crossing(c.contact, "lower contact edge");
  if (both)
    refuse_crossing(*c.upper, "upper contact edge");
  else
    refuse_crossing(offset(c.over, top, "top caul"), "top caul");
  lay_top(job, panel, c);
  return c;
}

PressCurves moved(const PressCurves& c, const Vec2& by) {
  PressCurves out = c;
  for (Profile* line : {&out.neutral, &out.inner, &out.outer, &out.contact, &out.over})
    *line = line->moved(by);
  if (out.upper) out.upper = out.upper->moved(by);
  return out;
}

}  // namespace lamwright
