package tripline.matrix;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tripline.result.Result;
import tripline.result.Result.FindingResult;

/** What came out of the specimens of one fault. */
final class Row {
  final String code;
  int specimens;
  int found;
  int gross;
  int grossFound;
  double smallestFound = Double.POSITIVE_INFINITY;
  double largestMissed;
  final Map<String, Integer> others = new TreeMap<>();
  final List<String> stories = new ArrayList<>();

  Row(String code) {
    this.code = code;
  }

  void add(long seed, Specimen specimen, Result result) {
    specimens++;
    boolean hit = result.findings().stream().anyMatch(f -> f.code().equals(code));
    boolean big = specimen.size() >= 1;
    found += hit ? 1 : 0;
    gross += big ? 1 : 0;
    grossFound += big && hit ? 1 : 0;
    smallestFound = hit ? Math.min(smallestFound, specimen.size()) : smallestFound;
    largestMissed = hit ? largestMissed : Math.max(largestMissed, specimen.size());
    if (big && !hit) {
      stories.add("seed " + seed + ": missed " + code + " of size " + specimen.size());
    }
    for (FindingResult f : result.findings()) {
      boolean mine = f.code().equals(code) || specimen.also().contains(f.code());
      if (!mine && !f.severity().equals("note")) {
        others.merge(f.code(), 1, Integer::sum);
        stories.add("seed " + seed + " (" + code + "): " + f.code() + ": " + f.message());
      }
    }
  }

  /** Nothing gross missed and nothing under another name. */
  boolean clean() {
    return gross == grossFound && others.isEmpty();
  }
}
