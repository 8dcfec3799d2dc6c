#include "exporters/json/summary.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/json/closing_json.hpp"
#include "exporters/json/figures_json.hpp"
#include "exporters/json/findings_json.hpp"
#include "exporters/json/profile_json.hpp"
#include "exporters/json/supply_json.hpp"
#include "kernel/press/common_notes.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

Json panel_json(const Panel& panel) {
  const auto line = [&](double height) { return line_at(panel, panel.pressed, height, "face"); };
  return {{"thickness", json_number(panel.thickness)},
          {"width", json_number(panel.width)},
          {"count", panel.count},
          {"face", to_text(panel.face)},
          {"trim", json_number(panel.trim)},
          {"neutral_height", json_number(panel.neutral_height)},
          {"girth",
           {{"inner", json_number(line(0).girth())},
            {"outer", json_number(line(panel.thickness).girth())},
            {"neutral", json_number(panel.pressed.girth())}}},
          {"chord", json_number(chord(panel.pressed))},
          {"released", {{"runs", json_runs(panel.released)}}},
          {"pressed", {{"runs", json_runs(line(panel.face_height()))}}}};
}

// `rise_rule`: what the trade's rule would make of a single arc, null for other shapes.
Json springback_json(const Job& job, const Panel& panel) {
  const Springback& springback = panel.springback;
  Json json{{"ratio", json_number(springback.share)},
            {"source", springback.source},
            {"spread", springback.spread ? json_number(*springback.spread) : Json(nullptr)},
            {"pieces", springback.pieces},
            {"rise_rule", nullptr}};
  if (const auto rule = rise_rule(job, panel))
    json["rise_rule"] = {{"rise", json_number(rule->rise)},
                         {"radius", json_number(rule->radius)},
                         {"by_curvature", json_number(rule->by_curvature)}};
  return json;
}

Json strap_json(const StrapEnd& strap) {
  Json json{{"leaves", json_point(strap.leaves)},
            {"mark", json_point(strap.mark)},
            {"run", json_number(strap.run)},
            {"exit_deg", json_number(degrees(strap.exit))}};
  if (strap.roller)
    json["roller"] = {{"axis", json_point(strap.roller->axis)},
                      {"diameter", json_number(strap.roller->diameter)},
                      {"on", json_point(strap.roller->on)},
                      {"off", json_point(strap.roller->off)}};
  return json;
}

// Pressures are nothing where none balances the pull.
Json choice_json(const PullChoice& choice) {
  const auto if_held = [&](double value) { return choice.mean > 0 ? json_number(value) : Json(nullptr); };
  return {{"axis_deg", json_number(degrees(choice.axis))},
          {"at", json_number(choice.at)},
          {"least", if_held(choice.least)},
          {"mean", if_held(choice.mean)},
          {"greatest", if_held(choice.greatest)},
          {"spread", if_held(choice.spread())}};
}

// Angles and shares of one run, least first; a share is the cosine of the angle.
Json run_pull_json(const PressPlan& plan, std::size_t i) {
  const RunPull& pull = plan.pull->runs[i];
  return {
      {"run", run_name(plan.neutral, i)},
      {"angle_deg",
       {{"least", json_number(degrees(pull.least()))}, {"greatest", json_number(degrees(pull.greatest()))}}},
      {"share",
       {{"least", json_number(pull.least_share())}, {"greatest", json_number(pull.greatest_share())}}}};
}

// Pressures as multiples of pull / (chord x width).
Json pull_json(const PressPlan& plan) {
  const Pull& pull = *plan.pull;
  Json runs = Json::array(), compared = Json::array();
  for (std::size_t i = 0; i < pull.runs.size(); ++i) runs.push_back(run_pull_json(plan, i));
  for (const NamedPull& named : pull.compared) {
    Json json = choice_json(named.choice);
    json["pull"] = named.name;
    json["chosen"] = &named == &pull.chosen();
    compared.push_back(json);
  }
  Json json{{"name", pull.name},
            {"axis_deg", json_number(degrees(pull.axis))},
            {"through", json_point(pull.through)},
            {"draft_deg", json_number(degrees(pull.draft))},
            {"runs", runs},
            {"compared", compared},
            {"best", pull.best ? choice_json(*pull.best) : Json(nullptr)},
            {"best_position", pull.best_position ? choice_json(*pull.best_position) : Json(nullptr)}};
  json["best_position_tensions"] =
      pull.tensions ? Json::array({json_number(pull.tensions->left), json_number(pull.tensions->right)})
                    : Json(nullptr);
  return json;
}

