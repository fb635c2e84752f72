package tripline.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tripline.sample.Channels;

/**
 * Recordings that cannot be used, each with the one line it must give.
 *
 * <p>{@code NAME.csv} is read for the channels k1 and k2 with the layout of {@code NAME.layout}
 * (keys of a job sheet's [recording]; ours without it) and must give the line of {@code
 * NAME.expected}.
 */
class BadRecordingsTest {
  private static final int AT_LEAST = 60;

  static Stream<Path> recordings() throws IOException, URISyntaxException {
    URL folder = BadRecordingsTest.class.getResource("/badrecordings");
    try (Stream<Path> files = Files.list(Path.of(folder.toURI()))) {
      return files.filter(f -> f.toString().endsWith(".csv")).sorted().toList().stream();
    }
  }

  @Test
  void thereAreMany() throws Exception {
    assertThat(recordings()).hasSizeGreaterThanOrEqualTo(AT_LEAST);
  }

  @ParameterizedTest
  @MethodSource("recordings")
  void givesExactlyThisLine(Path recording) throws IOException {
    byte[] bytes = Files.readAllBytes(recording);
    String expected = Files.readString(sibling(recording, ".expected"));
    for (int piece : new int[] {bytes.length + 1, 1, 97, 4096}) {
      for (CsvReader.Shortcut shortcut : CsvReader.Shortcut.values()) {
        Calls calls = new Calls();
        CsvRequest request = CsvRequest.all(new Channels(List.of("k1", "k2")));
        calls.read(new CsvReader(layout(recording), request, calls, shortcut), bytes, piece);
        assertThat(calls.fault).isPresent();
        assertThat(calls.fault.get().describe(recording.getFileName().toString()) + "\n")
            .isEqualTo(expected);
      }
    }
  }

  private static CsvLayout layout(Path recording) throws IOException {
    Path file = sibling(recording, ".layout");
    Map<String, String> keys = new HashMap<>();
    if (Files.exists(file)) {
      for (String line : Files.readAllLines(file)) {
        keys.put(line.substring(0, line.indexOf(" = ")), line.substring(line.indexOf(" = ") + 3));
      }
    }
    CsvLayout usual = CsvLayout.DEFAULT;
    return new CsvLayout(
        text(keys, "separator", ",").charAt(0),
        text(keys, "decimal", ".").charAt(0),
        text(keys, "time", usual.time()),
        CsvTimeUnit.of(text(keys, "time_unit", "s")).orElseThrow(),
        text(keys, "position", usual.position()),
        texts(keys, "closed", usual.closed()),
        texts(keys, "open", usual.open()),
        Optional.empty());
  }

  private static String text(Map<String, String> keys, String key, String usual) {
    String quoted = keys.get(key);
    return quoted == null ? usual : quoted.substring(1, quoted.length() - 1);
  }

  private static List<String> texts(Map<String, String> keys, String key, List<String> usual) {
    String list = keys.get(key);
    if (list == null) {
      return usual;
    }
    List<String> texts = new ArrayList<>();
    for (String quoted : list.substring(1, list.length() - 1).split(", ", -1)) {
      texts.add(quoted.substring(1, quoted.length() - 1));
    }
    return texts;
  }

  private static Path sibling(Path recording, String ending) {
    String name = recording.getFileName().toString();
    return recording.resolveSibling(name.substring(0, name.length() - 4) + ending);
  }
}
