package tripline.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * What {@link NoiseTest} and {@link SecondCodecTest} try, as often as one likes: {@code noise
 * [FRAMES]} a bit error rate, {@code messages [COUNT]} an encoding; a million unless said. Prints
 * what it saw, and ends with an error where it is not as it must be.
 */
public final class LinkStudy {
  private static final String USUAL = "1000000";
  private static final List<Double> RATES = List.of(1e-6, 1e-5, 1e-4, 3e-4, 1e-3);
  private static final long SEED = 1;

  private LinkStudy() {}

  public static void main(String[] arguments) throws Exception {
    String what = arguments.length > 0 ? arguments[0] : "";
    int count = Integer.parseInt(arguments.length > 1 ? arguments[1] : USUAL);
    switch (what) {
      case "noise" -> noise(count);
      case "messages" -> messages(count);
      default -> throw new IllegalArgumentException("expected noise or messages, not " + what);
    }
  }

  private static void noise(int frames) {
    long refused = 0;
    for (double rate : RATES) {
      NoiseRun run = NoiseRun.of(rate, frames, SEED);
      System.out.println(run.words());
      NoiseTest.holds(run);
      refused += run.counters().damaged();
    }
    System.out.printf(
        "damaged units in all: %d; of units damaged at random a check of 32 bits lets one in"
            + " 4 294 967 296 through: %.1g expected of these%n",
        refused, refused * Math.pow(2, -32));
  }

  private static void messages(int count) throws Exception {
    Path folder = Files.createTempDirectory("codec");
    try (SecondCodec codec = new SecondCodec(SecondCodec.compile(folder))) {
      for (Encoding encoding : Encoding.values()) {
        long bytes = CodecAgreement.over(codec, encoding, count, SEED);
        System.out.printf(
            "%d random messages sent as %s: frames and lines of both codecs the same, %d bytes%n",
            count, encoding, bytes);
      }
    } finally {
      clear(folder);
    }
  }

  private static void clear(Path folder) throws IOException {
    try (Stream<Path> left = Files.list(folder)) {
      for (Path each : left.toList()) {
        Files.delete(each);
      }
    }
    Files.delete(folder);
  }
}
