package tripline.csv;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/** A valid recording of a random layout, as text. */
final class RandomRecording {
  final CsvLayout layout;
  final String[] channels;
  final List<String> columns;
  private final Random random;
  private final String lineEnd;
  private final boolean spread;
  private final boolean sparse;
  private final boolean quoting;
  private final StringBuilder text = new StringBuilder();

  RandomRecording(long seed) {
    this(seed, Optional.empty());
  }

  /** With a decimal mark of one's own choice, everything else by the seed. */
  RandomRecording(long seed, Optional<Character> decimal) {
    random = new Random(seed);
    char separator = ",;\t|".charAt(random.nextInt(4));
    char drawn = random.nextBoolean() ? '.' : ',';
    char mark = decimal.orElse(drawn);
    CsvTimeUnit unit = List.of(CsvTimeUnit.values()).get(random.nextInt(5));
    layout =
        new CsvLayout(
            decimal.isPresent() ? ';' : separator,
            mark,
            random.nextBoolean() ? "time" : "Zeit, s",
            unit,
            "position",
            random.nextBoolean() ? List.of("1", "closed") : List.of("ZU", "x"),
            List.of("0", "AUF", "öffnen"),
            Optional.empty());
    lineEnd = new String[] {"\n", "\r\n", "\r"}[random.nextInt(3)];
    spread = random.nextBoolean();
    sparse = random.nextBoolean();
    quoting = random.nextInt(3) > 0;
    channels = new String[random.nextInt(17)];
    columns = new ArrayList<>(List.of(layout.time(), layout.position()));
    for (int i = 0; i < channels.length; i++) {
      channels[i] = "k" + i;
      columns.add(channels[i]);
    }
    if (random.nextBoolean()) {
      columns.add("mark");
    }
    for (int i = random.nextInt(3); i > 0; i--) {
      columns.add("other " + i);
    }
    if (spread) {
      Collections.shuffle(columns, random);
    }
    write(1 + random.nextInt(200));
  }

  byte[] bytes() {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public String toString() {
    return text.toString();
  }

  private void write(int rows) {
    text.append(random.nextInt(4) == 0 ? "\uFEFF" : "");
    text.append("# tripline-recording: 1").append(lineEnd);
    text.append("# note: 5\" pipe").append(lineEnd);
    line(columns);
    long ns = random.nextLong(1_000_000_000_000_000L);
    boolean[] states = new boolean[channels.length];
    for (int i = 0; i < rows; i++) {
      long step = random.nextInt(10) == 0 ? 0 : random.nextInt(1_000_000_000);
      ns += random.nextInt(60) == 0 ? -step : step;
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        cells.add(cell(column, ns, states));
      }
      line(cells);
    }
    if (random.nextBoolean()) {
      text.setLength(text.length() - lineEnd.length());
    }
  }

  private String cell(String column, long ns, boolean[] states) {
    if (column.equals(layout.time())) {
      return time(ns);
    }
    if (column.equals("position")) {
      return sparse && random.nextBoolean() ? "" : number(NumbersTest.anyNumber(random));
    }
    if (column.equals("mark")) {
      return random.nextInt(10) > 0
          ? ""
          : List.of("closed-stop", "adjusted", "say \"ha\"", "a" + lineEnd + "b")
              .get(random.nextInt(4));
    }
    if (column.startsWith("k")) {
      int channel = Integer.parseInt(column.substring(1));
      states[channel] ^= random.nextInt(30) == 0;
      List<String> words = states[channel] ? layout.closed() : layout.open();
      String word = words.get(sparse ? random.nextInt(words.size()) : 0);
      word = random.nextInt(20) == 0 ? word.toUpperCase(Locale.ROOT) : word;
      return sparse && random.nextBoolean() ? "" : random.nextInt(50) == 0 ? " " + word : word;
    }
    return random.nextBoolean() ? "" : number("" + random.nextInt(1000) / 8.0);
  }

  private String time(long ns) {
    if (layout.timeUnit() == CsvTimeUnit.ISO) {
      return java.time.Instant.ofEpochSecond(ns / 1_000_000_000, ns % 1_000_000_000).toString();
    }
    int places = layout.timeUnit().decimalsToNs();
    return number(java.math.BigDecimal.valueOf(ns, places).toPlainString());
  }

  private String number(String point) {
    return point.replace('.', layout.decimal());
  }

  private void line(List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      text.append(i == 0 ? "" : layout.separator()).append(quoted(cells.get(i)));
    }
    text.append(lineEnd);
  }

  private String quoted(String cell) {
    boolean must =
        cell.indexOf(layout.separator()) >= 0
            || cell.contains("\"")
            || cell.contains("\n")
            || cell.contains("\r");
    return must || (quoting && random.nextInt(20) == 0)
        ? '"' + cell.replace("\"", "\"\"") + '"'
        : cell;
  }
}
