// What the writer made of products: where each stands in a DATA section. No OpenCASCADE.
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace lamwright {

// Instance numbers ("#5" is 5) of one product, by ISO 10303-41.
struct WrittenProduct {
  long definition = 0;      // PRODUCT_DEFINITION
  long representation = 0;  // of its shape
  long origin = 0;          // the placement at the solid's own origin, an item of the representation
  bool operator==(const WrittenProduct&) const = default;
};

struct Written {
  std::vector<WrittenProduct> products;  // in the order asked
  long product_context = 0;              // of the first product; others may stand in them too
  long definition_context = 0;
  std::string shape_context;  // what the first representation's context says, without its number
  long last = 0;              // the greatest number
};

// In tidied data (see tidied_data), each product under its own name, names in UTF-8, at least one. Throws
// Error (internal) when a product is missing or not as the writer makes it.
Written written_products(std::string_view data, const std::vector<std::string>& names);

}  // namespace lamwright
