package tripline.harness.summary;

import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;

/**
 * A works' folder of results, all different: {@code ManyResults RECORDINGS FOLDER [COUNT] [SEED]}.
 * Each begins as an answer of {@code check} or {@code accept} to one of the recording cases; then
 * its valve, dates and digests are made up, every figure is varied, its backoffs creep from year to
 * year, and an end that was rejected is set anew before the next result.
 */
final class ManyResults {
  private static final int USUAL_COUNT = 5000;
  private static final List<String> PLACES = List.of("CW", "FW", "RW", "SL", "BW", "DR", "IN");
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final ObjectWriter WRITER = MAPPER.writer(new DefaultPrettyPrinter());

  /** What is known of a valve by whoever made it up. */
  static final class Valve {
    final String tag;
    final double[] backoffs = new double[2];
    final double[] creep = new double[2];
    final boolean[] rejected = new boolean[2];
    Instant when;
    int results;
    int adjustments;
    String lastDecision = "";
    String lastFile = "";

    Valve(String tag, Random random) {
      this.tag = tag;
      this.when = Instant.parse("2019-01-07T06:00:00Z").plus(random.nextInt(700), ChronoUnit.DAYS);
      for (int end = 0; end < 2; end++) {
        backoffs[end] = 0.5 + 0.03 * random.nextGaussian();
        creep[end] = random.nextInt(3) == 0 ? 0.05 * random.nextGaussian() : 0;
      }
    }
  }

  private final List<JsonNode> cases = new ArrayList<>();
  private final Path folder;
  private final Random random;

  private ManyResults(Path recordings, Path folder, long seed) throws IOException {
    this.folder = folder;
    this.random = new Random(seed);
    try (Stream<Path> all = Files.list(recordings)) {
      for (Path one : all.sorted().map(c -> c.resolve("expected/result.json")).toList()) {
        if (Files.exists(one)) {
          JsonNode read = MAPPER.readTree(one.toFile());
          if (read.at("/ends/closed/backoff/value").isNumber()) {
            cases.add(read);
          }
        }
      }
    }
  }

  public static void main(String[] args) throws IOException {
    int count = args.length > 2 ? Integer.parseInt(args[2]) : USUAL_COUNT;
    long seed = args.length > 3 ? Long.parseLong(args[3]) : 1;
    Map<String, Valve> valves = write(Path.of(args[0]), Path.of(args[1]), count, seed);
    System.out.println(count + " results of " + valves.size() + " valves");
  }

  /** Writes so many results and tells what a summary must find. */
  static Map<String, Valve> write(Path recordings, Path folder, int count, long seed)
      throws IOException {
    ManyResults maker = new ManyResults(recordings, folder, seed);
    Map<String, Valve> valves = new LinkedHashMap<>();
    for (int made = 0, number = 100; made < count; number++) {
      String tag = PLACES.get(number % PLACES.size()) + "-" + number;
      Valve valve = new Valve(tag, maker.random);
      int results = Math.min(count - made, 1 + maker.random.nextInt(9));
      for (int i = 0; i < results; i++) {
        maker.result(valve);
      }
      made += results;
      valves.put(tag, valve);
    }
    return valves;
  }

  private void result(Valve valve) throws IOException {
    ObjectNode it = cases.get(random.nextInt(cases.size())).deepCopy();
    boolean adjusted = it.path("settings").size() > 1;
    boolean setAnew = setAnew(valve) && valve.results > 0;
    valve.adjustments += adjusted || setAnew ? 1 : 0;
    it.put("tripline", "0.1.0");
    vary(it);
    size(it);
    String decision = ends(it, valve);
    it.put("decision", decision);
    String file = valve.when.toString().substring(0, 4) + "/" + valve.tag + "/" + valve.results;
    identify(it, valve, file);
    Path path = folder.resolve(file + ".json");
    Files.createDirectories(path.getParent());
    WRITER.writeValue(path.toFile(), it);
    valve.results++;
    valve.lastDecision = decision;
    valve.lastFile = file + ".json";
    valve.when = valve.when.plus(120 + random.nextInt(300), ChronoUnit.DAYS);
  }

