#include "kernel/nest/layout.hpp"

#include <array>
#include <cmath>
#include <tuple>

namespace lamwright::nesting {
namespace {

Room room(const Vec2& board, const Vec2& size) {
  return {static_cast<Grid>(std::floor(board.x() - size.x() + kFits)),
          static_cast<Grid>(std::floor(board.y() - size.y() + kFits))};
}

constexpr double kHairs = 37;  // to the lesser side of a piece

using Cost = std::array<double, 3>;

Cost cost(Rule rule, GridPoint at, const Vec2& size, double reach) {
  const double x = static_cast<double>(at.x), y = static_cast<double>(at.y), right = x + size.x();
  switch (rule) {
    case Rule::left_end:
      return {x, y, right};
    case Rule::middle:
      return {x + right, y, x};
    case Rule::lowest:
      return {std::max(right, reach), y, x};
    case Rule::column:
      return {std::round(std::max(right - reach, 0.0) / size.minCoeff() * kHairs), y, x};
    case Rule::right_end:
      break;
  }
  return {right, x, y};
}

}  // namespace

struct Layout::Choice {
  const Arrangement* arrangement = nullptr;
  GridPoint at;
  Cost cost{};
};

Layout::Layout(const std::vector<Shape>& shapes, const std::vector<Group>& groups, const Board& board,
               NoFit& no_fit)
    : shapes_(shapes), groups_(groups), board_(board), no_fit_(no_fit) {}

const Score& Layout::lay(const std::vector<Token>& tokens, Rule rule, std::int64_t& work) {
  std::size_t common = 0;
  if (rule == rule_)
    while (common < tokens.size() && common < tokens_.size() && tokens[common] == tokens_[common]) ++common;
  rule_ = rule;
  take_up(common);
  for (std::size_t i = common; i < tokens.size(); ++i) {
    marks_.push_back({order_.size(), left_over_.size()});
    lay(tokens[i], work);
  }
  tokens_ = tokens;
  return score_ = score();
}

void Layout::take_up(std::size_t tokens) {
  if (tokens >= marks_.size()) return;
  const Mark mark = marks_[tokens];
  marks_.resize(tokens);
  left_over_.resize(mark.left_over);
  while (order_.size() > mark.laid) {
    sheets_[order_.back()].pop_back();
    order_.pop_back();
  }
  while (!sheets_.empty() && sheets_.back().empty()) sheets_.pop_back();
  reach_.assign(sheets_.size(), 0);
  for (std::size_t s = 0; s < sheets_.size(); ++s)
    for (const Laid& l : sheets_[s])
      reach_[s] = std::max(reach_[s], static_cast<double>(l.at.x) + shapes_[l.piece].size[l.turn].x());
  for (auto& [key, spots] : spots_)
    spots.forget(std::get<0>(key) < sheets_.size() ? sheets_[std::get<0>(key)].size() : 0);
}

bool Layout::open_sheet() {
  if (board_.most > 0 && sheets_.size() >= static_cast<std::size_t>(board_.most)) return false;
  sheets_.emplace_back();
  reach_.push_back(0);
  return true;
}

void Layout::lay(const Token& token, std::int64_t& work) {
  std::vector<std::size_t> rest;  // pieces still to be laid singly
  bool whole = true;
  for (const Member& m : groups_[token.group].front().members) rest.push_back(m.piece);
  const bool singly = rest.size() > 1 && !groups_[token.group].front().begins;
  for (std::size_t sheet = 0;; ++sheet) {
    if (sheet == sheets_.size() && !open_sheet()) break;
    const bool fresh = sheets_[sheet].empty();
    if (whole && lay_on(sheet, token.group, token.turn, work)) return;
    const auto laid = [&](std::size_t piece) { return lay_on(sheet, piece, -1, work); };
    if (singly) rest.erase(std::remove_if(rest.begin(), rest.end(), laid), rest.end());
    if (rest.empty()) return;
    whole = whole && rest.size() == groups_[token.group].front().members.size();
    if (fresh && whole) break;  // not even an empty sheet has room in this turn
  }
  if (!sheets_.empty() && sheets_.back().empty()) {
    sheets_.pop_back();
    reach_.pop_back();
  }
  left_over_.insert(left_over_.end(), rest.begin(), rest.end());
}

Spots& Layout::spots(std::size_t sheet, std::size_t group, std::size_t turn) {
  const auto key = std::make_tuple(sheet, group, turn);
  const auto found = spots_.find(key);
  if (found != spots_.end()) return found->second;
  const Arrangement& arrangement = groups_[group][turn];
  return spots_.emplace(key, Spots(arrangement, room(board_.size, arrangement.size))).first->second;
}

bool Layout::lay_on(std::size_t sheet, std::size_t group, int turn, std::int64_t& work) {
  Choice best;
  if (turn >= 0 && room(board_.size, groups_[group][static_cast<std::size_t>(turn)].size).empty()) turn = -1;
  for (std::size_t t = 0; t < groups_[group].size(); ++t) {
    if (turn >= 0 && t != static_cast<std::size_t>(turn)) continue;
    const Arrangement& arrangement = groups_[group][t];
    if (arrangement.begins && !sheets_[sheet].empty()) continue;
    Spots& all = spots(sheet, group, t);
    all.follow(sheets_[sheet], no_fit_, work);
    for (const std::uint32_t i : all.alive()) {
      const GridPoint at = all.spots()[i].at;
      const Cost c = cost(rule_, at, arrangement.size, reach_[sheet]);
      if (!best.arrangement || c < best.cost) best = {&arrangement, at, c};
    }
  }
  if (!best.arrangement) return false;
  for (const Member& m : best.arrangement->members) {
    sheets_[sheet].push_back({m.piece, m.turn, best.at + m.at});
    order_.push_back(sheet);
  }
  reach_[sheet] = std::max(reach_[sheet], static_cast<double>(best.at.x) + best.arrangement->size.x());
  return true;
}

Score Layout::score() const {
  Score out;
  for (const std::size_t piece : left_over_) out.left_over += shapes_[piece].area;
  out.sheets = static_cast<int>(sheets_.size());
  if (sheets_.empty()) return out;
  out.reach = reach_.back();
  for (const Laid& l : sheets_.back())
    out.moment += shapes_[l.piece].area * (static_cast<double>(l.at.x) + shapes_[l.piece].size[l.turn].x());
  return out;
}

}  // namespace lamwright::nesting
