#include "kernel/nest/guillotine_table.hpp"

#include <algorithm>
#include <set>

namespace lamwright {
namespace {

// The table costs the third power of this, and its square for each item.
std::size_t most_places(std::size_t items) { return items <= 12 ? 150 : 60; }

struct Places {
  std::vector<Whole> at;
  bool all = true;
};

// Sums of sizes up to the room, those of few terms first.
Places useful_places(const std::set<Whole>& sizes, Whole room, std::size_t most) {
  std::set<Whole> all{0}, last{0};
  bool complete = true;
  while (!last.empty() && complete) {
    std::set<Whole> next;
    for (const Whole sum : last)
      for (const Whole size : sizes) {
        if (sum + size > room || all.count(sum + size)) continue;
        if (all.size() == most) {
          complete = false;
          continue;
        }
        all.insert(sum + size);
        next.insert(sum + size);
      }
    last = std::move(next);
  }
  return {{all.begin(), all.end()}, complete};
}

int greatest_within(const std::vector<Whole>& places, Whole room) {
  return int(std::upper_bound(places.begin(), places.end(), room) - places.begin()) - 1;
}

// Only cuts in the lower half: the other halves mirror them.
std::vector<std::vector<int>> rests(const std::vector<Whole>& places) {
  std::vector<std::vector<int>> all(places.size());
  for (std::size_t i = 0; i < places.size(); ++i)
    for (std::size_t k = 1; k < places.size() && 2 * places[k] <= places[i]; ++k) {
      if (all[i].empty()) all[i].push_back(0);
      all[i].push_back(greatest_within(places, places[i] - places[k]));
    }
  return all;
}

}  // namespace

GuillotineTable::GuillotineTable(const Field& empty, std::vector<Rectangle> items)
    : empty_(empty), items_(std::move(items)) {
  std::set<Whole> widths, heights;
  for (const Rectangle& item : items_) {
    widths.insert(item.width);
    heights.insert(item.height);
    if (item.turns) widths.insert(item.height), heights.insert(item.width);
  }
  const std::size_t most = most_places(items_.size());
  const Places x = useful_places(widths, empty.width, most), y = useful_places(heights, empty.height, most);
  xs_ = x.at;
  ys_ = y.at;
  exact_ = x.all && y.all;
  rest_x_ = rests(xs_);
  rest_y_ = rests(ys_);
}

void GuillotineTable::best_piece(std::size_t i, std::size_t j, const std::vector<double>& values) {
  for (std::size_t n = 0; n < items_.size(); ++n)
    for (const bool turned : {false, true}) {
      if (turned && !items_[n].turns) continue;
      const Whole w = turned ? items_[n].height : items_[n].width;
      const Whole h = turned ? items_[n].width : items_[n].height;
      if (w > xs_[i] || h > ys_[j] || values[n] <= worth_[cell(i, j)]) continue;
      worth_[cell(i, j)] = values[n];
      choice_[cell(i, j)] = {Choice::Kind::piece, int(n), turned};
    }
}

void GuillotineTable::best_cut(std::size_t i, std::size_t j) {
  double best = worth_[cell(i, j)];
  Choice choice = choice_[cell(i, j)];
  for (std::size_t k = 1; k < rest_x_[i].size(); ++k)
    if (const double w = worth_[cell(k, j)] + worth_[cell(rest_x_[i][k], j)]; w > best)
      best = w, choice = {Choice::Kind::across, int(k), false};
  for (std::size_t k = 1; k < rest_y_[j].size(); ++k)
    if (const double w = worth_[cell(i, k)] + worth_[cell(i, rest_y_[j][k])]; w > best)
      best = w, choice = {Choice::Kind::along, int(k), false};
  worth_[cell(i, j)] = best;
  choice_[cell(i, j)] = choice;
}

double GuillotineTable::solve(const std::vector<double>& values) {
  worth_.assign(xs_.size() * ys_.size(), 0);
  choice_.assign(worth_.size(), {});
  for (std::size_t i = 1; i < xs_.size(); ++i)
    for (std::size_t j = 1; j < ys_.size(); ++j) {
      best_piece(i, j, values);
      best_cut(i, j);
    }
  return worth_.back();
}

void GuillotineTable::lay(const Field& field, SawnSheet& sheet, std::vector<int>& counts) const {
  const int i = greatest_within(xs_, field.width), j = greatest_within(ys_, field.height);
  const Choice choice = choice_[cell(std::size_t(i), std::size_t(j))];
  Field low = field, high = field;
  switch (choice.kind) {
    case Choice::Kind::nothing:
      sheet.free.push_back(field);
      return;
    case Choice::Kind::piece:
      if (counts[choice.index] == 0) return sheet.free.push_back(field);
      --counts[choice.index];
      return saw_off(sheet, field, items_[choice.index], {choice.index, choice.turned, 0, 0},
                     FillingRule::Split::greatest_rest);
    case Choice::Kind::across:
      low.width = xs_[choice.index];
      high.x += low.width;
      high.width -= low.width;
      break;
    case Choice::Kind::along:
      low.height = ys_[choice.index];
      high.y += low.height;
      high.height -= low.height;
      break;
  }
  lay(low, sheet, counts);
  lay(high, sheet, counts);
}

SawnSheet GuillotineTable::pattern(std::vector<int>& counts) const {
  SawnSheet sheet;
  lay(empty_, sheet, counts);
  return sheet;
}

}  // namespace lamwright
