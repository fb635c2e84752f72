package tripline.matrix;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tripline.result.Result;

/**
 * The fault matrix: {@code FaultMatrix [VARIANTS [HEALTHY [CODE]]]}, 25 seeded variants of each
 * fault and 300 healthy valves unless told otherwise. A {@code !} marks a row that misses a gross
 * fault or reports a cause under another cause's name.
 */
public final class FaultMatrix {
  private static final long FIRST_SEED = 1000;

  private FaultMatrix() {}

  public static void main(String[] args) {
    int variants = args.length > 0 ? Integer.parseInt(args[0]) : 25;
    int healthy = args.length > 1 ? Integer.parseInt(args[1]) : 300;
    String only = args.length > 2 ? args[2] : "";
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    List<String> stories = new ArrayList<>();
    out.println("fault                    found  gross  smallest  largest  other names");
    out.println("                                found     found   missed");
    for (Fault fault : Faults.all()) {
      if (only.isEmpty() || only.equals(fault.code())) {
        Row row = row(fault, variants);
        print(out, row);
        stories.addAll(row.stories);
      }
    }
    Health health = Health.of(healthy, FIRST_SEED);
    out.printf(
        Locale.ROOT,
        "healthy: %d valves, %d with a fault, %d with a caution (%.1f %%), %d accepted, %d undecided%n",
        health.valves,
        health.faults,
        health.cautions,
        100.0 * health.cautions / Math.max(1, health.valves),
        health.accepted,
        health.undecided);
    stories.addAll(health.stories);
    stories.forEach(out::println);
  }

  static Row row(Fault fault, int variants) {
    Row row = new Row(fault.code());
    for (long seed = FIRST_SEED; seed < FIRST_SEED + variants; seed++) {
      Specimen specimen = fault.maker().make(new Setup(seed));
      row.add(seed, specimen, Answer.of(specimen));
    }
    return row;
  }

  private static void print(PrintStream out, Row row) {
    out.printf(
        Locale.ROOT,
        "%-22s %3d/%-3d %3d/%-3d %8s %8s %s %s%n",
        row.code,
        row.found,
        row.specimens,
        row.grossFound,
        row.gross,
        row.found == 0 ? "-" : String.format(Locale.ROOT, "%.2f", row.smallestFound),
        row.found == row.specimens ? "-" : String.format(Locale.ROOT, "%.2f", row.largestMissed),
        row.clean() ? " " : "!",
        row.others);
  }

  /** What came out of valves that are right. */
  static final class Health {
    int valves;
    int faults;
    int cautions;
    int accepted;
    int undecided;
    final List<String> stories = new ArrayList<>();

    static Health of(int valves, long firstSeed) {
      Health health = new Health();
      for (long seed = firstSeed; seed < firstSeed + valves; seed++) {
        health.add(seed, Answer.of(Faults.healthy(new Setup(seed))));
      }
      return health;
    }

    private void add(long seed, Result result) {
      valves++;
      boolean fault = result.findings().stream().anyMatch(f -> f.severity().equals("fault"));
      boolean caution = result.findings().stream().anyMatch(f -> f.severity().equals("caution"));
      faults += fault ? 1 : 0;
      cautions += caution ? 1 : 0;
      switch (result.decision()) {
        case ACCEPT -> accepted++;
        case UNDECIDED -> {
          undecided++;
          stories.add(
              "seed "
                  + seed
                  + " (healthy) undecided: "
                  + result.cams().stream()
                      .filter(c -> c.decision() != tripline.measure.Decision.ACCEPT)
                      .map(c -> c.cam() + " " + c.trip() + " u " + c.u())
                      .toList()
                  + result.contacts().stream()
                      .filter(c -> c.decision() != tripline.measure.Decision.ACCEPT)
                      .map(c -> c.contact())
                      .toList());
        }
        case REJECT -> {}
      }
      result.findings().stream()
          .filter(f -> !f.severity().equals("note"))
          .forEach(
              f -> stories.add("seed " + seed + " (healthy): " + f.code() + ": " + f.message()));
    }
  }
}
