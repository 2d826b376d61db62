#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace stillground::oracle {

/// A reference CSV: comments (#) skipped, a header line, one map a row.
inline std::vector<std::map<std::string, std::string>> reference_table(const std::string& name) {
  std::ifstream in(std::string(REFERENCE_FOLDER) + "/" + name);
  if (!in) throw std::runtime_error("reference file missing: " + name);
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
  if (rows.empty()) throw std::runtime_error("reference file has no rows: " + name);
  return rows;
}

}  // namespace stillground::oracle
