#include "exporters/step/written.hpp"

#include <charconv>
#include <map>

#include "shared/error.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

long number_at(std::string_view text, std::size_t at) {
  long id = 0;
  std::from_chars(text.data() + at, text.data() + text.size(), id);
  return id;
}

// Numbers of the instances that a statement speaks of, those in strings left out.
std::vector<long> references(std::string_view statement) {
  std::vector<long> out;
  bool in_string = false;
  for (std::size_t at = 0; at < statement.size(); ++at) {
    if (statement[at] == '\'') in_string = !in_string;
    if (!in_string && statement[at] == '#') out.push_back(number_at(statement, at + 1));
  }
  return out;
}

// Of the kind named and with this many references, or a fault of ours.
std::vector<long> references(std::string_view statement, std::string_view kind, std::size_t count) {
  ensure(statement.substr(0, statement.find('(')) == kind, "a product is written as the standard says");
  std::vector<long> out = references(statement);
  ensure(out.size() == count, "a product is written as the writer does");
  return out;
}

// As it is written, apostrophes in it doubled.
std::string first_string(std::string_view statement) {
  const std::size_t from = statement.find('\'') + 1;
  std::size_t end = from > 0 ? statement.find('\'', from) : std::string_view::npos;
  while (end != std::string_view::npos && statement.substr(end, 2) == "''")
    end = statement.find('\'', end + 2);
  ensure(end != std::string_view::npos, "a product has a name");
  return std::string(statement.substr(from, end - from));
}

// Statements by number. One begins a line; lists go on over lines, strings do not.
class Statements {
 public:
  explicit Statements(std::string_view data) {
    constexpr std::string_view kIs = " = ", kEnd = ";\n";
    for (std::size_t at = 0; at < data.size();) {
      const std::size_t is = data.find(kIs, at), end = data.find(kEnd, at);
      ensure(data[at] == '#' && is < end && end < data.size(), "a DATA section consists of statements");
      const auto id = static_cast<std::size_t>(number_at(data, at + 1));
      if (id >= all_.size()) all_.resize(id + 1);
      all_[id] = data.substr(is + kIs.size(), end - is - kIs.size());
      at = end + kEnd.size();
    }
  }

  const std::vector<std::string_view>& all() const { return all_; }
  std::string_view at(long id) const {
    ensure(id > 0 && id <= last(), "a statement speaks of one that exists");
    return all_[static_cast<std::size_t>(id)];
  }
  long last() const { return static_cast<long>(all_.size()) - 1; }

 private:
  std::vector<std::string_view> all_;
};

struct Found {
  WrittenProduct product;
  long product_context = 0, definition_context = 0, shape_context = 0;
};

// From what binds a product to its shape down to the product's name.
std::pair<std::string, Found> found(const Statements& statements, std::string_view binding) {
  const auto bound = references(binding, "SHAPE_DEFINITION_REPRESENTATION", 2);
  const auto shape = references(statements.at(bound[0]), "PRODUCT_DEFINITION_SHAPE", 1);
  const auto definition = references(statements.at(shape[0]), "PRODUCT_DEFINITION", 2);
  const auto formation = references(statements.at(definition[0]), "PRODUCT_DEFINITION_FORMATION", 1);
  const std::string_view product = statements.at(formation[0]);
  const auto items = references(statements.at(bound[1]), "ADVANCED_BREP_SHAPE_REPRESENTATION", 3);
  ensure(statements.at(items[0]).substr(0, 18) == "AXIS2_PLACEMENT_3D", "a solid is written with its origin");
  return {first_string(product),
          {{shape[0], bound[1], items[0]}, references(product, "PRODUCT", 1)[0], definition[1], items[2]}};
}

}  // namespace

Written written_products(std::string_view data, const std::vector<std::string>& names) {
  ensure(!names.empty(), "products are asked for");
  const Statements statements(data);
  std::map<std::string, Found> by_name;
  for (const std::string_view statement : statements.all())
    if (statement.substr(0, 32) == "SHAPE_DEFINITION_REPRESENTATION(")
      by_name.insert(found(statements, statement));
  Written out;
  for (const std::string& name : names) {
    const auto one = by_name.find(step_string(name));
    ensure(one != by_name.end(), "each product is in the STEP file");
    out.products.push_back(one->second.product);
  }
  const Found& first = by_name.at(step_string(names.front()));
  out.product_context = first.product_context;
  out.definition_context = first.definition_context;
  out.shape_context = statements.at(first.shape_context);
  ensure(!out.shape_context.empty(), "a shape has its context");
  out.last = statements.last();
  return out;
}

}  // namespace lamwright