// Nothing where no balance of pressures holds the upper half. `stray` is negative on the side to which the
// pull line has to move before nothing lifts any more.
Json seating_json(const Seated& seated) {
  const Seating& seating = seated.seating;
  const bool held = seating.hold() == Hold::held;
  const auto if_held = [&](double value) { return held ? json_number(value) : Json(nullptr); };
  Json lifted = Json::array();
  for (const Stretch& s : seating.lifted())
    lifted.push_back(Json::array({json_number(s.from), json_number(s.to)}));
  const auto& room = seated.full_contact;
  return {{"hold", to_text(seating.hold())},
          {"pull", json_number(seated.pull)},
          {"unit", json_number(seated.unit)},
          {"least", if_held(seating.least())},
          {"mean", if_held(seating.mean())},
          {"greatest", if_held(seating.greatest())},
          {"side_thrust", seated.side_thrust ? json_number(*seated.side_thrust) : Json(nullptr)},
          {"tilt_deg", if_held(degrees(seating.tilt()))},
          {"stray", room ? Json::array({json_number(-room->from), json_number(room->to)}) : Json(nullptr)},
          {"lifted", held ? lifted : Json(nullptr)}};
}

Json loop_json(const PressPlan& plan, const Loop& loop) {
  return {{"anchor", loop.pinned ? "pin" : "loop"},
          {"length", json_number(loop.length)},
          {"open_length", json_number(loop.open_length)},
          {"count", 2 * plan.closures.size()}};
}

// `flat`: where it goes through the sheets laid flat, from their centre line and from the near edge;
// `recess_size`: width round the curve and depth of the recess opposite.
Json pins_json(const PressPlan& plan) {
  Json out = Json::array();
  for (const Pin& pin : plan.pins) {
    const double girth = girth_from_middle(plan, pin);
    out.push_back({{"at", json_point(pin.at)},
                   {"flat",
                    {{"from_middle", json_number(std::abs(girth))},
                     {"side", girth < 0 ? "left" : "right"},
                     {"from_edge", json_number(pin.at.z())}}},
                   {"diameter", json_number(pin.diameter)},
                   {"caul", to_text(pin.caul)},
                   {"recess", pin.recess},
                   {"recess_size",
                    pin.recess ? Json::array({json_number(pin.recess_width), json_number(pin.recess_depth)})
                               : Json(nullptr)}});
  }
  return out;
}

Json press_json(const PressPlan& plan) {
  Json stations = Json::array(), straps = Json::array(), strapped = Json::array();
  for (const Section& section : plan.sections) {
    stations.push_back(json_number(section.z));
    if (section.strapped) strapped.push_back(json_number(section.z));
  }
  if (!plan.closures.empty())
    straps = Json::array({strap_json(plan.closures.front().left), strap_json(plan.closures.front().right)});
  const Section& first = plan.sections.front();
  Json contact{{"lower", {{"runs", json_runs(first.lower)}, {"middle", json_number(pack_middle(plan))}}}};
  if (first.upper) contact["upper"] = {{"runs", json_runs(*first.upper)}};
  Json json{{"method", plan.method},
            {"reason", plan.reason},
            {"stations", stations},
            {"strapped", strapped},
            {"spacing",
             {{"pitch", json_number(plan.spacing.pitch)},
              {"clear", json_number(plan.spacing.clear)},
              {"every", plan.spacing.every}}},
            {"contact", contact},
            {"straps", straps},
            {"closures", closures_json(plan)},
            {"flats", flats_json(plan)},
            {"pins", pins_json(plan)}};
  // What a ratchet tightened a tenth more than its fellow drags the pack sideways by, N a strap.
  if (plan.load == Load::belt && !plan.closures.empty())
    json["side_drag"] = json_number(0.1 * plan.closures.front().tension);
  if (plan.pull) json["pull"] = pull_json(plan);
  if (plan.seated) json["seating"] = seating_json(*plan.seated);
  if (!plan.closures.empty() && plan.closures.front().loop)
    json["loops"] = loop_json(plan, *plan.closures.front().loop);
  if (plan.crown)
    json["crown"] = {
        {"height", json_number(plan.crown->height)},     {"half_span", json_number(plan.crown->half_span)},
        {"load", json_number(plan.crown->load)},         {"stiffness", json_number(plan.crown->stiffness)},
        {"pressure", json_number(plan.crown->pressure)}, {"stress", json_number(plan.crown->stress)}};
  if (plan.opening.norm() > 0) json["opening"] = json_point(plan.opening);
  return json;
}

