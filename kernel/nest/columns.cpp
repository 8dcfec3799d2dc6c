#include "kernel/nest/columns.hpp"

#include <cmath>

namespace lamwright::nesting {
namespace {

constexpr double kFillsBox = 0.97;
constexpr double kSmall = 0.005;  // of the board

bool fits(const Arrangement& of, const Board& board) {
  return ((of.size - board.size).array() <= kFits).all();
}

class Maker {
 public:
  Maker(const std::vector<Shape>& shapes, const Board& board, NoFit& no_fit)
      : shapes_(shapes), board_(board), no_fit_(no_fit) {}

  void add(std::size_t kind, int count) {
    const Arrangement column = best_column(kind);
    const int across = static_cast<int>(column.members.size());
    for (int left = count; across > 1 && left >= across; left -= across) append(column);
  }

  std::vector<Arrangement> made() {
    end_board();
    return std::move(boards_);
  }

 private:
  Arrangement column(const Arrangement& one) const {
    if (!fits(one, board_)) return {};
    const double room = board_.size.y() + kFits - one.size.y();
    const int more = static_cast<int>(std::floor(room / static_cast<double>(pitch(one, 1, no_fit_))));
    return row(one, shapes_, 1, 1 + more, no_fit_);
  }

  Arrangement best_column(std::size_t kind) const {
    Arrangement best;
    double most = 0;
    for (const Arrangement& one : single(shapes_, kind)) {
      const Arrangement next = column(one);
      if (next.members.empty()) continue;
      const double filled =
          static_cast<double>(next.members.size()) / static_cast<double>(pitch(next, 0, no_fit_));
      if (filled > most) best = next, most = filled;
    }
    return best;
  }

  void append(const Arrangement& column) {
    Grid at = members_.empty() ? 0 : last_at_ + clearance(last_, column, 0, no_fit_);
    if (static_cast<double>(at) + column.size.x() > board_.size.x() + kFits) {
      end_board();
      at = 0;
    }
    for (Member m : column.members) {
      m.at.x += at;
      members_.push_back(m);
    }
    last_ = column;
    last_at_ = at;
  }

  void end_board() {
    if (members_.empty()) return;
    boards_.push_back(settled(std::move(members_), shapes_));
    boards_.back().begins = true;
    members_.clear();
  }

  const std::vector<Shape>& shapes_;
  const Board& board_;
  NoFit& no_fit_;
  std::vector<Arrangement> boards_;
  std::vector<Member> members_;  // on the board that is being filled
  Arrangement last_;             // its last column, and where that lies
  Grid last_at_ = 0;
};

}  // namespace

bool fills_box(const Shape& shape) { return shape.area >= kFillsBox * shape.size[0].x() * shape.size[0].y(); }

bool small(const Shape& shape, const Board& board) {
  return shape.area <= kSmall * board.size.y() * std::min(board.size.x(), 2 * board.size.y());
}

std::vector<Arrangement> columns(const std::vector<Shape>& shapes, const std::vector<int>& counts,
                                 const Board& board, NoFit& no_fit) {
  Maker maker(shapes, board, no_fit);
  for (std::size_t kind = 0; kind < shapes.size(); ++kind)
    if (fills_box(shapes[kind]) && small(shapes[kind], board)) maker.add(kind, counts[kind]);
  return maker.made();
}

}  // namespace lamwright::nesting
