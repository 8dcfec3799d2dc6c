#include "kernel/supply/flat_parts.hpp"

#include <algorithm>
#include <cmath>
#include <deque>

#include "kernel/nest/true_shape.hpp"
#include "kernel/press/labels.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A flat part and the names of its pieces, each of which goes onto a sheet.
struct Wanted {
  const Part* part;
  std::deque<std::string> names;
  std::deque<std::size_t> stations;  // of formers, counted from the near end
};

std::size_t station_of(const PressPlan& plan, const Body& body) {
  const Part& part = plan.parts[body.part];
  const Part::Box box = part.box();
  const double middle = body.placed.point((box.low + box.high) / 2).z();
  std::size_t nearest = 0;
  for (std::size_t i = 1; i < plan.sections.size(); ++i)
    if (std::abs(plan.sections[i].z - middle) < std::abs(plan.sections[nearest].z - middle)) nearest = i;
  return nearest + 1;
}

std::vector<Wanted> wanted_of(const PressPlan& plan) {
  std::vector<Wanted> all;
  for (const Part& part : plan.parts) all.push_back({&part, {}, {}});
  for (const Body& body : plan.bodies) {
    all[body.part].names.push_back(body.name);
    all[body.part].stations.push_back(station_of(plan, body));
  }
  std::erase_if(all, [](const Wanted& wanted) { return !wanted.part->board(); });
  for (const ShopAid& aid : plan.aids) {
    Wanted wanted{&aid.part, {}, {}};
    for (int i = 1; i <= aid.count; ++i)
      wanted.names.push_back(aid.part.name() +
                             (aid.count > 1 ? (i < 10 ? "-0" : "-") + std::to_string(i) : std::string()));
    all.push_back(std::move(wanted));
  }
  return all;
}

// The blank to write the station into is filled in: on a sheet it is known which former it is.
Part with_station(const Part& part, std::size_t station, std::size_t formers) {
  std::vector<Mark> marks = part.marks();
  for (Mark& mark : marks)
    if (mark.text == station_text({}, formers)) mark.text = station_text(station, formers);
  return part.marked(std::move(marks));
}

SheetPiece next_piece(Wanted& wanted, const Placing& placing, std::size_t formers) {
  const std::string name = wanted.names.front();
  wanted.names.pop_front();
  if (wanted.stations.empty()) return {*wanted.part, name, placing};
  const std::size_t station = wanted.stations.front();
  wanted.stations.pop_front();
  return {with_station(*wanted.part, station, formers), name, placing};
}

Box2 placed_box(const SheetPiece& piece) {
  Box2 box;
  for (const Segment& s : piece.part.outline().segments()) box.add(lamwright::box(piece.placing.segment(s)));
  return box;
}

void measure(CutSheet& sheet, bool last) {
  double area = 0, right = 0;
  for (const SheetPiece& piece : sheet.pieces) {
    area += piece.part.outline().area();
    right = std::max(right, placed_box(piece).high.x());
  }
  sheet.used = std::min(sheet.size.x(), right + sheet.margin);
  sheet.yield = area / ((last ? sheet.used : sheet.size.x()) * sheet.size.y());
}

std::string oversize_note(const Job& job, const Part& part, const Vec2& sheet) {
  const Vec2 size = part.outline().box().size();
  return part.name() + " (" + number(size.x(), 1) + " x " + number(size.y(), 1) + ") fits on no sheet of " +
         job.formers.board + " " + number(sheet.x()) + " x " + number(sheet.y()) + " with a margin of " +
         number(job.outputs.margin) + ": give a larger one by outputs.sheet, or join it from two pieces.";
}

}  // namespace

Vec2 board_sheet(const Job& job) { return job.outputs.sheet.value_or(job.formers.board_row.sheet); }

std::vector<CutSheet> flat_parts(const Job& job, const PressPlan& plan, const std::function<void()>& step,
                                 std::vector<std::string>& notes) {
  std::vector<Wanted> wanted = wanted_of(plan);
  std::vector<NestPiece> pieces;
  const Turns turns = job.outputs.grain ? Turns::half_turn : Turns::any_quarter;
  for (const Wanted& w : wanted)
    pieces.push_back({w.part->name(), w.part->outline(), int(w.names.size()), turns});
  if (pieces.empty()) return {};
  const Vec2 size = board_sheet(job);
  const NestResult nested = nest(pieces, {size, job.outputs.margin, job.outputs.spacing, 0}, step);
  for (const std::size_t i : nested.oversize) notes.push_back(oversize_note(job, *wanted[i].part, size));
  std::vector<CutSheet> sheets(
      std::size_t(nested.sheets),
      {job.formers.board, job.formers.thickness, size, job.outputs.margin, {}, 0, 0});
  for (const NestedAt& at : nested.placed)
    sheets[std::size_t(at.sheet)].pieces.push_back(
        next_piece(wanted[at.piece], at.placing, plan.sections.size()));
  for (CutSheet& sheet : sheets) measure(sheet, &sheet == &sheets.back());
  return sheets;
}

}  // namespace lamwright
