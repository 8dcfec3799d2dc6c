#include "kernel/reading/dxf/document.hpp"

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr const char* kAgain = "save the drawing again as text DXF";

void read_tables(Records& records, Layers& layers) {
  while (!records.at_end() && records.type() != "ENDSEC")
    if (records.type() == "LAYER")
      layers.add(records.next());
    else
      records.skip();
}

void read_blocks(Records& records, Blocks& blocks) {
  while (!records.at_end() && records.type() != "ENDSEC") {
    if (records.type() != "BLOCK") {
      records.skip();
      continue;
    }
    const Record head = records.next();
    blocks.add(head, records);
  }
}

void read_section(Records& records, Document& out) {
  const Record section = records.next();
  const Tag* name = section.find(2);
  if (section.type != "SECTION" || !name)
    throw fault(records.file(), section.line, "expected a SECTION, found \"" + shown(section.type) + "\"",
                kAgain);
  if (name->value == "HEADER") out.units = header_units(section);
  if (name->value == "TABLES") read_tables(records, out.layers);
  if (name->value == "BLOCKS") read_blocks(records, out.blocks);
  if (name->value == "ENTITIES") out.entities.push_back(records);
  while (!records.at_end() && records.type() != "ENDSEC") records.skip();
  if (records.at_end())
    throw fault(records.file(), records.line(), "the file ends within section " + shown(name->value),
                "it is cut short; save the drawing again");
  records.skip();
}

}  // namespace

Document document(std::string_view text, const std::string& file) {
  Records records(Tags(text, file));
  Document out;
  while (!records.at_end() && records.type() != "EOF") read_section(records, out);
  if (out.entities.empty()) throw fault(file, 0, "there is no section ENTITIES", kAgain);
  return out;
}

}  // namespace lamwright::dxf_reading
