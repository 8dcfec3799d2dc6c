#include "exporters/json/figures_json.hpp"

namespace lamwright {
namespace {

Json json_list(const std::vector<double>& values) {
  Json out = Json::array();
  for (const double value : values) out.push_back(json_number(value));
  return out;
}

Json json_matrix(const Eigen::Matrix3d& matrix) {
  Json out = Json::array();
  for (int row = 0; row < 3; ++row) {
    Json line = Json::array();
    for (int column = 0; column < 3; ++column) line.push_back(json_number(matrix(row, column)));
    out.push_back(line);
  }
  return out;
}

}  // namespace

Json pressure_json(const Job& job, const std::optional<PressureMap>& map) {
  Json json{{"required", json_number(job.layup.glue_row.pressure_low)},
            {"most", json_number(job.layup.glue_row.pressure_high)},
            {"least", nullptr},
            {"mean", nullptr},
            {"greatest", nullptr},
            {"finished", nullptr},
            {"map", nullptr}};
  if (!map) return json;
  Json value = Json::array();
  for (const auto& row : map->value) value.push_back(json_list(row));
  json["least"] = json_number(map->least);
  json["mean"] = json_number(map->mean);
  json["greatest"] = json_number(map->greatest);
  json["finished"] = {{"least", json_number(map->sound_least)},
                      {"greatest", json_number(map->sound_greatest)},
                      {"least_girth", json_number(map->least_girth)},
                      {"least_width", json_number(map->least_width)}};
  json["even"] = json_number(map->straps.even());
  json["map"] = {{"girth", json_list(map->girth)}, {"width", json_list(map->width)}, {"value", value}};
  return json;
}

Json glue_json(const Job& job, const Panel& panel, const std::optional<GlueWork>& work) {
  const Glue& glue = job.layup.glue_row;
  Json json{{"name", panel.glue},
            {"line", json_number(panel.glue_line)},
            {"lines", panel.plies.size() - 1},
            {"pressure", Json::array({json_number(glue.pressure_low), json_number(glue.pressure_high)})},
            {"spread", json_number(glue.spread)},
            {"faces", glue.faces},
            {"least_temperature", json_number(glue.least_temperature)},
            {"source", glue.source}};
  if (!work) return json;
  json["area"] = json_number(work->area);
  json["mass"] = json_number(work->mass);
  json["total_mass"] = json_number(work->total_mass);
  json["line_grams"] = json_number(work->line_grams());
  json["minutes"] = {{"spreading", json_number(work->spreading)},
                     {"stage", json_number(work->longest_stage())},
                     {"open", json_number(work->open)},
                     {"setting", json_number(work->setting)},
                     {"setting_by_two", json_number(work->setting_by_two())},
                     {"closed", json_number(work->closed)},
                     {"pressing", json_number(work->press)}};
  json["cure_hours"] = json_number(work->cure);
  json["stages"] = work->stages;
  json["pressings"] = work->pressings;
  json["days"] = work->days;
  json["former_uses"] = work->uses;
  return json;
}

Json masses_json(const std::optional<Masses>& masses) {
  if (!masses) return nullptr;
  return {{"panel", json_number(masses->panel)},
          {"cauls", json_number(masses->cauls)},
          {"lower", json_number(masses->lower)},
          {"upper", json_number(masses->upper)},
          {"press", json_number(masses->press)},
          {"heaviest", {{"part", masses->heaviest_part}, {"mass", json_number(masses->heaviest)}}}};
}

Json layup_json(const Panel& panel) {
  std::vector<PlateLayer> layers;
  for (const Ply& ply : panel.plies) layers.insert(layers.end(), ply.veneers.begin(), ply.veneers.end());
  Json json{{"bonded_stiffness", json_number(panel.bonded)}, {"loose_stiffness", json_number(panel.loose)}};
  if (layers.empty()) return json;
  const Laminate plate = laminate(layers, panel.thickness / 2);
  const Axes bending = free_bending(plate);
  json["about"] = json_number(panel.thickness / 2);  // height above the inner face
  json["A"] = json_matrix(plate.A);
  json["B"] = json_matrix(plate.B);
  json["D"] = json_matrix(plate.D);
  json["bending"] = {{"girth", json_number(bending.girth)}, {"width", json_number(bending.width)}};
  return json;
}

}  // namespace lamwright
