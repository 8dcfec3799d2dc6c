# Writes a source file that holds each trade table as text, so that the program needs no data files beside it.
string(REPLACE "," ";" names "${TABLES}")
set(text "#include \"shared/trade_tables.hpp\"\n\nnamespace lamwright {\n\nconst std::vector<TradeText>& trade_texts() {\n  static const std::vector<TradeText> texts{\n")
foreach(name ${names})
  file(READ ${FOLDER}/${name}.toml body)
  string(APPEND text "      {\"${name}\", R\"trade(${body})trade\"},\n")
endforeach()
string(APPEND text "  };\n  return texts;\n}\n\n}  // namespace lamwright\n")
file(WRITE ${OUTPUT} "${text}")
