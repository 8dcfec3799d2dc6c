#include "exporters/step/assembly.hpp"

#include <cmath>
#include <map>

#include "exporters/step/written.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kLine = 72;  // of a list; no reader needs it

std::string ref(long id) { return "#" + std::to_string(id); }

// A real has its point, even without places behind it.
std::string real(double value, int decimals) {
  ensure(std::isfinite(value), "a number in a STEP file is finite");
  std::string text = number(value, decimals);
  if (text.find('.') == std::string::npos) text += '.';
  return text;
}

std::string triple(const Vec3& v, int decimals) {
  return "(" + real(v.x(), decimals) + "," + real(v.y(), decimals) + "," + real(v.z(), decimals) + ")";
}

std::string quoted(const std::string& text) { return "'" + step_string(text) + "'"; }

// "(#1,#2)", a new line after the first comma past the customary length.
std::string list(const std::vector<long>& ids) {
  std::string out = "(";
  std::size_t line = 0;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (i > 0) out += ',';
    if (out.size() - line > kLine) {
      out += '\n';
      line = out.size();
    }
    out += ref(ids[i]);
  }
  return out += ')';
}

class AssemblyText {
 public:
  explicit AssemblyText(const Written& written) : written_(written), next_(written.last + 1) {}

  std::string run(const ProductModel& model) {
    const Assembly root = begin(model.name, model.name);
    std::vector<long> placements;
    for (const SubAssembly& group : model.groups) placements.push_back(add(root, group));
    for (const Instance& instance : model.instances) placements.push_back(add(root, instance));
    end(root, placements);
    return std::move(out_);
  }

 private:
  // A product of instances: its shape is where they are placed.
  struct Assembly {
    WrittenProduct product;
    long context = 0;
  };

  long put(const std::string& statement) {
    put(next_, statement);
    return next_++;
  }
  void put(long id, const std::string& statement) {
    out_ += ref(id);
    out_ += " = ";
    out_ += statement;
    out_ += ";\n";
  }

  // `id` tells it from every other product; a part may have the same name.
  Assembly begin(const std::string& id, const std::string& name) {
    const long product =
        put("PRODUCT(" + quoted(id) + "," + quoted(name) + ",'',(" + ref(written_.product_context) + "))");
    put("PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(" + ref(product) + "))");
    const long formation = put("PRODUCT_DEFINITION_FORMATION('',''," + ref(product) + ")");
    Assembly out;
    out.product.definition = put("PRODUCT_DEFINITION('design',''," + ref(formation) + "," +
                                 ref(written_.definition_context) + ")");
    const long shape = put("PRODUCT_DEFINITION_SHAPE('',''," + ref(out.product.definition) + ")");
    // Shapes that are placed in one another stand in contexts of their own (ISO 10303-43).
    out.context = put(written_.shape_context);
    out.product.origin = placement({});
    out.product.representation = next_++;
    put("SHAPE_DEFINITION_REPRESENTATION(" + ref(shape) + "," + ref(out.product.representation) + ")");
    return out;
  }

  void end(const Assembly& assembly, std::vector<long> placements) {
    placements.insert(placements.begin(), assembly.product.origin);
    put(assembly.product.representation,
        "SHAPE_REPRESENTATION(''," + list(placements) + "," + ref(assembly.context) + ")");
  }

  long add(const Assembly& home, const Instance& instance) {
    return place(home, written_.products[instance.product], instance.name, instance.placed);
  }

  long add(const Assembly& root, const SubAssembly& group) {
    const Assembly own = begin(group.name + " assembly", group.name);
    std::vector<long> placements;
    for (const Instance& instance : group.instances) placements.push_back(add(own, instance));
    end(own, placements);
    return place(root, own.product, group.name, {});
  }

  // The placement in the home's shape, which carries the product's own origin there.
  long place(const Assembly& home, const WrittenProduct& product, const std::string& name,
             const Frame& placed) {
    const long at = placement(placed);
    const long carried =
        put("ITEM_DEFINED_TRANSFORMATION('',''," + ref(product.origin) + "," + ref(at) + ")");
    const long related =
        put("( REPRESENTATION_RELATIONSHIP('',''," + ref(product.representation) + "," +
            ref(home.product.representation) + ") REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(" +
            ref(carried) + ") SHAPE_REPRESENTATION_RELATIONSHIP() )");
    const long used =
        put("NEXT_ASSEMBLY_USAGE_OCCURRENCE('" + std::to_string(++occurrences_) + "'," + quoted(name) +
            ",''," + ref(home.product.definition) + "," + ref(product.definition) + ",$)");
    const long shape = put("PRODUCT_DEFINITION_SHAPE('Placement','Placement of an item'," + ref(used) + ")");
    put("CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(" + ref(related) + "," + ref(shape) + ")");
    return at;
  }

  long placement(const Frame& frame) {
    const long at = put("CARTESIAN_POINT(''," + triple(frame.origin, 9) + ")");
    const long z = direction(frame.z()), x = direction(frame.x);
    return put("AXIS2_PLACEMENT_3D(''," + ref(at) + "," + ref(z) + "," + ref(x) + ")");
  }

  // Directions are few: each is written once.
  long direction(const Vec3& v) {
    ensure(v.norm() > 0.5, "axes of placements are unit");
    const std::string text = triple(v, 12);
    const auto known = directions_.find(text);
    if (known != directions_.end()) return known->second;
    return directions_[text] = put("DIRECTION(''," + text + ")");
  }

  const Written& written_;
  long next_;
  int occurrences_ = 0;
  std::map<std::string, long> directions_;
  std::string out_;
};

}  // namespace

std::string assembly_data(const ProductModel& model, std::string_view data) {
  if (model.single()) return {};
  std::vector<std::string> names;
  for (const Product& product : model.products) names.push_back(product.name);
  const Written written = written_products(data, names);
  return AssemblyText(written).run(model);
}

}  // namespace lamwright
