#include "kernel/reading/svg/path_data.hpp"

#include "kernel/reading/svg/limits.hpp"
#include "kernel/reading/svg/number_scanner.hpp"

namespace lamwright::svg_reading {
namespace {

char lower(char c) { return char(c | 0x20); }

class PathReader {
 public:
  explicit PathReader(const Attribute& attribute) : scan_(attribute) {}

  PathSteps read() {
    scan_.skip_space();
    if (!scan_.at_end() && lower(scan_.peek()) != 'm')
      throw scan_.fault(scan_.found() + " at the start of a path", "a path starts with M or m");
    while (!scan_.at_end()) {
      read_command();
      scan_.skip_space();
    }
    return std::move(steps_);
  }

 private:
  void read_command() {
    const std::size_t start = scan_.byte();
    command_ = scan_.peek();
    if (std::string_view("MmLlHhVvCcSsQqTtAaZz").find(command_) == std::string_view::npos)
      throw scan_.fault(scan_.found() + " where a command is due",
                        "allowed: M, L, H, V, C, S, Q, T, A, Z and the small letters");
    scan_.skip();
    scan_.skip_space();
    relative_ = command_ == lower(command_);
    command_ = lower(command_);
    if (command_ == 'z') return close();
    do {
      draw(start);
      scan_.skip_comma();
    } while (scan_.at_number());
  }

  void draw(std::size_t command_byte) {
    if (steps_.size() >= kMostSteps)
      throw scan_.fault_at(command_byte, "a path of more than 1000000 commands", "divide it");
    switch (command_) {
      case 'm':
        return move();
      case 'l':
        return line(point());
      case 'h':
        return line({coordinate(at_.x()), at_.y()});
      case 'v':
        return line({at_.x(), coordinate(at_.y())});
      case 'c':
        return cubic(pole());
      case 's':
        return cubic(reflected('c'));
      case 'q':
        return quadratic(pole());
      case 't':
        return quadratic(reflected('q'));
      default:
        return arc();
    }
  }

  double coordinate(double base) {
    const double value = scan_.number();
    return relative_ ? base + value : value;
  }

  Vec2 point() {
    const double x = coordinate(at_.x());
    scan_.skip_comma();
    return {x, coordinate(at_.y())};
  }

  Vec2 pole() {
    const Vec2 out = point();
    scan_.skip_comma();
    return out;
  }

  // The last pole mirrored in the current point, after a curve of the same kind.
  Vec2 reflected(char kind) const { return last_kind_ == kind ? Vec2(2 * at_ - last_pole_) : at_; }

  void move() {
    start_ = point();
    if (!steps_.empty() && std::holds_alternative<MoveTo>(steps_.back())) steps_.pop_back();
    steps_.push_back(MoveTo{start_});
    arrive(start_);
    command_ = 'l';  // further pairs draw lines
  }

  void line(const Vec2& to) {
    push(LineTo{to});
    arrive(to);
  }

  void cubic(const Vec2& first) {
    const Vec2 second = pole(), to = point();
    push(CubicTo{first, second, to});
    arrive(to, 'c', second);
  }

  void quadratic(const Vec2& pole) {
    const Vec2 to = point();
    push(QuadraticTo{pole, to});
    arrive(to, 'q', pole);
  }

  double argument() {
    const double out = scan_.number();
    scan_.skip_comma();
    return out;
  }

  bool flag() {
    const bool out = scan_.flag();
    scan_.skip_comma();
    return out;
  }

  void arc() {
    EndpointArc stated;
    stated.from = at_;
    stated.rx = argument();
    stated.ry = argument();
    stated.axis_deg = argument();
    stated.large = flag();
    stated.sweep = flag();
    stated.to = point();
    if (const auto drawn = elliptic_arc(stated)) {
      push(ArcTo{*drawn, stated.to});
    } else {
      push(LineTo{stated.to});
    }
    arrive(stated.to);
  }

  void close() {
    if (std::holds_alternative<MoveTo>(steps_.back()) || std::holds_alternative<Close>(steps_.back())) return;
    push(Close{});
    arrive(start_);
  }

  // What follows a closed subpath without a move starts where that one did.
  void push(PathStep step) {
    if (std::holds_alternative<Close>(steps_.back())) steps_.push_back(MoveTo{start_});
    steps_.push_back(std::move(step));
  }

  void arrive(const Vec2& at, char kind = 0, const Vec2& pole = {0, 0}) {
    at_ = at;
    last_kind_ = kind;
    last_pole_ = pole;
  }

  NumberScanner scan_;
  PathSteps steps_;
  char command_ = 0;  // small
  bool relative_ = false;
  Vec2 at_{0, 0}, start_{0, 0};
  char last_kind_ = 0;  // c or q after a curve
  Vec2 last_pole_{0, 0};
};

}  // namespace

PathSteps read_path(const Attribute& attribute) {
  if (attribute.text == "none") return {};
  return PathReader(attribute).read();
}

}  // namespace lamwright::svg_reading
