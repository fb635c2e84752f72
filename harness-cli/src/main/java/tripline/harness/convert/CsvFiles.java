package tripline.harness.convert;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tripline.capture.CaptureBegin;
import tripline.link.SinkSource;
import tripline.sample.ContactState;
import tripline.sample.Mark;
import tripline.sample.SampleSink;

/**
 * The CSV files of a recording: one, and another each time the logger was switched on anew, since a
 * CSV recording cannot say in its middle that position zero was lost.
 */
final class CsvFiles implements SinkSource, SampleSink, AutoCloseable {
  private final Path first;
  private final Facts facts;
  private final List<Pending> files = new ArrayList<>();
  private final List<String> lines = new ArrayList<>();
  private @Nullable Writer writer;
  private @Nullable CsvTarget target;
  private @Nullable Path path;

  CsvFiles(Path first, Facts facts) {
    this.first = first;
    this.facts = facts;
  }

  @Override
  public SampleSink next(Break why) {
    if (why != Break.STEP_BACK) {
      finish();
    }
    return this;
  }

  /** Time counts from the first stamp of a file. */
  private CsvTarget at(long timeNs) {
    CsvTarget present = target;
    if (present != null) {
      return present;
    }
    Path name = files.isEmpty() ? first : numbered(files.size() + 1);
    Pending pending = new Pending(name);
    boolean lost =
        !files.isEmpty() || facts.zero().map(z -> z == CaptureBegin.Zero.LOST).orElse(false);
    files.add(pending);
    try {
      Writer out = Files.newBufferedWriter(pending.path(), StandardCharsets.UTF_8);
      writer = out;
      present = new CsvTarget(out, facts, lost, timeNs);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    target = present;
    path = name;
    return present;
  }

  /** {@code name-2.csv}. */
  private Path numbered(int number) {
    String name = first.toString();
    int dot = name.lastIndexOf('.');
    return Path.of(name.substring(0, dot) + "-" + number + name.substring(dot));
  }

  private void finish() {
    CsvTarget present = target;
    Writer out = writer;
    if (present != null && out != null && path != null) {
      present.flush();
      try {
        out.close();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      lines.add(Conversion.line(path, present.rows(), facts, present.marks()));
      target = null;
      writer = null;
    }
  }

  /** All is written: the files get their names. */
  void keep() throws IOException {
    finish();
    for (Pending file : files) {
      file.keep();
    }
  }

  List<String> lines() {
    return List.copyOf(lines);
  }

  @Override
  public void close() throws IOException {
    if (writer != null) {
      writer.close();
    }
    for (Pending file : files) {
      file.close();
    }
  }

  @Override
  public void onRow(long timeNs, double reading, long known, long closed) {
    at(timeNs).onRow(timeNs, reading, known, closed);
  }

  @Override
  public void onEdge(long timeNs, long resolutionNs, int channel, ContactState state) {
    at(timeNs).onEdge(timeNs, resolutionNs, channel, state);
  }

  @Override
  public void onMark(long timeNs, Mark mark, String text) {
    at(timeNs).onMark(timeNs, mark, text);
  }

  @Override
  public void onLoss(long fromNs, long toNs, long samples) {}
}
