#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace stillground::reference_solutions {

/// A table of figures: comments (#) skipped, a header line, one map a row. Throws std::runtime_error if it is missing
/// or empty.
inline std::vector<std::map<std::string, std::string>> read_table(const std::string& path) {
  std::ifstream in(path);
  if (!in) throw std::runtime_error("reference file missing: " + path);
  std::vector<std::string> header;
  std::vector<std::map<std::string, std::string>> rows;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> fields;
    std::stringstream cells(line);
    for (std::string cell; std::getline(cells, cell, ',');) fields.push_back(cell);
    if (header.empty()) {
      header = fields;
      continue;
    }
    fields.resize(header.size());
    std::map<std::string, std::string> row;
    for (std::size_t i = 0; i < header.size(); ++i) row[header[i]] = fields[i];
    rows.push_back(row);
  }
  if (rows.empty()) throw std::runtime_error("reference file has no rows: " + path);
  return rows;
}

/// One of the reference files of tests/reference.
inline std::vector<std::map<std::string, std::string>> reference_table(const std::string& name) {
  return read_table(std::string(REFERENCE_FOLDER) + "/" + name);
}

}  // namespace stillground::reference_solutions
