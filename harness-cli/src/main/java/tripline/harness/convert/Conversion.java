package tripline.harness.convert;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import tripline.Version;
import tripline.capture.CaptureBegin;
import tripline.capture.CaptureFormat;
import tripline.csv.CsvLayout;
import tripline.harness.failure.InputFailure;
import tripline.harness.failure.OutputFailure;
import tripline.harness.jobfile.JobFile;
import tripline.harness.recording.InputBytes;

/** One recording file made of another. */
public final class Conversion {
  /** What a target may be, by the ending of its name. */
  public enum Target {
    /** {@code .csv}: the contract's CSV. */
    CSV(".csv"),
    /** {@code .bin}: a capture. */
    CAPTURE(".bin");

    private final String ending;

    Target(String ending) {
      this.ending = ending;
    }

    /** What a name asks for; empty if neither. */
    public static Optional<Target> of(Path path) {
      String name = path.toString().toLowerCase(Locale.ROOT);
      for (Target target : values()) {
        if (name.endsWith(target.ending)) {
          return Optional.of(target);
        }
      }
      return Optional.empty();
    }
  }

  private static final int LONGEST_NAME = 32;

  private final Path in;
  private final Path out;
  private final Source source;
  private final List<String> lines = new ArrayList<>();

  private Conversion(Path in, Path out, Source source) {
    this.in = in;
    this.out = out;
    this.source = source;
  }

  /**
   * Converts a recording; the first byte tells what it is.
   *
   * @param job layout and channels of a foreign CSV; empty: the contract's layout, and every column
   *     that is neither time, position nor mark a contact
   * @param notices takes what the user should know
   * @return a line for each file written
   * @throws InputFailure if the recording cannot be used
   * @throws OutputFailure if a file of the target's name is there, or it cannot be written
   */
  public static List<String> run(
      Path in, Path out, Target target, Optional<JobFile> job, Consumer<String> notices) {
    boolean capture = isCapture(in);
    if (capture && target == Target.CAPTURE) {
      throw new InputFailure(in.toString(), "is a capture already, expected a target in .csv");
    }
    Source source =
        capture
            ? new CaptureSource(in, notices)
            : new CsvSource(
                in,
                job.map(JobFile::layout).orElse(CsvLayout.DEFAULT),
                job.map(j -> j.sheet().channels()));
    Conversion conversion = new Conversion(in, out, source);
    if (target == Target.CSV) {
      conversion.toCsv();
    } else {
      conversion.toCapture(job, notices);
    }
    return conversion.lines;
  }

  private static boolean isCapture(Path in) {
    boolean[] capture = new boolean[1];
    InputBytes.read(
        in,
        (bytes, length) -> {
          capture[0] = CaptureFormat.isCapture(bytes, length);
          return false;
        });
    return capture[0];
  }

  private void toCsv() {
    try (CsvFiles files = new CsvFiles(out, source.facts())) {
      source.play(files);
      files.keep();
      lines.addAll(files.lines());
    } catch (UncheckedIOException | IOException e) {
      throw failed(e);
    }
  }

  private OutputFailure failed(Exception e) {
    return OutputFailure.of(out.toString(), e);
  }

  private void toCapture(Optional<JobFile> job, Consumer<String> notices) {
    Facts facts = source.facts();
    for (String name : facts.contacts()) {
      if (name.getBytes(StandardCharsets.UTF_8).length > LONGEST_NAME) {
        throw new InputFailure(
            in.toString(),
            "column \"%s\" is no name of a channel, expected %d bytes at most"
                .formatted(name, LONGEST_NAME));
      }
    }
    if (!facts.survey().exact()) {
      notices.accept(
          "readings are rounded to 1/%d: a capture holds counts of 32 bits"
              .formatted(facts.survey().countsPerUnit()));
    }
    CaptureBegin begin =
        new CaptureBegin(
            CaptureFormat.MAJOR,
            CaptureFormat.MINOR,
            facts.drive(),
            facts.zero(),
            facts.started().map(s -> ChronoUnit.MICROS.between(Instant.EPOCH, s)).orElse(0L),
            job.map(JobFile::sha256).orElse("00".repeat(32)),
            "tripline " + Version.TEXT,
            "",
            job.map(j -> j.sheet().job().tag()).orElse(""),
            job.map(JobFile::file).orElse(""));
    try (Pending pending = new Pending(out)) {
      try (OutputStream file = new BufferedOutputStream(Files.newOutputStream(pending.path()))) {
        CaptureTarget target = new CaptureTarget(file, facts, begin);
        source.play(why -> target);
        target.finish();
        lines.add(line(out, target.rows(), facts, target.marks()));
      }
      pending.keep();
    } catch (UncheckedIOException | IOException e) {
      throw failed(e);
    }
  }

  static String line(Path file, long rows, Facts facts, long marks) {
    return "%s: %d rows, %d contacts, %d marks"
        .formatted(file, rows, facts.contacts().size(), marks);
  }
}
