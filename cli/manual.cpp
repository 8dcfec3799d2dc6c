#include "cli/manual.hpp"

#include "cli/options.hpp"
#include "shared/text.hpp"

namespace lamwright::cli {
namespace {

// As text of a page: nothing of it is a command of the formatter.
std::string plain(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (out.empty() && (c == '.' || c == '\'')) out += "\\&";
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
  }
  return out;
}

std::string paragraph(const std::string& text) { return ".PP\n" + plain(text) + "\n"; }
std::string tagged(const std::string& tag, const std::string& text) {
  return ".TP\n" + tag + "\n" + plain(text) + "\n";
}
std::string bold(const std::string& text) { return "\\fB" + plain(text) + "\\fR"; }
std::string italic(const std::string& text) { return "\\fI" + plain(text) + "\\fR"; }

std::string option_tag(const OptionRow& row) {
  std::string tag = row.letter.empty() ? "" : bold("-" + row.letter) + ", ";
  tag += bold("--" + row.name);
  return row.value.empty() ? tag : tag + " " + italic(row.value);
}

std::string option_text(const OptionRow& row) {
  std::string text = row.meaning;
  if (!row.assumed.empty()) text += " (" + row.assumed + " unless given)";
  return text + ".";
}

std::string section_of(const Command& command) {
  std::string text =
      ".SS " + plain(command.name) + "\n" + bold(usage_line(command)) + "\n" + paragraph(command.summary);
  for (const ArgumentRow& row : command.arguments)
    if (row.words) text += paragraph(row.value + " is " + listed(row.words()) + ".");
  for (const OptionRow& row : command.options) text += tagged(option_tag(row), option_text(row));
  return text;
}

std::string statuses() {
  return std::string(".SH EXIT STATUS\n") + tagged("0", "Done.") + tagged("1", "The tool itself failed.") +
         tagged("2", "Wrong command line.") +
         tagged("3", "The job file is wrong, or asks for geometry that does not exist.") +
         tagged("4", "The press exists, but a check failed.") +
         tagged("5", "A file or folder could not be read or written, or another build is writing there.") +
         tagged("130", "Interrupted.") + tagged("143", "Terminated.") +
         paragraph("A series ends with the status of its first run that did not end with 0.");
}

std::string rest() {
  return ".SH JOB FILES\n" +
         paragraph(
             "A job is a short file in TOML: panel, lay-up and, where the defaults do not suit, press, "
             "caul, formers, beams, straps and outputs. lamwright start prints one to begin from, "
             "lamwright list keys every key with its default and range.") +
         ".SH ENVIRONMENT\n" +
         tagged(bold("SOURCE_DATE_EPOCH"),
                "Seconds since 1970: the day on drawings where the job gives none. Nothing else of the "
                "environment, and no clock, changes what is written.") +
         ".SH EXAMPLES\n.nf\n" +
         plain(
             "lamwright start arch > seat.toml\nlamwright check seat.toml\nlamwright build seat.toml -o "
             "seat\n"
             "lamwright check seat.toml --set 'panel.profile[1].radius=300:600:20' --csv\n"
             "lamwright build jobs/*.toml -o presses\n") +
         ".fi\n.SH CAUTIONS\n" +
         paragraph(
             "Figures are estimates; local rules and qualified judgement come first. Straps under "
             "tension and glued packs can hurt people: the job sheet tells how to keep clear.");
}

}  // namespace

std::string manual_page(const std::vector<Command>& commands, const std::string& version) {
  std::string text = ".TH LAMWRIGHT 1 \"\" \"lamwright " + version + "\" \"User Commands\"\n.SH NAME\n" +
                     plain("lamwright - plans presses for curved laminated panels") + "\n.SH SYNOPSIS\n";
  for (const Command& command : commands) text += bold(usage_line(command)) + "\n.br\n";
  text += ".SH DESCRIPTION\n" +
          paragraph(
              "From one short job file lamwright says whether a panel of glued sheets can be pressed "
              "into its curve and how, sizes every part of the press, and writes solids, cutting files, "
              "drawings, lists and a job sheet.") +
          paragraph("Results go to standard output, messages to standard error, one line each.") +
          ".SH COMMANDS\n";
  for (const Command& command : commands) text += section_of(command);
  return text + statuses() + rest();
}

}  // namespace lamwright::cli
