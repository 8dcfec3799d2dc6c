#include <iostream>
#include <map>

#include "exporters/svg/svg_exporter.hpp"
#include "kernel/plugin/evaluate.hpp"

using namespace lamwright;

struct NoFiles : Sources {
  std::string read(const std::string& name) const override { throw file_error(name, "is not read here"); }
};

struct Memory : Sink {
  std::vector<std::string> names;
  std::map<std::string, std::string> files;
  void write(const std::string& path, std::string_view data) override {
    files[names.emplace_back(path)] = data;
  }
  const std::vector<std::string>& written() const override { return names; }
};

int main() {
  const std::string job(std::istreambuf_iterator<char>(std::cin), {});
  Registry registry;
  add_press_methods(registry);
  Progress silent;
  const Evaluation found = evaluate(job, "job.toml", NoFiles(), registry, silent);
  for (const Error& error : found.errors) std::cerr << error.what() << "\n";
  if (!found.plan) return 1;
  for (const Finding& f : worst_first(found.findings)) std::cout << to_text(f.verdict) << " " << f.id << "\n";
  Memory memory;
  SvgExporter().write({*found.job, *found.plan, found.findings, silent, found.figures}, memory);
  for (const auto& [name, data] : memory.files) std::cout << name << " " << data.size() << "\n";
}
