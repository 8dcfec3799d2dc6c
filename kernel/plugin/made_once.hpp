// What several exporters of one build need, made once for all of them.
#pragma once
#include <future>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <typeinfo>

namespace lamwright {

// The first that asks makes a value, others wait for it; all are kept until this ends. Any thread may ask.
class MadeOnce {
 public:
  // The value under `name`, which stands for one way of making it from what a build's exporters are given;
  // `make` is called when nobody asked before. What it throws reaches all who ask. It may ask for other
  // values, never for its own, not by way of others either. Names are shared with the built-in exporters: a
  // library's own begin with its name. The type is declared in a header, not in an unnamed namespace.
  template <typename Make>
  auto get(const std::string& name, const Make& make) {
    using Value = decltype(make());
    std::promise<Kept> promise;
    const auto [found, first] = entry(name + " " + typeid(Value).name(), promise);
    if (first) {
      try {
        promise.set_value(std::make_shared<const Value>(make()));
      } catch (...) {
        promise.set_exception(std::current_exception());
      }
    }
    return std::static_pointer_cast<const Value>(found.get());
  }

 private:
  using Kept = std::shared_ptr<const void>;
  struct Entry {
    std::shared_future<Kept> value;
    bool first = false;
  };
  // That of the one who asked before, or else of this promise.
  Entry entry(const std::string& key, std::promise<Kept>& promise) {
    const std::lock_guard lock(mutex_);
    const auto [at, added] = values_.try_emplace(key);
    if (added) at->second = promise.get_future().share();
    return {at->second, added};
  }

  std::mutex mutex_;
  std::map<std::string, std::shared_future<Kept>> values_;
};

// From `shared`, or made for the caller alone where there is none.
template <typename Make>
auto made_once(MadeOnce* shared, const std::string& name, const Make& make) {
  return shared ? shared->get(name, make) : std::make_shared<const decltype(make())>(make());
}

}  // namespace lamwright
