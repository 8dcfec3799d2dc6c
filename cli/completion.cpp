#include "cli/completion.hpp"

#include <map>

namespace lamwright::cli {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

std::string from_words(const std::string& words) {
  return "mapfile -t COMPREPLY < <(compgen -W \"" + words + "\" -- \"$cur\")";
}

std::string offered(Completes completes, Words words) {
  switch (completes) {
    case Completes::file:
      return "compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- \"$cur\")";
    case Completes::folder:
      return "compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- \"$cur\")";
    case Completes::words:
      return from_words(joined(words()));
    case Completes::nothing:
      break;
  }
  return "COMPREPLY=()";
}

std::string spelled(const OptionRow& row, const char* between) {
  return (row.letter.empty() ? "" : "-" + row.letter + between) + "--" + row.name;
}

// One branch for each option that has a value, then options or arguments.
std::string body_of(const Command& command) {
  std::string values, names;
  for (const OptionRow& row : command.options) {
    names += spelled(row, " ") + " ";
    if (!row.value.empty())
      values += "        " + spelled(row, "|") + ") " + offered(row.completes, row.words) + "; return ;;\n";
  }
  std::string text;
  if (!values.empty()) text += "      case $prev in\n" + values + "      esac\n";
  text += "      if [[ $cur == -* ]]; then " + from_words(names + "-h --help") + "; return; fi\n";
  if (!command.arguments.empty())
    text += "      " + offered(command.arguments.front().completes, command.arguments.front().words) + "\n";
  return text;
}

// First words, and for each the words that may follow it.
std::map<std::string, std::vector<std::string>> groups_of(const std::vector<Command>& commands) {
  std::map<std::string, std::vector<std::string>> groups;
  for (const Command& command : commands) {
    const auto space = command.name.find(' ');
    auto& second = groups[command.name.substr(0, space)];
    if (space != std::string::npos) second.push_back(command.name.substr(space + 1));
  }
  return groups;
}

}  // namespace

std::string bash_completion(const std::vector<Command>& commands) {
  std::vector<std::string> first;
  std::string second;
  for (const auto& [word, words] : groups_of(commands)) {
    first.push_back(word);
    if (words.empty()) continue;
    second += "  if [[ $command == " + word + " ]]; then\n    if ((COMP_CWORD == 2)); then " +
              from_words(joined(words)) + "; return; fi\n    command+=\" ${COMP_WORDS[2]}\"\n  fi\n";
  }
  std::string text =
      "# Completion of lamwright for bash.\n_lamwright() {\n"
      "  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD - 1]}\n"
      "  local command=${COMP_WORDS[1]}\n  COMPREPLY=()\n  if ((COMP_CWORD == 1)); then " +
      from_words(joined(first) + " --help --version --manual --completion") + "; return; fi\n" + second +
      "  case $command in\n";
  for (const Command& command : commands)
    text += "    \"" + command.name + "\")\n" + body_of(command) + "      ;;\n";
  return text + "  esac\n}\ncomplete -F _lamwright lamwright\n";
}

}  // namespace lamwright::cli
