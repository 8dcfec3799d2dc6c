// Sheets on which groups have been laid, one after another.
#pragma once
#include <map>
#include <tuple>

#include "kernel/nest/spots.hpp"

namespace lamwright::nesting {

// What counts as the better place for a group: all look for the left end first.
enum class Rule {
  right_end,  // least reach to the right, then farthest left, then lowest
  left_end,   // farthest left, then lowest
  middle,     // least right end and left end together, then lowest
  lowest,     // least reach to the right that it takes in any case; within that lowest
  column,     // the same, but a hair of reach does not count: what stands in one column begins at its foot
};
inline constexpr int kRules = 4;  // that are worth a try each

struct Board {
  Vec2 size{0, 0};  // inside the margins, units of the grid
  int most = 0;     // sheets; 0: any number
};

// A group to lay; `turn` of its arrangements alone, or -1: the best of all.
struct Token {
  std::size_t group = 0;
  int turn = -1;
  friend bool operator==(Token a, Token b) { return a.group == b.group && a.turn == b.turn; }
};

// Smaller is better, in this order.
struct Score {
  double left_over = 0;  // area for which there was no room
  int sheets = 0;
  double reach = 0;  // right end of what lies on the last sheet
  double moment =
      0;  // area times right end, summed over the last sheet: the smaller, the more will still fit
  friend bool operator<(const Score& a, const Score& b) {
    return std::tie(a.left_over, a.sheets, a.reach, a.moment) <
           std::tie(b.left_over, b.sheets, b.reach, b.moment);
  }
};

class Layout {
 public:
  Layout(const std::vector<Shape>& shapes, const std::vector<Group>& groups, const Board& board,
         NoFit& no_fit);

  // Lays the tokens in order on the first sheet that has room for each; pieces of a group that fits nowhere
  // on a sheet are tried singly before the next. Common first tokens of the last call stay where they are.
  const Score& lay(const std::vector<Token>& tokens, Rule rule, std::int64_t& work);

  const std::vector<std::vector<Laid>>& sheets() const { return sheets_; }
  const std::vector<std::size_t>& left_over() const { return left_over_; }  // pieces, one entry each

 private:
  struct Choice;
  struct Mark {  // of what was there before a token
    std::size_t laid = 0;
    std::size_t left_over = 0;
  };

  void take_up(std::size_t tokens);
  void lay(const Token& token, std::int64_t& work);
  bool lay_on(std::size_t sheet, std::size_t group, int turn, std::int64_t& work);
  bool open_sheet();
  Spots& spots(std::size_t sheet, std::size_t group, std::size_t turn);
  Score score() const;

  const std::vector<Shape>& shapes_;
  const std::vector<Group>& groups_;  // the first ones are the single pieces, in their order
  Board board_;
  NoFit& no_fit_;
  Rule rule_ = Rule::right_end;
  std::vector<Token> tokens_;
  std::vector<Mark> marks_;
  std::vector<std::size_t> order_;  // sheet of each laid piece, in the order of laying
  std::vector<std::vector<Laid>> sheets_;
  std::vector<double> reach_;
  std::vector<std::size_t> left_over_;
  std::map<std::tuple<std::size_t, std::size_t, std::size_t>, Spots> spots_;
  Score score_;
};

}  // namespace lamwright::nesting
