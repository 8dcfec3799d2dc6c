#include "kernel/supply/timber.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"

namespace lamwright {
namespace {

bool of_timber(const Part& part) {
  return !part.board() && part.kind() != PartKind::panel && part.kind() != PartKind::slat;
}

// The measures that are left when those nearest to the section's are taken out: a spacer block may be shorter
// than its section is wide.
double besides(std::vector<double> sizes, const Vec2& section) {
  for (const double side : {section.x(), section.y()})
    sizes.erase(std::min_element(sizes.begin(), sizes.end(), [&](double a, double b) {
      return std::abs(a - side) < std::abs(b - side);
    }));
  return sizes.front();
}

std::size_t count_of(const PressPlan& plan, const Part& part) {
  return instances(plan, std::size_t(&part - plan.parts.data()));
}

TimberCut& section_named(std::vector<TimberCut>& cuts, const std::string& stock) {
  const auto found =
      std::find_if(cuts.begin(), cuts.end(), [&](const TimberCut& cut) { return cut.stock == stock; });
  if (found != cuts.end()) return *found;
  cuts.push_back({stock, {}, {}});
  return cuts.back();
}

void note_missing(const TimberCut& cut, const std::vector<double>& lengths, std::vector<std::string>& notes) {
  for (std::size_t i = 0; i < cut.wanted.size(); ++i)
    if (cut.plan.missing[i] > 0)
      notes.push_back(cut.wanted[i].name + " is " + number(cut.wanted[i].length, 1) + " long, the longest " +
                      cut.stock + " that is bought " +
                      number(*std::max_element(lengths.begin(), lengths.end())) +
                      ": name the length to buy in outputs.lengths.");
}

}  // namespace

double cut_length(const Job& job, const Part& part) {
  const Vec3 size = part.box().size();
  const std::vector<double> sizes{size.x(), size.y(), size.z()};
  if (part.kind() == PartKind::spacer_block)
    return besides(sizes, {job.formers.block_width, job.formers.block_depth});
  if (part.kind() == PartKind::stop) return size.z();
  return size.x();
}

std::vector<TimberCut> timber(const Job& job, const PressPlan& plan, std::vector<std::string>& notes) {
  std::vector<TimberCut> cuts;
  for (const Part& part : plan.parts)
    if (of_timber(part))
      section_named(cuts, part.stock())
          .wanted.push_back({part.name(), cut_length(job, part), int(count_of(plan, part))});
  std::vector<StockLength> stock;
  for (const double length : job.outputs.lengths) stock.push_back({length, {}});
  for (TimberCut& cut : cuts) {
    cut.plan = cut_lengths(cut.wanted, stock, job.outputs.kerf);
    note_missing(cut, job.outputs.lengths, notes);
  }
  return cuts;
}

}  // namespace lamwright