  /** Sets a rejected end to its target, far beyond what is uncertain. */
  private boolean setAnew(Valve valve) {
    boolean any = false;
    for (int end = 0; end < 2; end++) {
      valve.backoffs[end] += valve.creep[end];
      if (valve.rejected[end]) {
        valve.backoffs[end] = 0.5 + 0.005 * random.nextGaussian();
        any = true;
      }
    }
    return any;
  }

  /** Its backoffs, their decisions, and the decision of the whole. */
  private String ends(ObjectNode it, Valve valve) {
    boolean fault = it.path("findings").findValuesAsText("severity").contains("fault");
    String whole = fault ? "reject" : "accept";
    for (int end = 0; end < 2; end++) {
      JsonNode node = it.path("ends").path(end == 0 ? "closed" : "open");
      ObjectNode backoff = (ObjectNode) node.path("backoff");
      double u = Math.min(0.015, backoff.path("u").doubleValue());
      double value = valve.backoffs[end] + u * Math.max(-2, Math.min(2, random.nextGaussian()));
      double off = Math.abs(value - 0.5);
      String one =
          off < 0.1 - 1.645 * u ? "accept" : off > 0.1 + 1.645 * u ? "reject" : "undecided";
      if (node.path("margin").isObject()) {
        double coast = backoff.path("value").doubleValue() - node.at("/margin/value").doubleValue();
        ((ObjectNode) node.path("margin")).put("value", value - coast);
      }
      backoff.put("value", value).put("u", u).put("target", 0.5).put("decision", one);
      valve.rejected[end] = one.equals("reject");
      whole = whole.equals("reject") || one.equals("reject") ? "reject" : either(whole, one);
    }
    return whole;
  }

  private static String either(String a, String b) {
    return a.equals("undecided") || b.equals("undecided") ? "undecided" : "accept";
  }

  /** Every figure by some thousandths; counts and indexes stay. */
  private void vary(JsonNode node) {
    if (node instanceof ObjectNode object) {
      object
          .fieldNames()
          .forEachRemaining(
              key -> {
                JsonNode value = object.get(key);
                if (value.isDouble()) {
                  object.set(key, varied(value));
                } else {
                  vary(value);
                }
              });
    } else if (node instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        if (list.get(i).isDouble()) {
          list.set(i, varied(list.get(i)));
        } else {
          vary(list.get(i));
        }
      }
    }
  }

  private JsonNode varied(JsonNode value) {
    double varied = value.doubleValue() * (1 + 0.003 * random.nextGaussian());
    return MAPPER.getNodeFactory().numberNode(Math.round(varied * 1e9) / 1e9);
  }

  /** One in three is short (no path, half the changes), one in ten has three times the strokes. */
  private void size(ObjectNode it) {
    int kind = random.nextInt(30);
    ArrayNode changes = (ArrayNode) it.path("changes");
    if (kind < 10) {
      for (int i = changes.size() / 2; i > 0; i--) {
        changes.remove(changes.size() - 1);
      }
      it.path("recordings").forEach(r -> ((ObjectNode) r).putObject("path").putArray("time_s"));
    } else if (kind < 13) {
      changes.addAll(changes.deepCopy()).addAll(changes.deepCopy());
      for (JsonNode recording : it.path("recordings")) {
        ArrayNode strokes = (ArrayNode) recording.path("strokes");
        strokes.addAll(strokes.deepCopy()).addAll(strokes.deepCopy());
      }
    }
  }

  private void identify(ObjectNode it, Valve valve, String file) {
    ObjectNode job = (ObjectNode) it.path("job");
    job.put("tag", valve.tag).put("file", valve.tag + ".toml").put("sha256", digest());
    for (JsonNode node : it.path("recordings")) {
      ObjectNode recording = (ObjectNode) node;
      recording.put("started", valve.when.toString());
      recording.put("file", file + "-" + recording.path("drive").asText() + ".csv");
      recording.put("sha256", digest());
    }
  }

  private String digest() {
    StringBuilder hex = new StringBuilder();
    for (int i = 0; i < 4; i++) {
      hex.append(String.format("%016x", random.nextLong()));
    }
    return hex.toString();
  }
}
