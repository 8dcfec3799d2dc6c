// Where the project's sources lie, for tests that read its fixtures.
#pragma once
#include <filesystem>

namespace lamwright::test {

std::filesystem::path source_folder();
inline std::filesystem::path demo_job_folder() { return source_folder() / "fixtures" / "jobs"; }

}  // namespace lamwright::test
