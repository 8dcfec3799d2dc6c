#include "kernel/nest/squeeze.hpp"

#include "kernel/nest/parting.hpp"
#include "kernel/nest/settling.hpp"

namespace lamwright::nesting {
namespace {

// A try may end this much worse than the one it went on from.
constexpr double kWorse = 1.2;

class Squeezer {
 public:
  Squeezer(const Sheets& start, const SqueezeSpec& spec, NoFit& no_fit)
      : spec_(spec), no_fit_(no_fit), best_(start), parting_(spec.shapes, no_fit, spec_.step) {}

  const Sheets& best() const { return best_; }

  // Straight from the best by ever smaller steps, then on from what failed with two pieces changed, in turn.
  void run(std::int64_t most) {
    constexpr int kStraight = 7, kChanged = 9, kPatience = 30 * (kStraight + kChanged);
    constexpr double kFirst = 0.02;
    for (int failed = 0; failed < kPatience && parting_.work() < most;) {
      const int turn = failed % (kStraight + kChanged);
      const bool straight = turn < kStraight;
      const SheetRow row = shorter(kFirst / (straight ? 1 << turn : 2));
      std::vector<Laid> from = straight ? side_by_side(best_, row) : parting_.disturbed(tried_.laid, row);
      const Parting::Result result = parting_.part(std::move(from), row, most);
      if (keep(result, row)) {
        failed = 0;
        continue;
      }
      if (turn == 1 || (!straight && result.total < kWorse * tried_.total)) tried_ = result;
      ++failed;
    }
  }

 private:
  double length() const { return reach(best_.back(), spec_.shapes); }
  SheetRow shorter(double share) const {
    return {spec_.board, static_cast<int>(best_.size()), length() * (1 - share)};
  }

  // Shorter, and the sheets before the last no emptier: what is left of those is lost.
  bool better(const Sheets& next) const {
    return reach(next.back(), spec_.shapes) < length() && filled(next) >= filled(best_) * (1 - 1e-12);
  }

  double filled(const Sheets& sheets) const {
    double out = 0;
    for (std::size_t s = 0; s + 1 < sheets.size(); ++s)
      for (const Laid& l : sheets[s]) out += spec_.shapes[l.piece].area;
    return out;
  }

  bool keep(const Parting::Result& result, const SheetRow& row) {
    if (!result.parted) return false;
    const auto laid = settled(result.laid, spec_.shapes, row.with_end(length()), no_fit_);
    if (!laid) return false;
    Sheets next = apart(*laid, row);
    if (next.size() == best_.size() && !better(next)) return false;
    best_ = std::move(next);
    return true;
  }

  const SqueezeSpec& spec_;
  NoFit& no_fit_;
  Sheets best_;
  Parting parting_;
  Parting::Result tried_;
};

}  // namespace

double reach(const std::vector<Laid>& laid, const std::vector<Shape>& shapes) {
  double out = 0;
  for (const Laid& l : laid)
    out = std::max(out, static_cast<double>(l.at.x) + shapes[l.piece].size[l.turn].x());
  return out;
}

Sheets squeezed(const Sheets& start, const SqueezeSpec& spec, NoFit& no_fit) {
  Sheets sheets = start;
  if (sheets.size() > 1) {
    Squeezer last({start.back()}, spec, no_fit);
    last.run(spec.effort / 4);
    sheets.back() = last.best().front();
  }
  Squeezer all(sheets, spec, no_fit);
  all.run(sheets.size() > 1 ? spec.effort / 4 * 3 : spec.effort);
  return all.best();
}

}  // namespace lamwright::nesting
