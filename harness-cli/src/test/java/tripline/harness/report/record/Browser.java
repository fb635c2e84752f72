package tripline.harness.report.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A headless Chromium that measures a page where a reader would see it. */
public final class Browser {
  private static final int LIMIT_S = 90;

  private Browser() {}

  /** Skips the test where there is no Chromium, or fails it where everything is required. */
  public static Path found() {
    Path chromium =
        Stream.of(System.getenv().getOrDefault("PATH", "").split(":", -1))
            .flatMap(
                folder -> Stream.of("chromium", "chromium-browser").map(n -> Path.of(folder, n)))
            .filter(Files::isExecutable)
            .findFirst()
            .orElse(null);
    if ("all".equals(System.getProperty("tripline.require"))) {
      assertThat(chromium).as("Chromium, which -Dtripline.require=all asks for").isNotNull();
    }
    assumeTrue(chromium != null, "no Chromium on the path");
    return chromium;
  }

  /** The page in a frame of a width, measured after it was laid out. */
  public static JsonNode measure(Path chromium, Path folder, String page, int width)
      throws IOException, InterruptedException {
    String frame;
    try (var in = Browser.class.getResourceAsStream("/report/browser/measure.html")) {
      frame = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    String quoted = page.replace("&", "&amp;").replace("\"", "&quot;");
    Path file = folder.resolve("measure-" + width + ".html");
    Files.writeString(
        file, frame.replace("@WIDTH@", Integer.toString(width)).replace("@PAGE@", quoted));
    Path answer = folder.resolve("measured-" + width + ".txt");
    Process process =
        new ProcessBuilder(
                List.of(
                    chromium.toString(),
                    "--headless",
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                    "--disable-dev-shm-usage",
                    "--user-data-dir=" + folder.resolve("profile"),
                    "--window-size=1400,1000",
                    "--dump-dom",
                    file.toUri().toString()))
            .redirectOutput(answer.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      assertThat(process.waitFor(LIMIT_S, TimeUnit.SECONDS))
          .as("Chromium answers in time")
          .isTrue();
    } finally {
      process.destroyForcibly();
    }
    String[] parts = Files.readString(answer).split("MEASURED:", 2);
    assertThat(parts).as("the page was measured").hasSize(2);
    byte[] json = Base64.getDecoder().decode(parts[1].substring(0, parts[1].indexOf(':')));
    return new ObjectMapper().readTree(json);
  }
}
