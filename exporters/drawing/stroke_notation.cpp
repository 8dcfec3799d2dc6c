#include "exporters/drawing/stroke_notation.hpp"

#include <charconv>
#include <cmath>

#include "shared/error.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

double angle_between(const Vec2& from, const Vec2& to) { return std::atan2(cross(from, to), from.dot(to)); }

Segment arc(const Vec2& from, const Vec2& to, double sweep) {
  const Vec2 chord = to - from;
  const double half = sweep / 2;
  const Vec2 centre = (from + to) / 2 + left_of(chord) / (2 * std::tan(half));
  return {from, to, sweep, centre, std::abs(chord.norm() / (2 * std::sin(half)))};
}

Segment arc_leaving(const Vec2& from, const Vec2& heading, const Vec2& to) {
  return arc(from, to, 2 * angle_between(heading, to - from));
}

Segment arc_arriving(const Vec2& from, const Vec2& to, const Vec2& heading) {
  return arc(from, to, 2 * angle_between(to - from, heading));
}

Vec2 level(const Vec2& way) { return {std::copysign(1, way.x()), 0}; }
Vec2 upright(const Vec2& way) { return {0, std::copysign(1, way.y())}; }

// Where the two arcs of a quarter oval meet, seen from the end of the long axis: `across` is half the short
// axis, `along` half the long one, both from the oval's middle. The tight arc is half-way between that of
// an ellipse and a half circle, which is a little squarer than an ellipse.
Vec2 joint_of_oval(const Vec2& end, const Vec2& across, const Vec2& along) {
  const double p = across.norm(), q = along.norm();
  const double tight = (p * p / q + p) / 2;
  const double wide = (p * p + q * q - 2 * q * tight) / (2 * (p - tight));
  const Vec2 tight_centre = end - tight * along / q;
  const Vec2 wide_centre = end - along + across - wide * across / p;
  return tight_centre + tight * (tight_centre - wide_centre) / (wide - tight);
}

struct Token {
  char kind = 0;  // 0: straight
  double value = 0;
  Vec2 to{0, 0};
};

class StrokeBuilder {
 public:
  explicit StrokeBuilder(const Vec2& start) : at_(start) {}

  void add(const Token& token) {
    const Vec2 way = token.to - at_;
    switch (token.kind) {
      case 0:
        return put(line(at_, token.to));
      case 'h':
        return quarter(level(way), upright(way), token.to);
      case 'v':
        return quarter(upright(way), level(way), token.to);
      case 't':
        return put(arc_leaving(at_, heading(), token.to));
      case 'l':
        return put(arc_arriving(at_, token.to, level(way)));
      case 'u':
        return put(arc_arriving(at_, token.to, upright(way)));
      case 'a':
        return put(arc(at_, token.to, radians(token.value)));
      case 'o':
        return turn_towards(token.value, token.to);
      case 's':
        return swerve(token.value, token.to);
      default:
        ensure(false, "a stroke is built of known pieces");
    }
  }

  Path path() const { return {segments_, false, {}}; }

 private:
  void put(const Segment& segment) {
    segments_.push_back(segment);
    at_ = segment.to;
  }

  Vec2 heading() const {
    ensure(!segments_.empty(), "a stroke does not begin with a piece that goes on");
    return segments_.back().tangent(1);
  }

  void quarter(const Vec2& leaving, const Vec2& arriving, const Vec2& to) {
    const Vec2 way = to - at_;
    const Vec2 first = way.dot(leaving) * leaving, last = way.dot(arriving) * arriving;
    const double p = first.norm(), q = last.norm();
    if (p == q) return put(arc_leaving(at_, leaving, to));
    const Vec2 joint = p < q ? joint_of_oval(at_, first, -last) : joint_of_oval(to, -last, first);
    put(arc_leaving(at_, leaving, joint));
    put(arc_arriving(at_, to, arriving));
  }

  // The point where the turn ends, on the circle's tangent through `to`.
  Vec2 end_of_turn(const Vec2& heading, double radius, const Vec2& to) const {
    const double side = cross(heading, to - at_) > 0 ? 1 : -1;
    const Vec2 centre = at_ + side * radius * left_of(heading);
    const Vec2 away = to - centre;
    ensure(away.norm() > radius, "a turn leaves its aim outside");
    const double angle = std::atan2(away.y(), away.x()) - side * std::acos(radius / away.norm());
    return centre + radius * direction(angle);
  }

  void turn_towards(double radius, const Vec2& to) {
    const Vec2 leaving = heading();
    put(arc_leaving(at_, leaving, end_of_turn(leaving, radius, to)));
    put(line(at_, to));
  }

  // Symmetric about the middle between its ends.
  void swerve(double radius, const Vec2& to) {
    const Vec2 leaving = heading(), middle = (at_ + to) / 2;
    const Vec2 first = end_of_turn(leaving, radius, middle);
    put(arc_leaving(at_, leaving, first));
    put(line(at_, 2 * middle - first));
    put(arc_arriving(at_, to, leaving));
  }

  Vec2 at_;
  std::vector<Segment> segments_;
};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  std::vector<Path> strokes() {
    std::vector<Path> out;
    for (skip_spaces(); !text_.empty(); skip_spaces()) {
      out.push_back(taken('.') ? dot(point()) : stroke());
      skip_spaces();
      taken(';');
    }
    return out;
  }

 private:
  bool taken(char c) {
    if (text_.empty() || text_.front() != c) return false;
    text_.remove_prefix(1);
    return true;
  }

  void skip_spaces() {
    while (taken(' ')) {
    }
  }

  double number() {
    double value = 0;
    const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
    ensure(error == std::errc{}, "a stroke has numbers where they belong");
    text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
    return value;
  }

  Vec2 point() {
    const double x = number();
    ensure(taken(','), "a stroke's points have a comma");
    return {x, number()};
  }

  Token token() {
    Token token;
    if (text_.front() >= 'a' && text_.front() <= 'z') {
      token.kind = text_.front();
      text_.remove_prefix(1);
    }
    if (token.kind == 'a' || token.kind == 'o' || token.kind == 's') {
      token.value = number();
      ensure(taken(':'), "a stroke's figure is followed by a colon");
    }
    token.to = point();
    return token;
  }

  Path stroke() {
    StrokeBuilder builder(point());
    for (skip_spaces(); !text_.empty() && text_.front() != ';'; skip_spaces()) builder.add(token());
    return builder.path();
  }

  static Path dot(const Vec2& centre) {
    const Vec2 top = centre + Vec2(0, kDot), bottom = centre - Vec2(0, kDot);
    return {{{top, bottom, kPi, centre, kDot}, {bottom, top, kPi, centre, kDot}}, false, {}};
  }

  std::string_view text_;
};

}  // namespace

std::vector<Path> strokes_of(std::string_view notation) { return Reader(notation).strokes(); }

}  // namespace lamwright::drawing
