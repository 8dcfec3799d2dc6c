#include "exporters/step/step_exporter.hpp"

#include "exporters/step/assembly.hpp"
#include "exporters/step/step_data.hpp"
#include "kernel/solid/solid.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright {
namespace {

// A file is complete only when it holds a solid for each product: the writer reports success without any.
std::string checked_data(const ProductModel& model, const StepOptions& options) {
  std::string data = tidied_data(raw_step_data(model.name, model.products, options));
  const int solids = entity_count(data, "MANIFOLD_SOLID_BREP");
  if (solids != int(model.products.size()))
    throw Error(
        ErrorKind::internal, Place{{}, 0, 0, "STEP file of " + model.name},
        "the file holds " + counted(solids, "solid") + " instead of " + std::to_string(model.products.size()),
        "please report it with the job file");
  data += assembly_data(model, data);
  return data;
}

std::vector<Solid> solids_of(const PressPlan& plan) {
  std::vector<Solid> solids;
  for (const Part& part : plan.parts) solids.push_back(build_solid(part));
  return solids;
}

}  // namespace

void StepExporter::write(const ExportInput& input, Sink& sink) const {
  const PressPlan& plan = input.plan;
  const StepOptions options{step_schema(input.job.outputs.step), pcurves_};
  const auto send = [&](const std::string& path, const ProductModel& model, const std::string& title) {
    const std::string file_name = path.substr(path.rfind('/') + 1);
    sink.write(path, step_file({file_name, title, plan.date, options.schema}, checked_data(model, options)));
  };
  const auto titled = [&](const std::string& what) {
    return plan.title.empty() ? what : plan.title + ": " + what;
  };

  input.progress.step("solids");
  const std::vector<Solid> solids = solids_of(plan);
  input.progress.step("press.step");
  send("press.step", press_model(plan, solids), titled("press"));
  input.progress.step("parts");
  for (std::size_t i = 0; i < plan.parts.size(); ++i)
    send("parts/" + plan.parts[i].name() + ".step", part_model(plan.parts[i], solids[i]),
         titled(plan.parts[i].name()));
}

}  // namespace lamwright
