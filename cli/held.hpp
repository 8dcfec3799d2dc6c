// A file or folder kept open, and the lock on it: what FolderLock and replaced files stand on.
#pragma once
#include <filesystem>

namespace lamwright::cli {

// Closes what it holds when it goes; with that, its lock ends.
class Held {
 public:
  explicit Held(int number) : number_(number) {}
  Held(Held&& other) noexcept;
  Held& operator=(Held&& other) noexcept;  // what was held so far goes to `other`
  ~Held();
  int number() const { return number_; }

  // Takes the lock; false where another holds it and it is not to be waited for. On a file system without
  // locks it is taken as held.
  bool lock(bool wait) const;
  // Whether the name still leads to what is held: another run may have renamed or removed it. Throws Error
  // (file) naming `shown` where that cannot be found out.
  bool is_at(const std::filesystem::path& name, const std::filesystem::path& shown) const;

 private:
  int number_;
};

}  // namespace lamwright::cli