Json hole_json(const Bore& bore) {
  Json json{{"kind", bore.kind()},
            {"use", to_text(bore.use)},
            {"diameter", json_number(bore.diameter)},
            {"depth", bore.depth ? json_number(*bore.depth) : Json(nullptr)}};
  if (bore.counterbore)
    json["counterbore"] = {{"diameter", json_number(bore.counterbore->diameter)},
                           {"depth", json_number(bore.counterbore->depth)}};
  json["at"] = json_point(bore.at);
  json["axis"] = json_point(bore.axis);
  return json;
}

// Files of the build that show this part.
Json files_of(const Part& part, const std::vector<std::string>& written) {
  Json files = Json::array();
  for (const std::string& path : written)
    for (const std::string folder : {"parts/", "drawings/"})
      if (path.starts_with(folder + part.name() + ".")) files.push_back(path);
  return files;
}

Json part_json(const Part& part, std::size_t count, const std::vector<std::string>& written) {
  const Part::Box box = part.box();
  Json holes = Json::array();
  for (const Bore& bore : part.bores()) holes.push_back(hole_json(bore));
  return {{"name", part.name()},
          {"kind", to_text(part.kind())},
          {"count", count},
          {"stock", part.stock()},
          {"size", json_point(box.size())},
          {"origin", json_point(Vec2(-box.low.head<2>()))},
          {"volume", json_number(part.volume())},
          {"area", json_number(part.face_area())},
          {"holes", holes},
          {"files", files_of(part, written)}};
}

Json parts_json(const PressPlan& plan, const std::vector<std::string>& written) {
  Json parts = Json::array();
  for (std::size_t i = 0; i < plan.parts.size(); ++i)
    parts.push_back(part_json(plan.parts[i], instances(plan, i), written));
  return parts;
}

// Cut with the press but no pieces of it, so they are not among the parts.
Json aids_json(const PressPlan& plan, const std::vector<std::string>& written) {
  Json aids = Json::array();
  for (const ShopAid& aid : plan.aids) aids.push_back(part_json(aid.part, std::size_t(aid.count), written));
  return aids;
}

std::vector<std::string> all_notes(const ExportInput& input) {
  std::vector<std::string> notes = input.plan.notes;
  notes.insert(notes.end(), input.supply.notes.begin(), input.supply.notes.end());
  return notes;
}

Json blanks_json(const Panel& panel) {
  Json out = Json::array();
  for (const Blank& blank : blanks(panel))
    out.push_back({{"ply", blank.ply},
                   {"thickness", json_number(blank.thickness)},
                   {"girth", json_number(blank.girth)},
                   {"width", json_number(blank.width)},
                   {"count", blank.count}});
  return out;
}

// With what no plan lays out (clamps by hand, tape) where everything was counted.
Json hardware_json(const PressPlan& plan, const Supply& supply) {
  Json out = Json::array();
  if (supply.hardware.empty())
    for (const Hardware& item : plan.hardware)
      out.push_back({{"name", item.name}, {"use", item.use}, {"count", item.count}, {"unit", "piece"}});
  for (const SupplyItem& item : supply.hardware)
    out.push_back(
        {{"name", item.name}, {"use", item.use}, {"count", std::lround(item.all)}, {"unit", item.unit}});
  return out;
}

}  // namespace

Json summary_json(const ExportInput& input, const std::vector<std::string>& written) {
  const PressPlan& plan = input.plan;
  const Panel& panel = plan.panel;
  return {{"schema", 1},
          {"title", plan.title},
          {"number", plan.number},
          {"date", plan.date},
          {"units", "mm"},
          {"panel", panel_json(panel)},
          {"springback", springback_json(input.job, panel)},
          {"press", press_json(plan)},
          {"parts", parts_json(plan, written)},
          {"aids", aids_json(plan, written)},
          {"cauls", cauls_json(plan)},
          {"sheets", sheets_json(input.supply)},
          {"timber", timber_json(input.supply)},
          {"pack", pack_json(input.supply)},
          {"buy", items_json(input.supply.material)},
          {"layup", layup_json(panel)},
          {"pressure", pressure_json(input.job, input.figures.pressure)},
          {"glue", glue_json(input.job, panel, input.figures.glue)},
          {"masses", masses_json(input.figures.masses)},
          {"blanks", blanks_json(panel)},
          {"hardware", hardware_json(plan, input.supply)},
          {"findings", json_findings(input.findings)},
          {"notes", all_notes(input)},
          {"read", input.job.notes}};
}

void SummaryExporter::write(const ExportInput& input, Sink& sink) const {
  sink.write("summary.json", json_text(summary_json(input, sink.written())));
}

}  // namespace lamwright
